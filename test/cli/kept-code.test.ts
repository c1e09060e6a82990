// Compiled code that is kept from run to run: it changes nothing but the time.

import { execFile } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { keptFolder } from '../../packages/cli/src/kept-code.js';
import { build } from './build.js';
import { EVENING, folder } from './run.js';

// Later versions of node keep it themselves.
const keepsItself = 'enableCompileCache' in createRequire(import.meta.url)('node:module');

let bin: string;
beforeAll(() => {
  bin = build();
});

function plan(env: NodeJS.ProcessEnv): Promise<{ status: number; out: string; err: string }> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [bin, 'plan', '-'],
      { env: { ...process.env, ...env } },
      (error, out, err) => resolve({ status: error ? Number(error.code) : 0, out, err }),
    );
    child.stdin!.end(EVENING);
  });
}

/** Every file below a folder, from it. */
const filesIn = (path: string) =>
  readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(path, name)).isFile())
    .sort();

const without = () => plan({ NODE_DISABLE_COMPILE_CACHE: '1' });

describe.skipIf(keepsItself)('kept code', () => {
  test('is found by the next run, and left as it is', async () => {
    const { at } = folder();
    const env = { NODE_COMPILE_CACHE: at('kept') };
    const first = await plan(env);
    const [name, ...others] = filesIn(at('kept'));
    expect(others).toEqual([]);
    expect(name).toMatch(/^[0-9a-f]{16}-\d+\/plan\.code$/);
    const path = join(at('kept'), name!);
    expect(statSync(path).mode & 0o077).toBe(0);
    const { mtimeMs } = statSync(path);
    expect(await plan(env)).toEqual(first);
    expect(statSync(path).mtimeMs).toBe(mtimeMs);
    expect(first).toEqual(await without());
  });

  test.each([
    ['cut short', (code: Buffer) => code.subarray(0, code.length / 2)],
    ['empty', () => Buffer.alloc(0)],
    [
      'with some bytes wrong',
      (code: Buffer) => code.map((byte, i) => (i % 5000 === 4999 ? byte ^ 255 : byte)),
    ],
  ])('%s is made again', async (_, spoil) => {
    const { at } = folder();
    const env = { NODE_COMPILE_CACHE: at('kept') };
    const right = await plan(env);
    const path = join(at('kept'), filesIn(at('kept'))[0]!);
    const { length } = readFileSync(path);
    const spoilt = spoil(readFileSync(path));
    writeFileSync(path, spoilt);
    expect(await plan(env)).toEqual(right);
    expect(readFileSync(path).length).toBeGreaterThan(length * 0.9);
    expect(readFileSync(path).equals(spoilt)).toBe(false);
    expect(await plan(env)).toEqual(right);
  });

  test('several runs at once are as one', async () => {
    const { at } = folder();
    const env = { NODE_COMPILE_CACHE: at('kept') };
    const all = await Promise.all(Array.from({ length: 4 }, () => plan(env)));
    expect(new Set(all.map((each) => JSON.stringify(each))).size).toBe(1);
    expect(all[0]).toMatchObject({ status: 0, err: '' });
    expect(filesIn(at('kept'))).toHaveLength(1);
  });

  test('where it cannot be kept, nothing is said', async () => {
    const { at } = folder({ kept: 'a file' });
    expect(await plan({ NODE_COMPILE_CACHE: at('kept') })).toEqual(await without());
    expect(readFileSync(at('kept'), 'utf8')).toBe('a file');
    // A folder in which the system makes none, and says that something lacks.
    const home = existsSync('/proc') ? '/proc' : '/';
    expect(await plan({ NODE_COMPILE_CACHE: `${home}/.cache/evenfall` })).toEqual(await without());
  });

  test('is kept of the last four builds', async () => {
    const { at } = folder();
    for (const days of [1, 2, 3, 4]) {
      const place = join(at('kept'), `${days} days old`);
      mkdirSync(place, { recursive: true });
      writeFileSync(join(place, 'plan.code'), '');
      utimesSync(place, new Date(), new Date(Date.now() - days * 86_400_000));
    }
    await plan({ NODE_COMPILE_CACHE: at('kept') });
    const builds = readdirSync(at('kept')).filter((name) => name.endsWith('old'));
    expect(builds.sort()).toEqual(['1 days old', '2 days old', '3 days old']);
    expect(filesIn(at('kept'))).toHaveLength(4);
  });
});

test('lies where the system keeps what can be made again', () => {
  const before = { ...process.env };
  try {
    process.env.XDG_CACHE_HOME = '/elsewhere';
    process.env.LOCALAPPDATA = '/elsewhere';
    if (process.platform !== 'darwin') expect(keptFolder()).toBe(join('/elsewhere', 'evenfall'));
    delete process.env.XDG_CACHE_HOME;
    if (process.platform === 'linux') {
      expect(keptFolder()).toMatch(/\/\.cache\/evenfall$/);
      process.env.HOME = '';
      expect(keptFolder()).toBeUndefined();
      process.env.XDG_CACHE_HOME = 'beside';
      expect(keptFolder()).toBeUndefined();
    }
  } finally {
    process.env = before;
  }
});
