// Cues by hand: what a person is told to turn, from one frame to the next.

import { describe, expect, test } from 'vitest';
import {
  changesBetween,
  changesByClock,
  cuesOf,
  shutterTimesOf,
  stackText,
} from '../../../packages/core/src/plan/cues.js';

const day = { shutter: '1/500', iso: 100, aperture: '4', filters: ['ND 8'] };
const frame = (i: number, dials: Partial<typeof day> = {}) => ({
  ...day,
  ...dials,
  frame: i,
  at: `2026-09-22T19:00:0${i}+02:00`,
  sunAltitudeDeg: 3 - i / 10,
});

test('a bare lens is "none", stacked filters stand in the order owned', () => {
  expect(stackText([])).toBe('none');
  expect(stackText(['ND 64', 'ND 8'])).toBe('ND 64 + ND 8');
});

test('what differs is told in the order hands work: filter, shutter, ISO, aperture', () => {
  const night = { shutter: '1/4', iso: 800, aperture: '2.8', filters: [] };
  expect(changesBetween(day, night)).toEqual([
    { control: 'filter', from: 'ND 8', to: 'none' },
    { control: 'shutter', from: '1/500', to: '1/4' },
    { control: 'iso', from: '100', to: '800' },
    { control: 'aperture', from: '4', to: '2.8' },
  ]);
  expect(changesBetween(day, { ...day })).toEqual([]);
});

test('a cue stands at the first frame of the new setting, with its time and its sun', () => {
  const frames = [frame(0), frame(1), frame(2, { iso: 200 }), frame(3, { iso: 200, shutter: '1/400' })];
  expect(cuesOf(frames, true)).toEqual([
    {
      frame: 2,
      at: '2026-09-22T19:00:02+02:00',
      sunAltitudeDeg: 2.8,
      changes: [{ control: 'iso', from: '100', to: '200' }],
    },
    {
      frame: 3,
      at: '2026-09-22T19:00:03+02:00',
      sunAltitudeDeg: 2.7,
      changes: [{ control: 'shutter', from: '1/500', to: '1/400' }],
    },
  ]);
});

test('a shutter timed freely is in no cue, and what turns beside it is', () => {
  const frames = [frame(0), frame(1, { shutter: '1/400' }), frame(2, { shutter: '1/300', aperture: '2.8' })];
  expect(cuesOf(frames, false).map(({ frame: at, changes }) => [at, changes])).toEqual([
    [2, [{ control: 'aperture', from: '4', to: '2.8' }]],
  ]);
});

describe('a shutter that a rig times freely', () => {
  // Ten frames a stop: a third of a stop is passed at every fourth frame.
  const timed = (stops: readonly number[], isoFrom = Number.POSITIVE_INFINITY) =>
    stops.map((by, i) => {
      const shutterS = 2 ** by / 64;
      return {
        ...frame(i, { iso: i >= isoFrom ? 200 : 100 }),
        shutter: `1/${(1 / shutterS).toFixed(1)}`,
        shutterS,
      };
    });
  const tenths = Array.from({ length: 21 }, (_, i) => i / 10);

  test('is told at every third of a stop, from what was told before', () => {
    const told = shutterTimesOf(timed(tenths), []);
    expect(told.map((row) => row.frame)).toEqual([4, 8, 12, 16, 20]);
    expect(told[0]).toEqual({
      frame: 4,
      at: '2026-09-22T19:00:04+02:00',
      sunAltitudeDeg: 2.6,
      changes: [{ control: 'shutter', from: '1/64.0', to: '1/48.5' }],
    });
    expect(told[1]!.changes[0]).toEqual({ control: 'shutter', from: '1/48.5', to: '1/36.8' });
  });

  test('both ways, and a whole jump in one row', () => {
    expect(shutterTimesOf(timed([0, 0.2, -0.1, -0.4, 3, 2.7]), []).map((row) => row.frame)).toEqual([3, 4]);
    expect(shutterTimesOf(timed([0, 0.1, 0.2]), [])).toEqual([]);
    expect(shutterTimesOf(timed([0, 1 / 3]), []).map((row) => row.frame)).toEqual([1]);
  });

  test('a cue tells the whole setting: it is no row of its own, and the next third counts from it', () => {
    const frames = timed(tenths, 6);
    const cues = cuesOf(frames, false);
    expect(cues.map((cue) => cue.frame)).toEqual([6]);
    const shutterTimes = shutterTimesOf(frames, cues);
    expect(shutterTimes.map((row) => row.frame)).toEqual([4, 10, 14, 18]);
    const all = changesByClock({ cues, shutterTimes });
    expect(all.map((row) => [row.frame, row.changes[0]!.control])).toEqual([
      [4, 'shutter'],
      [6, 'iso'],
      [10, 'shutter'],
      [14, 'shutter'],
      [18, 'shutter'],
    ]);
    expect(changesByClock({ cues })).toBe(cues);
  });
});
