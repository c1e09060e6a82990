import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import RatioReporter from './bench/ratio-reporter.js';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

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
    include: ['test/**/*.test.ts'],
    // Benchmarks measure the built package as node runs it, its imports not made into look-ups.
    server: { deps: { external: [/\/packages\/\w+\/dist\//] } },
    benchmark: { include: ['test/bench/**/*.bench.ts'], reporters: [new RatioReporter()] },
    reporters: ['default', at('./count-reporter.ts')],
    testTimeout: 60_000,
  },
});
