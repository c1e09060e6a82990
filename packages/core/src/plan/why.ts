// Why a shoot has no plan, without what would cure it: that takes many plans, and is a file of its own.

import { pausesS } from '../footage/bracket.js';
import type { RampResult } from '../ramp/problem.js';
import type { Shoot } from '../shoot/shoot.js';
import { shootGap } from '../shoot/time-left.js';
import { rfc3339 } from '../sky/clock.js';
import type { WhyNoPass } from '../sky/missing.js';
import { type ClocksBack, clockOver } from '../words/clock.js';
import { sentenceOf } from '../words/sentences.js';
import { englishReasons } from './english.js';
import type { Forecast } from './forecast.js';
import { isCutShort } from './remedies/time.js';
import type { WhyInfeasible } from './types.js';

/** The sun never passes through the span on that day. */
export function whyNoSpan({ date }: Shoot, because: WhyNoPass): WhyInfeasible {
  return { reason: 'no-span', date, because };
}

/** No ramp follows this light with this kit, or the intervals have no time for any shutter. */
export function whyNoRamp(
  shoot: Shoot,
  { times, zone }: Forecast,
  ramp: Exclude<RampResult, { kind: 'ok' }> | { readonly kind: 'no-time' },
): WhyInfeasible {
  const { intervalS, camera } = shoot;
  const gap = shootGap(shoot, times.length);
  if (ramp.kind === 'no-time') {
    const { darkFrame, bracket } = camera;
    const several = bracket && { exposures: bracket.frames, pausesS: pausesS(bracket) };
    return { reason: 'no-time', gap, intervalS, darkFrame, ...several };
  }
  const { reason, frame, shortfallEv, worstShortfallEv } = ramp;
  const at = rfc3339(times[frame], zone);
  // Between two marks of a dial some light is half a click from both.
  const halfClickEv = 0.5 / camera.stepsPerStop;
  const { toleranceEv } = shoot.limits;
  const below = reason === 'too-fast' && !camera.bulb && toleranceEv < halfClickEv - 1e-9;
  const byMoves = reason === 'too-dark' && gap.gapS > camera.gapS && isCutShort(shoot, times.length);
  return {
    reason,
    frame,
    at,
    shortfallEv,
    worstShortfallEv,
    ...(byMoves ? { gap } : {}),
    ...(below ? { belowHalfClick: { toleranceEv, halfClickEv } } : {}),
  };
}

/** The reason with its sentence. */
export function inEnglish(why: WhyInfeasible, back?: ClocksBack): WhyInfeasible & { readonly text: string } {
  return { ...why, text: sentenceOf(englishReasons, 'reason', why, clockOver(back)) };
}
