// The ramp against exhaustive search and against HiGHS, on random problems that no test has met yet.
//
//   node packages/tools/ramp-proof.mjs                                  1000 problems each, from seed 20000 on
//   node packages/tools/ramp-proof.mjs --problems 10000 --seed 50000    more, and others
//
// The same seed always gives the same problem, so a problem that fails can be met again.

import { spawnSync } from 'node:child_process';
import { argv, env, exit } from 'node:process';
import { parseArgs } from 'node:util';
import { fail, root } from './ready.mjs';

function given() {
  try {
    return parseArgs({
      args: argv.slice(2),
      options: { problems: { type: 'string', default: '1000' }, seed: { type: 'string', default: '20000' } },
    }).values;
  } catch (error) {
    return fail(`${error.message.split('\n')[0]}; give --problems and --seed, whole numbers`);
  }
}
const values = given();
for (const [name, value] of Object.entries(values)) {
  if (!/^[1-9]\d{0,8}$/.test(value)) fail(`--${name} ${value}: give a whole number from 1 to 999999999`);
}
const vitest = ['vitest', 'run', '--config', 'test/vitest.config.ts', 'test/core/ramp/optimum.test.ts'];
const { status } = spawnSync('npx', ['--no-install', ...vitest, '--disable-console-intercept'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...env, RAMP_PROBLEMS: values.problems, RAMP_SEED: values.seed },
});
exit(status ?? 1);
