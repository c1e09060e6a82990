// A PDF as others open it: pdf.js always, and poppler's tools where they are installed.

import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { folder } from './run.js';

export interface OpenedPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly text: string; // in the order of the page's content, its spaces made single
  readonly laidOut: string; // in the order a reader takes it from the page
}

/** A part of a page as a screen reader is told of it. */
export interface ReadPart {
  readonly type: string; // "H1", "P"
  readonly text: string;
}

export interface OpenedPdf {
  readonly title: string | undefined;
  readonly pages: readonly OpenedPage[];
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
}

export interface PdfReader {
  readonly name: string;
  readonly open: (bytes: Uint8Array) => Promise<OpenedPdf>;
}

const spaced = (text: string) =>
  text
    .replaceAll(/[\u202a-\u202e\u200e\u200f\f]/g, '')
    .replaceAll(/\s+/g, ' ')
    .trim();

const pdfJs: PdfReader = {
  name: 'pdf.js',
  async open(bytes) {
    const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    const pages: OpenedPage[] = [];
    const fonts = new Map<string, boolean>();
    for (let number = 1; number <= pdf.numPages; number++) {
      const page = await pdf.getPage(number);
      const [, , widthPt, heightPt] = page.view;
      const content = await page.getTextContent();
      const text = spaced(content.items.map((item) => ('str' in item ? item.str : '')).join(' '));
      pages.push({ widthPt: widthPt!, heightPt: heightPt!, text, laidOut: text });
      await page.getOperatorList();
      for (const id of Object.keys(content.styles)) {
        const font: { readonly name: string; readonly missingFile: boolean } = page.commonObjs.get(id);
        fonts.set(font.name, !font.missingFile);
      }
    }
    const { info } = (await pdf.getMetadata()) as { info: { Title?: string } };
    return { title: info.Title, pages, fonts: [...fonts].map(([name, embedded]) => ({ name, embedded })) };
  },
};

function tool(name: string, argv: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(name, argv, { encoding: 'utf8', maxBuffer: 2 ** 26 });
  if (status !== 0) throw new Error(`${name} ${argv.join(' ')}: ${stderr}`);
  return stdout;
}

const poppler: PdfReader = {
  name: 'poppler',
  async open(bytes) {
    const path = folder().at('opened.pdf');
    writeFileSync(path, bytes);
    const info = tool('pdfinfo', ['-f', '1', '-l', '9999', path]);
    const texts = tool('pdftotext', ['-raw', path, '-']).split('\f');
    const laidOut = tool('pdftotext', [path, '-']).split('\f');
    const pages = [...info.matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+) pts/gm)].map(
      ([, width, height], i) => ({
        widthPt: Number(width),
        heightPt: Number(height),
        text: spaced(texts[i]!),
        laidOut: spaced(laidOut[i]!),
      }),
    );
    const rows = tool('pdffonts', [path]).trimEnd().split('\n').slice(2);
    const fonts = rows.map((row) => {
      const [, name, embedded] = /^(\S+) +.* (yes|no) +(?:yes|no) +(?:yes|no) +\d+ +\d+$/.exec(row)!;
      return { name: name!, embedded: embedded === 'yes' };
    });
    return { title: /^Title: +(.*)$/m.exec(info)?.[1], pages, fonts };
  },
};

const RENDERER = 'pdftoppm';
const hasPoppler = ['pdfinfo', 'pdftotext', 'pdffonts', RENDERER].every(
  (name) => spawnSync(name, ['-v']).error === undefined,
);

/** The parts of every page in the order in which they are read, by pdf.js; each section of the document by itself. */
export async function partsRead(bytes: Uint8Array): Promise<ReadPart[][]> {
  interface Node {
    readonly role: string;
    readonly alt?: string; // also of the text that replaces what is drawn
    readonly children: readonly Node[];
  }
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const sections: ReadPart[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const root = (await (await pdf.getPage(number)).getStructTree()) as unknown as Node;
    for (const whole of root.children) {
      if (whole.role !== 'Document') throw new Error(`${whole.role} stands over the sections`);
      for (const { role, children } of whole.children) {
        if (role !== 'Sect') throw new Error(`${role} is no section`);
        sections.push(children.map((each) => ({ type: each.role, text: each.alt ?? '' })));
      }
    }
  }
  return sections;
}

/** Poppler's own tree of types and what is drawn under each, one line each; none where it is not installed. */
export function structureText(bytes: Uint8Array): string[] | undefined {
  if (!hasPoppler) return undefined;
  const path = folder().at('structure.pdf');
  writeFileSync(path, bytes);
  return tool('pdfinfo', ['-struct-text', path]).trimEnd().split('\n');
}

export const PDF_READERS: readonly PdfReader[] = hasPoppler ? [pdfJs, poppler] : [pdfJs];

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array; // row by row, 0 black to 255 white
}

/** Pages rendered at so many dots an inch; none where poppler is not installed. */
export function rendered(bytes: Uint8Array, dpi: number): Picture[] {
  if (!hasPoppler) return [];
  const path = folder().at('rendered.pdf');
  writeFileSync(path, bytes);
  const { stdout, status } = spawnSync(RENDERER, ['-r', String(dpi), '-gray', path], {
    maxBuffer: 2 ** 28,
  });
  if (status !== 0) throw new Error('pdftoppm failed');
  const pictures: Picture[] = [];
  for (let at = 0; at < stdout.length; ) {
    const [head, width, height] = /^P5\n(\d+) (\d+)\n255\n/.exec(stdout.toString('latin1', at, at + 40))!;
    const from = at + head.length;
    at = from + Number(width) * Number(height);
    pictures.push({ width: Number(width), height: Number(height), grey: stdout.subarray(from, at) });
  }
  return pictures;
}
