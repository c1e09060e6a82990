// What comes down standard input, cut into lines in bounded memory.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writePlan } from '@evenfall/core';
import { expect, test } from 'vitest';
import { linesOf } from '../../packages/cli/src/stdin-lines.js';
import { seeded } from '../reference/random.js';
import { build } from './build.js';
import { eveningPlan, folder } from './run.js';

async function lines(chunks: readonly Uint8Array[], most = 1000): Promise<string[]> {
  const found: string[] = [];
  for await (const line of linesOf(streamOf(chunks), most)) found.push(line);
  return found;
}

async function* streamOf(chunks: readonly Uint8Array[]) {
  yield* chunks;
}

const bytes = (text: string) => new TextEncoder().encode(text);

test('lines end by LF, CR or both, and the last may go without', async () => {
  expect(await lines([bytes('a\nb\r\nc\rd\n\ne')])).toEqual(['a', 'b', 'c', 'd', '', 'e']);
  expect(await lines([bytes('a\r'), bytes('\nb\r'), bytes('c')])).toEqual(['a', 'b', 'c']);
  expect(await lines([])).toEqual([]);
  expect(await lines([bytes('a\n')])).toEqual(['a']);
});

test('however the bytes are cut into chunks, the lines are the same', async () => {
  const text = 'één\r\n{"at":"−"}\n\n\u2028 is no end\r日本\n';
  const whole = bytes(text);
  const expected = ['één', '{"at":"−"}', '', '\u2028 is no end', '日本'];
  for (let seed = 1; seed <= 200; seed++) {
    const random = seeded(seed);
    const chunks: Uint8Array[] = [];
    for (let from = 0; from < whole.length; ) {
      const to = Math.min(whole.length, from + random.whole(1, 7));
      chunks.push(whole.subarray(from, to));
      from = to;
    }
    expect(await lines(chunks), `seed ${seed}`).toEqual(expected);
  }
});

test('of a line that is too long one character too many is given, and the next is whole', async () => {
  const found = await lines([bytes('x'.repeat(8)), bytes('y'.repeat(5000)), bytes('z\nnext\n')], 10);
  expect(found).toEqual(['xxxxxxxxyyy', 'next']);
});

test('what is not UTF-8 is some line or other', async () => {
  const found = await lines([Uint8Array.of(0xff, 0xfe, 0x0a, 0xc3), Uint8Array.of(0x0a, 0x41)]);
  expect(found).toEqual(['\ufffd\ufffd', '\ufffd', 'A']);
});

test('600 MB without a line break are one bad line, in a process that may hold 60 MB', async () => {
  const bin = build();
  const files = folder({ 'plan.json': writePlan(eveningPlan()) });
  const child = spawn(process.execPath, ['--max-old-space-size=60', bin, 'follow', files.at('plan.json')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  const chunk = Buffer.alloc(1_000_000, '[');
  for (let i = 0; i < 600; i++) if (!child.stdin.write(chunk)) await once(child.stdin, 'drain');
  child.stdin.end('\n{"frame":3}\n');
  const [code] = await once(child, 'close');
  expect(code).toBe(0);
  const answers = out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(answers.map(({ line, frame }) => line ?? frame)).toEqual([1, 3, 3]);
  expect(answers[0].warnings).toEqual([
    {
      kind: 'bad-line',
      why: 'more than 16000 characters',
      text: 'Line 1: more than 16000 characters. Nothing is changed.',
    },
  ]);
}, 120_000);

test('bytes drawn at random end no evening', async () => {
  const bin = build();
  const files = folder({ 'plan.json': writePlan(eveningPlan()) });
  const random = seeded(20261129);
  const child = spawn(process.execPath, [bin, 'follow', files.at('plan.json')], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const sound = bytes('{"frame":5,"ev100":12,"setting":{"filters":[]}}');
  for (let i = 0; i < 300; i++) {
    const line = random.chance(0.5)
      ? Uint8Array.from({ length: random.whole(0, 200) }, () => random.whole(0, 255))
      : // A sound line with a few bytes changed.
        sound.map((each) => (random.chance(0.05) ? random.whole(0, 255) : each));
    child.stdin.write(line);
    child.stdin.write('\n');
  }
  child.stdin.end();
  const [code] = await once(child, 'close');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const answers = out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(answers.at(-1)).toMatchObject({ end: true });
  expect(answers.length).toBeGreaterThan(250);
}, 60_000);
