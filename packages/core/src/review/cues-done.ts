// When each cue was done: the shots' settings laid along the plan's, cue after cue, so that as few controls differ as can be.
// A dynamic programme: a shot stands after so many cues, never after fewer than the one before it.

import type { Control, PlanMade } from '../plan/types.js';
import type { Shot } from './taken.js';

/** How many cues stand on the camera at each shot. */
export interface CuesStanding {
  /** One a shot, from 0. */
  readonly done: readonly number[];
  /** Whether a shot's setting is not the plan's after those cues. */
  readonly isUnplanned: readonly boolean[];
}

/** The setting after a cue, as the dials say it. */
type State = Pick<Shot, 'shutter' | 'iso' | 'aperture' | 'bareEv100'>;

/** Cues to either side of what is planned that are looked at; nobody is later than that. */
const MOST_CUES_OFF = 150;
/** What a stop of difference costs, and a cue off the plan's time; a control that differs costs 1. */
const PER_STOP = 0.05;
const PER_CUE = 0.002;

/**
 * @param shots in order, one or more
 * @param places frame of the plan of each, which may lie before its first and after its last
 */
export function cuesStanding(
  shots: readonly Shot[],
  places: readonly number[],
  plan: PlanMade,
): CuesStanding {
  const { frames, cues, shoot } = plan;
  const states: State[] = [0, ...cues.map(({ frame }) => frame)].map((index) => {
    const { shutter, iso, aperture, settingEv100, filterStops } = frames[index]!;
    return { shutter, iso, aperture, bareEv100: settingEv100 - filterStops };
  });
  const controls = (['shutter', 'iso', 'aperture'] as const).filter(
    (control) => control !== 'shutter' || !shoot.camera.bulb,
  );
  const differs = (shot: Shot, state: State) =>
    controls.reduce((sum, control) => sum + (shot[control] === state[control] ? 0 : 1), 0);
  const planned = plannedStates(plan, places);
  const last = states.length - 1;
  const off = Math.min(last, MOST_CUES_OFF);
  const width = 2 * off + 1;
  const from = planned.map((state) => state - off); // state of a row's first column
  let costs = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
  const came = shots.map(() => new Int32Array(width)); // state before
  for (const [i, shot] of shots.entries()) {
    const next = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
    let least = i === 0 ? 0 : Number.POSITIVE_INFINITY;
    let leastState = 0;
    let seen = i === 0 ? 0 : from[i - 1]!; // states before this one are in `least`
    for (let column = 0; column < width; column++) {
      const state = from[i]! + column;
      if (i > 0) {
        for (; seen <= state && seen - from[i - 1]! < width; seen++) {
          const cost = costs[seen - from[i - 1]!]!;
          if (cost <= least) [least, leastState] = [cost, seen];
        }
      }
      if (state < 0 || state > last) continue;
      const own = states[state]!;
      const here =
        differs(shot, own) +
        (shoot.camera.bulb ? 0 : PER_STOP * Math.min(20, Math.abs(shot.bareEv100 - own.bareEv100))) +
        PER_CUE * Math.abs(state - planned[i]!);
      next[column] = least + here;
      came[i]![column] = leastState;
    }
    costs = next;
  }
  const done = new Array<number>(shots.length);
  let state = from[shots.length - 1]! + costs.indexOf(costs.reduce((a, b) => Math.min(a, b)));
  for (let i = shots.length - 1; i >= 0; i--) {
    done[i] = state;
    state = came[i]![state - from[i]!]!;
  }
  return { done, isUnplanned: shots.map((shot, i) => differs(shot, states[done[i]!]!) > 0) };
}

/** Cues that should stand at each place. */
export function plannedStates({ cues }: Pick<PlanMade, 'cues'>, places: readonly number[]): number[] {
  let state = 0;
  return places.map((place) => {
    while (state < cues.length && cues[state]!.frame <= place) state++;
    while (state > 0 && cues[state - 1]!.frame > place) state--;
    return state;
  });
}

/** Which controls a cue changes. */
export function controlsOf({ changes }: PlanMade['cues'][number]): Control[] {
  return changes.map(({ control }) => control);
}
