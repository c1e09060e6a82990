// What is printed fits a terminal of 50 columns, and what is asked for on standard output comes there.

import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { linesOf, narrowed } from '../../packages/cli/src/layout.js';
import { EVENING, evenfall, folder } from './run.js';

const IMPOSSIBLE = fileURLToPath(new URL('../../docs/examples/impossible.yaml', import.meta.url));
const BULB = EVENING.replace('camera:', 'crew: rig\ncamera:\n  bulb: true');

describe('50 columns are enough for', () => {
  test.each([
    [['plan', '-'], EVENING],
    [['plan', '-', '--language', 'de'], EVENING],
    [['plan', '-'], BULB],
    [['plan', IMPOSSIBLE], ''],
    [['plan', '-', '--choices'], EVENING],
    [['light', '-'], EVENING],
    [['light', '-', '--language', 'de'], EVENING],
    [['evenings', '-', '--days', '3'], EVENING],
    [['evenings', '-', '--days', '3', '--language', 'de'], EVENING],
    [['frames', '--record', '90m', '--clip', '12', '--subject', 'clouds'], ''],
    ...[
      [],
      ['new'],
      ['plan'],
      ['card'],
      ['cues'],
      ['light'],
      ['evenings'],
      ['follow'],
      ['review'],
      ['frames'],
    ].map((name) => [[...name, '--help'], ''] as [string[], string]),
  ])('%j', async (argv, stdin) => {
    const { out } = await evenfall(argv, stdin, false, 50);
    const lines = out.split('\n');
    expect(lines.length).toBeGreaterThan(4);
    // A command stays whole, so that it can be pasted; so do an object of a program, and a default that is one word.
    for (const line of lines)
      if (!/evenfall |ffmpeg |^ *\{/.test(line)) expect(line.length, line).toBeLessThanOrEqual(50);
  });
});

test('a cue loses nothing on a narrow screen', async () => {
  const words = (text: string) => text.replaceAll(/\s+/g, ' ');
  const wide = await evenfall(['plan', '-'], EVENING);
  const narrow = await evenfall(['plan', '-'], EVENING, false, 50);
  const cues = [...wide.out.matchAll(/^\d\d:\d\d:\d\d +\+[\d.]+ +\d+ {2}(.*?) {2,}(.*)$/gm)];
  expect(cues.length).toBeGreaterThan(5);
  for (const [, change, then] of cues) expect(words(narrow.out)).toContain(`${words(change!)} then ${then}`);
});

test('what a table leaves out is told', async () => {
  const wide = await evenfall(['light', '-'], EVENING);
  const narrow = await evenfall(['light', '-'], EVENING, false, 50);
  expect(wide.out).not.toContain('A wider terminal shows more columns.');
  expect(narrow.out).toContain('A wider terminal shows more columns.');
  expect(narrow.out).toContain('EV 100');
});

test('a line in two columns is laid one below the other, other lines are wrapped', () => {
  expect(narrowed('  evenfall plan a.yaml   read it on the screen', 30)).toBe(
    '  evenfall plan a.yaml\n      read it on the screen',
  );
  expect(narrowed('one two three four', 9)).toBe('one two\nthree\nfour');
  expect(linesOf('one two three four', 9)).toEqual(['one two', 'three', 'four']);
});

describe('what is wrong with a file', () => {
  const FAULTS = EVENING.replace('latitudeDeg: 57.05', 'latitudeDeg: 157.05')
    .replace('  aperture: 5.6', '  apperture: 5.6')
    .replace('intervalS: 60', 'intervalS: 100000');
  const OPEN = EVENING.replace(
    '  - { name: ND 1.8, density: 1.8 }',
    '  - { name: ND 1.8 of the big square holder, density: 1.8, ',
  );

  test.each([50, 64, 80])(
    'is told in lines of %i columns on a screen, a line each elsewhere',
    async (columns) => {
      for (const language of ['en', 'de']) {
        const argv = ['plan', '-', '--language', language];
        const whole = await evenfall(argv, FAULTS);
        const narrow = await evenfall(argv, FAULTS, false, columns, columns);
        const faults = whole.err.trimEnd().split('\n');
        expect(faults.length).toBeGreaterThan(2);
        expect(Math.max(...faults.map((line) => line.length))).toBeGreaterThan(columns);
        for (const line of narrow.err.split('\n')) expect(line.length, line).toBeLessThanOrEqual(columns);
        expect(narrow.err.replaceAll('\n  ', ' ')).toBe(whole.err);
      }
    },
  );

  test('shows the line of the file as one line, cut short where it is too long', async () => {
    const { err } = await evenfall(['plan', '-'], OPEN, false, 80, 50);
    const lines = err.trimEnd().split('\n');
    expect(lines.filter((line) => line.length > 50)).toEqual([]);
    expect(lines.at(-1)).toBe('  17 |   - { name: ND 1.8 of the big square holde…');
    const wide = await evenfall(['plan', '-'], OPEN, false, 80, 80);
    expect(wide.err).toContain('\n  17 |   - { name: ND 1.8 of the big square holder, density: 1.8,');
  });
});

describe('standard output', () => {
  test.each([
    [['plan', '-', '-o', '-'], /^\{\n {2}"format": "evenfall-plan\/1"/],
    [['plan', '-', '-o', '-.csv'], /^\w+(,\w+)+\r\n/],
    [['card', '-', '-o', '-.txt'], /^Slipway & gulls\n/],
    [['card', '-', '-o', '-.html'], /^<!doctype html>/i],
    [['chart', '-', '-o', '-'], /^<svg /],
    [['cues', '-', '-o', '-.ics'], /^BEGIN:VCALENDAR\r\n/],
    [['light', '-', '-o', '-.json'], /^\{\n {2}"format": "evenfall-light\/1"/],
  ])('takes %j, and nothing else is said', async (argv, begins) => {
    const dir = folder({});
    const { status, out, err } = await evenfall(argv, EVENING);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(begins);
    expect(out).not.toContain('wrote');
    expect(dir.names()).toEqual([]);
  });

  test('holds one file', async () => {
    const { status, err } = await evenfall(['card', '-', '-o', '-.svg'], EVENING);
    expect(status).toBe(1);
    expect(err).toMatch(
      /^evenfall: -o -\.svg: these are \d files, and standard output holds one; give .*\n$/,
    );
  });
});
