// The answer where no plan exists: why, from which frame on, and what would cure it.

import type { Shoot } from '../shoot/shoot.js';
import type { ShootSpan } from '../shoot/span.js';
import type { ClocksBack } from '../words/clock.js';
import { eventsOf } from './made.js';
import type { Prepared } from './prepare.js';
import { remediesFor, spanRemedies, timeRemedies } from './remedies/remedies.js';
import type { solve } from './solve.js';
import type { StopSignal } from './stop.js';
import type { PlanInfeasible, Remedy, WhyInfeasible } from './types.js';
import { inEnglish, whyNoRamp, whyNoSpan } from './why.js';

/** Whether remedies are sought, and what says when to give up. */
export type Seek = 'none' | { readonly signal?: StopSignal | undefined };

function infeasible(
  shoot: Shoot,
  why: WhyInfeasible,
  remedies: readonly Remedy[],
  back?: ClocksBack,
): PlanInfeasible {
  const infeasible = { ...inEnglish(why, back), remedies };
  return {
    format: 'evenfall-plan/1',
    kind: 'infeasible',
    shoot,
    infeasible,
    ...(back && { clocksBack: back }),
  };
}

/** The sun never passes through the span on that day: says what it does reach, and which span would work. */
export function noSpan(
  shoot: Shoot,
  { because, highDeg, lowDeg }: Extract<ShootSpan, { kind: 'no-span' }>,
  seek: Seek,
): PlanInfeasible {
  const why = whyNoSpan(shoot, because);
  if ('startAt' in shoot.span || seek === 'none') return infeasible(shoot, why, []);
  // A tenth of a degree inside what the sun reaches, so that it does reach it.
  const [high, low] = [Math.floor(highDeg * 10 - 1) / 10, Math.ceil(lowDeg * 10 + 1) / 10];
  const clip = (deg: number) => Math.min(high, Math.max(low, deg));
  const span = {
    fromSunAltitudeDeg: clip(shoot.span.fromSunAltitudeDeg),
    toSunAltitudeDeg: clip(shoot.span.toSunAltitudeDeg),
  };
  return infeasible(shoot, why, spanRemedies(shoot, span, seek.signal));
}

/** No ramp follows this light with this kit, or the intervals have no time for any shutter. */
export function noRamp(
  shoot: Shoot,
  { forecast }: Prepared,
  ramp: Exclude<ReturnType<typeof solve>, { kind: 'ok' }>,
  seek: Seek,
): PlanInfeasible {
  const remedies =
    seek === 'none'
      ? []
      : ramp.kind === 'no-time'
        ? timeRemedies(shoot, forecast, seek.signal)
        : remediesFor(shoot, forecast, ramp, seek.signal);
  const { clocksBack } = eventsOf(shoot, forecast.zone, forecast.times[0]);
  return infeasible(shoot, whyNoRamp(shoot, forecast, ramp), remedies, clocksBack);
}
