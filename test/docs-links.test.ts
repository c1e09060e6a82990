// The pages as a site: one table of contents that names them all, a way back from each, and no link that leads nowhere.

import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { anchorsOf, linksOf } from './reference/pages.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (page: string) => readFileSync(join(root, page), 'utf8');
const CONTENTS = 'docs/README.md';
const docs = (readdirSync(join(root, 'docs'), { recursive: true }) as string[])
  .filter((name) => name.endsWith('.md'))
  .map((name) => `docs/${name}`)
  .sort();
const packages = ['core', 'chart', 'cli'].flatMap((name) =>
  ['README.md', 'CHANGELOG.md'].map((page) => `packages/${name}/${page}`),
);
const pages = ['README.md', 'DEVELOPERS.md', 'test/data/README.md', ...packages, ...docs];

/** A link of a page as a file from the root, and the anchor in it. */
function resolved(page: string, link: string) {
  const [path = '', anchor = ''] = link.split('#');
  return { file: path === '' ? page : normalize(join(dirname(page), path)), anchor };
}

const toPages = (page: string) =>
  linksOf(read(page))
    .filter((link) => !/^[a-z]+:/.test(link))
    .map((link) => resolved(page, link).file);

describe.each(docs)('%s', (page) => {
  test('says first for whom it is, and leads back to all pages', () => {
    const [title, blank, first] = read(page).split('\n');
    expect(title).toMatch(/^# \S/);
    expect(blank).toBe('');
    expect(first).toMatch(/^For /);
    if (page === CONTENTS) expect(toPages(page)).toContain('README.md');
    else expect(resolved(page, linksOf(first!).at(-1) ?? '').file).toBe(CONTENTS);
  });

  test('is in the contents', () => {
    if (page !== CONTENTS) expect(toPages(CONTENTS)).toContain(page);
  });
});

test('the first page leads to the contents, and the contents to every changelog and to what contributors read', () => {
  expect(toPages('README.md')).toContain(CONTENTS);
  expect(toPages(CONTENTS)).toEqual(
    expect.arrayContaining([...packages.filter((page) => page.endsWith('CHANGELOG.md')), 'DEVELOPERS.md']),
  );
});

test('no link between pages is dead, and no anchor', () => {
  let count = 0;
  let anchored = 0;
  for (const page of pages) {
    for (const link of linksOf(read(page))) {
      if (/^[a-z]+:/.test(link)) continue;
      count++;
      const { file, anchor } = resolved(page, link);
      expect(existsSync(join(root, file)), `${page} → ${link}`).toBe(true);
      expect(file.startsWith('..'), `${page} → ${link} leaves the project`).toBe(false);
      if (anchor === '') continue;
      anchored++;
      expect(statSync(join(root, file)).isFile(), `${page} → ${link}`).toBe(true);
      expect([...anchorsOf(read(file))], `${page} → ${link}`).toContain(anchor);
    }
  }
  expect(count).toBeGreaterThan(60);
  expect(anchored).toBeGreaterThan(5);
});

// In comments and messages a page is named by its path, sometimes with an anchor: docs/sources.md#apex.
test('pages that the code points to are there, and their anchors', () => {
  const files = ['core', 'chart', 'cli', 'web'].flatMap((name) =>
    (readdirSync(join(root, 'packages', name, 'src'), { recursive: true }) as string[])
      .filter((file) => file.endsWith('.ts'))
      .map((file) => `packages/${name}/src/${file}`),
  );
  const pointers = files.flatMap((file) =>
    [...read(file).matchAll(/\bdocs\/([\w-]+\.md)(?:#([\w-]+))?/g)].map(([, page, anchor]) => ({
      file,
      page: `docs/${page}`,
      anchor,
    })),
  );
  expect(pointers.length).toBeGreaterThan(40);
  for (const { file, page, anchor } of pointers) {
    expect(existsSync(join(root, page)), `${file} → ${page}`).toBe(true);
    if (anchor !== undefined) {
      expect([...anchorsOf(read(page))], `${file} → ${page}#${anchor}`).toContain(anchor);
    }
  }
});
