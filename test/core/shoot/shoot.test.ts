import fc from 'fast-check';
import { expect, test } from 'vitest';
import { timeOfStep } from '../../../packages/core/src/exposure/dial.js';
import { clipLengthS, frameCountOf, longestTimeInside } from '../../../packages/core/src/footage/frames.js';
import { suppliesFor } from '../../../packages/core/src/footage/supplies.js';

// Source: worked_examples.csv W045–W053.
test('frames and clips by hand', () => {
  expect(frameCountOf(7200, 7)).toBe(1029); // floor(7200 / 7) + 1
  expect(frameCountOf(1196, 4)).toBe(300); // 10 s at 30 fps: 1196 s from first to last shutter
  expect(clipLengthS(300, 30)).toBe(10);
  expect(clipLengthS(240, 24000 / 1001)).toBeCloseTo(10.01, 6);
  expect(frameCountOf(0, 5)).toBe(1);
});

test('a shutter of "30" is 32 s and does not fit an interval of 30 s; a dark frame counts twice', () => {
  const thirty = timeOfStep(-15, 3);
  expect(thirty).toBeGreaterThan(longestTimeInside(30, { gapS: 0, darkFrame: false }));
  expect(timeOfStep(-12, 3)).toBeLessThanOrEqual(longestTimeInside(40, { gapS: 1, darkFrame: true }));
  expect(thirty).toBeGreaterThan(longestTimeInside(40, { gapS: 1, darkFrame: true }));
});

test('a span of whole intervals keeps its last frame, whatever the rounding', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 50_000 }),
      fc.double({ min: 0.5, max: 60, noNaN: true }),
      (n, intervalS) => {
        expect(frameCountOf(n * intervalS, intervalS)).toBe(n + 1);
        expect(frameCountOf((n + 0.5) * intervalS, intervalS)).toBe(n + 1);
      },
    ),
  );
});

test('card and battery, only where asked', () => {
  // 1000 frames of 30 MB are 30 GB, decimal as cards are sold (IEC 80000-13).
  expect(suppliesFor(1000, { frameMB: 30, cardGB: 30, batteryFrames: 999 })).toEqual({
    cardNeededGB: 30,
    cardFits: true,
    batteryFits: false,
  });
  expect(suppliesFor(1001, { frameMB: 30, cardGB: 30 })).toEqual({ cardNeededGB: 30.03, cardFits: false });
  expect(suppliesFor(1000, {})).toEqual({});
  // The last frame of a charge is a frame.
  expect(suppliesFor(999, { batteryFrames: 999 })).toEqual({ batteryFits: true });
});

test('errors name the argument and the value', () => {
  expect(() => frameCountOf(10, 0)).toThrow('intervalS must be positive and finite, got 0');
  expect(() => frameCountOf(-1, 5)).toThrow('durationS must not be negative, got -1');
  expect(() => clipLengthS(10, Number.NaN)).toThrow('clipFps must be positive and finite, got NaN');
});
