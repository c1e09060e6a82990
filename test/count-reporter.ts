import type { Reporter, TestModule } from 'vitest/node';

/** Ends the run with the counts alone on one line: `N passed, N failed`. */
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
    // Other reporters print their own summary at the same event; this line has to come after it.
    process.on('exit', () => {
      console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
    });
  }
}
