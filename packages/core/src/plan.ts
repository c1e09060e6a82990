// The whole way, composed: a shoot in, a plan or a light table out.

import { civilDay, rfc3339, type Zone } from './clock.js';
import { cuesOf } from './cues.js';
import { framesOnCard, framesOnCharge } from './footage/supplies.js';
import { exactFps } from './footage.js';
import { type Forecast, forecastLight } from './forecast.js';
import { noSpan, noTime, whyImpossible } from './impossible.js';
import { type Kit, settingOf } from './kit.js';
import { notesOf } from './notes.js';
import type {
  LightTable,
  Plan,
  PlanEvent,
  PlanFrame,
  PlanInfeasible,
  PlanMade,
  PlanSummary,
} from './plan-format.js';
import { planMoves, withMoves } from './plan-move.js';
import type { RampResult } from './ramp/problem.js';
import { solveRamp } from './ramp/solve.js';
import { eveningsHeldShare, type Reserve, reserveOf } from './reserve.js';
import { hasRoom } from './room.js';
import { setUpAt } from './set-up.js';
import { type Camera, clipLengthS, type Shoot, suppliesFor } from './shoot.js';
import { shootSpan } from './span.js';
import { skyEvents } from './sun.js';
import { rampProblemOf } from './targets.js';

/**
 * The plan of a shoot: light, targets, the cheapest ramp that follows them, and its cues. A shoot that no
 * ramp can do is answered with the reason and the remedies. The same shoot always gives the same plan.
 * Source: docs/ramp.md for the schedule, docs/light.md for the light.
 *
 * @param shoot from {@link readShoot}
 * @returns the plan, or `infeasible`
 * @throws RangeError on a shoot that `readShoot` would refuse
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
 * if ('infeasible' in plan) throw new Error(plan.infeasible.text);
 * // Two hours at 7 s, both ends exposed, at 24 frames a second.
 * plan.summary; // → { frameCount: 1029, clipS: 42.875 }
 * ```
 */
export function planShoot(shoot: Shoot): Plan {
  const span = shootSpan(shoot);
  if (span.kind === 'no-span') return noSpan(shoot, span);
  const forecast = forecastLight(shoot, span.times);
  const { problem, kit } = rampProblemOf(shoot, forecast);
  if (!hasRoom(problem)) return noTime(shoot, forecast);
  const ramp = solveRamp(problem);
  if (ramp.kind === 'infeasible') return whyImpossible(shoot, forecast, ramp);

  const exposed = framesOf(forecast, problem.targetEv100, kit, ramp);
  const moved = planMoves(shoot, exposed);
  const { frames, ...move } = moved === undefined ? { frames: exposed } : withMoves(exposed, moved);
  const cues = cuesOf(frames, !shoot.camera.bulb);
  const reserve = reserveOf(problem);
  const summary = {
    ...summaryOf(shoot, frames, cues.length, ramp.objective, reserve),
    eveningsHeldShare: eveningsHeldShare(reserve, forecast),
  };
  const { events } = eventsOf(shoot, forecast.zone, span.times[0]);
  return {
    format: 'evenfall-plan/1',
    shoot,
    summary,
    events,
    frames,
    cues,
    ...move,
    notes: notesOf({ shoot, forecast, frames, summary, events, move: moved }),
  } satisfies PlanMade;
}

/**
 * The light of a shoot's span, one row every interval, without a camera. Source: docs/light.md.
 *
 * @param shoot from {@link readShoot}; camera, filters, look and limits are of no account
 * @returns the table, or why the sun never passes through the span
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { lightTable } from '@evenfall/core';
 *
 * const table = lightTable({ ...shoot, intervalS: 3600 });
 * if ('infeasible' in table) throw new Error(table.infeasible.text);
 * table.rows.map(({ at }) => at.slice(11, 16)); // → ['19:00', '20:00', '21:00']
 * ```
 */
export function lightTable(shoot: Shoot): LightTable | PlanInfeasible {
  const span = shootSpan(shoot);
  if (span.kind === 'no-span') return noSpan(shoot, span);
  const { zone, times, sky, light, sceneEv100, lowEv100, highEv100 } = forecastLight(shoot, span.times);
  const slopeEvPerMin = slopes(times, sceneEv100);
  return {
    format: 'evenfall-light/1',
    ...eventsOf(shoot, zone, times[0]),
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

/** Events of sun and moon on the local day on which the span starts and the one after. */
function eventsOf({ place }: Shoot, zone: Zone, startMs: number) {
  const { startMs: fromMs, endMs } = civilDay(rfc3339(startMs, zone).slice(0, 10), zone);
  const { endMs: toMs } = civilDay(rfc3339(endMs, zone).slice(0, 10), zone);
  const { events, missing } = skyEvents(fromMs, toMs, place);
  return {
    events: events.map(({ name, atMs, sunAltitudeDeg }): PlanEvent => {
      return { name, at: rfc3339(Math.round(atMs / 1000) * 1000, zone), sunAltitudeDeg };
    }),
    missing,
  };
}

function framesOf(
  { times, sky, zone, sceneEv100, lowEv100, highEv100 }: Forecast,
  targetEv100: ArrayLike<number>,
  kit: Kit,
  ramp: Extract<RampResult, { kind: 'ok' }>,
): PlanFrame[] {
  return ramp.frames.map((frame, i) => ({
    frame: i,
    at: rfc3339(times[i], zone),
    sunAltitudeDeg: sky[i].sunAltitudeDeg,
    sceneEv100: sceneEv100[i],
    lowEv100: lowEv100[i],
    highEv100: highEv100[i],
    targetEv100: targetEv100[i],
    ...settingOf(kit, frame),
    settingEv100: frame.settingEv100,
    errorEv: frame.errorEv,
    affected: frame.affected,
  }));
}

function summaryOf(
  shoot: Shoot,
  frames: readonly PlanFrame[],
  cueCount: number,
  objective: number,
  reserve: Reserve,
): Omit<PlanSummary, 'eveningsHeldShare'> {
  const [first, last] = [frames[0], frames[frames.length - 1]];
  const judged = frames.filter(({ affected }) => !affected).map(({ errorEv }) => errorEv);
  const targets = frames.map(({ targetEv100 }) => targetEv100);
  return {
    frameCount: frames.length,
    setUpAt: setUpAt(first.at),
    startAt: first.at,
    endAt: last.at,
    clipS: clipLengthS(frames.length, exactFps(shoot.clipFps)),
    ...suppliesFor(frames.length, shoot.camera),
    ...runOut(shoot.camera, frames),
    sceneFromEv100: first.sceneEv100,
    sceneToEv100: last.sceneEv100,
    rampStops: largest(targets) + largest(targets.map((ev) => -ev)),
    worstErrorEv: largest(judged.map(Math.abs)),
    reserveDarkEv: reserve.darkEv,
    reserveBrightEv: reserve.brightEv,
    rmsErrorEv: Math.sqrt(judged.reduce((sum, ev) => sum + ev * ev, 0) / judged.length),
    cueCount,
    objective,
  };
}

/** When the first frame comes that finds no room on the card, or no charge; empty where both last. */
function runOut(
  { cardGB, frameMB, batteryFrames, coldFactor }: Camera,
  frames: readonly PlanFrame[],
): Pick<PlanSummary, 'cardFullAt' | 'batteryOutAt'> {
  const card = cardGB === undefined || frameMB === undefined ? frames.length : framesOnCard(cardGB, frameMB);
  const charge = batteryFrames === undefined ? frames.length : framesOnCharge(batteryFrames, coldFactor);
  return {
    ...(card < frames.length ? { cardFullAt: frames[card].at } : {}),
    ...(charge < frames.length ? { batteryOutAt: frames[charge].at } : {}),
  };
}

/** Spreading into Math.max would overflow the stack on long shoots. */
function largest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}
