// Programs that tests use beside Node: on a Debian machine they are installed where they are missing, elsewhere it is said what
// to do.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const isThere = (/** @type {string} */ program) =>
  spawnSync(program, ['-h'], { stdio: 'ignore' }).error === undefined;

/**
 * Sees that a program can be run by its name.
 *
 * @param {string} program its name
 * @param {string} debianPackage what Debian calls the package that has it
 * @throws Error of one line where it is missing and cannot be installed
 */
export function needed(program, debianPackage) {
  if (isThere(program)) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log(`Installing ${debianPackage} …`);
    /** @type {import('node:child_process').SpawnSyncOptions} */
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'] };
    const { status } = spawnSync('apt-get', ['update', '-qq'], quiet);
    if (status === 0) spawnSync('apt-get', ['install', '-y', '-qq', debianPackage], quiet);
    if (isThere(program)) return;
  }
  throw new Error(`${program} is needed: install it; on Debian it is in ${debianPackage}.`);
}
