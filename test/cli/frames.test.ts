// evenfall frames: the command of somebody who has nothing yet but a wish. Numbers by hand, see each row.

import { readFileSync } from 'node:fs';
import { INTERVALS_BY_SUBJECT } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { evenfall, folder } from './run.js';

const plain = (out: string) => out.replaceAll(/\s+/g, ' ');

describe('any two of recording, interval and clip give the third', () => {
  test.each([
    // 12 · 24 = 288 frames, 5400 / 287 = 18.815; 18.815 - 1 s holds "15", 16 s, and not "20", 20.2 s.
    [
      '--record 90m --clip 12',
      'Frames 288 Interval 18.815 s Recording 1 h 30 min Clip 12 s at 24 frames a second Longest shutter "15", which is 16 s, beside a gap of 1 s',
    ],
    // floor(5400 / 18) + 1 = 301 frames at the whole second below; 301 / 24 = 12.542.
    ['--record 90m --clip 12', 'In whole seconds every 18 s: 301 frames, a clip of 12.542 s'],
    // 20 s at 24000/1001 are 479.52, so 480 frames; 479 · 8 = 3832 s. (8 - 1) / 2 = 3.5 s hold "3.2".
    [
      '--interval 8 --clip 20 --fps 23.976 --dark-frame',
      'Frames 480 Interval 8 s Recording 1 h 3 min 52 s Clip 20.02 s at 23.976 frames a second Longest shutter "3.2"',
    ],
    // 7200 / 10 + 1 = 721; / 24 = 30.042.
    ['--record 2h --interval 10 --gap 0', 'Frames 721 Interval 10 s Recording 2 h Clip 30.042 s'],
    // A gap of 5 s leaves nothing of 4 s.
    ['--record 1m --interval 4 --gap 5', 'Longest shutter none fits beside a gap of 5 s'],
  ])('%s', async (argv, told) => {
    const { status, out, err } = await evenfall(['frames', ...argv.split(' ')]);
    expect([status, err]).toEqual([0, '']);
    expect(plain(out)).toContain(told);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test.each([
    ['--record 2h', 'give two of --record, --interval and --clip, or --subject alone'],
    ['', 'give two of --record, --interval and --clip, or --subject alone'],
    ['--record 2h --interval 5 --clip 3', 'give two of --record, --interval and --clip, or --subject alone'],
    ['--record 3 --clip 0.01', '--clip is shorter than two frames; give a longer one'],
    ['--record soon --clip 3', "'soon' is invalid. Give a time above 0, such as 5400, 90m, 1h30m or 45s."],
    ['--record 0 --clip 3', "'0' is invalid. Give a time above 0"],
    ['--record 9 --clip 3 --fps 0', 'Give frames a second above 0, at most 1000.'],
    ['--record 9 --interval 3 --gap -1', 'Give a time from 0 to an hour, such as 2, 0.5s or 1m.'],
    ['--subject cats', "argument 'cats' is invalid"],
  ])('refused in one line: %s', async (argv, why) => {
    const { status, out, err } = await evenfall(['frames', ...argv.split(' ').filter((word) => word !== '')]);
    expect([status, out]).toEqual([1, '']);
    expect(err).toContain(why);
    expect(err.trimEnd()).not.toContain('\n');
  });

  test.each([
    // 20 s at 24 are 480 frames: 5 / 479 = 0.010438 s each, 95.8 a second.
    [
      '--record 5 --clip 20',
      'No time-lapse a frame every 0.010438 s is 95.8 a second, and a clip of 20 s from 5 s runs no faster than life: film it as video, or record longer',
    ],
    // At the clip's own rate it is life itself: 241 frames in 10 s.
    ['--record 10 --interval 0.04 --fps 25', 'No time-lapse a frame every 0.04 s is 25 a second'],
    // 20 s at 24 are 480 frames: 239.5 / 479 = 0.5 s, and the gap alone takes 1 s.
    [
      '--record 239.5 --clip 20',
      'No camera does the camera needs 1 s of each 0.5 s beside the shutter: give a longer recording, a shorter clip, or the --gap that it really needs',
    ],
    ['--record 1m --interval 2 --gap 2', 'No camera does'],
  ])('%s is none to go out with, and says so first', async (argv, told) => {
    const { status, out } = await evenfall(['frames', ...argv.split(' ')]);
    expect(status).toBe(0);
    expect(plain(out).startsWith(told)).toBe(true);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('what a camera does is said without it', async () => {
    for (const argv of ['--record 1m --interval 2 --gap 1.9', '--record 10 --interval 0.05 --gap 0']) {
      expect((await evenfall(['frames', ...argv.split(' ')])).out).toMatch(/^Frames/);
    }
  });

  test('a gap is a time like the others', async () => {
    const outs = await Promise.all(
      ['2', '2s', '2 s', '0m2s', '2.0'].map((gap) =>
        evenfall(['frames', '--record', '1h', '--interval', '10', '--gap', gap]),
      ),
    );
    expect(new Set(outs.map(({ out }) => out)).size).toBe(1);
    expect(plain(outs[0]!.out)).toContain('beside a gap of 2 s');
    const none = await evenfall(['frames', '--record', '1h', '--interval', '10', '--gap', '0']);
    expect(plain(none.out)).toContain('beside a gap of 0 s');
  });

  test('1h30m, 90m, 90min, 5400s and 5400 are one time', async () => {
    const outs = await Promise.all(
      ['1h30m', '90m', '90min', '5400s', '5400'].map((time) =>
        evenfall(['frames', '--record', time, '--interval', '10']),
      ),
    );
    expect(new Set(outs.map(({ out }) => out)).size).toBe(1);
    expect(outs[0]!.out).toContain('541');
  });
});

// Source: docs/sources.md#intervals.
test('intervals by subject are those of the table, with who says so', async () => {
  const { out } = await evenfall(['frames', '--subject', 'city-into-night']);
  expect(plain(out)).toContain(
    'Advised 5 to 7 s for city into night; one author says so; nobody has measured it 5 to 7 s: city from sunset into night (an article on time-lapse photography, undated)',
  );
  // Three pages in the table speak of stars, the first in two rows.
  const stars = plain((await evenfall(['frames', '--subject', 'stars'])).out);
  expect(stars).toContain('Advised 15 to 60 s for stars; 3 authors, each from experience');
  expect(stars).toContain('15 to 60 s: stars (an article on choosing the interval, 2015)');
  for (const subject of Object.keys(INTERVALS_BY_SUBJECT)) {
    const told = await evenfall(['frames', '--subject', subject]);
    expect(told.out).not.toMatch(/skarbnik|cogto|aperture-?authority|\w\.com/i);
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  }
});

describe('the plan for a person', () => {
  const example = (name: string) =>
    readFileSync(new URL(`../../docs/examples/${name}.yaml`, import.meta.url), 'utf8');
  const planOf = async (text: string) => {
    return evenfall(['plan', folder({ 'shoot.yaml': text }).at('shoot.yaml')]);
  };

  test('of any shoot shows the tightest frame and its slack', async () => {
    const { out } = await planOf(example('dusk'));
    // "6" is 6.35 s: 8 - 6.35 - 1 = 0.65.
    expect(plain(out)).toMatch(/Tightest frame \d+: shutter 6\.35 s, writing 1 s; 0\.65 s to spare of 8 s/);
    expect(out).not.toContain('On screen');
  });

  test('finds the pan too fast, and is content once its advice is followed', async () => {
    const { out } = await planOf(example('pan'));
    expect(plain(out)).toContain('Move Pan 60° right, stopped at every frame, ease smoothstep');
    expect(plain(out)).toContain(
      'under 7 s a move is hard to watch. Shoot 383 frames in the same time: an interval of 18.8 s',
    );
    for (const cured of [
      example('pan').replace('intervalS: 25', 'intervalS: 18.8'),
      example('pan').replace(/by:\n(?: {6}.*\n)+/, 'by: { deg: 45.2 }\n'),
    ]) {
      const after = await planOf(cured);
      expect(after.status).toBe(0);
      expect(after.out).toContain('On screen');
      expect(after.out).not.toContain('hard to watch');
    }
  });

  test('finds too little time beside the slide at night, and a plan once its advice is followed', async () => {
    const { status, out } = await planOf(example('slide'));
    expect(status).toBe(2);
    expect(plain(out)).toContain(
      'Between frames the longest step of the move takes 1 s, its rest 3 s and writing 0.5 s.',
    );
    for (const [from, to] of [
      ['intervalS: 8', 'intervalS: 10'],
      ['settleS: 3', 'settleS: 1.4'],
      ['highest: 1600', 'highest: 2500'],
    ] as const) {
      const after = await planOf(example('slide').replace(from, to));
      expect(after.status, to).toBe(0);
      expect(plain(after.out)).toContain('licensed riggers');
    }
    for (const advice of ['from 8 to 10 s', 'for 1.4 s after a move', 'from 1600 to 2500']) {
      expect(plain(out)).toContain(advice);
    }
  });
});
