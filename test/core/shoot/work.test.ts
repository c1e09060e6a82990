// What a shoot comes to before anything is computed, counted by hand.

import { describe, expect, test } from 'vitest';
import { extentOf, MOST_WORK, planWork, verdictWork } from '../../../packages/core/src/shoot/work.js';
import { shootFrom } from '../shoots.js';

const filters = (count: number) => Array.from({ length: count }, (_, i) => ({ name: `${i}`, stops: i + 1 }));
const camera = (more: object) => ({
  camera: {
    shutter: { shortest: '1/4000', longest: '30' },
    iso: { lowest: 100, highest: 3200 },
    aperture: '4',
    ...more,
  },
});

describe('what there is to set', () => {
  test.each([
    [{}, { stacks: 1, apertures: 1, isos: 16 }],
    // A bare lens and each of three; with two at once also three pairs.
    [{ filters: filters(3) }, { stacks: 4, apertures: 1, isos: 16 }],
    [
      { filters: filters(3), stackFilters: true },
      { stacks: 7, apertures: 1, isos: 16 },
    ],
    // f/2.8 to f/8 are three stops: nine clicks of a third, or six of a half, and the first.
    [camera({ aperture: { widest: '2.8', narrowest: '8' } }), { stacks: 1, apertures: 10, isos: 16 }],
    [
      camera({
        aperture: { widest: '2.8', narrowest: '8' },
        stepsPerStop: 2,
        iso: { lowest: 100, highest: 100 },
      }),
      { stacks: 1, apertures: 7, isos: 1 },
    ],
  ])('%j: %j', (keys, extent) => {
    expect(extentOf(shootFrom(keys))).toMatchObject(extent);
  });
});

describe('settings weighed', () => {
  // Levels within 0.75 stop each way are 4 apart and 5 in all; from each of 16 ISOs a cue reaches 3 either way.
  test('frames times stacks times levels times ISOs and what a cue reaches of them', () => {
    expect(planWork(shootFrom({}), 100)).toBe(100 * 5 * (16 + 3));
    expect(planWork(shootFrom({ filters: filters(3) }), 100)).toBe(100 * 4 * 5 * (16 + 3));
    // One ISO is all a cue can reach.
    expect(planWork(shootFrom(camera({ iso: { lowest: 100, highest: 100 } })), 100)).toBe(100 * 5 * 2);
  });

  test('a limit on filter changes makes a table for each and for none, where there is a filter', () => {
    const limits = { maxFilterChanges: 2 };
    expect(planWork(shootFrom({ limits }), 100)).toBe(planWork(shootFrom({}), 100));
    const owned = { filters: filters(1) };
    expect(planWork(shootFrom({ ...owned, limits }), 100)).toBe(3 * planWork(shootFrom(owned), 100));
  });

  // From each of 4 · 16 settings: 3 steps up or down of ISO, or of the aperture, and any ISO behind three other stacks.
  // Six such moves come to a setting weighed, and laying them out to a hundred frames.
  test('a shutter timed freely has every move priced by itself', () => {
    const rig = shootFrom({
      ...camera({ bulb: true }),
      crew: 'rig',
      limits: { largestStepEv: 1 },
      filters: filters(3),
    });
    expect(planWork(rig, 500)).toBe(((500 + 100) * (64 + 64 * (4 * 3 + 3 * 16))) / 6);
  });

  test('there are no more levels than the dials have', () => {
    // Two shutters, one ISO, one aperture: at most so many levels, however loose the tolerance.
    const narrow = camera({
      shutter: { shortest: '1/60', longest: '1/50' },
      iso: { lowest: 100, highest: 100 },
    });
    const loose = shootFrom({ ...narrow, limits: { toleranceEv: 2 } });
    expect(planWork(loose, 10)).toBe(10 * (2 + 1 + 1) * 2);
  });

  test('to know whether there is a ramp takes less than to find the best one, and an evening is little of either', () => {
    const free = { ...camera({ bulb: true }), crew: 'rig', limits: { largestStepEv: 1 } };
    for (const keys of [{}, free, { filters: filters(3), stackFilters: true }]) {
      const shoot = shootFrom(keys);
      expect(verdictWork(shoot, 900)).toBeLessThan(planWork(shoot, 900));
      expect(planWork(shoot, 900)).toBeLessThan(MOST_WORK / 10);
      // Half the frames are about half the work.
      expect(verdictWork(shoot, 900) / verdictWork(shoot, 450)).toBeGreaterThan(1.6);
    }
  });
});
