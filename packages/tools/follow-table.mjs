// The simulated evenings of docs/follow.md, simulated again: some minutes.
//
//   node packages/tools/follow-table.mjs            prints the table
//   node packages/tools/follow-table.mjs --write    writes it into docs/follow.md, and the outcomes into test/data/follow

import { spawnSync } from 'node:child_process';
import { argv, env, exit } from 'node:process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const vitest = ['vitest', 'run', '--config', 'test/vitest.config.ts', 'test/core/follow/table.test.ts'];
const { status } = spawnSync('npx', ['--no-install', ...vitest, '--disable-console-intercept'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...env, FOLLOW_TABLE: argv.includes('--write') ? 'write' : 'print' },
});
exit(status ?? 1);
