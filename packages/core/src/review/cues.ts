// What became of every cue of the plan.

import type { PlanMade } from '../plan/types.js';
import { controlsOf } from './cues-done.js';
import type { Shot } from './taken.js';
import type { ReviewCue } from './types.js';

interface Standing {
  readonly shots: readonly Shot[];
  /** Frame of the plan of each shot. */
  readonly places: readonly number[];
  /** Cues that stand at each shot. */
  readonly done: readonly number[];
  /** First shot with a new filter, by the cue's place in the plan; undefined where it stayed. */
  readonly seen: ReadonlyMap<number, number | undefined>;
}

/** One a cue, in the plan's order. */
export function reviewedCues(plan: PlanMade, standing: Standing): ReviewCue[] {
  const { shots, places, done, seen } = standing;
  const { intervalS } = plan.shoot;
  const last = places.length - 1;
  return plan.cues.map((cue, index): ReviewCue => {
    const controls = controlsOf(cue);
    const about = { cue: index + 1, frame: cue.frame, at: cue.at, controls };
    const never = { ...about, lateS: null, seen: cue.frame <= places[last]! };
    let first = done.findIndex((count) => count > index);
    if (controls.includes('filter') && seen.has(index)) {
      const changed = seen.get(index);
      if (changed === undefined) return { ...never, seen: true };
      // Of a filter alone, its own change; beside others, the last of them.
      first = controls.length === 1 ? changed : first < 0 ? first : Math.max(first, changed);
    }
    if (first < 0) return never;
    // Begun after it was due: how late it was nobody saw.
    if (first === 0 && cue.frame < places[0]!) return { ...about, lateS: 0, seen: false };
    if (done[first]! > index + 1 && !stands(plan, index, shots[first]!)) {
      // Passed over: the next one was done without it, unless no frame could show it.
      const until = plan.cues[index + 1]!.frame;
      const couldShow = places.some((place) => place >= cue.frame && place < until);
      return couldShow ? { ...about, lateS: null, seen: true } : { ...about, lateS: 0, seen: false };
    }
    return {
      ...about,
      lateS: (places[first]! - cue.frame) * intervalS,
      doneFrame: places[first]!,
      seen: true,
    };
  });
}

/** Whether every control of a cue that a file shows says at this shot what it should after it. */
function stands(plan: PlanMade, index: number, shot: Shot): boolean {
  const cue = plan.cues[index]!;
  const after = plan.frames[cue.frame]!;
  return controlsOf(cue).every((control) => control === 'filter' || shot[control] === after[control]);
}
