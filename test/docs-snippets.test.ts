// The TypeScript that README and docs show is type-checked and run, page by page, against the built packages.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { modulesOfPage } from './reference/snippet-blocks.js';
import { runSnippets } from './reference/snippet-run.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (page: string) => readFileSync(join(root, page), 'utf8');
const pages = ['README.md', ...readdirSync(join(root, 'docs')).map((name) => `docs/${name}`)]
  .filter((name) => name.endsWith('.md'))
  .map((page) => ({ page, modules: modulesOfPage(page, read(page)) }))
  .filter(({ modules }) => modules.length > 0);
const files = {
  'evening.yaml': /^```yaml\n([\s\S]*?)^```$/m.exec(read('README.md'))![1]!,
  'simulated-camera.mjs': read('docs/examples/simulated-camera.mjs'),
};

test('there are pages with snippets', () => {
  expect(pages.length).toBeGreaterThan(0);
});

test.each(pages)('$page', ({ modules }) => {
  expect(runSnippets(modules, files).flatMap(({ failures }) => failures)).toEqual([]);
});
