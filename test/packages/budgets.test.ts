// What the packages cost and depend on: sizes, dependencies, licences.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { budgetTable, CLOSE, DOC, measured, OPEN, reportOf } from '../../packages/tools/budgets.mjs';
import { licencePage, PAGE, runtimeLicences } from '../../packages/tools/licences.mjs';
import { partBetween } from '../../packages/tools/marked-table.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

test('every bundle is within its budget', async () => {
  const sizes = await measured();
  console.log(reportOf(sizes));
  const beyond = sizes.filter(({ sizeKB, kB }) => sizeKB > kB);
  expect(beyond, 'larger than packages/tools/budgets.mjs allows').toEqual([]);
  // A budget far above its bundle guards nothing.
  const loose = sizes.filter(({ sizeKB, kB }) => sizeKB < 0.85 * kB - 0.3);
  expect(loose, 'smaller by far: lower their budgets in packages/tools/budgets.mjs').toEqual([]);
});

test('the lock names no address, and has a checksum of everything that is fetched', () => {
  const text = readFileSync(`${root}/package-lock.json`, 'utf8');
  expect(text).not.toMatch(/"resolved"|:\/\//);
  interface Locked {
    readonly version: string;
    readonly integrity?: string;
    readonly dependencies?: Readonly<Record<string, Locked>>;
  }
  const all = ({ dependencies = {} }: Pick<Locked, 'dependencies'>): [string, Locked][] =>
    Object.entries(dependencies).flatMap(([name, locked]) => [[name, locked], ...all(locked)]);
  const fetched = all(JSON.parse(text)).filter(([, { version }]) => !version.startsWith('file:'));
  expect(fetched.length).toBeGreaterThan(100);
  expect(fetched.filter(([, { integrity }]) => integrity === undefined)).toEqual([]);
});

test('docs/choices.md says the budgets', () => {
  expect(partBetween(DOC, OPEN, CLOSE), 'npm run budgets -- --write').toBe(budgetTable());
});

test('nothing is depended on that docs/choices.md does not give a reason for', () => {
  const rows = [...readFileSync(DOC, 'utf8').matchAll(/^\| (`[^|]+`) \| [^|]+ \|(?: [^|]+ \|)?$/gm)];
  const names = rows.flatMap(([, cell]) => [...cell!.matchAll(/`([^`]+)`/g)].map(([, name]) => name!));
  const told = names.filter(
    (name) => !name.startsWith('@evenfall/') && !/^(planShoot|readShoot|solveRamp)$/.test(name),
  );
  const used = ['.', ...['core', 'chart', 'cli', 'web', 'tools'].map((name) => `packages/${name}`)].flatMap(
    (folder) => {
      const { dependencies = {}, devDependencies = {} } = JSON.parse(
        readFileSync(`${root}/${folder}/package.json`, 'utf8'),
      );
      return Object.keys({ ...dependencies, ...devDependencies });
    },
  );
  const others = new Set(used.filter((name) => !name.startsWith('@evenfall/')));
  expect(told.sort()).toEqual([...others].sort());
});

test('what the packages depend on at run time is pinned exactly', () => {
  for (const name of ['core', 'chart', 'cli', 'web']) {
    const { dependencies } = JSON.parse(readFileSync(`${root}/packages/${name}/package.json`, 'utf8'));
    for (const version of Object.values(dependencies)) expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  }
});

test('docs/licences.md lists what is installed', () => {
  expect(licencePage(), 'npm run licences').toBe(readFileSync(PAGE, 'utf8'));
});

test('nothing stands under a licence that asks more than to be named', () => {
  const licences = runtimeLicences();
  expect(licences.length).toBeGreaterThan(30);
  const mild = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'CC0-1.0', 'Bitstream-Vera'];
  expect(licences.filter(({ licence }) => !mild.includes(licence))).toEqual([]);
});
