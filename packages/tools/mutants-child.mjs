// Keeps the test runner warm over a copy of the checkout: told which files have changed and which tests to run, it says
// whether they pass. Started by mutants.mjs, which ends it where a test runs for ever.

import process from 'node:process';
import { createVitest } from 'vitest/node';

const vitest = await createVitest('test', {
  config: 'test/vitest.config.ts',
  watch: false,
  bail: 1,
  isolate: false,
  // Processes, not threads: a test that sets the time zone must have one of its own.
  pool: 'forks',
  maxWorkers: 1,
  reporters: [{}],
});

process.on('message', async ({ changed, tests }) => {
  for (const path of changed) vitest.invalidateFile(path);
  const specifications = await vitest.globTestSpecifications(tests.map((test) => `test/${test}`));
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications, true);
  // The runner tells of earlier runs as well.
  const asked = new Set(specifications.map(({ moduleId }) => moduleId));
  const run = testModules.filter(({ moduleId }) => asked.has(moduleId));
  const passed =
    asked.size > 0 &&
    run.length === asked.size &&
    unhandledErrors.length === 0 &&
    run.every((module) => module.state() === 'passed');
  process.send?.(passed ? 'pass' : 'fail');
});
process.send?.('ready');
