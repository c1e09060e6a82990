// npm test: everything a change needs, from a fresh clone, in a time zone that few machines have.
// npm run test:long: what is long by nature, whole; npm test runs a seeded slice of it.

import { spawnSync } from 'node:child_process';
import { build, install, root } from './ready.mjs';

install();
build();
console.log('Testing …');
const long = process.argv[2] === '--long';
const vitest = ['vitest', 'run', '--config', 'test/vitest.config.ts', ...process.argv.slice(long ? 3 : 2)];
const { status } = spawnSync('npx', ['--no-install', ...vitest], {
  cwd: root,
  stdio: ['ignore', 'inherit', 'inherit'],
  env: { ...process.env, TZ: process.env.TZ ?? 'Pacific/Chatham', ...(long && { TEST_LONG: '1' }) },
});
process.exit(status ?? 1);
