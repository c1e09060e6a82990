// A picture as the parts that are read aloud, in their order, for the tags of a PDF.

/** Types of structure in PDF. Source: docs/sources.md#tagged-pdf. */
export type Tag = 'H1' | 'H2' | 'P' | 'Figure';

/** How a part is read: its texts with spaces between them, or of a figure what it shows. */
export interface Read {
  readonly tag: Tag;
  readonly text: string;
}

/** One part of a picture, or what is drawn between two of them. */
export interface Part {
  readonly read?: Read; // none: nothing is, as of a line between two texts
  readonly svg: string; // a picture of the whole page with this part alone
}

/**
 * The cards on a sheet, each as its parts in order. A picture without parts is one figure, which its title and description
 * tell. Groups are cards that were placed, and in them parts, which hold no groups.
 */
export function cardsOf(svg: string): Part[][] {
  const [, root = '', content = ''] = /^(<svg\b[^>]*>)([\s\S]*)<\/svg>$/.exec(svg) ?? [];
  const about = [...content.matchAll(/<(title|desc)>([^<]*)<\/\1>/g)].map(([, , text]) => unescaped(text!));
  if (!content.includes('<g role=')) return [[{ read: { tag: 'Figure', text: about.join('. ') }, svg }]];
  const picture = (place: string, inside: string) =>
    `${root}${place}${inside}${place === '' ? '' : '</g>'}</svg>`;
  return content.split(/(?=<g transform=)/).map((card) => {
    const [place = ''] = /^<g transform="[^"]*">/.exec(card) ?? [];
    const end = place === '' ? card.length : card.lastIndexOf('</g>');
    const after = card.slice(end).replace('</g>', '');
    return [
      ...card
        .slice(place.length, end)
        .split(/(<g role=[\s\S]*?<\/g>)/)
        .filter((inside) => inside !== '')
        .map((inside) => ({ ...readOf(inside), svg: picture(place, inside) })),
      ...(after === '' ? [] : [{ svg: picture('', after) }]),
    ];
  });
}

function readOf(part: string): Pick<Part, 'read'> {
  const [, role, attributes = ''] = /^<g role="(\w+)"([^>]*)>/.exec(part) ?? [];
  if (role === undefined) return {};
  const texts = [...part.matchAll(/<text\b[^>]*>([^<]*)<\/text>/g)]
    .map(([, text]) => unescaped(text!))
    .filter((text) => text !== '·'); // the dot of a list
  const text = role === 'img' ? unescaped(/label="([^"]*)"/.exec(attributes)?.[1] ?? '') : texts.join(' ');
  if (role === 'img') return { read: { tag: 'Figure', text } };
  if (role === 'paragraph') return { read: { tag: 'P', text } };
  return { read: { tag: attributes.includes('level="1"') ? 'H1' : 'H2', text } };
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
};

/** Text as it was before our own pictures made it safe. */
export function unescaped(text: string): string {
  return text.replace(/&(?:lt|gt|quot|#39|amp);/g, (entity) => ENTITIES[entity]!);
}

/** The same, made safe again. */
export function escaped(text: string): string {
  return text.replace(/[&<>]/g, (sign) => `&${{ '&': 'amp', '<': 'lt', '>': 'gt' }[sign]};`);
}
