// How a move starts and ends: its position as a share of the whole, against time as a share of the whole.
// Every curve is symmetric, so that its fastest moment is the middle. Source: docs/sources.md#ease.

import { whole, within } from '../check.js';

/** An ease by the name of its curve; a trapezoid by the share of time spent on each of its two slopes, 0 to 0.5. */
export type Ease = 'linear' | 'smoothstep' | 'quintic' | { readonly trapezoid: number };

/**
 * Share of the way covered at a share of the time. Never falls as time goes on, to the last bit, and is exact
 * at both ends. Source: polynomials by their definition.
 *
 * @param ease the curve
 * @param time share of the time; outside 0 to 1 it is taken as the nearer end
 * @returns share of the way, 0 to 1
 * @throws RangeError where a trapezoid's share is not from 0 to 0.5
 */
export function easeAt(ease: Ease, time: number): number {
  const u = Math.min(1, Math.max(0, time));
  // The second half mirrors the first, where sums of small terms keep all their digits.
  return u > 0.5 ? 1 - rise(ease, 1 - u) : rise(ease, u);
}

/** Speed at the middle against the mean speed: linear 1, smoothstep 1.5, quintic 1.875, trapezoid 1 / (1 - share). */
export function easePeakSlope(ease: Ease): number {
  if (ease === 'linear') return 1;
  if (ease === 'smoothstep') return 1.5;
  if (ease === 'quintic') return 1.875;
  return 1 / (1 - shareOf(ease.trapezoid));
}

/**
 * The largest step, as a share of the whole, when the way is cut into `stepCount` equal times: one at the middle.
 * At most the peak slope over `stepCount`. Two steps of any ease are 0.5; no step at all is 0.
 */
export function largestStepShare(ease: Ease, stepCount: number): number {
  if (whole('stepCount', stepCount) < 1) return 0;
  if (stepCount % 2 === 0) return easeAt(ease, 0.5 + 1 / stepCount) - 0.5;
  const half = 0.5 / stepCount;
  return easeAt(ease, 0.5 + half) - easeAt(ease, 0.5 - half);
}

/** The curve's first half, u from 0 to 0.5. */
function rise(ease: Ease, u: number): number {
  if (ease === 'linear') return u;
  if (ease === 'smoothstep') return u * u * (3 - 2 * u);
  if (ease === 'quintic') return u * u * u * (10 + u * (6 * u - 15));
  const a = shareOf(ease.trapezoid);
  return (u < a ? (u * u) / (2 * a) : u - a / 2) / (1 - a);
}

function shareOf(trapezoid: number): number {
  return within('trapezoid', trapezoid, 0, 0.5);
}
