// The optimum by looking at everything: a forward table over every state a ramp can be in, one entry for each
// (setting, frames since the last cue, frames since the last filter change, filter changes used). Slow and obvious.

import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import { type Choice, rulesOf } from './kit-settings.js';
import type { RampSetting } from './ramp-cost.js';

export type Exhaustive =
  | { readonly kind: 'ok'; readonly objective: number; readonly frames: RampSetting[] }
  | {
      readonly kind: 'infeasible';
      readonly frame: number; // 0…frame-1 can be gone through legally, 0…frame cannot
      readonly firstNeverJudged: number; // no legal beginning ends at this frame or a later one within tolerance
    };

interface State {
  readonly choice: Choice;
  readonly sinceCue: number; // 0 on the cue's own frame; counted no further than the spacing
  readonly sinceFilter: number; // likewise, no further than the frames lost
  readonly filterChanges: number;
  readonly cost: number;
  readonly before: State | undefined;
}

/**
 * Best ramp of a small problem, at least one frame. A filter change too near the end to be judged is no legal
 * beginning, so a ramp never dies for lack of frames alone.
 */
export function exhaustiveRamp(problem: RampProblem): Exhaustive {
  const rules = rulesOf(problem);
  const { spacing, lost, maxFilterChanges, frameCount, choices } = rules;

  let reached = new Map<string, State>();
  for (const choice of choices) {
    if (!rules.mayStart(choice) || !rules.withinTolerance(0, choice)) continue;
    // The first cue may come at any frame from 1 on.
    const cost = rules.frameCost(0, choice);
    keep(reached, {
      choice,
      sinceCue: spacing,
      sinceFilter: lost,
      filterChanges: 0,
      cost,
      before: undefined,
    });
  }
  if (reached.size === 0) return { kind: 'infeasible', frame: 0, firstNeverJudged: 0 };

  let lastJudged = 0;
  for (let i = 1; i < frameCount; i++) {
    const next = new Map<string, State>();
    for (const state of reached.values()) {
      for (const choice of choices) {
        const move = rules.move(i, state.choice, choice);
        if (move === undefined) continue;
        const filter = move.kind === 'filter';
        if (move.kind !== 'stay') {
          if (state.sinceCue + 1 < spacing) continue;
          if (state.sinceFilter < lost) continue; // frame i is one that must keep the new setting
        }
        if (filter && i + lost > frameCount - 1) continue;
        const filterChanges = state.filterChanges + (filter ? 1 : 0);
        if (filterChanges > maxFilterChanges) continue;
        const sinceCue = move.kind === 'stay' ? Math.min(spacing, state.sinceCue + 1) : 0;
        const sinceFilter = filter ? 0 : Math.min(lost, state.sinceFilter + 1);
        const affected = sinceFilter < lost;
        if (!affected && !rules.withinTolerance(i, choice)) continue;
        if (!affected) lastJudged = i;
        const cost = state.cost + move.cost + (affected ? rules.affectedCost : rules.frameCost(i, choice));
        keep(next, { choice, sinceCue, sinceFilter, filterChanges, cost, before: state });
      }
    }
    if (next.size === 0) return { kind: 'infeasible', frame: i, firstNeverJudged: lastJudged + 1 };
    reached = next;
  }

  let best: State | undefined;
  for (const state of reached.values()) if (best === undefined || state.cost < best.cost) best = state;
  const frames: RampSetting[] = [];
  for (let state = best, i = frameCount - 1; state !== undefined; state = state.before, i--) {
    frames.unshift(rules.settingAt(i, state.choice));
  }
  return { kind: 'ok', objective: best!.cost, frames };
}

/** Of two ways into the same state only the cheaper can be part of an optimum. */
function keep(table: Map<string, State>, state: State): void {
  const { shutterStep, isoStep, apertureStep, stack } = state.choice;
  const setting = [shutterStep, isoStep, apertureStep, stack].join();
  const key = [setting, state.sinceCue, state.sinceFilter, state.filterChanges].join('|');
  const known = table.get(key);
  if (known === undefined || state.cost < known.cost) table.set(key, state);
}
