// A file that is being replaced is the old one or the new one, whole, whenever the process is ended.

import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import type { SystemCode } from '../../packages/cli/src/system-error.js';
import { writeFiles } from '../../packages/cli/src/write-files.js';
import { EVENING, evenfall, folder } from './run.js';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const BIN = at('packages/cli/bin/evenfall.cjs');
const KILLER = at('test/cli/kill-at.cjs');

beforeAll(() => {
  const packages = ['core', 'chart', 'cli'].map((name) => at(`packages/${name}`));
  execFileSync(process.execPath, [at('node_modules/typescript/bin/tsc'), '-b', ...packages]);
});

/** Writes two files again in a process that is ended at its n-th call that changes the disk. */
const WRITER = `
  import { writeFiles } from ${JSON.stringify(new URL('../../packages/cli/dist/write-files.js', import.meta.url).href)};
  writeFiles(['a.svg', 'b.svg'].map((path) => ({ path, content: 'new '.repeat(50_000) })));
`;
const OLD = 'old '.repeat(30_000);
const NEW = 'new '.repeat(50_000);

function write(dir: ReturnType<typeof folder>, killAt?: number) {
  const argv = ['--require', KILLER, '--input-type=module', '--eval', WRITER];
  const env = { ...process.env, ...(killAt === undefined ? {} : { KILL_AT: String(killAt) }) };
  return spawnSync(process.execPath, argv, { cwd: dir.at(''), env, encoding: 'utf8' });
}

test('ended at any call, each file is the old or the new one, and the next run leaves no trace', () => {
  const whole = folder({ 'a.svg': OLD, 'b.svg': OLD });
  const calls = write(whole).stderr.trim().split(' ');
  expect(readFileSync(whole.at('b.svg'), 'utf8')).toBe(NEW);
  // What is written is on the disk before it takes a name, and the name is on the disk after.
  const order = 'openSync fchmodSync writeFileSync fsyncSync closeSync';
  const name = 'renameSync openSync fsyncSync closeSync';
  expect(calls.join(' ')).toBe(`${order} ${order} ${name} ${name}`);

  const seen = new Set<string>();
  for (let n = 1; n <= calls.length; n++) {
    const dir = folder({ 'a.svg': OLD, 'b.svg': OLD });
    expect(write(dir, n).signal).toBe('SIGKILL');
    const texts = ['a.svg', 'b.svg'].map((name) => readFileSync(dir.at(name), 'utf8'));
    for (const text of texts) expect(text === OLD || text === NEW).toBe(true);
    seen.add(texts.map((text) => text.slice(0, 3)).join(' '));
    // The next run, at once.
    expect(write(dir).status).toBe(0);
    expect(dir.names()).toEqual(['a.svg', 'b.svg']);
    expect(readFileSync(dir.at('b.svg'), 'utf8')).toBe(NEW);
  }
  expect([...seen].sort()).toEqual(['new new', 'new old', 'old old']);
});

test('ended from outside at twenty moments, the plan file is the old or the new one', async () => {
  const dir = folder({ 'evening.yaml': EVENING });
  expect((await evenfall(['plan', dir.at('evening.yaml'), '-o', dir.at('new.json')])).status).toBe(0);
  const fresh = readFileSync(dir.at('new.json'), 'utf8');
  let ended = 0;
  let wholeMs = 0;
  for (let n = 0; n <= 20; n++) {
    writeFileSync(dir.at('plan.json'), OLD);
    const startMs = performance.now();
    const child = spawn(process.execPath, [BIN, 'plan', dir.at('evening.yaml'), '-o', dir.at('plan.json')]);
    const gone = new Promise((resolve) => child.on('close', (_code, signal) => resolve(signal)));
    // The first runs to its end, the second is ended at once, the others mostly in the last third, where it writes.
    const killMs = n === 1 ? 0 : wholeMs * (0.6 + n / 40);
    const timer = n === 0 ? undefined : setTimeout(() => child.kill('SIGKILL'), killMs);
    if ((await gone) === 'SIGKILL') ended++;
    clearTimeout(timer);
    if (n === 0) wholeMs = performance.now() - startMs;
    const text = readFileSync(dir.at('plan.json'), 'utf8');
    expect(text === fresh || text === OLD).toBe(true);
    if (n === 0) expect(text).toBe(fresh);
  }
  expect(ended).toBeGreaterThan(0);
});

describe('a file in the place', () => {
  test('keeps its permissions', () => {
    const dir = folder({ 'a.txt': OLD });
    chmodSync(dir.at('a.txt'), 0o640);
    writeFiles([{ path: dir.at('a.txt'), content: 'x' }]);
    expect(statSync(dir.at('a.txt')).mode & 0o777).toBe(0o640);
  });

  test('that is reached by links is replaced where it lies', () => {
    const dir = folder();
    mkdirSync(dir.at('deep'));
    writeFileSync(dir.at('deep/a.txt'), OLD);
    symlinkSync('deep/a.txt', dir.at('one.txt'));
    symlinkSync(dir.at('one.txt'), dir.at('two.txt'));
    symlinkSync('deep/b.txt', dir.at('none.txt'));
    writeFiles([
      { path: dir.at('two.txt'), content: 'x' },
      { path: dir.at('none.txt'), content: 'y' },
    ]);
    expect(readFileSync(dir.at('deep/a.txt'), 'utf8')).toBe('x');
    expect(readFileSync(dir.at('deep/b.txt'), 'utf8')).toBe('y');
    expect(dir.names()).toEqual(['deep', 'none.txt', 'one.txt', 'two.txt']);
  });

  test('is refused where it is a pipe, or links lead in a circle', () => {
    const dir = folder();
    execFileSync('mkfifo', [dir.at('pipe.txt')]);
    symlinkSync('b.txt', dir.at('a.txt'));
    symlinkSync('a.txt', dir.at('b.txt'));
    const refused = (path: string, code: SystemCode) =>
      expect(() => writeFiles([{ path, content: 'x' }])).toThrow(
        expect.objectContaining({ facts: [{ kind: 'cannot-write', path, because: { code } }] }),
      );
    refused(dir.at('pipe.txt'), 'ENOTFILE');
    refused(dir.at('a.txt'), 'ELOOP');
    expect(dir.names()).toEqual(['a.txt', 'b.txt', 'pipe.txt']);
  });
});

test('what a run that goes on has beside the file stays, and so does what is young or of another file', () => {
  const here = hostname()
    .replaceAll(/[^\w-]/g, '')
    .slice(0, 20);
  const stays = [
    `.a.txt.${here}.${process.ppid}-0.part`,
    '.a.txt.elsewhere.999999999-0.part',
    '.b.txt.999999999-0.part',
    '.a.txt.part',
  ];
  // Left by a process of here that is gone, young or old; of another machine, old; of a version without machines, old.
  const goes = [
    `.a.txt.${here}.999999999-0.part`,
    '.a.txt.elsewhere.999999998-0.part',
    '.a.txt.999999998-0.part',
  ];
  const dir = folder(Object.fromEntries([...stays, ...goes].map((name) => [name, 'x'])));
  for (const name of dir.names()) {
    if (name !== stays[1] && name !== goes[0]) utimesSync(dir.at(name), 1e9, 1e9);
  }
  writeFiles([{ path: dir.at('a.txt'), content: 'x' }]);
  expect(dir.names()).toEqual([...stays, 'a.txt'].sort());
});

test('names alike for a hundred letters do not get in the way of each other', () => {
  const dir = folder();
  const names = [1, 2, 3].map((n) => `${'å'.repeat(100)}-${n}.svg`);
  writeFiles(names.map((name) => ({ path: dir.at(name), content: name })));
  for (const name of names) expect(readFileSync(dir.at(name), 'utf8')).toBe(name);
  expect(dir.names()).toEqual(names);
});
