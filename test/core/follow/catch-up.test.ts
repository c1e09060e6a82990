// Cues that nobody did: one order says what to set now, whole, and it is reached once.

import type { PlanMade } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { seeded } from '../../reference/random.js';

type Step = ReturnType<typeof followFrame>;

const { title: _, ...SHOOT } = EVENING_SHOOT;
const THREE = [
  { name: 'ND 3', stops: 3 },
  { name: 'ND 6', stops: 6 },
  { name: 'ND 10', stops: 10 },
];
const USUAL = { ...SHOOT, limits: {} };
const MORNING = {
  direction: 'dawn',
  span: { startAt: '2026-09-22T05:50:00+02:00', endAt: '2026-09-22T07:49:52+02:00' },
};
const PLANS: readonly (readonly [string, PlanMade])[] = [
  ['dusk, one filter', planOf(USUAL)],
  ['dusk, three filters', planOf({ ...USUAL, filters: THREE })],
  ['dawn, one filter', planOf({ ...USUAL, ...MORNING })],
  ['dawn, three filters', planOf({ ...USUAL, ...MORNING, filters: THREE })],
];

const stopsOf = ({ setting }: Step) => setting.filterStops;

/** Hands that do every cue when it is due, but none from a frame on for so many; followed for a quarter of an hour more. */
function absent(plan: PlanMade, from: number, frames: number, how: 'missed' | 'setting') {
  let state = startFollow(plan);
  let step = followFrame(state, { frame: 0 });
  const done: Step[] = []; // what the camera is set to, by frame
  const orders: Step[] = []; // told while nobody was there
  let stands = step;
  for (let frame = 0; frame < Math.min(plan.frames.length, from + frames + 112); frame++) {
    const away = frame >= from && frame < from + frames;
    const missed = how === 'missed' && orders.at(-1)?.cue !== undefined && state === orders.at(-1)?.state;
    const { shutter, iso, aperture, filters } = stands.setting;
    step = followFrame(state, {
      frame,
      ...(missed ? { missed: step.cue!.cue } : {}),
      ...(how === 'setting' && frame >= from && frame <= from + frames
        ? { setting: { shutter, iso, aperture, filters } }
        : {}),
    });
    state = step.state;
    if (away) orders.push(step);
    else stands = step;
    done.push(stands);
  }
  return { done, orders };
}

describe.each(PLANS)('%s', (_name, plan) => {
  const { toleranceEv } = plan.shoot.limits;
  const random = seeded(20261129);
  const places = Array.from({ length: 12 }, () => [random.whole(20, 800), random.whole(8, 90)] as const);
  const sign = plan.shoot.direction === 'dusk' ? -1 : 1;

  test.each(['missed', 'setting'] as const)('one order, reached once: told by %s', (how) => {
    let far = 0;
    for (const [from, frames] of places) {
      const { done, orders } = absent(plan, from, frames, how);
      const where = `frames ${from} to ${from + frames}`;
      const back = done[from + frames]!;
      if (back.cue?.setNow !== undefined) {
        far++;
        // All that is to be set, and nothing else is told beside it.
        expect(back.cue.setNow).toEqual(back.setting);
      }
      const after = done.slice(from + frames + 1);
      expect(
        after.some(({ cue }) => cue?.setNow !== undefined),
        where,
      ).toBe(false);
      expect(Math.abs(back.errorEv), where).toBeLessThanOrEqual(toleranceEv);
      // Filters go one way, as the light does, in what was told and in what was done.
      const told = [done[from - 1]!, ...orders].map(stopsOf);
      const set = done.slice(from - 1).map(stopsOf);
      for (const stops of [told, set]) {
        stops.forEach((each, i) => {
          if (i > 0) expect(sign * (each - stops[i - 1]!), where).toBeGreaterThanOrEqual(0);
        });
      }
    }
    expect(far).toBeGreaterThan(4);
  });
});
