// The commands and snippets that README and docs show are run as they stand.

import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { planShoot, readShoot, type Shoot } from '../packages/core/src/index.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const pages = [
  'README.md',
  ...readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];
const read = (page: string) => readFileSync(join(root, page), 'utf8');

/** Fenced blocks of a language, in order. */
function blocks(page: string, language: string): string[] {
  return [...read(page).matchAll(new RegExp(`^\`\`\`${language}\n([\\s\\S]*?)^\`\`\`$`, 'gm'))].map(
    ([, body]) => body!,
  );
}

const commands = pages.flatMap((page) =>
  blocks(page, 'sh')
    .flatMap((block) => block.split('\n'))
    .filter((line) => line.startsWith('npx evenfall '))
    .map((line) => ({ page, line })),
);

let folder = '';
beforeAll(() => {
  // As a reader would: a folder of one's own beside the examples.
  folder = mkdtempSync(join(tmpdir(), 'evenfall-docs-'));
  cpSync(join(root, 'docs/examples'), join(folder, 'docs/examples'), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  writeFileSync(join(folder, 'evening.yaml'), blocks('README.md', 'yaml')[0]!);
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('there are commands to run', () => {
  expect(commands.length).toBeGreaterThan(10);
});

test.each(commands)('$page: $line', ({ line }) => {
  const words = line.trim().split(/\s+/).slice(2);
  const bin = join(root, 'packages/cli/bin/evenfall.js');
  const { status, stderr } = spawnSync('node', [bin, ...words], { cwd: folder, encoding: 'utf8' });
  expect(stderr).toBe('');
  // Examples that have no plan, to show what an answer without one looks like.
  expect(status).toBe(/impossible|slide/.test(line) ? 2 : 0);
  const output = words[words.indexOf('-o') + 1];
  if (words.includes('-o')) expect(existsSync(join(folder, output!)), output).toBe(true);
});

test('the README shows what the demo prints', () => {
  const bin = join(root, 'packages/cli/bin/evenfall.js');
  const { stdout } = spawnSync('node', [bin, 'plan', 'docs/examples/dusk.yaml'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(stdout.startsWith(blocks('README.md', 'text')[0]!)).toBe(true);
});

test('the README snippet runs and prints a plan', () => {
  writeFileSync(join(folder, 'snippet.js'), blocks('README.md', 'js')[0]!);
  const { stdout, stderr } = spawnSync('node', ['snippet.js'], { cwd: folder, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(stdout).toMatch(/^\d+ \S+ \[ \{ control: /);
});

test('links between pages lead somewhere', () => {
  let count = 0;
  for (const page of pages) {
    for (const [, target] of read(page).matchAll(/\]\((?!https?:)([^)#]+)(?:#[^)]*)?\)/g)) {
      count++;
      expect(existsSync(join(root, page, '..', target!)), `${page} → ${target}`).toBe(true);
    }
  }
  expect(count).toBeGreaterThan(10);
});

test('the numbers of docs/ramp.md are what the weights give', () => {
  const rows = [
    ...read('docs/ramp.md').matchAll(
      /^\| (?:the usual|`(\w+): ([\d.]+)`) \| (\d+) \| ([\d.]+), ([\d.]+) \|/gm,
    ),
  ];
  expect(rows).toHaveLength(3);
  const { shoot } = readShoot(parse(read('docs/examples/dusk.yaml'))) as { shoot: Shoot };
  for (const [, key, value, cues, rms, worst] of rows) {
    const plan = planShoot({ ...shoot, ...(key === undefined ? {} : { weights: { [key]: Number(value) } }) });
    if ('infeasible' in plan) throw new Error(plan.infeasible.text);
    const { cueCount, rmsErrorEv, worstErrorEv } = plan.summary;
    expect([cueCount, rmsErrorEv.toFixed(2), worstErrorEv.toFixed(2)]).toEqual([Number(cues), rms, worst]);
  }
});
