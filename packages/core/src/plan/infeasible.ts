// The answer where no plan exists: why, from which frame on, and what would cure it.

import type { Shoot } from '../shoot/shoot.js';
import type { ShootSpan } from '../shoot/span.js';
import { shootGap } from '../shoot/time-left.js';
import { rfc3339, zoneOf } from '../sky/clock.js';
import { sentenceOf } from '../words/sentences.js';
import { englishReasons } from './english.js';
import type { Prepared, solve } from './prepare.js';
import { remediesFor, timeRemedies } from './remedies/remedies.js';
import { remedyFor } from './remedies/remedy.js';
import { isCutShort } from './remedies/time.js';
import type { PlanInfeasible, Remedy, WhyInfeasible } from './types.js';

function infeasible(shoot: Shoot, why: WhyInfeasible, remedies: readonly Remedy[]): PlanInfeasible {
  const text = sentenceOf(englishReasons, 'reason', why);
  return { format: 'evenfall-plan/1', shoot, infeasible: { ...why, text, remedies } };
}

/** The sun never passes through the span on that day: says what it does reach, and which span would work. */
export function noSpan(
  shoot: Shoot,
  { because, highDeg, lowDeg }: Extract<ShootSpan, { kind: 'no-span' }>,
): PlanInfeasible {
  const why = { reason: 'no-span', date: shoot.date, because } as const;
  if ('startAt' in shoot.span) return infeasible(shoot, why, []);
  // A tenth of a degree inside what the sun reaches, so that it does reach it.
  const [high, low] = [Math.floor(highDeg * 10 - 1) / 10, Math.ceil(lowDeg * 10 + 1) / 10];
  const clip = (deg: number) => Math.min(high, Math.max(low, deg));
  const span = {
    fromSunAltitudeDeg: clip(shoot.span.fromSunAltitudeDeg),
    toSunAltitudeDeg: clip(shoot.span.toSunAltitudeDeg),
  };
  if (span.fromSunAltitudeDeg === span.toSunAltitudeDeg) return infeasible(shoot, why, []);
  const change = { change: 'shorter-span', span } as const;
  const clock = { times: new Float64Array(), zone: zoneOf(shoot.place) };
  return infeasible(shoot, why, [remedyFor(shoot, clock, change) ?? []].flat());
}

/** No ramp follows this light with this kit, or the intervals have no time for any shutter. */
export function noRamp(
  shoot: Shoot,
  { forecast }: Prepared,
  ramp: Exclude<ReturnType<typeof solve>, { kind: 'ok' }>,
): PlanInfeasible {
  const { intervalS, camera } = shoot;
  const count = forecast.times.length;
  const gap = shootGap(shoot, count);
  if (ramp.kind === 'no-time') {
    const why = { reason: 'no-time', gap, intervalS, darkFrame: camera.darkFrame } as const;
    return infeasible(shoot, why, timeRemedies(shoot, forecast));
  }
  const { reason, frame, shortfallEv, worstShortfallEv } = ramp;
  const at = rfc3339(forecast.times[frame], forecast.zone);
  const byMoves = reason === 'too-dark' && gap.gapS > camera.gapS && isCutShort(shoot, count);
  const why = { reason, frame, at, shortfallEv, worstShortfallEv, ...(byMoves ? { gap } : {}) };
  return infeasible(shoot, why, remediesFor(shoot, forecast, reason, frame));
}
