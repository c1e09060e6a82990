import { appendFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

const { TEST_COUNTS } = process.env;
// A run that a test starts is no run of its own.
delete process.env.TEST_COUNTS;

/**
 * Ends the run with the counts alone on one line: `N passed, N failed`. Where TEST_COUNTS names a file, they are
 * added to it as well.
 */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0;
    let failed = errors.length;
    let skipped = 0;
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
        else skipped++;
      }
    }
    if (TEST_COUNTS !== undefined) appendFileSync(TEST_COUNTS, `${passed} ${failed} ${skipped}\n`);
    // Other reporters print their own summary at the same event; this line has to come after it.
    process.on('exit', () => {
      console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
    });
  }
}
