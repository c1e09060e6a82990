// Which frame of a plan has the least time to spare.

import { tightestFrame } from '../move/time-advice.js';
import { budgetOf, type FrameBudget } from '../move/time-budget.js';
import { shootTravels } from '../shoot/time-left.js';
import { checkMade } from './plan-check.js';
import type { PlanMade } from './types.js';

/**
 * The frame of a plan with the least time to spare.
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @returns `frame`, from 0, of equals the first, and what its interval holds, in seconds
 * @throws RangeError on moves that a shoot file may not hold
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { tightestOf } from '@evenfall/core';
 *
 * const { shutterS, writeS, slackS } = tightestOf(plan);
 * shutterS + writeS + slackS; // → 7.0
 * ```
 */
export function tightestOf(plan: PlanMade): { readonly frame: number } & FrameBudget {
  checkMade(plan);
  const { shoot, frames } = plan;
  const { intervalS, camera } = shoot;
  const travels = shootTravels(shoot);
  const budgets = frames.map(({ shutterS }, frame) =>
    budgetOf(
      travels,
      { frame, frameCount: frames.length, shutterS, intervalS },
      { writeS: camera.gapS, ...camera },
    ),
  );
  const frame = tightestFrame(budgets);
  return { frame, ...budgets[frame] };
}
