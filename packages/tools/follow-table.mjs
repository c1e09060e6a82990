// The simulated evenings and the weather of docs/follow.md, met again: some minutes each.
//
//   node packages/tools/follow-table.mjs            prints the tables
//   node packages/tools/follow-table.mjs --write    writes them into docs/follow.md, and the outcomes into test/data/follow
//   node packages/tools/follow-table.mjs weather    the weather alone; `table` the measured evenings alone

import { spawnSync } from 'node:child_process';
import { argv, env, exit } from 'node:process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const named = ['table', 'weather'].filter((name) => argv.includes(name));
const tests = (named.length > 0 ? named : ['table', 'weather']).map(
  (name) => `test/core/follow/${name}.test.ts`,
);
// One after the other: both write into one page.
const vitest = ['vitest', 'run', '--config', 'test/vitest.config.ts', '--no-file-parallelism', ...tests];
const { status } = spawnSync('npx', ['--no-install', ...vitest, '--disable-console-intercept'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...env, FOLLOW_TABLE: argv.includes('--write') ? 'write' : 'print' },
});
exit(status ?? 1);
