// npm test: everything, from a fresh clone. Two runs in time zones far from each other, the second of what
// touches clocks: a test that leans on the machine's zone fails in one of them.

import { spawnSync } from 'node:child_process';
import { build, install, root } from './ready.mjs';

install();
build();
console.log('Testing …');
const vitest = ['vitest', 'run', '--config', 'test/vitest.config.ts', ...process.argv.slice(2)];
const { status } = spawnSync('npx', ['--no-install', ...vitest], {
  cwd: root,
  stdio: ['ignore', 'inherit', 'inherit'],
  env: { ...process.env, TZ: process.env.TZ ?? 'Pacific/Chatham' },
});
process.exit(status ?? 1);
