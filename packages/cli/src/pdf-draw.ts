// A picture to what a page of a PDF holds: its marks in the operators of PDF, and how its parts are read aloud, in their order.
// Source: docs/sources.md#pdf.

import { bytePairs, decimal } from './pdf-file.js';
import type { Letters } from './pdf-letters.js';
import { cannotDraw, type Element, pictureOf } from './pdf-picture.js';

/** Types of structure in PDF. Source: docs/sources.md#tagged-pdf. */
export type Tag = 'H1' | 'H2' | 'P' | 'Figure';

/** How a part is read: its texts with spaces between them, or of a figure what it shows. */
export interface Part {
  readonly tag: Tag;
  readonly text: string;
  readonly id: number; // by which its marks are known, counted from 0 on each page
}

/** What a picture is drawn on, in points. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly margin: number; // between the picture and every edge
  readonly background?: string | undefined; // of the margin, #rrggbb
}

export interface Drawn {
  readonly content: string;
  /** The parts, card by card. */
  readonly cards: readonly (readonly Part[])[];
  /** Shares of colours that let what is under them through, as `alphaName` names them. */
  readonly alphas: ReadonlySet<string>;
}

type Attributes = Element['attributes'];
type Triple = [number, number, number];

const UNREAD = '/Artifact BMC';

const BLACK = '#000000'; // where nothing is said

/** Of a share of a colour, "0.6". */
export const alphaName = (share: string): string => `A${number(share)}`;

/**
 * A picture that fills a sheet up to its margin. One without parts is one figure, which its title and description tell. Groups
 * are cards that were placed, and in them parts, which hold no groups.
 *
 * @throws Error where the picture holds what is not known here
 */
export function drawn(svg: string, sheet: Sheet, letters: Letters): Drawn {
  const picture = pictureOf(svg);
  const out = [...background(sheet), ...placed(picture.attributes, sheet)];
  const alphas = new Set<string>();
  const cards: Part[][] = [[]];
  let ids = 0;
  let marked: string | undefined;
  // What is in force, as the picture says it: most marks look like the one before.
  let inForce = new Map([['fill-opacity', '1']]);

  const parts = picture.children.some(({ name }) => name === 'g');
  if (parts) for (const child of picture.children) draw(child);
  else part('Figure', picture, about(picture));
  mark(undefined);
  return { content: out.join('\n'), cards: cards.filter((card) => card.length > 0), alphas };

  function draw(element: Element): void {
    const { name, attributes } = element;
    if (name === 'title' || name === 'desc') return;
    if (name === 'g') {
      if (attributes.transform === undefined) part(tagOf(attributes), element, attributes['aria-label']);
      else card(attributes.transform, element);
      return;
    }
    if (marked === undefined) mark(UNREAD);
    if (name === 'text') text(element);
    else shape(element);
  }

  function card(transform: string, { children }: Element): void {
    const [, x, y] = /^translate\((\S+) (\S+)\)$/.exec(transform) ?? [];
    if (x === undefined) throw cannotDraw(`transform="${transform}"`);
    const outside = inForce;
    inForce = new Map(inForce);
    mark(undefined);
    out.push('q', `1 0 0 1 ${number(x)} ${number(y)} cm`);
    cards.push([]);
    for (const child of children) draw(child);
    mark(undefined);
    out.push('Q');
    inForce = outside;
    cards.push([]);
  }

  function part(tag: Tag, { children }: Element, label?: string): void {
    if (children.some(({ name }) => name === 'g')) throw cannotDraw('a part in a part');
    const id = ids++;
    mark(`/${tag} <</MCID ${id}>> BDC`);
    for (const child of children) draw(child);
    mark(undefined);
    const texts = children.filter(({ name }) => name === 'text').map((each) => each.text);
    const read = texts.filter((each) => each !== '·'); // the dot of a list
    cards.at(-1)!.push({ tag, text: label ?? read.join(' '), id });
  }

  /** What is drawn from here on is this, or nothing is. */
  function mark(as: string | undefined): void {
    if (marked !== undefined) out.push('EMC');
    if (as !== undefined) out.push(as);
    marked = as;
  }

  function use(what: string, value: string, operator: (value: string) => string): void {
    if (inForce.get(what) !== value) out.push(operator(value));
    inForce.set(what, value);
  }

  function fillWith({ fill = BLACK, 'fill-opacity': share = '1' }: Attributes): void {
    alphas.add(share);
    use('fill-opacity', share, (value) => `/${alphaName(value)} gs`);
    use('fill', fill, (value) => `${colour(value)} rg`);
  }

  function text({ text: written, attributes }: Element): void {
    const { 'font-weight': weight, 'text-anchor': anchor, direction } = attributes;
    const [x, y, size] = ['x', 'y', 'font-size'].map((key) => finite(attributes[key])) as Triple;
    const face = weight === 'bold' ? letters.bold : letters.regular;
    const line = letters.line(written, face, direction === 'rtl');
    // Of a line from the right, its start is its right end.
    const share = anchor === 'middle' ? 0.5 : (anchor === 'end') === (direction === 'rtl') ? 0 : 1;
    const scale = size / 1000;
    const left = x - share * scale * line.width;
    fillWith(attributes);
    out.push('BT', `/${face.font.name} ${decimal(size)} Tf`);
    for (const { x: from, y: up, glyphs } of line.stretches) {
      const place = `${decimal(left + scale * from)} ${decimal(y - scale * up)}`;
      out.push(`1 0 0 -1 ${place} Tm ${bytePairs(glyphs)} Tj`);
    }
    out.push('ET');
  }

  function shape(element: Element): void {
    const { fill, stroke = 'none', ...rest } = element.attributes;
    const [fills, strokes] = [fill !== 'none' && element.name !== 'line', stroke !== 'none'];
    if (fills) fillWith(element.attributes);
    if (strokes) {
      use('stroke', stroke, (value) => `${colour(value)} RG`);
      use('width', rest['stroke-width'] ?? '1', (value) => `${number(value)} w`);
      use('join', rest['stroke-linejoin'] ?? '', (value) => (value === 'round' ? '1 j' : '0 j'));
      use('dash', rest['stroke-dasharray'] ?? '', (value) => `[${lengths(value).join(' ')}] 0 d`);
    }
    const way = outline(element);
    if (way !== '' && (fills || strokes)) out.push(way, fills && strokes ? 'B' : fills ? 'f' : 'S');
  }
}

function about({ children }: Element): string {
  return children
    .filter(({ name }) => name === 'title' || name === 'desc')
    .map(({ text }) => text)
    .join('. ');
}

function background({ width, height, background: fill }: Sheet): string[] {
  if (fill === undefined) return [];
  return [UNREAD, `${colour(fill)} rg`, `0 0 ${decimal(width)} ${decimal(height)} re f`, 'EMC'];
}

/** The picture as large as the sheet allows, in its middle, nothing drawn beyond. */
function placed({ viewBox = '' }: Attributes, sheet: Sheet): string[] {
  const [, width, height] = /^0 0 ([\d.]+) ([\d.]+)$/.exec(viewBox)?.map(Number) ?? [];
  if (width === undefined || height === undefined) throw cannotDraw(`viewBox="${viewBox}"`);
  const scale = Math.min(
    (sheet.width - 2 * sheet.margin) / width,
    (sheet.height - 2 * sheet.margin) / height,
  );
  const x = (sheet.width - scale * width) / 2;
  const y = (sheet.height + scale * height) / 2;
  return [
    // SVG counts down from the top, PDF up from the bottom.
    `${scale.toFixed(6)} 0 0 ${(-scale).toFixed(6)} ${decimal(x)} ${decimal(y)} cm`,
    `0 0 ${decimal(width)} ${decimal(height)} re W n`,
    '4 M', // where SVG cuts off a sharp corner
  ];
}

function tagOf({ role, 'aria-level': level }: Attributes): Tag {
  if (role === 'heading') return level === '1' ? 'H1' : 'H2';
  if (role === 'paragraph') return 'P';
  if (role === 'img') return 'Figure';
  throw cannotDraw('<g> that is neither placed nor read');
}

function finite(text = ''): number {
  const value = text === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(value)) throw cannotDraw(`"${text}" for a number`);
  return value;
}

const number = (text?: string): string => decimal(finite(text));

const lengths = (list: string): string[] => (list === '' ? [] : list.split(' ').map(number));

/** Red, green and blue, each from 0 to 1. */
function colour(hex: string): string {
  const long = hex.length === 4 ? hex.replace(/[^#]/g, '$&$&') : hex;
  const parts = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(long)?.slice(1);
  if (parts === undefined) throw cannotDraw(`colour "${hex}"`);
  return parts.map((part) => decimal(Number.parseInt(part, 16) / 255)).join(' ');
}

/** How far the handles of a quarter of a circle lie from its ends, of its radius: the middle of the curve lies on the circle. */
const QUARTER = (4 / 3) * (Math.SQRT2 - 1);

function outline({ name, attributes }: Element): string {
  const at = (key: string) => number(attributes[key]);
  if (name === 'rect') {
    const { x = '0', y = '0' } = attributes;
    return `${number(x)} ${number(y)} ${at('width')} ${at('height')} re`;
  }
  if (name === 'line') return `${at('x1')} ${at('y1')} m ${at('x2')} ${at('y2')} l`;
  if (name === 'path') return corners(attributes.d ?? '');
  if (name !== 'circle') throw cannotDraw(`<${name}> here`);
  const [x, y, r] = ['cx', 'cy', 'r'].map((key) => finite(attributes[key])) as Triple;
  // From the right end round, each quarter as its two handles and its end, in radii.
  const quarters = [
    [1, QUARTER, QUARTER, 1, 0, 1],
    [-QUARTER, 1, -1, QUARTER, -1, 0],
    [-1, -QUARTER, -QUARTER, -1, 0, -1],
    [QUARTER, -1, 1, -QUARTER, 1, 0],
  ];
  const curves = quarters.map(
    (places) => `${places.map((place, i) => decimal((i % 2 === 0 ? x : y) + r * place)).join(' ')} c`,
  );
  return [`${decimal(x + r)} ${decimal(y)} m`, ...curves, 'h'].join(' ');
}

/** Straight lines from corner to corner, as our charts write them: M, L and Z. */
function corners(d: string): string {
  if (!/^(?:[ML]-?[\d.]+,-?[\d.]+|Z)*$/.test(d)) throw cannotDraw(`d="${d}"`);
  return d.replace(/([MLZ])([^MLZ]*)/g, (_, command: string, at: string) =>
    command === 'Z' ? 'h ' : `${at.replace(',', ' ')} ${command.toLowerCase()} `,
  );
}
