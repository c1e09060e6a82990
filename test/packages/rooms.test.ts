// The house as DEVELOPERS.md draws it: a room of core reads only rooms above it in the table, nothing stands loose, and
// no file needs itself by way of others.

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What each source file of a package imports from the same package, types too; paths from its src. */
function importsOf(name: string): Map<string, readonly string[]> {
  const folder = join(root, 'packages', name, 'src');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => path.replaceAll('\\', '/'));
  const target = (path: string, to: string) => join(dirname(path), to).replace(/\.js$/, '.ts');
  return new Map(
    files.map((path) => {
      const text = readFileSync(join(folder, path), 'utf8');
      const found = [...text.matchAll(/(?:\bfrom|\bimport\(?)\s*'(\.{1,2}\/[^'?]+)/g)].map(([, to]) =>
        target(path, to!),
      );
      return [path, found.filter((each) => files.includes(each))];
    }),
  );
}

/** The first way found from a file back to itself. */
function cycleIn(imports: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const done = new Set<string>();
  const visit = (path: string, way: readonly string[]): readonly string[] | undefined => {
    if (way.includes(path)) return [...way.slice(way.indexOf(path)), path];
    if (done.has(path)) return undefined;
    for (const next of imports.get(path) ?? []) {
      const cycle = visit(next, [...way, path]);
      if (cycle !== undefined) return cycle;
    }
    done.add(path);
    return undefined;
  };
  for (const path of imports.keys()) {
    const cycle = visit(path, []);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}

test('a room of core reads only rooms above it in the table of DEVELOPERS.md', () => {
  const [, table = ''] = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').split('| room of core |');
  const order = [...table.split('\n\n')[0]!.matchAll(/^\| `(\w+)\/`/gm)].map(([, room]) => room!);
  const imports = importsOf('core');
  const roomOf = (path: string) => path.split('/')[0]!;
  const rooms = new Set([...imports.keys()].filter((path) => path.includes('/')).map(roomOf));
  expect([...rooms].sort()).toEqual([...order].sort());

  const wrong = [...imports].flatMap(([path, found]) =>
    found
      .filter((to) => path !== 'index.ts' && to !== 'check.ts' && to !== 'hold.ts')
      .filter(
        (to) => order.indexOf(roomOf(to)) === -1 || order.indexOf(roomOf(to)) > order.indexOf(roomOf(path)),
      )
      .map((to) => `${path} reads ${to}`),
  );
  expect(wrong).toEqual([]);
});

test.each([
  { name: 'core', loose: ['check.ts', 'hold.ts', 'index.ts'] },
  { name: 'chart', loose: ['index.ts'] },
])('nothing else stands loose in $name', ({ name, loose }) => {
  expect([...importsOf(name).keys()].filter((path) => !path.includes('/')).sort()).toEqual(loose);
});

test.each(['core', 'chart', 'cli', 'web'])('no file of %s needs itself by way of others', (name) => {
  const imports = importsOf(name);
  expect(imports.size).toBeGreaterThan(20);
  expect([...imports.values()].flat().length).toBeGreaterThan(imports.size);
  expect(cycleIn(imports)).toBeUndefined();
});
