// Frames as the meter: EV from how bright a frame came out, and bounds where it is clipped.

import { type FrameLevel, readingOfFrame } from '@evenfall/core';
import { expect, test } from 'vitest';

const at10 = { atMs: 7, settingEv100: 10 };
const ev = (level: FrameLevel) => readingOfFrame(level, at10).ev100;

/** 256 counts, none but at the values given. */
function counts(of: Readonly<Record<number, number>>): number[] {
  return Array.from({ length: 256 }, (_, value) => of[value] ?? 0);
}

test.each([
  { level: { mean: 0.18 }, ev100: 10, source: 'by definition' },
  { level: { mean: 0.72 / 2 }, ev100: 11, source: 'twice the light' },
  { level: { mean: 0.0225 }, ev100: 7, source: 'an eighth' },
  // ISO 12232: 118 of 255 is 0.461, in linear light 0.18 (IEC 61966-2-1: ((0.46275 + 0.055) / 1.055)^2.4 = 0.18116).
  { level: { srgbMean: 118 }, ev100: 10.00927, source: 'ISO 12232, IEC 61966-2-1' },
  // Below 0.04045 the curve is straight: 10 / 255 / 12.92 = 0.0030353, log2(0.0030353 / 0.18) = -5.89.
  { level: { srgbMean: 10 }, ev100: 4.11001, source: 'IEC 61966-2-1' },
  {
    level: { histogram: counts({ 118: 500 }), curve: 'srgb' as const },
    ev100: 10.00927,
    source: 'ISO 12232',
  },
  // Half black, half value 128 of 255 in linear light: 0.25098, log2(0.25098 / 0.18) = 0.47956.
  {
    level: { histogram: counts({ 0: 3, 128: 3 }), curve: 'linear' as const },
    ev100: 10.47956,
    source: 'hand',
  },
  {
    level: { srgbPixels: [118, 118, 118, 255, 118, 118, 118, 0], channels: 4 as const },
    ev100: 10.00927,
    source: 'hand',
  },
  { level: { srgbPixels: [118, 118, 118], channels: 1 as const }, ev100: 10.00927, source: 'hand' },
  // Pure green at 118: 0.7152 of it (BT.709), log2 of which is -0.48358.
  { level: { srgbPixels: [0, 118, 0], channels: 3 as const }, ev100: 9.52569, source: 'BT.709' },
])('$level is EV $ev100 ($source)', ({ level, ev100 }) => {
  expect(readingOfFrame(level, at10)).toEqual({ atMs: 7, ev100: expect.closeTo(ev100, 4) });
});

test('the setting counts by APEX, filters beside it: sunny 16 behind three stops', () => {
  const taken = { atMs: 0, timeS: 1 / 100, fNumber: 16, iso: 100, filterStops: 3 };
  // 8 + log2 100 = 14.644 (ASA PH2.5-1960).
  expect(readingOfFrame({ mean: 0.18 }, taken).ev100).toBeCloseTo(17.644, 3);
  expect(readingOfFrame({ mean: 10 / 78 }, taken, { greyLevel: 10 / 78 }).ev100).toBeCloseTo(17.644, 3);
});

test('the mean of sRGB values reads a contrasty frame too dark: half black, half white by 1.2 stops', () => {
  const true_ = ev({ mean: 0.5, clippedShare: 0 });
  expect(true_ - ev({ srgbMean: 127.5 })).toBeCloseTo(1.2, 1);
});

test('parts at white make it a bound once they may hide a tenth of a stop', () => {
  // Twice as bright as white they would add their share to the mean: 0.18 * (2^0.1 - 1) = 0.0129.
  expect(readingOfFrame({ mean: 0.18, clippedShare: 0.0128 }, at10).bound).toBeUndefined();
  expect(readingOfFrame({ mean: 0.18, clippedShare: 0.013 }, at10).bound).toBe('atLeast');
  const lamps = { histogram: counts({ 100: 97, 255: 3 }), curve: 'srgb' as const };
  expect(readingOfFrame(lamps, at10).bound).toBe('atLeast');
  const star = { histogram: counts({ 100: 999, 255: 1 }), curve: 'srgb' as const };
  expect(readingOfFrame(star, at10).bound).toBeUndefined();
  // One channel at its end: a blue sky that came out at 255.
  const blue = { srgbPixels: [60, 90, 255], channels: 3 as const };
  expect(readingOfFrame(blue, at10).bound).toBe('atLeast');
});

test('a mean alone is a bound from half of white on', () => {
  expect(readingOfFrame({ mean: 0.49 }, at10).bound).toBeUndefined();
  expect(readingOfFrame({ mean: 0.5 }, at10).bound).toBe('atLeast');
  expect(readingOfFrame({ mean: 0.6, clippedShare: 0 }, at10).bound).toBeUndefined();
});

test('white and black frames are bounds and no error', () => {
  for (const level of [
    { mean: 1 },
    { mean: 1, clippedShare: 0 },
    { mean: 1.02 },
    { srgbMean: 255 },
    { histogram: counts({ 255: 9 }), curve: 'srgb' as const },
    { srgbPixels: [255, 255, 255], channels: 3 as const },
  ]) {
    // log2(1 / 0.18) = 2.4739
    expect(readingOfFrame(level, at10)).toEqual({
      atMs: 7,
      ev100: expect.closeTo(12.4739, 4),
      bound: 'atLeast',
    });
  }
  for (const level of [
    { mean: 0 },
    { mean: -0.0003 },
    { mean: 0.001, clippedShare: 0.0005 },
    { srgbMean: 0 },
    { histogram: counts({ 0: 9 }), curve: 'linear' as const },
    { srgbPixels: [0, 0, 0, 255], channels: 4 as const },
  ]) {
    // log2(0.001 / 0.18) = -7.4919
    expect(readingOfFrame(level, at10)).toEqual({
      atMs: 7,
      ev100: expect.closeTo(2.5081, 4),
      bound: 'atMost',
    });
  }
});

test.each([
  [{ mean: Number.NaN }, 'mean must be finite, got NaN'],
  [{ mean: 0.2, clippedShare: 1.2 }, 'clippedShare must be from 0 to 1, got 1.2'],
  [{ srgbMean: 256 }, 'srgbMean must be from 0 to 255, got 256'],
  [{ histogram: [4], curve: 'srgb' as const }, 'histogram must have two entries or more, got 1'],
  [{ histogram: [0, 0], curve: 'srgb' as const }, 'histogram must count one pixel or more, got 0'],
  [{ histogram: [1, -1], curve: 'srgb' as const }, /histogram\[1\] must be from 0 to .*, got -1/],
  [
    { srgbPixels: [], channels: 1 as const },
    'srgbPixels must hold 1 values a pixel, one pixel or more, got 0',
  ],
  [
    { srgbPixels: [1, 2], channels: 3 as const },
    'srgbPixels must hold 3 values a pixel, one pixel or more, got 2',
  ],
  [{ srgbPixels: [1, 2, 256], channels: 3 as const }, 'srgbPixels[2] must be from 0 to 255, got 256'],
])('%j is no brightness', (level, message) => {
  expect(() => readingOfFrame(level, at10)).toThrow(message);
});

test('a calibration out of order is refused', () => {
  for (const calibration of [
    { greyLevel: 1 },
    { greyLevel: 0.0005 },
    { blackLevel: 0 },
    { blackLevel: Number.NaN },
  ]) {
    expect(() => readingOfFrame({ mean: 0.2 }, at10, calibration)).toThrow('0 < black < grey < 1');
  }
  const taken = { atMs: 0, timeS: 1, fNumber: 4, iso: 100, filterStops: -1 };
  expect(() => readingOfFrame({ mean: 0.2 }, taken)).toThrow('filterStops must be from 0');
});
