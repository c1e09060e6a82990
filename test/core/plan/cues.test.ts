// Cues by hand: what a person is told to turn, from one frame to the next.

import { expect, test } from 'vitest';
import { changesBetween, cuesOf, stackText } from '../../../packages/core/src/plan/cues.js';

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
