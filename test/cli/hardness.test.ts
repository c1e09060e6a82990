// Whatever file comes in, a plan or a clear error comes out, within 2 s of the processor and 512 MB: three thousand of
// the hundred thousand files that packages/tools/hardness.mjs makes. They run in processes of their own, watched from outside.

import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { hardness } from '../../packages/tools/hardness.mjs';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

beforeAll(() => {
  const packages = ['core', 'chart', 'cli'].map((name) => at(`packages/${name}`));
  execFileSync(process.execPath, [at('node_modules/typescript/bin/tsc'), '-b', ...packages]);
}, 240_000);

test.skipIf(process.platform !== 'linux')(
  'three thousand files, sound and hostile',
  async () => {
    const halves = [0, 1500].map((first) => hardness({ count: 1500, first }));
    const tallies = await Promise.all(halves);
    expect(tallies.flatMap(({ faults }) => faults)).toEqual([]);
    const all = (status: string) => tallies.reduce((sum, { statuses }) => sum + (statuses[status] ?? 0), 0);
    expect(all('0')).toBeGreaterThan(150);
    expect(all('2')).toBeGreaterThan(200);
    expect(all('1')).toBeGreaterThan(1500);
    // Every kind of harm there is.
    expect(new Set(tallies.flatMap(({ kinds }) => Object.keys(kinds))).size).toBe(30);
  },
  300_000,
);
