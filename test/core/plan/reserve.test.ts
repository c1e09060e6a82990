// The kit's reserve: by hand on small kits, and against trying every setting of random ones.

import { describe, expect, test } from 'vitest';
import { reserveOf } from '../../../packages/core/src/plan/reserve.js';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { rampExists } from '../../../packages/core/src/ramp/solve.js';
import { kitOf } from '../../../packages/core/src/shoot/kit.js';
import { seeded } from '../../reference/random.js';
import { shootFrom } from '../shoots.js';

function problem(keys: Record<string, unknown>, targetEv100: readonly number[]): RampProblem {
  const shoot = shootFrom(keys);
  return {
    targetEv100,
    intervalS: shoot.intervalS,
    direction: shoot.direction,
    gapS: shoot.camera.gapS,
    darkFrame: shoot.camera.darkFrame,
    crew: shoot.crew,
    kit: kitOf(shoot).ramp,
    limits: shoot.limits,
  };
}

const camera = {
  shutter: { shortest: '1/4000', longest: '4' },
  iso: { lowest: 100, highest: 100 },
  aperture: '4',
};

describe('by hand', () => {
  // f/4 is Av 4; 1/4000 counts 12, "4" is 4 s and counts -2: EV 2 to 16, 0.75 beyond either way.
  test('the reserve is what the dials and the tolerance leave at both ends', () => {
    const { darkEv, brightEv } = reserveOf(problem({ camera }, [14, 9, 2]));
    expect(darkEv).toBeCloseTo(0.75, 9);
    expect(brightEv).toBeCloseTo(2.75, 9);
  });

  test('a filter adds its exact stops at the bright end, none at the dark', () => {
    // A factor of 1000 is log2 1000 = 9.9658 stops.
    const { darkEv, brightEv } = reserveOf(
      problem({ camera, filters: [{ name: 'ND1000', factor: 1000 }] }, [14, 9, 2]),
    );
    expect(darkEv).toBeCloseTo(0.75, 9);
    expect(brightEv).toBeCloseTo(2.75 + 9.965784, 6);
  });

  test('a time that does not end inside the interval is no reserve, and a dark frame halves it', () => {
    // 4.5 s less a gap of 1 s: "3" (3.17 s) fits, "4" does not: a third of a stop less.
    expect(reserveOf(problem({ camera, intervalS: 4.5 }, [14, 2])).darkEv).toBeCloseTo(0.75 - 1 / 3, 9);
    // 6 s less 1 s, halved: 2.5 s, so "2.5" (2.52 s) does not fit and "2" (2 s) does: one stop less.
    const darkFrame = { ...camera, darkFrame: true };
    expect(reserveOf(problem({ camera: darkFrame }, [14, 3])).darkEv).toBeCloseTo(0.75, 9);
    // Timed freely, 2.5 s is 2.5 s: log2(2.5 / 2) = 0.3219 more, within a rig's third of a stop.
    const bulb = { ...darkFrame, bulb: true };
    expect(reserveOf(problem({ camera: bulb, crew: 'rig' }, [14, 3])).darkEv).toBeCloseTo(
      1 / 3 + 0.321928,
      6,
    );
  });

  test('a hole that a lone strong filter leaves ends the reserve', () => {
    // 1/4000 to 1/2000: EV 15 to 16 bare, 25 to 26 behind ten stops; 17 to 24 is out of reach.
    const narrow = { ...camera, shutter: { shortest: '1/4000', longest: '1/2000' } };
    const filters = [{ name: 'ND 10', stops: 10 }];
    const { darkEv, brightEv } = reserveOf(problem({ camera: narrow, filters }, [15.5, 16.25]));
    expect(darkEv).toBeCloseTo(15.5 - 14.25, 9);
    expect(brightEv).toBeCloseTo(16.75 - 16.25, 9);
  });

  test('the first frame has the filter it must begin with, and no other', () => {
    const filters = [{ name: 'ND 3', stops: 3 }];
    const free = reserveOf(problem({ camera, filters }, [14, 4]));
    const bound = reserveOf(problem({ camera, filters, startFilter: 'ND 3' }, [6, 4]));
    expect(free.darkEv).toBeCloseTo(2.75, 9);
    expect(bound.darkEv).toBeCloseTo(6 - (5 - 0.75), 9);
  });

  test('frames out of reach are not counted; where all are, there is none', () => {
    expect(reserveOf(problem({ camera }, [14, 30, 4])).brightEv).toBeCloseTo(2.75, 9);
    expect(reserveOf(problem({ camera }, [30]))).toEqual({ darkEv: 0, brightEv: 0 });
  });
});

test('200 random kits: a ramp of one frame exists within the reserve and not beyond it', () => {
  const random = seeded(20260918);
  let dark = 0;
  let bright = 0;
  for (let i = 0; i < 200; i++) {
    const stepsPerStop = random.pick([2, 3]);
    const keys = {
      intervalS: random.pick([3, 5, 8, 20]),
      camera: {
        stepsPerStop,
        shutter: {
          shortest: random.pick(['1/4000', '1/500', '1/60']),
          longest: random.pick(['1/30', '1', '4', '15']),
        },
        iso: { lowest: random.pick([100, 200]), highest: random.pick([200, 800, 6400]) },
        aperture: random.chance(0.3) ? { widest: '2.8', narrowest: '8' } : '4',
        darkFrame: random.chance(0.3),
        gapS: 0.5,
      },
      filters: random.pick([
        [],
        [{ name: 'a', factor: 8 }],
        [
          { name: 'a', density: 0.9 },
          { name: 'b', factor: 1000 },
        ],
      ]),
      stackFilters: random.chance(0.5),
    };
    const ev = random.between(2, 18);
    const at = (shift: number) => problem(keys, [ev + shift]);
    if (!rampExists(at(0))) continue;
    const { darkEv, brightEv } = reserveOf(at(0));
    for (const share of [0.25, 0.5, 0.75, 1]) {
      expect(rampExists(at(-darkEv * share))).toBe(true);
      expect(rampExists(at(brightEv * share))).toBe(true);
    }
    expect(rampExists(at(-darkEv - 1e-6))).toBe(false);
    expect(rampExists(at(brightEv + 1e-6))).toBe(false);
    if (darkEv > 0.1) dark++;
    if (brightEv > 0.1) bright++;
  }
  expect(dark).toBeGreaterThan(100);
  expect(bright).toBeGreaterThan(100);
});
