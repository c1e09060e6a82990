// What the light did, for the next plan at that place: by how much it lay off the forecast at each altitude of the sun, as readings
// of another evening.

import { aNumber, groupWith, hold, listOf, text } from '../hold.js';
import { forecastOver } from '../plan/forecast.js';
import { checkPlan } from '../plan/plan-check.js';
import type { PlanMade } from '../plan/types.js';
import type { ReadingEntry, Shoot } from '../shoot/shoot.js';
import { shootSpan } from '../shoot/span.js';
import { parseRfc3339, rfc3339, zoneOf } from '../sky/clock.js';
import type { Review } from './types.js';

/**
 * Readings for another shoot at the same place, on that evening or a later one: where its sun is as high, the light is put as far
 * off the forecast as it was. What the forecast has wrong about the scene carries over; the weather of that evening carries over
 * too, so give them to an evening of a like sky.
 *
 * @param plan that was shot
 * @param review of it, made with levels or readings
 * @param shoot to come, in the same direction
 * @returns `readings` for it, in order of time; none where nothing was read, or where its span has none of those altitudes
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { learnedReadings, reviewFrames } from '@evenfall/core';
 *
 * const metered = [0, 1020].map((i) => ({
 *   atMs: Date.parse(plan.frames[i].at), ev100: plan.frames[i].sceneEv100 - 0.5,
 * }));
 * const taken = plan.frames.map(({ frame, at, shutterS, iso }) => ({ file: `${frame}.jpg`, at, shutterS, iso }));
 * const readings = learnedReadings(plan, reviewFrames(plan, taken, { readings: metered }), shoot);
 * readings[0].at; // → plan.frames[0].at
 * plan.frames[0].sceneEv100 - readings[0].ev100; // → 0.50
 * ```
 */
export function learnedReadings(plan: PlanMade, review: Review, shoot: Shoot): ReadingEntry[] {
  checkPlan(plan);
  hold(
    'review',
    review,
    groupWith({ light: listOf(groupWith({ at: text, sunAltitudeDeg: aNumber, ev100: aNumber })) }),
  );
  const { light } = review;
  const span = shootSpan(shoot);
  if (light.length === 0 || span.kind === 'no-span') return [];
  const thenMs = Float64Array.from(light, ({ at }) => parseRfc3339(at)!);
  const then = forecastOver({ ...plan.shoot, readings: [] }, thenMs);
  const next = forecastOver({ ...shoot, readings: [] }, span.times);
  const altitudes = next.sky.map((sky) => sky.sunAltitudeDeg);
  const zone = zoneOf(shoot.place);
  const found = light.flatMap(({ sunAltitudeDeg, ev100 }, i) => {
    const frame = nearest(altitudes, sunAltitudeDeg);
    // Beyond the ends of the span there is nothing to read.
    if (Math.abs(altitudes[frame]! - sunAltitudeDeg) > AS_HIGH_DEG) return [];
    const overEv = ev100 - then.sceneEv100[i]!;
    return [{ frame, ev100: next.sceneEv100[frame]! + overEv }];
  });
  return found
    .sort((a, b) => a.frame - b.frame)
    .filter(({ frame }, i, all) => frame !== all[i - 1]?.frame)
    .map(({ frame, ev100 }) => ({ at: rfc3339(span.times[frame]!, zone), ev100 }));
}

/** The sun passes it in a minute or two. */
const AS_HIGH_DEG = 0.25;

function nearest(values: readonly number[], wanted: number): number {
  return values.reduce(
    (best, value, i) => (Math.abs(value - wanted) < Math.abs(values[best]! - wanted) ? i : best),
    0,
  );
}
