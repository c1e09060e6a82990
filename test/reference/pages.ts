// What a page in Markdown holds, as far as tests ask: its fenced blocks, its links, its headings.

/** A fenced block. */
export interface Block {
  readonly page: string;
  readonly line: number; // of the fence, from 1
  /** Language and the word after it, "yaml part"; "" where the fence says nothing. */
  readonly kind: string;
  /** What stands behind an equals sign: "span" of `yaml part=span`. */
  readonly argument: string;
  readonly body: string;
}

const FENCE = /^( *)```([^\n`]*)\n([\s\S]*?)^\1```$/gm;

export function blocksOf(page: string, markdown: string): Block[] {
  return [...markdown.matchAll(FENCE)].map(({ 2: info = '', 3: body = '', index }) => {
    const [words = '', argument = ''] = info.trim().split('=');
    const line = markdown.slice(0, index).split('\n').length;
    return { page, line, kind: words.trim(), argument: argument.trim(), body };
  });
}

/** Where the links and pictures of a page lead, as they are written; those in code are none. */
export function linksOf(markdown: string): string[] {
  const text = markdown.replaceAll(FENCE, '').replaceAll(/`[^`\n]*`/g, 'code');
  return [...text.matchAll(/\]\(([^()\s]+)\)/g)].map(([, target]) => target!);
}

/** The anchors of a page's headings, as its readers' hosts make them: lower case, no punctuation, hyphens for blanks. */
export function anchorsOf(markdown: string): Set<string> {
  const anchors = new Set<string>();
  for (const [, heading] of markdown.replaceAll(FENCE, '').matchAll(/^#{1,6} +(.+?) *#*$/gm)) {
    const anchor = heading!
      .toLowerCase()
      .replaceAll(/\]\([^)]*\)/g, '')
      .replaceAll(/[^\p{L}\p{N}\p{M} _-]/gu, '')
      .replaceAll(' ', '-');
    let own = anchor;
    for (let n = 1; anchors.has(own); n++) own = `${anchor}-${n}`;
    anchors.add(own);
  }
  return anchors;
}
