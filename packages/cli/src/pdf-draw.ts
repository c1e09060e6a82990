// A picture onto a page of a PDF, part by part, each with what is read aloud of it.

import type { Letters } from './pdf-letters.js';
import { cannotDraw, type Element, pictureOf } from './pdf-picture.js';

/** Types of structure in PDF. Source: docs/sources.md#tagged-pdf. */
type Tag = 'H1' | 'H2' | 'P' | 'Figure';

type Parts = PDFKit.PDFStructureElement[];
type Attributes = Element['attributes'];

/** What lies around a picture. */
interface Frame {
  readonly marginPt: number; // between it and every edge of the page
  readonly background?: string | undefined; // of the margin, #rrggbb
}

/**
 * Draws a picture that fills the document's page up to its margin. One without parts is one figure, which its title and
 * description tell. Groups are cards that were placed, and in them parts, which hold no groups.
 *
 * @returns the parts in their order, card by card
 * @throws Error where the picture holds what is not known here
 */
export function drawPicture(svg: string, doc: PDFKit.PDFDocument, letters: Letters, frame: Frame): Parts[] {
  const picture = pictureOf(svg);
  const cards: Parts[] = [[]];
  let isMarked = false;
  place();
  if (picture.children.some(({ name }) => name === 'g')) for (const child of picture.children) draw(child);
  else part('Figure', picture, about(picture));
  endMark();
  doc.restore();
  return cards.filter((parts) => parts.length > 0);

  /** The picture as large as the page allows, in its middle, nothing drawn beyond. */
  function place(): void {
    const { width: pageWidth, height: pageHeight } = doc.page;
    const { marginPt, background } = frame;
    const { viewBox = '' } = picture.attributes;
    const [, width, height] = /^0 0 ([\d.]+) ([\d.]+)$/.exec(viewBox)?.map(Number) ?? [];
    if (width === undefined || height === undefined) throw cannotDraw(`viewBox="${viewBox}"`);
    if (background !== undefined) {
      unread();
      doc.rect(0, 0, pageWidth, pageHeight).fill(colour(background));
      endMark();
    }
    const scale = Math.min((pageWidth - 2 * marginPt) / width, (pageHeight - 2 * marginPt) / height);
    doc.save();
    doc.transform(scale, 0, 0, scale, (pageWidth - scale * width) / 2, (pageHeight - scale * height) / 2);
    doc.rect(0, 0, width, height).clip();
    doc.miterLimit(4); // where SVG cuts off a sharp corner
  }

  function draw(element: Element): void {
    const { name, attributes } = element;
    if (name === 'title' || name === 'desc') return;
    if (name === 'g') {
      if (attributes.transform === undefined) part(tagOf(attributes), element, attributes['aria-label']);
      else card(attributes.transform, element);
      return;
    }
    if (!isMarked) unread();
    if (name === 'text') text(element);
    else shape(element);
  }

  function card(transform: string, { children }: Element): void {
    const [, x, y] = /^translate\((\S+) (\S+)\)$/.exec(transform) ?? [];
    if (x === undefined) throw cannotDraw(`transform="${transform}"`);
    endMark();
    doc.save().translate(finite(x), finite(y));
    cards.push([]);
    for (const child of children) draw(child);
    endMark();
    doc.restore();
    cards.push([]);
  }

  function part(tag: Tag, { children }: Element, label?: string): void {
    if (children.some(({ name }) => name === 'g')) throw cannotDraw('a part in a part');
    endMark();
    const content = doc.markStructureContent(tag);
    isMarked = true;
    for (const child of children) draw(child);
    endMark();
    const texts = children.filter(({ name }) => name === 'text').map((each) => each.text);
    const read = label ?? texts.filter((each) => each !== '·').join(' '); // without the dot of a list
    const said = tag === 'Figure' ? { alt: read } : { actual: read };
    cards.at(-1)!.push(doc.struct(tag, said, [content]));
  }

  /** What is drawn from here on is not read. */
  function unread(): void {
    doc.markContent('Artifact');
    isMarked = true;
  }

  function endMark(): void {
    if (isMarked) doc.endMarkedContent();
    isMarked = false;
  }

  function text({ text: written, attributes }: Element): void {
    const { 'font-weight': weight, 'text-anchor': anchor = 'start', direction } = attributes;
    fillWith(attributes);
    letters.set({
      text: written,
      x: finite(attributes.x),
      y: finite(attributes.y),
      size: finite(attributes['font-size']),
      bold: weight === 'bold',
      anchor,
      rightToLeft: direction === 'rtl',
    });
  }

  function fillWith({ fill, 'fill-opacity': alpha = '1' }: Attributes): void {
    doc.fillColor(colour(fill), finite(alpha));
  }

  function shape(element: Element): void {
    const { fill, stroke = 'none', ...rest } = element.attributes;
    const [fills, strokes] = [fill !== 'none' && element.name !== 'line', stroke !== 'none'];
    if (fills) fillWith(element.attributes);
    if (strokes) {
      const dash = (rest['stroke-dasharray'] ?? '').split(' ').filter((length) => length !== '');
      doc.strokeColor(colour(stroke)).lineWidth(finite(rest['stroke-width'] ?? '1'));
      doc.lineJoin(rest['stroke-linejoin'] === 'round' ? 'round' : 'miter');
      if (dash.length > 0)
        doc.dash(dash.map(finite) as unknown as number, {}); // its types know one length alone
      else doc.undash();
    }
    if (!outline(element) || !(fills || strokes)) return;
    if (fills && strokes) doc.fillAndStroke(colour(fill), colour(stroke));
    else if (fills) doc.fill();
    else doc.stroke();
  }

  /** Whether there is any. */
  function outline({ name, attributes }: Element): boolean {
    const at = (key: string) => finite(attributes[key]);
    if (name === 'rect') {
      const { x = '0', y = '0' } = attributes;
      doc.rect(finite(x), finite(y), at('width'), at('height'));
    } else if (name === 'line') doc.moveTo(at('x1'), at('y1')).lineTo(at('x2'), at('y2'));
    else if (name === 'circle') doc.circle(at('cx'), at('cy'), at('r'));
    else if (name === 'path') return corners(attributes.d ?? '');
    else throw cannotDraw(`<${name}> here`);
    return true;
  }

  /** Straight lines from corner to corner, as our charts write them: M, L and Z. */
  function corners(d: string): boolean {
    if (!/^(?:[ML]-?[\d.]+,-?[\d.]+|Z)*$/.test(d)) throw cannotDraw(`d="${d}"`);
    if (d !== '') doc.path(d);
    return d !== '';
  }
}

function about({ children }: Element): string {
  return children
    .filter(({ name }) => name === 'title' || name === 'desc')
    .map(({ text }) => text)
    .join('. ');
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

/** SVG draws in black where nothing is said. */
function colour(hex = '#000000'): string {
  if (!/^#(?:[\da-f]{3}|[\da-f]{6})$/i.test(hex)) throw cannotDraw(`colour "${hex}"`);
  return hex;
}
