// Why there is no ramp: how far legal settings reach, and what is wrong on the frame where they end.

import { type Lattice, netWindow, SLACK } from './lattice.js';
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
  const { low, high } = kitLevels(lattice);
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

function kitLevels(lattice: Lattice) {
  return {
    low: lattice.apertureMin + lattice.shutterMin - (lattice.isoMin + lattice.isoCount - 1),
    high: lattice.apertureMin + lattice.apertureCount - 1 + lattice.shutterMax - lattice.isoMin,
  };
}

/** Not reached; any lower number is how many filter changes it takes to get there. */
const UNREACHED = 255;

/**
 * The first frame no legal start of a ramp can meet, and how far outside tolerance the nearest setting in
 * reach is on it. A frame counts as met where some legal settings of all frames up to it leave it within
 * tolerance, or spoilt by a filter change that lands within tolerance: a frame the kit cannot render may be
 * crossed, and the answer is the first one where that is no help.
 *
 * @param limit filter changes allowed in all
 */
export function firstUnmet(lattice: Lattice, limit: number): { frame: number; excessEv: number } {
  const { frameCount, stops, apertureCount, isoCount, band, spacing, lost, largestStep } = lattice;
  const base = new Float64Array(frameCount * stops.length);
  let cells = 0;
  for (let at = 0; at < base.length; at++) {
    base[at] = cells;
    cells += band.count[at] * apertureCount * isoCount;
  }
  // By frame and setting: the fewest filter changes that reach it, free to change on the frame after.
  const used = new Uint8Array(cells).fill(UNREACHED);
  const reach = new Reach(lattice);

  const rowAt = (frame: number, stack: number, aperture: number, level: number) => {
    const at = frame * stops.length + stack;
    return base[at] + (aperture * band.count[at] + level - band.low[at]) * isoCount;
  };

  /** A setting of frame j, judged from `judged` on; `changes` tells the filter changes used by ISO. */
  const arrive = (
    j: number,
    judged: number,
    stack: number,
    aperture: number,
    level: number,
    changes: (iso: number) => number,
  ) => {
    if (judged >= frameCount || aperture < 0 || aperture >= apertureCount) return;
    const shutterAtIsoMin = level - lattice.apertureMin - aperture + lattice.isoMin;
    const isoFrom = Math.max(0, lattice.shutterMin - shutterAtIsoMin);
    const isoTo = Math.min(isoCount - 1, lattice.shutterMax - shutterAtIsoMin);
    let any = false;
    for (let iso = isoFrom; iso <= isoTo && !any; iso++) any = changes(iso) <= limit;
    const free = Math.min(Math.max(j + spacing - 1, judged), frameCount - 1);
    if (!any || !reach.hold(stack, level, judged, free)) return;
    const row = rowAt(free, stack, aperture, level);
    for (let iso = isoFrom; iso <= isoTo; iso++) {
      const count = changes(iso);
      if (count <= limit && count < used[row + iso]) used[row + iso] = count;
    }
  };

  for (let stack = 0; stack < stops.length; stack++) {
    if (lattice.startStack !== undefined && stack !== lattice.startStack) continue;
    // One level beyond either side, to learn how far off the nearest setting is.
    const middle = Math.round((lattice.target[0] - stops[stack]) * lattice.stepsPerStop);
    const { low, high } = kitLevels(lattice);
    const nearest = Math.min(high, Math.max(low, middle));
    const from = Math.min(nearest, band.low[stack]);
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let level = from; level <= Math.max(nearest, band.low[stack] + band.count[stack] - 1); level++) {
        startAt(stack, aperture, level);
      }
    }
  }

  function startAt(stack: number, aperture: number, level: number) {
    const shutterAtIsoMin = level - lattice.apertureMin - aperture + lattice.isoMin;
    const isoFrom = Math.max(0, lattice.shutterMin - shutterAtIsoMin);
    const isoTo = Math.min(isoCount - 1, lattice.shutterMax - shutterAtIsoMin);
    if (isoFrom > isoTo || !reach.hold(stack, level, 0, 0)) return;
    const row = rowAt(0, stack, aperture, level);
    used.fill(0, row + isoFrom, row + isoTo + 1);
  }

  for (let frame = 0; frame < frameCount - 1; frame++) {
    const j = frame + 1;
    for (let stack = 0; stack < stops.length; stack++) {
      const low = band.low[frame * stops.length + stack];
      const high = low + band.count[frame * stops.length + stack] - 1;
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let level = low; level <= high; level++) {
          const row = rowAt(frame, stack, aperture, level);
          let fewest = UNREACHED;
          for (let iso = 0; iso < isoCount; iso++) fewest = Math.min(fewest, used[row + iso]);
          if (fewest === UNREACHED) continue;

          const here = (iso: number) => (iso >= 0 && iso < isoCount ? used[row + iso] : UNREACHED);
          if (reach.hold(stack, level, j, j)) {
            const on = rowAt(j, stack, aperture, level);
            for (let iso = 0; iso < isoCount; iso++) used[on + iso] = Math.min(used[on + iso], here(iso));
          }
          for (let step = -largestStep; step <= largestStep; step++) {
            if (step === 0) continue;
            arrive(j, j, stack, aperture, level + step, here);
            arrive(j, j, stack, aperture, level + step, (iso) => here(iso + step));
            arrive(j, j, stack, aperture + step, level + step, here);
          }
          for (let other = 0; other < stops.length; other++) {
            if (other === stack) continue;
            const window = netWindow(lattice, stack, other, level);
            for (let x = window.low; x <= window.high; x++) {
              arrive(j, j + lost, other, aperture, x, () => fewest + 1);
            }
          }
        }
      }
    }
  }
  return { frame: reach.last + 1, excessEv: reach.excessEv };
}

/** Furthest frame met so far, and the smallest excess over tolerance seen on the one after it. */
class Reach {
  last = -1;
  excessEv = Number.POSITIVE_INFINITY;

  constructor(private readonly lattice: Lattice) {}

  /** Holds a level through frames from…to and answers whether all are within tolerance. */
  hold(stack: number, level: number, from: number, to: number): boolean {
    const { stops, stepsPerStop, target, toleranceEv } = this.lattice;
    const exposureEv = level / stepsPerStop + stops[stack];
    let frame = from;
    while (frame <= to && Math.abs(exposureEv - target[frame]) <= toleranceEv + SLACK) frame++;
    if (frame > from && frame - 1 > this.last) {
      this.last = frame - 1;
      this.excessEv = Number.POSITIVE_INFINITY;
    }
    if (frame <= to && frame === this.last + 1) {
      this.excessEv = Math.min(this.excessEv, Math.abs(exposureEv - target[frame]) - toleranceEv);
    }
    return frame > to;
  }
}
