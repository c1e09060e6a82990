// The reader of snippets itself: a page that says what is not so must fail.

import { expect, test } from 'vitest';
import { modulesOfPage } from './reference/snippet-blocks.js';
import { runSnippets } from './reference/snippet-run.js';

const page = (...blocks: string[]) => modulesOfPage('page.md', blocks.join('\n'));
const ts = (code: string, info = '') => `\`\`\`ts${info}\n${code}\n\`\`\``;

const TRUE_PAGES = {
  'a number holds to the digits written': ts(
    'Math.PI; // → 3.14\n-Math.PI; // → -3.142\n2 ** 17; // → 1.31e5',
  ),
  'lists whole, groups by the keys written':
    ts(`const both = { a: [1, 2], b: 3, c: 4 }; // → { b: 3, a: [1, 2] }
Float64Array.of(0.5, 0.25);
// → [
//     0.5, 0.25,
//   ]`),
  'an error by its name and line': ts(`import { framesHeld } from '@evenfall/core';
framesHeld({ cardGB: 0, frameMB: 30 }); // throws RangeError: cardGB must be positive and finite, got 0`),
  'blocks go on from one another and may import again': `${ts("import { dialStep } from '@evenfall/core';\nconst t = 0;")}
${ts("import { dialStep, valueOfStep } from '@evenfall/core';\nvalueOfStep('shutter', t, 3) + valueOfStep('aperture', 6, 3); // → 3")}`,
  'a new block is a new file': `${ts('const t = 1;')}\n${ts('const t = 2; // → 2', ' new')}`,
  'what is not run need not end': ts('for (;;) {}', ' no-run'),
  'printed values, and what is printed': `${ts("console.log(1, 'two'); // → 1, 'two'\nconsole.log('3');")}
\`\`\`text output
1 two
…
\`\`\``,
  'inside a loop': ts('for (const n of [2, 2]) {\n  n + 1; // → 3\n}'),
};

test.each(Object.entries(TRUE_PAGES))('%s', (_, markdown) => {
  const modules = page(markdown);
  const results = runSnippets(modules);
  expect(results.flatMap(({ failures }) => failures)).toEqual([]);
  const written = modules.flat().flatMap(({ code }) => code.match(/\/\/ (→|throws)/g) ?? []).length;
  expect(results.reduce((sum, { checkCount }) => sum + checkCount, 0)).toBe(written);
});

const FALSE_PAGES = {
  'a value that is another': [ts('Math.PI; // → 3.15'), 'page.md:2: the page says 3.15, it is 3.14159'],
  'a whole number that is not whole': [ts('14.97; // → 15'), 'page.md:2: the page says 15, it is 14.97'],
  'a list with more in it': [ts('[1, 2]; // → [1]'), 'page.md:2: the page says [ 1 ], it is [ 1, 2 ]'],
  'a key that is not there': [ts('({}); // → { a: 1 }'), 'page.md:2: the page says { a: 1 }, it is {}'],
  'an error with other words': [
    ts('null!.x; // throws RangeError: no'),
    'page.md:2: the page says that it throws RangeError: no, it throws TypeError',
  ],
  'no error where one is said': [ts('1; // throws RangeError: no'), 'it throws nothing'],
  'a wrong type': [
    ts("import { framesHeld } from '@evenfall/core';\n\nframesHeld({ cardGB: '64' });", ' no-run'),
    "page.md:4: Type 'string'",
  ],
  'an import that does not exist': [ts("import { gone } from '@evenfall/core';"), 'page.md:2: Module'],
  'other words printed': [
    `${ts("console.log('a');")}\n\`\`\`text output\nb\n\`\`\``,
    'page.md:2: the page shows',
  ],
  'a value after the end of a loop that never runs': [
    ts('for (const n of [] as number[]) {\n  n; // → 3\n}'),
    '1 said values were not reached',
  ],
  'an error nobody spoke of': [ts("const a = 1;\n\nthrow new Error('stop');"), 'page.md:2: Error: stop'],
} as const;

test.each(Object.entries(FALSE_PAGES))('fails: %s', (_, [markdown, message]) => {
  const failures = runSnippets(page(markdown)).flatMap((result) => result.failures);
  expect(failures.join('\n')).toContain(message);
});

test('fails: a value that belongs to no statement', () => {
  expect(() => runSnippets(page(ts('const a = {\n  b: 1, // → 1\n};')))).toThrow(
    'page.md:2: 1 values are written, 0 stand after a statement',
  );
});
