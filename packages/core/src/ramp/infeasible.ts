// Why there is no ramp: what is wrong on the frame where legal settings end (reach.ts finds it).

import { type Lattice, SLACK } from './lattice.js';
import type { RampResult } from './problem.js';

type Infeasible = Extract<RampResult, { kind: 'infeasible' }>;

/**
 * Names the reason why a frame cannot be met: beyond what any one setting of the kit renders, or else too
 * fast for the steps, their spacing or the tolerance.
 *
 * @param frame first frame no legal start of a ramp can meet; see {@link firstUnmet}
 * @param excessEv how far outside tolerance the nearest setting in reach is there, > 0
 * @param limit most filter changes allowed
 */
export function infeasibleAt(lattice: Lattice, frame: number, excessEv: number, limit: number): Infeasible {
  const { toleranceEv } = lattice;
  const staysOn = frame === 0 || limit === 0;
  const { darkestEv, brightestEv } = kitRange(lattice, staysOn ? lattice.startStack : undefined);
  const tooDark = darkestEv - toleranceEv - lattice.target[frame];
  const tooBright = lattice.target[frame] - brightestEv - toleranceEv;
  // Later frames may lie further out: what a person has to make up is the worst of them.
  const worst = (beyond: (ev: number) => number) =>
    lattice.target.reduce((most, ev) => Math.max(most, beyond(ev)), 0);
  if (tooDark > SLACK) {
    const worstShortfallEv = worst((ev) => darkestEv - toleranceEv - ev);
    return { kind: 'infeasible', reason: 'too-dark', frame, shortfallEv: tooDark, worstShortfallEv };
  }
  if (tooBright > SLACK) {
    const worstShortfallEv = worst((ev) => ev - brightestEv - toleranceEv);
    return { kind: 'infeasible', reason: 'too-bright', frame, shortfallEv: tooBright, worstShortfallEv };
  }
  return { kind: 'infeasible', reason: 'too-fast', frame, shortfallEv: excessEv, worstShortfallEv: excessEv };
}

/** The answer where not even the shortest time ends before the next frame: the frames themselves come too fast. */
export function noShutterFits({ shutterMin, shutterMax, stepsPerStop }: Lattice): Infeasible {
  const shortfallEv = (shutterMin - shutterMax) / stepsPerStop;
  return { kind: 'infeasible', reason: 'too-fast', frame: 0, shortfallEv, worstShortfallEv: shortfallEv };
}

/** EV of the darkest and of the brightest scene that the kit, or the kit with one stack, renders at metered level. */
function kitRange({ stops, stepsPerStop, kitLevels }: Lattice, only?: number) {
  return {
    darkestEv: stops[only ?? 0] + kitLevels.low / stepsPerStop,
    brightestEv: stops[only ?? stops.length - 1] + kitLevels.high / stepsPerStop,
  };
}

/**
 * Whether more frames in a row lie beyond the kit than a filter change can cross. Then no ramp exists, and nothing
 * else needs to be looked at; the reverse does not follow.
 *
 * @param spareEv what the kit may render beyond its outermost settings, >= 0
 */
export function beyondKit(lattice: Lattice, spareEv = 0): boolean {
  const { frameCount, affectedFrames, target, toleranceEv } = lattice;
  const { darkestEv, brightestEv } = kitRange(lattice);
  const reachEv = toleranceEv + spareEv + SLACK;
  let run = 0;
  for (let i = 0; i < frameCount; i++) {
    const within = target[i] >= darkestEv - reachEv && target[i] <= brightestEv + reachEv;
    run = within ? 0 : run + 1;
    // The ends must be met: nothing crosses them.
    if (run > affectedFrames || (run > 0 && (i === 0 || i === frameCount - 1))) return true;
  }
  return false;
}
