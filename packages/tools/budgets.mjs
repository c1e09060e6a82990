// What a page pays for each way into the libraries, minified and compressed, with all that it depends on.
//
//   npm run budgets                 prints the table
//   npm run budgets -- --write      writes the budgets into docs/choices.md

import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { bundle } from './bundle.mjs';
import { markdownTable, writeBetween } from './marked-table.mjs';
import { build, install, root } from './ready.mjs';

export const DOC = `${root}/docs/choices.md`;
export const OPEN = '<!-- budgets: written by npm run budgets -->';
export const CLOSE = '<!-- end of budgets -->';

/** kB of 1000 bytes that each may have. Lower one when its bundle has shrunk; raise one with a reason in the commit. */
export const BUDGETS = [
  { what: '`@evenfall/core`, everything', code: "export * from '@evenfall/core'", kB: 111 },
  { what: '`planShoot` alone', code: "export { planShoot } from '@evenfall/core'", kB: 57.4 },
  { what: '`readShoot` alone', code: "export { readShoot } from '@evenfall/core'", kB: 23.3 },
  { what: '`solveRamp` alone', code: "export { solveRamp } from '@evenfall/core'", kB: 12.8 },
  ...[
    { room: 'plan', kB: 59.8 },
    { room: 'follow', kB: 53.5 },
    { room: 'review', kB: 39.2 },
    { room: 'files', kB: 30.3 },
    { room: 'ramp', kB: 13 },
    { room: 'light', kB: 9.7 },
    { room: 'move', kB: 8.9 },
    { room: 'sky', kB: 7.5 },
    { room: 'footage', kB: 3.4 },
    { room: 'exposure', kB: 1.7 },
    { room: 'words', kB: 0.3 },
    { room: 'shoot', kB: 10.7 },
  ].map(({ room, kB }) => ({
    what: `\`@evenfall/core/${room}\``,
    code: `export * from '@evenfall/core/${room}'`,
    kB,
  })),
  { what: '`@evenfall/chart`', code: "export * from '@evenfall/chart'", kB: 69.3 },
];

/** Every budget with `sizeKB`, what its bundle has. */
export function measured() {
  return Promise.all(
    BUDGETS.map(async ({ what, code, kB }) => {
      const made = await bundle(code, root);
      return { what, kB, sizeKB: gzipSync(made.code, { level: 9 }).length / 1000 };
    }),
  );
}

/** The table of docs/choices.md. */
export function budgetTable() {
  const rows = BUDGETS.map(({ what, kB }) => [what, `${kB} kB`]);
  return markdownTable(['import', 'at most'], rows);
}

/** What was measured, against what may be. */
export function reportOf(sizes) {
  const rows = sizes.map(({ what, kB, sizeKB }) => [what, sizeKB.toFixed(1), String(kB)]);
  return markdownTable(['import, minified and compressed', 'kB', 'at most'], rows);
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  install();
  build();
  if (argv.includes('--write')) writeBetween(DOC, OPEN, CLOSE, budgetTable());
  console.log(reportOf(await measured()));
}
