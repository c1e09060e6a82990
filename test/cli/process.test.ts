// The command as a process of its own: built, started by its file, on real streams.

import { execFile, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdirSync, openSync, readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { parse } from 'yaml';
import { EVENING, folder, IMPOSSIBLE } from './run.js';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const BIN = at('packages/cli/bin/evenfall.cjs');

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

test('a pipe that is not ready gets all of it', async () => {
  const { at } = folder({ 'evening.yaml': EVENING.replace('intervalS: 60', 'intervalS: 10') });
  // Node's own stream leaves the pipe that the command inherits such that a write may be refused for now.
  const parent = spawn(process.execPath, [
    '-e',
    `process.stdout.write('');
    require('node:child_process').spawn(process.execPath, process.argv.slice(1), { stdio: 'inherit' })`,
    ...[BIN, 'plan', at('evening.yaml'), '--json'],
  ]);
  await pause(1500); // nobody reads meanwhile, and a pipe holds 64 kB
  let said = '';
  for await (const chunk of parent.stdout) said += chunk;
  expect(said.length).toBeGreaterThan(100_000);
  expect(JSON.parse(said).format).toBe('evenfall-plan/1');
});

test('a shoot that comes from a file is not written over through standard input', async () => {
  const json = JSON.stringify(parse(EVENING));
  const { at } = folder({ 'x.json': json });
  const child = spawn(process.execPath, [BIN, 'plan', '-', '-o', at('x.json')], {
    stdio: [openSync(at('x.json'), 'r'), 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr!.on('data', (chunk) => {
    said += chunk;
  });
  expect(await new Promise((resolve) => child.on('close', resolve))).toBe(1);
  expect(said).toBe(`evenfall: ${at('x.json')}: is the shoot file itself; give another name\n`);
  expect(readFileSync(at('x.json'), 'utf8')).toBe(json);
});

/** A device that takes nothing: every write is told that the disk is full. */
const FULL = '/dev/full';

test.skipIf(!existsSync(FULL))('an output that takes nothing is one line, and status 1', async () => {
  const { at } = folder({ 'evening.yaml': EVENING });
  for (const argv of [['plan', at('evening.yaml'), '--json'], ['--help'], ['frames', '--subject', 'stars']]) {
    const child = spawn(process.execPath, [BIN, ...argv], { stdio: ['ignore', openSync(FULL, 'w'), 'pipe'] });
    let said = '';
    child.stderr!.on('data', (chunk) => {
      said += chunk;
    });
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(1);
    expect(said).toBe('evenfall: standard output: cannot be written: the disk is full; make room\n');
  }
});

test.skipIf(!existsSync(FULL))('where even faults cannot be told, the status does', async () => {
  const full = openSync(FULL, 'w');
  const child = spawn(process.execPath, [BIN, 'plan', 'nowhere.yaml'], { stdio: ['ignore', full, full] });
  expect(await new Promise((resolve) => child.on('close', resolve))).toBe(1);
});

test('a line without an end takes no memory and is answered in one line', async () => {
  const { at } = folder({ 'evening.yaml': EVENING });
  await start(BIN, ['plan', at('evening.yaml'), '-o', at('plan.json')], '');
  const child = spawn(process.execPath, ['--max-old-space-size=64', BIN, 'follow', at('plan.json')]);
  let said = '';
  let faults = '';
  child.stdout.on('data', (chunk) => {
    said += chunk;
  });
  child.stderr.on('data', (chunk) => {
    faults += chunk;
  });
  const ended = new Promise((resolve) => child.on('close', resolve));
  const megabyte = Buffer.alloc(1_000_000, 'a');
  for (let sent = 0; sent < 600; sent++) {
    if (!child.stdin.write(megabyte)) await once(child.stdin, 'drain');
  }
  child.stdin.end('\n');
  expect(await ended).toBe(0);
  expect(faults).toBe('');
  expect(said.trim().split('\n')).toHaveLength(2); // the line's answer, and the sum of the evening
}, 120_000);

test('reads standard input to its end, however slowly it comes', async () => {
  const child = spawn(process.execPath, [BIN, 'plan', '-']);
  const said: string[] = [];
  child.stdout.on('data', (chunk) => said.push(String(chunk)));
  child.stderr.on('data', (chunk) => said.push(String(chunk)));
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  await pause(1500); // longer than the program takes to start, so that it meets an empty pipe
  const half = EVENING.indexOf('camera');
  child.stdin.write(EVENING.slice(0, half));
  await pause(300);
  child.stdin.end(EVENING.slice(half));
  expect(await ended).toBe(0);
  expect(said.join('')).toMatch(/^Slipway & gulls\n/);
});

test.skipIf(process.platform === 'win32')('input without an end is refused at the limit', async () => {
  const endless = spawn(process.execPath, [BIN, 'plan', '-'], {
    stdio: [openSync('/dev/zero', 'r'), 'ignore', 'pipe'],
  });
  onTestFinished(() => void endless.kill('SIGKILL'));
  let said = '';
  endless.stderr!.on('data', (chunk) => {
    said += chunk;
  });
  expect(await new Promise((resolve) => endless.on('close', resolve))).toBe(1);
  expect(said).toBe('evenfall: standard input: is too long for a shoot file; give one of at most 250 kB\n');
  for (const [argv, kind, most] of [
    [['plan', '/dev/zero'], 'shoot', '250 kB'],
    [['follow', '/dev/zero'], 'plan', '60 MB'],
  ] as const) {
    expect(await start(BIN, argv, '')).toEqual({
      status: 1,
      out: '',
      err: `evenfall: zero: is too long for a ${kind} file; give one of at most ${most}\n`,
    });
  }
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
  copyFileSync(BIN, dir.at('bin/evenfall.cjs'));
  expect(await start(dir.at('bin/evenfall.cjs'), [], '')).toEqual({
    status: 1,
    out: '',
    err: 'evenfall: not built yet; run "npm run build" in the checkout first\n',
  });
});
