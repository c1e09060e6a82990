// Whatever file comes in, a plan or a clear error comes out, within 2 s of the processor and 512 MB: a few hundred of
// the hundred thousand files that packages/tools/hardness.mjs makes, three thousand in the long run. They run in processes of their own, watched from outside.

import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { hardness } from '../../packages/tools/hardness.mjs';
import { isLongRun, sliceOf } from '../reference/long.js';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

beforeAll(() => {
  const packages = ['core', 'chart', 'cli'].map((name) => at(`packages/${name}`));
  execFileSync(process.execPath, [at('node_modules/typescript/bin/tsc'), '-b', ...packages]);
});

const FILES = sliceOf(3000, 300);

test.skipIf(process.platform !== 'linux')(`${FILES} files, sound and hostile`, async () => {
  const halves = [0, FILES / 2].map((first) => hardness({ count: FILES / 2, first }));
  const tallies = await Promise.all(halves);
  expect(tallies.flatMap(({ faults }) => faults)).toEqual([]);
  const all = (status: string) => tallies.reduce((sum, { statuses }) => sum + (statuses[status] ?? 0), 0);
  expect(all('0')).toBeGreaterThan(FILES / 20);
  expect(all('2')).toBeGreaterThan(FILES / 15);
  expect(all('1')).toBeGreaterThan(FILES / 2);
  // Every kind of harm there is.
  if (isLongRun) expect(new Set(tallies.flatMap(({ kinds }) => Object.keys(kinds))).size).toBe(30);
});
