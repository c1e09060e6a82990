// Reads the SVG of these tests: strict enough to refuse anything that is not well-formed XML.

import { measured } from './font-advance.js';

export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Node[];
  text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function unescaped(text: string): string {
  if (text.includes('<')) throw new Error(`bare < in "${text}"`);
  return text.replace(/&([^;\s]*);?/g, (whole, name: string) => {
    const char = whole.endsWith(';') ? ENTITIES[name] : undefined;
    if (char === undefined) throw new Error(`unknown entity ${whole}`);
    return char;
  });
}

/** The tree of one XML document. Throws on anything malformed. */
export function parseXml(xml: string): Node {
  const root: Node = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  let position = 0;
  while (position < xml.length) {
    const here = open.at(-1)!;
    const tag = xml.indexOf('<', position);
    const end = tag < 0 ? xml.length : tag;
    here.text += unescaped(xml.slice(position, end));
    if (tag < 0) break;
    const match = /^<(\/?)([a-z]+)((?: [A-Za-z][A-Za-z0-9:-]*="[^"<]*")*)(\/?)>/.exec(
      xml.slice(tag, tag + 2_000_000),
    );
    if (match === null) throw new Error(`malformed tag at ${tag}: ${xml.slice(tag, tag + 80)}`);
    const [whole, closing, name, attributeText, selfClosing] = match;
    position = tag + whole.length;
    if (closing === '/') {
      if (open.pop()!.name !== name) throw new Error(`</${name}> closes another element`);
      continue;
    }
    const attributes: Record<string, string> = {};
    for (const [, key, value] of attributeText!.matchAll(/ ([A-Za-z][A-Za-z0-9:-]*)="([^"]*)"/g)) {
      if (key! in attributes) throw new Error(`attribute ${key} twice`);
      attributes[key!] = unescaped(value!);
    }
    const node: Node = { name: name!, attributes, children: [], text: '' };
    here.children.push(node);
    if (selfClosing !== '/') open.push(node);
  }
  if (open.length !== 1 || root.children.length !== 1 || root.text.trim() !== '') {
    throw new Error('not one closed document');
  }
  return root.children[0]!;
}

/** Every element of a kind, in document order. */
export function all(node: Node, name: string): Node[] {
  return [...(node.name === name ? [node] : []), ...node.children.flatMap((child) => all(child, name))];
}

export interface TextBox {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly fill: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The pages of a sheet: itself, or each group on it as a page of its own size. */
export function pagesOnSheet(sheet: Node): Node[] {
  const groups = sheet.children.filter(({ attributes }) => attributes.transform !== undefined);
  if (groups.length === 0) return [sheet];
  const [, , width, height] = sheet.attributes.viewBox!.split(' ').map(Number);
  return groups.map((group, i) => {
    const place = /^translate\(([\d.]+) ([\d.]+)\)$/.exec(group.attributes.transform!)!;
    const [x, y] = [((i % 2) * width!) / 2, (Math.floor(i / 2) * height!) / 2];
    if (Math.abs(Number(place[1]) - x) > 0.01 || Math.abs(Number(place[2]) - y) > 0.01) {
      throw new Error(`page ${i} stands at ${place[0]}`);
    }
    return { ...group, attributes: { viewBox: `0 0 ${width! / 2} ${height! / 2}` } };
  });
}

/** Every text with the box it fills, from capital height to descender, by the font's own widths. */
export function textBoxes(root: Node): TextBox[] {
  return all(root, 'text').map(({ attributes, text }) => {
    const size = Number(attributes['font-size']);
    const bold = attributes['font-weight'] === 'bold';
    const width = measured(text, size, bold);
    const x = Number(attributes.x);
    const y = Number(attributes.y);
    const anchor = attributes['text-anchor'] ?? 'start';
    const atRight = anchor === (attributes.direction === 'rtl' ? 'start' : 'end');
    const left = anchor === 'middle' ? x - width / 2 : atRight ? x - width : x;
    return {
      text,
      size,
      bold,
      fill: attributes.fill!,
      left,
      right: left + width,
      top: y - 0.73 * size,
      bottom: y + 0.24 * size,
    };
  });
}

/** Pairs of texts that share ink, for a message. */
export function overlapping(boxes: readonly TextBox[]): string[] {
  const found: string[] = [];
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
      if (!apart) found.push(`"${a.text}" and "${b.text}"`);
    }
  });
  return found;
}

/** Texts that reach beyond the drawing's viewBox, or nearer to its edge than `margin`. */
export function outside(root: Node, margin = 0): string[] {
  const [, , width, height] = root.attributes.viewBox!.split(' ').map(Number);
  return textBoxes(root)
    .filter(
      (b) => b.left < margin || b.top < margin || b.right > width! - margin || b.bottom > height! - margin,
    )
    .map((b) => b.text);
}

/** WCAG 2 contrast of two colours written #rrggbb or #rgb. */
export function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}

function luminance(colour: string): number {
  const hex = colour.length === 4 ? colour.slice(1).replace(/./g, '$&$&') : colour.slice(1);
  const [r, g, b] = [0, 2, 4].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
