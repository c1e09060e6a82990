// The answer where no plan exists: why, from which frame on, and what would cure it.

import { rfc3339 } from './clock.js';
import type { Forecast, ShootSpan } from './forecast.js';
import type { PlanInfeasible, Remedy } from './plan-format.js';
import type { RampResult } from './ramp/problem.js';
import { remediesFor } from './remedies.js';
import type { Shoot } from './shoot.js';

/** The sun never passes through the span on that day: says what it does reach, and which span would work. */
export function noSpan(
  shoot: Shoot,
  { why, highDeg, lowDeg }: Extract<ShootSpan, { kind: 'no-span' }>,
): PlanInfeasible {
  const remedies: Remedy[] = [];
  // A tenth of a degree inside what the sun reaches, so that it does reach it.
  const [high, low] = [Math.floor(highDeg * 10 - 1) / 10, Math.ceil(lowDeg * 10 + 1) / 10];
  if (!('startAt' in shoot.span)) {
    const { fromSunAltitudeDeg: from, toSunAltitudeDeg: to } = shoot.span;
    const clip = (deg: number) => Math.min(high, Math.max(low, deg));
    const [newFrom, newTo] = [clip(from), clip(to)];
    if (newFrom !== newTo) {
      remedies.push({
        change: 'shorter-span',
        text: `Shoot from ${newFrom}° to ${newTo}° of sun altitude on this day.`,
        apply: { span: { fromSunAltitudeDeg: newFrom, toSunAltitudeDeg: newTo } },
      });
    }
  }
  const text = `On ${shoot.date} ${why}.`;
  return { format: 'evenfall-plan/1', shoot, infeasible: { reason: 'no-span', text, remedies } };
}

/** No ramp follows this light with this kit. */
export function whyImpossible(
  shoot: Shoot,
  forecast: Forecast,
  { reason, frame, shortfallEv, worstShortfallEv }: Extract<RampResult, { kind: 'infeasible' }>,
): PlanInfeasible {
  const at = rfc3339(forecast.times[frame], forecast.zone);
  const where = `From frame ${frame + 1} (${at.slice(11, 19)}) on`;
  const stops = worstShortfallEv < 0.05 ? 'a hair' : `${worstShortfallEv.toFixed(1)} stops at the most`;
  const text = {
    'too-dark': `${where} the scene is too dark for this kit, by ${stops}.`,
    'too-bright': `${where} the scene is too bright for this kit, by ${stops}.`,
    'too-fast': `${where} the light changes faster than the steps, their spacing and the tolerance can follow.`,
  }[reason];
  return {
    format: 'evenfall-plan/1',
    shoot,
    infeasible: {
      reason,
      frame,
      at,
      shortfallEv,
      text,
      remedies: remediesFor(shoot, forecast, reason, frame),
    },
  };
}
