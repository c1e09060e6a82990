// Runs modules one after another and writes what they printed and what was not as said. A program of its own, so
// that snippets meet the built packages as a reader's program would.
//
//   node snippet-runner.mjs list.json results.json

import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { format, inspect } from 'node:util';

/** What the running module has given so far; the checks below write into it. */
let result = fresh();

function fresh() {
  return { done: new Set(), failures: [], output: [] };
}

class Near {
  constructor(value, half) {
    this.value = value;
    this.half = half;
  }
  [inspect.custom]() {
    return this.value;
  }
}

/** A block begins; what is printed from now on is its own. */
function block(at) {
  result.output.push('');
  result.at = at;
}

function near(value, half) {
  return new Near(value, half);
}

function is(at, actual, expected) {
  result.done.add(at);
  if (!matches(actual, expected)) {
    const shown = inspect(actual, { depth: 6, maxArrayLength: 20 });
    result.failures.push(`${at}: the page says ${inspect(expected, { depth: 6 })}, it is ${shown}`);
  }
  return actual;
}

function throws(at, run, said) {
  result.done.add(at);
  const judge = (error) => {
    const got = error === undefined ? 'nothing' : `${error.name}: ${error.message}`;
    if (got !== said) result.failures.push(`${at}: the page says that it throws ${said}, it throws ${got}`);
  };
  try {
    const answer = run();
    if (answer instanceof Promise) return answer.then(() => judge(undefined), judge);
    judge(undefined);
  } catch (error) {
    judge(error);
  }
}

function matches(actual, expected) {
  if (expected instanceof Near) return Math.abs(actual - expected.value) <= expected.half * (1 + 1e-9);
  if (typeof expected === 'number' && typeof actual === 'number')
    return Object.is(actual + 0, expected + 0) || Math.abs(actual - expected) <= 1e-9 * Math.abs(expected);
  if (Array.isArray(expected)) {
    const list = ArrayBuffer.isView(actual) || Array.isArray(actual) ? [...actual] : undefined;
    return list?.length === expected.length && expected.every((each, i) => matches(list[i], each));
  }
  if (typeof expected === 'object' && expected !== null) {
    if (typeof actual !== 'object' || actual === null) return false;
    return Object.entries(expected).every(([key, each]) => matches(actual[key], each));
  }
  return actual === expected;
}

const [list, into] = process.argv.slice(2);
console.log = (...words) => {
  result.output[result.output.length - 1] += `${format(...words)}\n`;
};
globalThis.snippetChecks = { block, near, is, throws };
const results = [];
for (const file of JSON.parse(readFileSync(list, 'utf8'))) {
  result = fresh();
  try {
    await import(pathToFileURL(file).href);
  } catch (error) {
    result.failures.push(`${result.at}: ${error.stack ?? error}`);
  }
  results.push({ failures: result.failures, output: result.output, checkCount: result.done.size });
}
writeFileSync(into, JSON.stringify(results));
process.exit(); // a snippet may have left a server or a timer behind
