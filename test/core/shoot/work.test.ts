// How much there is to compute, by hand.

import { expect, test } from 'vitest';
import { planWork } from '../../../packages/core/src/shoot/work.js';
import { shootFrom } from '../shoots.js';

test('a free shutter: moves as a sixth of a setting each, and a hundred frames for laying them out', () => {
  // Four ISOs, one aperture, no filter: from each setting three steps up or down, by ISO alone or aperture with it, and the
  // setting itself: 4 · (4 · 3) + 4 = 52 a frame.
  const shoot = shootFrom({
    crew: 'rig',
    camera: {
      shutter: { shortest: '1/4000', longest: '4' },
      iso: { lowest: 100, highest: 200 },
      ...{ aperture: '4', bulb: true },
    },
    limits: { toleranceEv: 0.5, largestStepEv: 1 },
  });
  expect(planWork(shoot, 200)).toBeCloseTo((300 * 52) / 6, 9);
});
