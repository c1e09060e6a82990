// The whole way, composed: a shoot in, a plan or a light table out.

import { flag, hold, onlyKeys } from '../hold.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { rfc3339 } from '../sky/clock.js';
import { noRamp, noSpan } from './infeasible.js';
import { eventsOf, exposedPlan } from './made.js';
import { withMoves } from './moves.js';
import { prepare } from './prepare.js';
import { solve } from './solve.js';
import { type StopSignal, stopIf } from './stop.js';
import type { LightTable, Plan, PlanInfeasible, Remedy } from './types.js';

/** How a shoot is planned. */
export interface PlanOptions {
  /** Whether to seek remedies where there is no plan; default so. {@link planRemedies} seeks them by themselves. */
  readonly remedies?: boolean | undefined;
  /** When to give up; default never. */
  readonly signal?: StopSignal | undefined;
}

const OPTIONS = onlyKeys('remedies', 'signal');

/**
 * The plan of a shoot: light, targets, the cheapest ramp that follows them, and its cues. A shoot that no
 * ramp can do is answered with the reason and the remedies. The same shoot always gives the same plan.
 *
 *
 * @param shoot from {@link readShoot}
 * @param options whether to seek remedies where there is no plan, which takes longer than planning; what says when to stop
 * @returns the plan, `kind` ok, or why there is none, `kind` infeasible, without remedies where none are sought
 * @throws RangeError on a shoot that `readShoot` would refuse; the signal's reason where it stops the work
 * @example
 * ```ts
 * import { planShoot, readShoot } from '@evenfall/core';
 *
 * const read = readShoot({
 *   format: 'evenfall-shoot/1',
 *   place: { latitudeDeg: 52, longitudeDeg: 5, timeZone: 'Europe/Amsterdam' },
 *   date: '2026-09-22',
 *   span: {
 *     startAt: '2026-09-22T19:00:00+02:00',
 *     endAt: '2026-09-22T21:00:00+02:00',
 *   },
 *   intervalS: 7,
 *   camera: {
 *     shutter: { shortest: '1/4000', longest: '5' },
 *     iso: { lowest: 100, highest: 6400 },
 *     aperture: '4',
 *   },
 * });
 * if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
 * const { shoot } = read;
 * const plan = planShoot(shoot);
 * if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
 * // Two hours at 7 s, both ends exposed, at 24 frames a second.
 * plan.summary; // → { frameCount: 1029, clipS: 42.875 }
 * ```
 */
export function planShoot(shoot: Shoot, options: PlanOptions = {}): Plan {
  checkShoot(shoot);
  hold('options', options, OPTIONS);
  const { remedies = true, signal } = options;
  hold('remedies', remedies, flag);
  stopIf(signal);
  const prepared = prepare(shoot);
  const seek = remedies ? { signal } : 'none';
  if (prepared.kind === 'no-span') return noSpan(shoot, prepared, seek);
  stopIf(signal);
  const ramp = solve(prepared);
  stopIf(signal);
  if (ramp.kind !== 'ok') return noRamp(shoot, prepared, ramp, seek);
  return withMoves(exposedPlan(shoot, prepared, ramp), prepared);
}

/**
 * What would give an impossible shoot a plan: the remedies that {@link planShoot} answers with, for a program that asked it for
 * none, to seek them later or elsewhere.
 *
 * @param shoot from {@link readShoot}
 * @param options what says when to stop
 * @returns none or more, in the order in which a photographer would try them; none where the shoot has a plan
 * @throws RangeError on a shoot that `readShoot` would refuse; the signal's reason where it stops the work
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { planRemedies, planShoot } from '@evenfall/core';
 *
 * const small = { ...shoot, camera: { ...shoot.camera, iso: { lowest: 100, highest: 200 } } };
 * const none = planShoot(small, { remedies: false });
 * none.kind === 'infeasible' && none.infeasible.remedies; // → []
 * planRemedies(small).map(({ change }) => change).includes('higher-iso'); // → true
 * ```
 */
export function planRemedies(shoot: Shoot, options: Pick<PlanOptions, 'signal'> = {}): readonly Remedy[] {
  hold('options', options, onlyKeys('signal'));
  const plan = planShoot(shoot, options);
  return plan.kind === 'infeasible' ? plan.infeasible.remedies : [];
}

/**
 * The light of a shoot's span, one row every interval, without a camera.
 *
 * @param shoot from {@link readShoot}; camera, filters, look and limits do not matter
 * @returns the table, or why the sun never passes through the span
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { lightTable } from '@evenfall/core';
 *
 * const table = lightTable({ ...shoot, intervalS: 3600 });
 * if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
 * table.rows.map(({ at }) => at.slice(11, 16)); // → ['19:00', '20:00', '21:00']
 * ```
 */
export function lightTable(shoot: Shoot): LightTable | PlanInfeasible {
  checkShoot(shoot);
  const prepared = prepare(shoot);
  if (prepared.kind === 'no-span') return noSpan(shoot, prepared, {});
  const { zone, times, sky, light, sceneEv100, lowEv100, highEv100 } = prepared.forecast;
  const slopeEvPerMin = slopes(times, sceneEv100);
  const { events, missing, clocksBack } = eventsOf(shoot, zone, times[0]);
  return {
    format: 'evenfall-light/1',
    kind: 'ok',
    events,
    missing,
    ...(clocksBack && { clocksBack }),
    rows: sky.map((s, i) => ({
      at: rfc3339(times[i], zone),
      sunAltitudeDeg: s.sunAltitudeDeg,
      sunAzimuthDeg: s.sunAzimuthDeg,
      moonAltitudeDeg: s.moonAltitudeDeg,
      moonAzimuthDeg: s.moonAzimuthDeg,
      moonLitFraction: s.moonLitFraction,
      illuminanceLx: light[i].illuminanceLx,
      moonIlluminanceLx: light[i].moonIlluminanceLx,
      skyLuminanceCdM2: light[i].skyLuminanceCdM2,
      sceneEv100: sceneEv100[i],
      lowEv100: lowEv100[i],
      highEv100: highEv100[i],
      slopeEvPerMin: slopeEvPerMin[i],
    })),
  };
}

/** Slope at each row from its neighbours, in EV a minute; 0 where there is but one row. */
function slopes(times: Float64Array, ev: Float64Array): Float64Array {
  return ev.map((_, i) => {
    const [from, to] = [Math.max(0, i - 1), Math.min(ev.length - 1, i + 1)];
    return to === from ? 0 : ((ev[to] - ev[from]) * 60_000) / (times[to] - times[from]);
  });
}
