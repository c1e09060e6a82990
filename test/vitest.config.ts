import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import RatioReporter from './bench/ratio-reporter.js';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The files with something in them that is long by nature. */
const longFiles = () =>
  (readdirSync(at('.'), { recursive: true, encoding: 'utf8' }) as string[])
    .filter((path) => path.endsWith('.test.ts') && readFileSync(at(path), 'utf8').includes('/long.js'))
    .map((path) => `test/${path}`);

/** The longest files first, so that none of them is left to run alone at the end. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]) {
    const isLongest = ({ moduleId }: TestSpecification) =>
      /web\/page|cli\/hardness|test\/docs\.test/.test(moduleId);
    const sorted = await super.sort(files);
    return [...sorted.filter(isLongest), ...sorted.filter((file) => !isLongest(file))];
  }
}

// Packages are read from source, so that a fresh clone tests without building and coverage sees the code.
export default defineConfig({
  root: at('..'),
  resolve: {
    alias: {
      '@evenfall/core': at('../packages/core/src/index.ts'),
      '@evenfall/chart': at('../packages/chart/src/index.ts'),
    },
  },
  test: {
    include: process.env.TEST_LONG === '1' ? longFiles() : ['test/**/*.test.ts'],
    // Benchmarks measure the built package as node runs it, its imports not made into look-ups.
    server: { deps: { external: [/\/packages\/\w+\/dist\//] } },
    benchmark: { include: ['test/bench/**/*.bench.ts'], reporters: [new RatioReporter()] },
    reporters: ['default', at('./count-reporter.ts')],
    maxWorkers: Math.max(2, availableParallelism() - 1),
    sequence: { sequencer: LongestFirst },
    // Only what never ends is given up: a slow machine fails no test.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    expect: { poll: { timeout: 300_000 } },
  },
});
