// Builds the page twice: the folder that is served, and the one HTML file that is opened from disk.
//
//   node packages/tools/build-page.mjs

import { spawnSync } from 'node:child_process';
import { appendFileSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

export const PAGE = `${root}/packages/web/dist/page`;
export const ONE_FILE = `${root}/packages/web/dist/one-file/index.html`;

/** A process of its own: inside a test runner the build would take itself for a development one. */
export function buildPage() {
  for (const mode of ['production', 'one-file']) {
    const { status } = spawnSync(
      process.execPath,
      [
        `${root}/node_modules/vite/bin/vite.js`,
        'build',
        'packages/web',
        '--mode',
        mode,
        '--logLevel',
        'warn',
      ],
      { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, NODE_ENV: 'production' } },
    );
    if (status !== 0) throw new Error(`Building the page (${mode}) failed; what went wrong is said above.`);
  }
  // The licences of what is built in go with the file; two dashes would end the comment early.
  const licences = readFileSync(`${PAGE}/licences.md`, 'utf8').replaceAll('--', '- -');
  appendFileSync(ONE_FILE, `<!--\n${licences}-->\n`);
}

if (argv[1] === fileURLToPath(import.meta.url)) buildPage();
