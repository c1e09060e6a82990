// SVG as text, plain enough for any renderer: presentation attributes, no ids, no styles.

import { fitText, textWidth } from './text-width.js';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text made safe inside XML, quotes included; characters XML cannot hold become U+FFFD. */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/** A coordinate with two decimals. Throws RangeError unless finite: a chart never holds NaN. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`coordinate must be finite, got ${value}`);
  return String(Number(value.toFixed(2)) + 0);
}

/** One element; attributes that are undefined are left out; children are SVG text already. */
export function element(name: string, attributes: Attributes, children: readonly string[] = []): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(value!)}"`);
  const open = `<${name}${written.join('')}`;
  return children.length === 0 ? `${open}/>` : `${open}>${children.join('')}</${name}>`;
}

/** How a text is set. `x` is its left end, middle or right end by `anchor`; `y` its baseline. */
export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: string;
}

/** A line of text; one that begins in a right-to-left script keeps its place and reads from the right. */
export function textAt(x: number, y: number, text: string, style: TextStyle): string {
  const { size, bold = false, anchor = 'start', fill = '#000' } = style;
  const rightToLeft = readsFromRight(text);
  const placed = rightToLeft ? { start: 'end', middle: 'middle', end: 'start' }[anchor] : anchor;
  return element(
    'text',
    {
      x,
      y,
      'font-size': size,
      'font-weight': bold ? 'bold' : undefined,
      'text-anchor': placed === 'start' ? undefined : placed,
      direction: rightToLeft ? 'rtl' : undefined,
      fill,
    },
    [escapeXml(text)],
  );
}

/** The same, shortened with … to `width`. */
export function textWithin(x: number, y: number, text: string, width: number, style: TextStyle): string {
  return textAt(x, y, fitText(text, width, style.size, style.bold), style);
}

/** Whether the first letter belongs to a script written from right to left. */
function readsFromRight(text: string): boolean {
  const letter = text.match(/\p{L}/u)?.[0];
  return letter !== undefined && /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/.test(letter);
}

/** A rectangle on the page; y grows downward. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Attributes of a rectangle. */
export function rectOf({ left, top, right, bottom }: Box) {
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The box a line of text fills, from the top of its capitals to the foot of its descenders. */
export function textBox(x: number, y: number, text: string, style: TextStyle): Box {
  const width = textWidth(text, style.size, style.bold);
  const left = x - { start: 0, middle: width / 2, end: width }[style.anchor ?? 'start'];
  return { left, top: y - 0.76 * style.size, right: left + width, bottom: y + 0.24 * style.size };
}

/** Whether two boxes share more than an edge. */
export function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** What a part of a picture is to who has it read aloud, after the roles of WAI-ARIA. A heading has its level. */
export type Part = 'paragraph' | 'img' | 1 | 2;

/** Texts that are read as one. */
export function part(kind: Part, svg: string, label?: string): string {
  const role = typeof kind === 'string' ? { role: kind } : { role: 'heading', 'aria-level': kind };
  return element('g', { ...role, 'aria-label': label }, [svg]);
}

const FONT_FAMILY = 'DejaVu Sans, Verdana, sans-serif';

/** The outer element with a title and a description that screen readers speak. */
export function svgRoot(
  attributes: Attributes & { readonly width: string | number; readonly height: string | number },
  children: readonly string[],
): string {
  return element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', ...attributes, 'font-family': FONT_FAMILY },
    children,
  );
}
