// Makes a fresh clone ready, saying what it does: installs what is missing, builds what has changed.

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * One line, and out.
 *
 * @returns {never}
 */
export function fail(line) {
  console.error(line);
  process.exit(1);
}

/** Runs a command in the checkout with its output shown; ends the task where it fails. */
export function run(what, command, args, env = {}) {
  console.log(`${what} …`);
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  if (error) fail(`${what} failed: ${error.message}`);
  if (status !== 0) fail(`${what} failed; what went wrong is said above.`);
}

function installed() {
  // npm leaves its own copy of the lock beside the packages; it differs where the clone has moved on.
  const mark = `${root}/node_modules/.package-lock.json`;
  if (!existsSync(mark)) return false;
  const wanted = JSON.parse(readFileSync(`${root}/package-lock.json`, 'utf8')).dependencies;
  const have = JSON.parse(readFileSync(mark, 'utf8')).packages;
  const areThere = (packages, folder) =>
    Object.entries(packages).every(([name, { version, optional, dependencies = {} }]) => {
      const path = `${folder}node_modules/${name}`;
      const isThere = have[path]?.version === version || have[path]?.link;
      return optional || (isThere && areThere(dependencies, `${path}/`));
    });
  return areThere(wanted, '');
}

export function install() {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 20) fail(`Node 20 or later is needed; this is ${process.versions.node}.`);
  if (!installed()) run('Installing packages', 'npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
}

export function build() {
  run('Building', 'npm', ['run', '--silent', 'build']);
}
