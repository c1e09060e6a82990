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
 */
export function explain(lattice: Lattice, frame: number, excessEv: number): Infeasible {
  const { stops, stepsPerStop, toleranceEv } = lattice;
  const only = frame === 0 ? lattice.startStack : undefined;
  const { low, high } = lattice.kitLevels;
  const darkestEv = stops[only ?? 0] + low / stepsPerStop;
  const brightestEv = stops[only ?? stops.length - 1] + high / stepsPerStop;
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
