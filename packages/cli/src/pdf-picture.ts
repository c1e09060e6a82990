// A picture, as card and chart write it, as elements. What they do not write is refused: a mark left out without a word would
// make a wrong card.

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly Element[];
  readonly text: string; // that stands in it
}

const LINES = ['stroke', 'stroke-width', 'stroke-linejoin', 'stroke-dasharray'];
const SHAPE = ['fill', 'fill-opacity', ...LINES];

/** All that our own pictures hold. */
const KNOWN: Readonly<Record<string, readonly string[]>> = {
  svg: ['xmlns', 'width', 'height', 'viewBox', 'role', 'font-family'],
  title: [],
  desc: [],
  g: ['role', 'aria-level', 'aria-label', 'transform'],
  rect: ['x', 'y', 'width', 'height', ...SHAPE],
  line: ['x1', 'y1', 'x2', 'y2', ...LINES],
  circle: ['cx', 'cy', 'r', ...SHAPE],
  path: ['d', ...SHAPE],
  text: ['x', 'y', 'font-size', 'font-weight', 'text-anchor', 'direction', 'fill'],
};

/** Where only some values are known. */
const VALUES: Readonly<Record<string, readonly string[]>> = {
  role: ['heading', 'paragraph', 'img'],
  'font-weight': ['bold'],
  'text-anchor': ['middle', 'end'],
  direction: ['rtl'],
  'stroke-linejoin': ['round'],
};

const HOLDERS = ['svg', 'g']; // of elements; all others that hold anything hold one text
const WRITTEN = ['title', 'desc', 'text'];

const TOKEN = /<([a-z]+)((?: [\w:-]+="[^"]*")*)(\/?)>|<\/[a-z]+>|([^<]+)/y;

/** @throws Error where a picture holds anything that is not known here */
export function pictureOf(svg: string): Element {
  const top = { name: 'svg', attributes: {}, children: [] as Element[], text: '' };
  const open = [top];
  for (let at = 0; at < svg.length; at = TOKEN.lastIndex) {
    TOKEN.lastIndex = at;
    const found = TOKEN.exec(svg);
    if (found === null) throw cannotDraw(svg.slice(at, at + 40));
    const [, name, attributes = '', empty, text] = found;
    const inside = open.at(-1)!;
    if (name === undefined && text === undefined) open.pop();
    else if (!(text === undefined ? HOLDERS : WRITTEN).includes(inside.name)) {
      throw cannotDraw(`${found[0]} in <${inside.name}>`);
    } else if (name === undefined) inside.text = unescaped(text!);
    else {
      const element = { name, attributes: attributesOf(name, attributes), children: [], text: '' };
      inside.children.push(element);
      if (empty === '') open.push(element);
    }
  }
  const [root] = top.children;
  if (root?.name !== 'svg' || top.children.length > 1 || open.length !== 1) throw cannotDraw('no picture');
  return root;
}

export const cannotDraw = (what: string): Error => new Error(`page cannot be drawn as PDF: ${what}`);

function attributesOf(name: string, written: string): Element['attributes'] {
  const known = KNOWN[name];
  if (known === undefined) throw cannotDraw(`<${name}>`);
  const attributes: Record<string, string> = {};
  const pieces = written.split('"'); // ' x=', '5', ' y=', '6', ''
  for (let i = 0; i + 1 < pieces.length; i += 2) {
    const [key, value] = [pieces[i]!.slice(1, -1), pieces[i + 1]!];
    if (!known.includes(key) || VALUES[key]?.includes(value) === false) {
      throw cannotDraw(`${key}="${value}" of <${name}>`);
    }
    attributes[key] = unescaped(value);
  }
  return attributes;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
};

/** Text as it was before our own pictures made it safe. */
function unescaped(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:lt|gt|quot|#39|amp);/g, (entity) => ENTITIES[entity]!);
}
