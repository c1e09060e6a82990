// The journal of a followed evening: every line that was understood, one after another, in a file beside the plan. A
// process that is started anew reads it and stands where the last one stood.

import {
  closeSync,
  existsSync,
  fdatasyncSync,
  ftruncateSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { systemFault } from './system-error.js';
import { englishSystemFault } from './words/sentences-en.js';

const FORMAT = 'evenfall-journal/1';

/** An evening's journal, open to go on. */
export interface Journal {
  /** What it held when it was opened, a line each. */
  readonly lines: readonly string[];
  /** Has a line on the disk before it returns, where the disk takes it. */
  keep(line: string): void;
  close(): void;
}

/** Nothing is kept. */
export const NO_JOURNAL: Journal = { lines: [], keep: () => {}, close: () => {} };

/** How a journal is opened. */
export interface Opening {
  readonly path: string;
  /** Tells the plan from others. */
  readonly plan: string;
  /** Whether what is there is set aside. */
  readonly startOver: boolean;
  /** Tells a person what happened, a line each. */
  readonly say: (line: string) => void;
}

/**
 * Opens the journal of a plan, or begins it. One that belongs to another plan is kept under another name. Where it
 * cannot be read or written that is said, and the evening goes on without: it is worth more than its journal.
 */
export function openJournal({ path, plan, startOver, say }: Opening): Journal {
  const found = contentOf(path, say);
  if (found === 'unreadable') return NO_JOURNAL;
  const { text, torn, bytes } = found;
  const begin = `${JSON.stringify({ format: FORMAT, plan })}\n`;
  const [header = '', ...lines] = text.split('\n').slice(0, -1);
  // No line in it, and its first line not even whole perhaps: there is nothing to keep.
  const isBlank = lines.length === 0 && begin.startsWith(text === '' ? torn : text);
  const why = startOver ? 'set aside as asked' : whyNotOurs(header, plan);
  const goesOn = text !== '' && why === undefined;
  if (torn !== '' && goesOn) {
    say(`${path}: its last line was cut short and is left out`);
  }
  try {
    if (!isBlank && !goesOn) say(`${path}: ${why}: kept as ${setAside(path)}, and a new one is begun`);
    const handle = openSync(path, 'a');
    if (goesOn && torn !== '') ftruncateSync(handle, bytes);
    const keep = keeper(handle, path, say);
    if (!goesOn) {
      ftruncateSync(handle, 0);
      keep(begin.trimEnd());
    }
    return { lines: goesOn ? lines : [], keep, close: () => closeSync(handle) };
  } catch (error) {
    say(`${path}: cannot be written: ${englishSystemFault(systemFault(error))}; this evening is not kept`);
    return { ...NO_JOURNAL, lines: goesOn ? lines : [] };
  }
}

/** The whole lines of a file; none where there is no file. */
function contentOf(path: string, say: Opening['say']) {
  try {
    if (statSync(path, { throwIfNoEntry: false })?.isFile() === false) {
      say(`${path}: cannot be kept: something is in the way that is no file; this evening is not kept`);
      return 'unreadable';
    }
    const all = readFileSync(path);
    const bytes = all.lastIndexOf('\n') + 1;
    return { text: all.toString('utf8', 0, bytes), bytes, torn: all.toString('utf8', bytes) };
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') {
      return { text: '', bytes: 0, torn: '' };
    }
    say(`${path}: cannot be read: ${englishSystemFault(systemFault(error))}; this evening is not kept`);
    return 'unreadable';
  }
}

/** Whether the first line of a journal says that it is one of a plan. */
export function isJournalOf(header: string, plan: string): boolean {
  return whyNotOurs(header, plan) === undefined;
}

function whyNotOurs(header: string, plan: string): string | undefined {
  let value: unknown;
  try {
    value = JSON.parse(header);
  } catch {
    return 'it is no journal';
  }
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== FORMAT) {
    return 'it is no journal of this version';
  }
  return 'plan' in value && value.plan === plan ? undefined : 'it belongs to another plan';
}

/** Gives a file the first name with a number that is free; answers it. */
function setAside(path: string): string {
  let number = 1;
  while (existsSync(`${path}.${number}`)) number++;
  renameSync(path, `${path}.${number}`);
  return `${path}.${number}`;
}

/** Writes line by line. What a full disk does not take is tried again with the next line. */
function keeper(handle: number, path: string, say: Opening['say']) {
  let waiting = '';
  return (line: string): void => {
    const failed = waiting !== '';
    waiting += `${line}\n`;
    try {
      // A part of what failed may stand there: it ends as a line of its own, which nobody can read.
      writeFileSync(handle, failed ? `\n${waiting}` : waiting);
      fdatasyncSync(handle);
      waiting = '';
    } catch (error) {
      if (!failed)
        say(
          `${path}: cannot be written: ${englishSystemFault(systemFault(error))}; tried again with each line`,
        );
    }
  };
}
