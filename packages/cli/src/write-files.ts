// Output files appear whole or not at all, whenever the process or the machine stops: the old file or the new one.

import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  openSync,
  readdirSync,
  readlinkSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { Refusal } from './refusal.js';
import { systemFault } from './system-error.js';

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
  readonly unshown?: readonly string[]; // characters it should show and cannot
}

/** A file that is written and waits beside its place for its name. */
interface Waiting {
  readonly path: string; // as asked for
  readonly place: string; // where it goes: behind any link
  readonly temporary: string;
}

/** Nobody writes for so long; what is older was left by a process of another machine that was ended. */
const STALE_MS = 60_000;

/** Which machine's process a file belongs to: folders may be shared, and numbers of processes are each machine's own. */
const HOST = hostname()
  .replaceAll(/[^\w-]/g, '')
  .slice(0, 20);

/**
 * Writes every file beside its place under another name first, safe on the disk, and only then gives them their
 * names. Where one cannot be written none appears. A file that was there keeps its permissions; one that is reached
 * by a link is replaced where it lies. What earlier runs that were ended have left beside it goes.
 *
 * @throws Refusal naming the file that cannot be written
 */
export function writeFiles(files: readonly OutputFile[]): void {
  const waiting: Waiting[] = [];
  try {
    for (const { path, content } of files) {
      attempt(path, () => {
        const place = behindLinks(path);
        const old = statSync(place, { throwIfNoEntry: false });
        if (old !== undefined) refuseToLose(place, old);
        const name = `.${shortName(place)}.${HOST}.${process.pid}-${waiting.length}.part`;
        const temporary = join(dirname(place), name);
        clearStale(place, waiting);
        const handle = openSync(temporary, 'wx');
        waiting.push({ path, place, temporary });
        try {
          if (old !== undefined) fchmodSync(handle, old.mode & 0o7777);
          writeFileSync(handle, content);
          fsyncSync(handle);
        } finally {
          closeSync(handle);
        }
      });
    }
    while (waiting.length > 0) {
      const { path, place, temporary } = waiting[0]!;
      attempt(path, () => renameSync(temporary, place));
      waiting.shift();
      secureName(dirname(place));
    }
  } finally {
    for (const { temporary } of waiting) unlinkSync(temporary);
  }
}

/** Where a path leads: a link is followed, even to a file that is not there yet. */
function behindLinks(path: string, depth = 0): string {
  let target: string;
  try {
    target = readlinkSync(path);
  } catch {
    return path; // no link
  }
  if (depth > 40) throw Object.assign(new Error('links in a circle'), { code: 'ELOOP' });
  return behindLinks(resolve(dirname(path), target), depth + 1);
}

/** Putting a new file in its place must not take away what could not have been written over. */
function refuseToLose(place: string, old: Stats): void {
  if (old.isDirectory()) throw Object.assign(new Error('is a folder'), { code: 'EISDIR' });
  if (!old.isFile()) throw Object.assign(new Error('is no file'), { code: 'ENOTFILE' });
  accessSync(place, constants.W_OK);
}

/** Names of files are at most 255 bytes long; four to a character. */
function shortName(place: string): string {
  return [...basename(place)].slice(0, 50).join('');
}

/** Takes away what processes that were ended have left of this file. */
function clearStale(place: string, waiting: readonly Waiting[]): void {
  const folder = dirname(place);
  const lead = `.${shortName(place)}.`;
  for (const name of readdirSync(folder)) {
    const [, host, id] = name.startsWith(lead)
      ? (/^(?:([\w-]*)\.)?(\d+)-\d+\.part$/.exec(name.slice(lead.length)) ?? [])
      : [];
    const left = join(folder, name);
    if (id === undefined || waiting.some(({ temporary }) => temporary === left)) continue;
    try {
      // Of this machine, an earlier process of the same number is none that runs.
      const isHere = host === HOST && (Number(id) === process.pid || !isRunning(Number(id)));
      const isOld = Date.now() - statSync(left).mtimeMs > STALE_MS;
      if (isHere || (isOld && !isRunning(Number(id)))) unlinkSync(left);
    } catch {
      // Another run was quicker, or it belongs to somebody else.
    }
  }
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Has the disk keep a new name. Not every system can ask that of a folder; the file is whole in any case. */
function secureName(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // A network folder, or Windows.
  }
}

function attempt(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-write', path, because: systemFault(error) }]);
  }
}
