import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

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
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
    reporters: ['default', at('./count-reporter.ts')],
    testTimeout: 60_000,
  },
});
