// Output files appear whole or not at all.

import { closeSync, fsyncSync, openSync, renameSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Refusal } from './refusal.js';
import { systemErrorText } from './system-error.js';

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes every file beside its place under another name first, safe on the disk, and only then gives them their
 * names. Where one cannot be written none appears.
 *
 * @throws Refusal naming the file that cannot be written
 */
export function writeFiles(files: readonly OutputFile[]): void {
  const waiting: { readonly path: string; readonly temporary: string }[] = [];
  try {
    for (const file of files) {
      attempt(file.path, () => {
        const temporary = join(
          dirname(file.path),
          `.${basename(file.path).slice(0, 100)}.${process.pid}.part`,
        );
        refuseFolder(file.path);
        const handle = openSync(temporary, 'wx');
        waiting.push({ path: file.path, temporary });
        try {
          writeFileSync(handle, file.content);
          fsyncSync(handle);
        } finally {
          closeSync(handle);
        }
      });
    }
    while (waiting.length > 0) {
      const { path, temporary } = waiting[0]!;
      attempt(path, () => renameSync(temporary, path));
      waiting.shift();
    }
  } finally {
    for (const { temporary } of waiting) unlinkSync(temporary);
  }
}

function refuseFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) {
    throw Object.assign(new Error('is a folder'), { code: 'EISDIR' });
  }
}

function attempt(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    throw new Refusal([`${path}: cannot be written: ${systemErrorText(error)}`]);
  }
}
