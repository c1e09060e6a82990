// docs/library.md by the letter: an empty folder, the packed packages, its code pasted into one file, to a running loop.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { modulesOfPage } from '../reference/snippet-blocks.js';
import { installedProject, type Project } from './packed.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string) => readFileSync(join(root, path), 'utf8');

let project: Project;
beforeAll(() => {
  project = installedProject();
});
afterAll(() => project?.remove());

test('from an empty folder to a running loop', () => {
  const [blocks] = modulesOfPage('docs/library.md', read('docs/library.md'));
  expect(blocks!.length).toBeGreaterThan(5);
  writeFileSync(join(project.folder, 'evening.mjs'), blocks!.map(({ code }) => code).join('\n'));
  writeFileSync(join(project.folder, 'simulated-camera.mjs'), read('docs/examples/simulated-camera.mjs'));
  const printed = project.run('node', ['evening.mjs']);
  expect(printed).toBe(blocks!.map(({ output = '' }) => output).join(''));
  expect(printed).toMatch(/^\d+ frames taken; the last at /m);
  // What it wrote: a card in words, a chart that is a picture.
  expect(readFileSync(join(project.folder, 'card.txt'), 'utf8')).toMatch(/ISO/);
  expect(readFileSync(join(project.folder, 'chart.svg'), 'utf8')).toMatch(/^<svg /);
});
