// The answer where no plan exists: why, from which frame on, and what would cure it.

import type { RampResult } from '../ramp/problem.js';
import type { Shoot } from '../shoot/shoot.js';
import type { ShootSpan } from '../shoot/span.js';
import { shootGap } from '../shoot/time-left.js';
import { rfc3339 } from '../sky/clock.js';
import type { Forecast } from './forecast.js';
import { remediesFor, timeRemedies } from './remedies/remedies.js';
import { isCutShort } from './remedies/time.js';
import type { PlanInfeasible, Remedy } from './types.js';

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

/** The intervals have no time for the shortest shutter beside what else is in them: there is no ramp to look for. */
export function noTime(shoot: Shoot, forecast: Forecast): PlanInfeasible {
  const { intervalS, camera } = shoot;
  const text =
    `${gapText(shoot, forecast.times.length)} An interval of ${intervalS} s leaves no time for a shutter` +
    `${camera.darkFrame ? ' and its dark frame' : ''}.`;
  return {
    format: 'evenfall-plan/1',
    shoot,
    infeasible: { reason: 'no-time', text, remedies: timeRemedies(shoot, forecast) },
  };
}

/** "Between frames the longest step of the move takes 2.3 s, its rest 1 s and writing 0.5 s." */
function gapText(shoot: Shoot, frameCount: number): string {
  const { moveS, settleS, writeS } = shootGap(shoot, frameCount);
  const seconds = (timeS: number) => `${Number(timeS.toPrecision(3))} s`;
  return `Between frames the longest step of the move takes ${seconds(moveS)}, its rest ${seconds(settleS)} and writing ${seconds(writeS)}.`;
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
  const count = forecast.times.length;
  const byMoves = shootGap(shoot, count).gapS > shoot.camera.gapS && isCutShort(shoot, count);
  const move = byMoves ? ` ${gapText(shoot, count)} That keeps the shutter short.` : '';
  const text = {
    'too-dark': `${where} the scene is too dark for this kit, by ${stops}.${move}`,
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
