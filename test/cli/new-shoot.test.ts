// A shoot file made of answers, and a plan of them without a file.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { readShoot } from '@evenfall/core';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { usual } from '../../packages/cli/src/answers.js';
import { QUESTIONS } from '../../packages/cli/src/questions.js';
import { build } from './build.js';
import { evenfall, folder, typing } from './run.js';

/** A file as the reader of shoots has it, its zone written in by hand. */
function shootIn(text: string, timeZone = 'Europe/Dublin') {
  const value = parse(text);
  const read = readShoot({ ...value, place: { ...value.place, timeZone } });
  if (read.kind === 'wrong') throw new Error(read.errors[0]!.message);
  return read.shoot;
}

const DUBLIN = ['--at', '53.35,-6.26', '--on', '2027-03-01'];

describe('new', () => {
  test('asks at a terminal what was not given, and Enter takes what stands in brackets', async () => {
    const { at } = folder();
    const { out, status } = await typing(
      ['new', at('evening.yaml')],
      ['Slipway', '53.35, -6.26', ...Array.from({ length: QUESTIONS.length - 2 }, () => '')],
      '',
      80,
      Date.UTC(2027, 2, 1, 12),
    );
    expect(status).toBe(0);
    const said = out.join('');
    expect(said).toContain('Date on which it begins [2027-03-01]');
    expect(said).toContain(`evenfall plan ${at('evening.yaml')}`);
    const text = readFileSync(at('evening.yaml'), 'utf8');
    expect(text.match(/^ *# /gm)!.length).toBeGreaterThan(8);
    expect(shootIn(text)).toMatchObject({
      title: 'Slipway',
      place: { latitudeDeg: 53.35, longitudeDeg: -6.26 },
      date: '2027-03-01',
      intervalS: 8,
      camera: { aperture: '4', shutter: { shortest: '1/4000', longest: '6' } },
      filters: [],
    });
    expect((await evenfall(['plan', at('evening.yaml')])).status).toBe(0);
  });

  test('a wrong answer is told in the words of the reader of files, and asked again', async () => {
    const { at } = folder();
    const { out } = await typing(['new', at('a.yaml')], ['', '95, 3', '', '53.35, -6.26', '31 May']);
    expect(out.join('')).toContain('! 95 is not a latitude; give degrees from -90 to 90\n');
    expect(out.join('')).toContain('! missing; give degrees from -90 to 90\n');
    expect(out.join('')).toMatch(/! "31 May" is not a date.*\n.*Date on which/);
  });

  test('who breaks off has written nothing', async () => {
    const { at, names } = folder();
    const { status, err } = await typing(['new', at('a.yaml')], ['Slipway']);
    expect({ status, err }).toEqual({ status: 1, err: 'evenfall: broken off; nothing is written\n' });
    expect(names()).toEqual([]);
  });

  test('reads answers from a pipe, a line each; what is missing is as usual', async () => {
    const { at } = folder();
    const lines =
      'Say "when": now\n53.35 N 6.26 W\n2027-03-01\nmorning\n10 s\n\nISO 200-1600\nf/2.8\n35 mm\nND 3, 6, 6\nNW\n';
    const { status } = await evenfall(['new', at('a.yaml')], lines);
    expect(status).toBe(0);
    expect(shootIn(readFileSync(at('a.yaml'), 'utf8'))).toMatchObject({
      title: 'Say "when": now',
      place: { latitudeDeg: 53.35, longitudeDeg: -6.26 },
      direction: 'dawn',
      intervalS: 10,
      camera: {
        // "8" is 8 s by the exact count, and with a gap of 1 s fits 10 s; "10" is 10.08 s (docs/sources.md#apex).
        shutter: { shortest: '1/4000', longest: '8' },
        iso: { lowest: 200, highest: 1600 },
        aperture: '2.8',
        lens: { focalMm: 35 },
      },
      filters: [{ name: 'ND 3' }, { name: 'ND 6' }, { name: 'ND 6 (2)' }],
      scene: { facing: { azimuthDeg: 315 } },
    });
    const wrong = await evenfall(['new', at('b.yaml'), ...DUBLIN], '\ndusk\n8\n1/4000 to 7\n');
    expect(wrong.status).toBe(1);
    expect(wrong.err).toMatch(/^evenfall: --shutter: "7" is not .*\n$/);
  });

  test('never writes over a file', async () => {
    const { at } = folder({ 'a.yaml': 'mine' });
    const { status, err } = await evenfall(['new', at('a.yaml'), ...DUBLIN, '--yes']);
    expect(status).toBe(1);
    expect(err).toBe(
      `evenfall: ${at('a.yaml')}: cannot be written: there is one already; give another name\n`,
    );
    expect(readFileSync(at('a.yaml'), 'utf8')).toBe('mine');
  });

  test('in German it asks, explains and understands German', async () => {
    const { at } = folder();
    const { out } = await typing(
      ['new', at('a.yaml'), '--language', 'de', ...DUBLIN, '--title', 'Hafen'],
      ['Morgen', '8', '1/4000 bis 4', '', '', '', 'keine', 'Süden', '', ''],
    );
    expect(out.join('')).toContain('Abend oder Morgen [Abend]');
    const text = readFileSync(at('a.yaml'), 'utf8');
    expect(text).toContain('# Planen: npx evenfall plan');
    expect(shootIn(text)).toMatchObject({ direction: 'dawn', scene: { facing: { azimuthDeg: 180 } } });
  });

  test('what it shows as usual may be typed back', () => {
    for (const question of QUESTIONS) {
      const text = usual(question, {}, '2027-03-01');
      if (question !== 'at') expect(text, question).toBeDefined();
    }
    // In 2 s with a gap of 1 s "1" fits, which is 1 s; in 0.5 s nothing does.
    expect(usual('shutter', { interval: '2' }, '')).toBe('1/4000 to 1');
    expect(usual('shutter', { interval: '0.5' }, '')).toBe('1/4000 to 1/2');
  });
});

describe('plan without a file', () => {
  test('is the plan of the file that new writes of the same answers', async () => {
    const { at } = folder();
    const answers = [...DUBLIN, '--interval', '60', '--iso', '100-3200', '--nd', '6', '--facing', 'west'];
    const told = await evenfall(['plan', ...answers, '--json']);
    expect(told.status).toBe(0);
    await evenfall(['new', at('a.yaml'), ...answers, '--yes']);
    expect((await evenfall(['plan', at('a.yaml'), '--json'])).out).toBe(told.out);
    // And that is what it says to do next.
    const { out } = await evenfall(['plan', ...answers]);
    expect(out).toContain(`npx evenfall new evening.yaml ${answers.join(' ')} --yes\n`);
  });

  test('a place is enough; the date is that of the place', async () => {
    // Noon UTC on 1 January 2020 is 2 January on the Chatham Islands, UTC+13:45.
    const { status, out } = await evenfall(['plan', '--at', '-43.95,-176.55', '--interval', '60']);
    expect(status).toBe(0);
    expect(out).toContain('Thursday 2 January 2020');
  });

  test.each([
    [['--at', '95,3'], '--at: 95 is not a latitude; give degrees from -90 to 90'],
    [[...DUBLIN, '--iso', 'x'], '--iso: "x" is not an ISO; give a marked ISO such as 100'],
    [['--iso', '100'], '--at: missing; give degrees from -90 to 90'],
    [[], 'no shoot is given; give a shoot file, or a place with --at'],
    [['a.yaml', '--iso', '100'], 'a.yaml does not go with --iso; leave one out'],
  ])('%j is told as usual', async (argv, fault) => {
    expect(await evenfall(['plan', ...argv])).toEqual({ status: 1, out: '', err: `evenfall: ${fault}\n` });
  });
});

let bin = '';
beforeAll(() => {
  bin = build();
});

test('at a terminal of its own it prompts for each answer and writes the file', async () => {
  const { at } = folder();
  const command = `stty cols 50; ${process.execPath} ${bin} new ${at('a.yaml')} ${DUBLIN.join(' ')}`;
  const child = spawn('script', ['-qec', command, '/dev/null'], { env: { ...process.env, NO_COLOR: '1' } });
  let screen = '';
  child.stdout.on('data', (chunk) => {
    screen += chunk;
  });
  const shows = async (text: string) => {
    while (!screen.includes(text)) await pause(50);
    screen = screen.slice(screen.indexOf(text) + 1);
  };
  const ended = new Promise((resolve) => child.on('close', resolve));
  await shows('Title');
  child.stdin.write('Slipway\r');
  await shows('dusk or dawn');
  child.stdin.write('noon\r');
  await shows('! "noon" is not');
  await shows('dusk or dawn');
  child.stdin.write('\r');
  for (const text of ['Interval', 'Shutter', 'ISO', 'Aperture', 'Focal', 'ND', 'faces', 'glow', 'Lamps']) {
    await shows(text);
    child.stdin.write('\r');
  }
  expect(await ended).toBe(0);
  expect(screen).toContain(`wrote ${at('a.yaml')}`);
  expect(shootIn(readFileSync(at('a.yaml'), 'utf8')).title).toBe('Slipway');
}, 60_000);
