// What the command and the libraries cost a fresh process, in processor time: as ratios to a process of node that does
// nothing, in the same run, medians. Other work on the machine hardly moves them.
//
//   node packages/tools/command-cost.mjs [--times 15]      part of `npm run bench`

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { markdownTable } from './marked-table.mjs';
import { build, fail, install, root } from './ready.mjs';

const { values } = parseArgs({ options: { times: { type: 'string', default: '15' } } });
const TIMES = Number(values.times);
if (!Number.isInteger(TIMES) || TIMES < 1) fail('--times: give a whole number of 1 or more');

install();
build();
const folder = mkdtempSync(join(tmpdir(), 'evenfall-cost-'));
const empty = join(folder, 'empty.mjs');
writeFileSync(empty, '');
// Says at its end how much of the processor the process had.
const meter = join(folder, 'meter.cjs');
writeFileSync(
  meter,
  `process.on('exit', () => {
    const { user, system } = process.cpuUsage();
    require('node:fs').writeSync(2, '\\ncpu ' + (user + system));
  });`,
);
const bin = `${root}/packages/cli/bin/evenfall.cjs`;
const shoot = `${root}/docs/examples/dusk.yaml`;
const importing = (name) => ['--input-type=module', '-e', `import '${name}';`];

/** @type {Readonly<Record<string, readonly string[]>>} */
const RUNS = {
  'node, nothing': [empty],
  'import @evenfall/core': importing('@evenfall/core'),
  'import @evenfall/chart': importing('@evenfall/chart'),
  'evenfall --help': [bin, '--help'],
  'evenfall plan': [bin, 'plan', shoot],
  'evenfall card -o card.svg': [bin, 'card', shoot, '-o', join(folder, 'card.svg')],
  'evenfall card -o card.pdf': [bin, 'card', shoot, '-o', join(folder, 'card.pdf')],
};

/** @param {readonly string[]} args */
function cpuMs(args) {
  const { stderr } = spawnSync(process.execPath, ['--require', meter, ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  const [, us] = /\ncpu (\d+)$/.exec(stderr) ?? fail(`${args.join(' ')} failed: ${stderr}`);
  return Number(us) / 1000;
}

/** @param {number[]} all */
const median = (all) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

const took = Object.fromEntries(Object.keys(RUNS).map((name) => [name, /** @type {number[]} */ ([])]));
// One after the other, so that all of them have the machine as it is.
for (let i = 0; i < TIMES; i++) {
  for (const [name, args] of Object.entries(RUNS)) took[name]?.push(cpuMs(args));
}
rmSync(folder, { recursive: true });
const least = median(took['node, nothing'] ?? []);
const rows = Object.entries(took).map(([name, all]) => [name, (median(all) / least).toFixed(2)]);
console.log(markdownTable(['processor time of a fresh process', 'ratio'], rows));
