// The command of docs/ramp.md for more random problems meets as many as it is asked for, and those of its seed.

import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const prove = (...args: string[]) =>
  spawnSync('node', ['packages/tools/ramp-proof.mjs', ...args], { cwd: root, encoding: 'utf8' });

test('a few problems of another seed', () => {
  const { status, stdout } = prove('--problems', '12', '--seed', '31000');
  expect(status).toBe(0);
  const [, exhaustive] = /Exhaustive search agrees on 12 problems: .*"infeasible":(\d+)/.exec(stdout) ?? [];
  const [, highs] = /HiGHS agrees on 12 problems, (\d+) of them impossible/.exec(stdout) ?? [];
  // Two solvers that know nothing of each other, on the same twelve.
  expect(exhaustive).toBe(highs);
});

test.each([
  [['--problems', 'many'], '--problems many: give a whole number from 1 to 999999999\n'],
  [['--count', '3'], "Unknown option '--count'; give --problems and --seed, whole numbers\n"],
])('%j is refused in a line', (args, line) => {
  const { status, stdout, stderr } = prove(...args);
  expect({ status, stdout, stderr }).toEqual({ status: 1, stdout: '', stderr: line });
});
