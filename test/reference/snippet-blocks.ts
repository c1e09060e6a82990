// Code that pages show, as the modules a reader would have typed. The rules are in DEVELOPERS.md.

/** One fenced block of TypeScript, with where it stands. */
export interface Snippet {
  readonly page: string; // file, from the root
  readonly line: number; // of its first line of code, from 1
  readonly code: string;
  readonly run: boolean; // false: types are checked, nothing is run
  readonly output?: string; // what the page says that it prints
}

/** Blocks that go on from one another, as one file would. */
export type SnippetModule = readonly Snippet[];

const FENCE = /^```(\w+)(.*)\n([\s\S]*?)^```$/gm;

/** The modules of a page: its ts blocks in order, a new module at each block marked `ts new`. */
export function modulesOfPage(page: string, markdown: string): SnippetModule[] {
  const modules: Snippet[][] = [];
  for (const { 1: language, 2: info = '', 3: body = '', index } of markdown.matchAll(FENCE)) {
    const words = info.trim().split(/\s+/);
    const last = modules.at(-1)?.at(-1);
    if (language === 'text' && words.includes('output')) {
      if (last === undefined) throw new Error(`${page}: a "text output" block before any ts block`);
      modules.at(-1)!.splice(-1, 1, { ...last, output: body });
    }
    if (language !== 'ts') continue;
    const line = markdown.slice(0, index).split('\n').length + 1;
    const snippet = { page, line, code: body, run: !words.includes('no-run') };
    if (modules.length === 0 || words.includes('new')) modules.push([snippet]);
    else modules.at(-1)!.push(snippet);
  }
  return modules;
}
