// Small random ramp problems that meet every constraint: enough to be searched whole, odd enough to be worth it.

import type { RampKit, RampProblem } from '../../packages/core/src/ramp/problem.js';
import { type Random, seeded } from './random.js';

export interface ProblemSize {
  readonly minFrames?: number; // default 1
  readonly maxFrames?: number; // default 10
  readonly maxSettings?: number; // default 60
}

/** The same seed and size always give the same problem. About a quarter have no ramp. */
export function randomProblem(seed: number, size: ProblemSize = {}): RampProblem {
  const { minFrames = 1, maxFrames = 10, maxSettings = 60 } = size;
  const random = seeded(seed);
  const stepsPerStop = random.pick([2, 3] as const);
  const stepEv = 1 / stepsPerStop;
  const intervalS = random.pick([4, 5, 7, 10, 30]);
  const darkFrame = random.chance(0.2);
  const gapS = random.pick([0, 1, 1, intervalS / 2]);
  const largestStepEv = random.pick([stepEv, stepEv, 0.5, 1, 1, 1.5, 2]);

  // The interval cuts the longest times off in some kits, all of them in a few.
  const insideStep = -stepsPerStop * Math.log2((intervalS - gapS) / (darkFrame ? 2 : 1));
  const longestStep = Math.ceil(insideStep) + random.pick([-3, -1, 0, 0, 2, 8, 18, 24]);
  const isoFrom = random.pick([0, 0, 1, 2, 3, 6, -stepsPerStop]);
  const apertureFrom = random.whole(6, 18);
  let shutters = random.whole(2, 8);
  let isos = random.whole(1, 5);
  let apertures = random.chance(0.25) ? random.whole(2, 3) : 1;
  const stackStops = stacksOf(random, stepEv);
  while (shutters * isos * apertures * stackStops.length > maxSettings) {
    if (apertures > 2) apertures--;
    else if (isos > 2) isos--;
    else if (shutters > 2) shutters--;
    else apertures = isos = 1;
  }

  const kit: RampKit = {
    stepsPerStop,
    shutter: { longestStep, shortestStep: longestStep + shutters - 1 },
    iso: { lowestStep: isoFrom, highestStep: isoFrom + isos - 1 },
    aperture: { widestStep: apertureFrom, narrowestStep: apertureFrom + apertures - 1 },
    stackStops,
    ...(random.chance(0.3) ? { startStack: random.whole(0, stackStops.length - 1) } : {}),
    bulb: random.chance(0.15),
  };
  const spacing = random.pick([0, 0, 1, 1, 2, 2, 3, 4]);
  const direction = random.pick(['dusk', 'dusk', 'dawn'] as const);
  const maxFilterChanges = random.pick([undefined, undefined, undefined, 0, 1, 1, 2]);
  const frameCount = random.whole(minFrames, maxFrames);
  const pace = (largestStepEv / Math.max(1, spacing)) * random.between(0.2, 1.05);
  return {
    targetEv100: targetsOf(random, kit, frameCount, direction === 'dusk' ? -pace : pace),
    intervalS,
    direction,
    gapS,
    darkFrame,
    crew: random.pick(['hand', 'rig'] as const),
    kit,
    limits: {
      toleranceEv: random.pick([0.55, 0.7, 1, 1.5, 2]) * Math.max(stepEv, largestStepEv / 2) + 0.01,
      largestStepEv,
      secondsBetweenCues: spacing === 0 ? 0 : (spacing - random.pick([0, 0.4])) * intervalS,
      framesLostPerFilterChange: random.whole(0, 3),
      ...(maxFilterChanges === undefined ? {} : { maxFilterChanges }),
    },
    // With the contract's price of 20 a short ramp changes filters only where it must.
    ...(random.chance(0.5) ? { weights: cheapFilters(random) } : {}),
  };
}

function cheapFilters(random: Random) {
  return { filterCue: random.pick([0, 0.5, 2]), affectedFrame: random.pick([0, 0.1, 1]), apertureCue: 3 };
}

/** Bare lens first; whole steps, odd strengths, some weaker than one change, some of the same strength. */
function stacksOf(random: Random, stepEv: number): number[] {
  const count = random.pick([1, 2, 2, 3, 3, 4]);
  const stops = [0];
  while (stops.length < count) {
    const strength = random.pick([
      stepEv * random.whole(1, 6),
      random.between(0.05, 0.6),
      random.between(0.5, 3),
      Math.log2(3),
      stops[stops.length - 1]!,
    ]);
    stops.push(strength);
  }
  return stops.sort((a, b) => a - b);
}

/** A course through what the kit reaches, at `paceEv` a frame, of one of five shapes. */
function targetsOf(random: Random, kit: RampKit, frameCount: number, paceEv: number): number[] {
  const { stepsPerStop, shutter, iso, aperture, stackStops } = kit;
  const brightest = aperture.narrowestStep + shutter.shortestStep - iso.lowestStep;
  const darkest = aperture.widestStep + shutter.longestStep - iso.highestStep;
  const highEv = brightest / stepsPerStop + stackStops[stackStops.length - 1]!;
  const lowEv = darkest / stepsPerStop + stackStops[0]!;
  const travelEv = Math.min(highEv - lowEv, Math.abs(paceEv) * (frameCount - 1));
  const room = Math.max(0, highEv - lowEv - travelEv);
  const startEv = paceEv < 0 ? highEv - room * random.unit() : lowEv + room * random.unit();

  const shape = random.pick(['steady', 'steady', 'turn', 'constant', 'jump', 'ends calm'] as const);
  const bend = random.whole(1, Math.max(1, frameCount - 1));
  const jumpEv = random.pick([-1, 1]) * random.between(0.3, 2.5);
  const jumpLasts = random.pick([1, 2, 3, frameCount]);
  const noiseEv = random.pick([0, 0, 0.05, 0.2]);
  return Array.from({ length: frameCount }, (_, i) => {
    const noise = noiseEv * random.between(-1, 1);
    const steady = startEv + paceEv * i;
    if (shape === 'constant') return startEv + noise;
    if (shape === 'turn') return startEv + paceEv * (i <= bend ? i : 2 * bend - i) + noise;
    if (shape === 'jump' && i >= bend && i < bend + jumpLasts) return steady / 2 + startEv / 2 + jumpEv + noise;
    if (shape === 'jump') return steady / 2 + startEv / 2 + noise;
    if (shape === 'ends calm') return startEv + paceEv * Math.min(i, bend) + noise;
    return steady + noise;
  });
}
