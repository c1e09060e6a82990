// Where a result goes: which endings a command knows, and writing it there.

import { fstatSync, realpathSync, statSync } from 'node:fs';
import { extname, resolve } from 'node:path';
import type { Io } from './io.js';
import { printable } from './printable.js';
import { Refusal } from './refusal.js';
import type { CommandWords } from './words/words.js';
import { type OutputFile, writeFiles } from './write-files.js';

/** What a command makes of an answer, for each ending it knows. */
export type Makers<Answer> = Readonly<
  Record<string, (answer: Answer, path: string) => OutputFile[] | Promise<OutputFile[]>>
>;

/**
 * The maker for a path's ending. Asked before any planning, so that a mistyped ending costs no wait.
 *
 * @throws Refusal where the ending is not among them, or the path is the shoot file itself
 */
export function makerFor<Answer>(path: string, makers: Makers<Answer>, shootPath?: string) {
  if (path === '-') return makers[Object.keys(makers)[0]!]!;
  const ending = extname(path).toLowerCase();
  const maker = Object.hasOwn(makers, ending) ? makers[ending] : undefined;
  if (maker === undefined) {
    throw new Refusal([{ kind: 'unknown-ending', path, ending, known: Object.keys(makers) }]);
  }
  if (shootPath !== undefined && shootPath !== '-' && realPath(path) === realPath(shootPath)) {
    throw new Refusal([{ kind: 'shoot-file-itself', where: `-o ${path}` }]);
  }
  return maker;
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

/** Whether a result goes to standard output: "-", or "-.txt" to choose its kind. */
const isStandardOutput = (path: string) => /^-(?:\.\w+)?$/.test(path);

/**
 * Writes the files and says so in one line; or writes to standard output and says nothing.
 *
 * @param asked `output` as asked for: "card.pdf", "-", "-.txt"; `json`, whether a program is to be told
 * @throws Refusal where there are several for standard output, or where one of them is the shoot itself, by whatever
 *   name: pages are numbered, and standard input may come from any file
 */
export function write(
  files: readonly OutputFile[],
  { output, json = false }: { readonly output: string; readonly json?: boolean },
  shootPath: string | undefined,
  words: CommandWords,
  io: Io,
): void {
  const unshown = [...new Set(files.flatMap((file) => file.unshown ?? []))];
  if (unshown.length > 0) io.err(`evenfall: ${words.sentences.unshown(printable(output), unshown)}\n`);
  const [first, ...others] = files;
  if (first !== undefined && isStandardOutput(output)) {
    if (others.length > 0) throw new Refusal([{ kind: 'several-files', path: output, count: files.length }]);
    io.out(first.content);
    return;
  }
  const shoot = shootPath === undefined ? undefined : identityOf(shootPath === '-' ? 0 : shootPath);
  for (const { path } of files) {
    if (shoot === undefined || identityOf(path) !== shoot) continue;
    throw new Refusal([{ kind: 'shoot-file-itself', where: path }]);
  }
  writeFiles(files);
  const paths = files.map(({ path }) => path);
  io.out(json ? `${JSON.stringify({ wrote: paths })}\n` : `${words.wrote(paths.map(printable))}\n`);
}

/** What tells a file from every other, behind all its names; undefined for what is none. */
function identityOf(file: string | 0): string | undefined {
  try {
    const stats = file === 0 ? fstatSync(0, { bigint: true }) : statSync(file, { bigint: true });
    return stats.isFile() ? `${stats.dev} ${stats.ino}` : undefined;
  } catch {
    return undefined;
  }
}
