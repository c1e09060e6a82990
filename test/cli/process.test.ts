// The command as a process of its own: built, started by its file, on real streams.

import { execFile, execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { EVENING, folder, IMPOSSIBLE } from './run.js';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const BIN = at('packages/cli/bin/evenfall.js');

beforeAll(() => {
  const packages = ['core', 'chart', 'cli'].map((name) => at(`packages/${name}`));
  execFileSync(process.execPath, [at('node_modules/typescript/bin/tsc'), '-b', ...packages]);
});

interface Ended {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

function start(
  bin: string,
  argv: readonly string[],
  stdin: string,
  env: NodeJS.ProcessEnv = {},
): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [bin, ...argv],
      { env: { ...process.env, ...env }, maxBuffer: 2 ** 26 },
      (error, out, err) => resolve({ status: error ? Number(error.code) : 0, out, err }),
    );
    child.stdin!.end(stdin);
  });
}

test('plans a shoot from standard input, without colour where there is no screen', async () => {
  const { status, out, err } = await start(BIN, ['plan', '-'], EVENING, { FORCE_COLOR: '1' });
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(/^Slipway & gulls\n/);
  expect(out).not.toContain('\u001b');
});

test('prints a whole plan file into a pipe', async () => {
  const { status, out } = await start(BIN, ['plan', '-', '--json'], EVENING);
  expect(status).toBe(0);
  expect(JSON.parse(out).frames.length).toBeGreaterThan(100);
});

test('ends with status 2 where no ramp exists, and 1 where the file is wrong', async () => {
  expect((await start(BIN, ['plan', '-'], IMPOSSIBLE)).status).toBe(2);
  const wrong = await start(BIN, ['plan', '-'], 'format: evenfall-shoot/2');
  expect(wrong).toEqual({
    status: 1,
    out: '',
    err: 'evenfall: standard input:1: format: "evenfall-shoot/2" is a later format than "evenfall-shoot/1"; read it with a newer version\n',
  });
});

test('the same plan whatever the time zone of the machine', async () => {
  const [east, west] = await Promise.all(
    ['Pacific/Kiritimati', 'America/Anchorage'].map((TZ) =>
      start(BIN, ['plan', '-', '--json'], EVENING, { TZ }),
    ),
  );
  expect(east!.status).toBe(0);
  expect(east!.out).toBe(west!.out);
});

test('says in one line that it is not built', async () => {
  const dir = folder({ 'package.json': '{"type": "module"}' });
  mkdirSync(dir.at('bin'));
  copyFileSync(BIN, dir.at('bin/evenfall.js'));
  expect(await start(dir.at('bin/evenfall.js'), [], '')).toEqual({
    status: 1,
    out: '',
    err: 'evenfall: not built yet; run "npm run build" in the checkout first\n',
  });
});
