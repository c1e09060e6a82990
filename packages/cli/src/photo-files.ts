// Which files are frames: those in folders and below that begin as pictures do, and files that are named. Nothing is
// opened but for reading.

import { open, readdir, stat } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { Refusal } from './refusal.js';
import { systemFault } from './system-error.js';

/** A file, and the name that it goes by: its path below the folder that was given. */
export interface PhotoFile {
  readonly path: string;
  readonly name: string;
}

/** Endings that pictures have; a file of another ending is none of ours. */
const PICTURE = /\.(jpe?g|tiff?|dng|hei[cf]|avif|nef|cr2|arw|pef|srw|3fr|iiq|orf|rw2|raw)$/i;
/** Nobody means so many. */
const MOST_FILES = 200_000;

/**
 * @param paths folders, which are looked through to their last folder, and files
 * @throws Refusal where one of them is not there
 */
export async function photoFiles(paths: readonly string[]): Promise<PhotoFile[]> {
  const found: PhotoFile[] = [];
  for (const path of paths) {
    try {
      if ((await stat(path)).isDirectory()) await addFolder(path, path, found);
      else found.push({ path, name: basename(path) });
    } catch (error) {
      throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
    }
  }
  // A name with a line break could not be told from two, in a table or in a list for another program.
  const named = found.filter(({ name }) => !/\p{Cc}/u.test(name));
  return named.sort((a, b) => (a.path < b.path ? -1 : 1));
}

async function addFolder(folder: string, root: string, found: PhotoFile[]): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.name.startsWith('.') || found.length >= MOST_FILES) continue;
    if (entry.isDirectory()) await addFolder(path, root, found);
    else if (PICTURE.test(entry.name)) found.push({ path, name: relative(root, path).replaceAll('\\', '/') });
  }
}

/**
 * The first bytes of a file, or all where it has fewer.
 *
 * @throws where it cannot be read
 */
export async function beginningOf(path: string, most: number): Promise<Uint8Array> {
  const handle = await open(path, 'r');
  try {
    const bytes = new Uint8Array(Math.min(most, (await handle.stat()).size));
    let length = 0;
    while (length < bytes.length) {
      const { bytesRead } = await handle.read(bytes, length, bytes.length - length, length);
      if (bytesRead === 0) break;
      length += bytesRead;
    }
    return bytes.subarray(0, length);
  } finally {
    await handle.close();
  }
}
