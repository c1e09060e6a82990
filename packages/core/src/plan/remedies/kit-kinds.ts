// Changes of kit, look and limits that remedies are tried by, each in rising amounts.

import { type DialControl, dialLabel, dialStep, timeOfStep } from '../../exposure/dial.js';
import { filterStacks } from '../../exposure/filter.js';
import { bracketReachEv } from '../../footage/bracket.js';
import { longestTimeInside } from '../../footage/frames.js';
import type { Camera, Shoot } from '../../shoot/shoot.js';
import { shootGap } from '../../shoot/time-left.js';
import type { Kind } from './kind.js';
import { intervalFor } from './time.js';

export type Reason = 'too-dark' | 'too-bright' | 'too-fast';

// How far each change may go before it is no longer advice.
const LONGEST_SHUTTER_S = 256;
const SHORTEST_SHUTTER = '1/8000'; // of most cameras
const MOST_LOOK_EV = 6;
const MOST_TOLERANCE_EV = 2;
const MOST_STEP_EV = 3;
const MOST_FILTER_CHANGES = 20;

function stepOf({ stepsPerStop }: Camera, control: DialControl, label: string): number {
  return dialStep(control, label, stepsPerStop) as number; // the shoot was checked
}

export function longerShutter(shoot: Shoot, frameCount: number): Kind {
  const { camera, intervalS } = shoot;
  const { stepsPerStop } = camera;
  const { gapS } = shootGap(shoot, frameCount);
  const longest = stepOf(camera, 'shutter', camera.shutter.longest);
  const inside = Math.ceil(
    -stepsPerStop * Math.log2(longestTimeInside(intervalS, { ...camera, gapS })) - 1e-9,
  );
  const reach = Math.round(bracketReachEv(camera.bracket) * stepsPerStop);
  const first = Math.max(longest + reach, inside); // what the interval leaves of the dial today
  const last = Math.ceil(-stepsPerStop * Math.log2(LONGEST_SHUTTER_S)) + reach;
  return {
    amounts: first - last,
    rising: false, // a longer interval has fewer frames, and so more light to follow from one to the next
    at: (amount) => {
      const step = first - amount;
      // Where no interval is long enough for the move as well, the shoot stays as it is, and impossible.
      const needS = intervalFor(shoot, frameCount, timeOfStep(step, stepsPerStop)) ?? intervalS;
      return {
        change: 'longer-shutter',
        shutter: dialLabel('shutter', Math.min(step - reach, longest), stepsPerStop),
        fromShutter: dialLabel('shutter', longest, stepsPerStop),
        ...(needS > intervalS ? { intervalS: needS } : {}),
        fromIntervalS: intervalS,
      };
    },
  };
}

/** Two exposures fewer, and so on down to a single one. */
export function fewerExposures({ camera: { bracket } }: Shoot): Kind | undefined {
  if (bracket === undefined) return undefined;
  return {
    amounts: (bracket.frames - 1) / 2,
    rising: true,
    at: (amount) => ({
      change: 'fewer-exposures',
      exposures: bracket.frames - 2 * amount,
      fromExposures: bracket.frames,
    }),
  };
}

/** Exposures closer together, by clicks of the dial. */
export function closerExposures({ camera: { bracket, stepsPerStop } }: Shoot): Kind | undefined {
  if (bracket === undefined) return undefined;
  const clicks = Math.round(bracket.stepEv * stepsPerStop);
  return {
    amounts: clicks - 1,
    rising: true,
    at: (amount) => ({
      change: 'closer-exposures',
      stepEv: (clicks - amount) / stepsPerStop,
      fromStepEv: bracket.stepEv,
    }),
  };
}

export function fasterShutter({ camera }: Shoot): Kind {
  const { stepsPerStop, shutter } = camera;
  const shortest = stepOf(camera, 'shutter', shutter.shortest);
  return {
    amounts: stepOf(camera, 'shutter', SHORTEST_SHUTTER) - shortest,
    rising: true,
    at: (amount) => ({
      change: 'faster-shutter',
      shutter: dialLabel('shutter', shortest + amount, stepsPerStop),
      fromShutter: shutter.shortest,
    }),
  };
}

export function higherIso(shoot: Shoot): Kind {
  const { camera } = shoot;
  const highest = stepOf(camera, 'iso', String(camera.iso.highest));
  const last = stepOf(camera, 'iso', '102400');
  return {
    amounts: last - highest,
    rising: true,
    at: (amount) => ({
      change: 'higher-iso',
      iso: Number(dialLabel('iso', highest + amount, camera.stepsPerStop)),
      fromIso: camera.iso.highest,
    }),
  };
}

/** A wider opening where it is too dark, a narrower one where it is too bright. */
export function otherAperture(shoot: Shoot, reason: Reason): Kind | undefined {
  if (reason === 'too-fast') return undefined;
  const { camera } = shoot;
  const { aperture, stepsPerStop } = camera;
  const dark = reason === 'too-dark';
  const range = typeof aperture === 'string' ? { widest: aperture, narrowest: aperture } : aperture;
  const from = stepOf(camera, 'aperture', dark ? range.widest : range.narrowest);
  return {
    amounts: dark ? from : 10 * stepsPerStop - from,
    // An aperture held throughout may cure the dark end and spoil the bright one.
    rising: typeof aperture !== 'string',
    at: (amount) => ({
      change: dark ? 'wider-aperture' : 'narrower-aperture',
      aperture: dialLabel('aperture', dark ? from - amount : from + amount, stepsPerStop),
    }),
  };
}

/** From 1 stop to 10, by halves. */
export const ANOTHER_FILTER: Kind = {
  amounts: 19,
  rising: false,
  at: (amount) => ({ change: 'another-filter', stops: (amount + 1) / 2 }),
};

/** The bare lens or another filter owned, weakest first, where the one asked for is in the way. */
export function startFilter({ startFilter: fromFilter, filters }: Shoot): Kind | undefined {
  if (fromFilter === undefined) return undefined;
  const names = filterStacks(filters, false).map(({ names: [name = 'none'] }) => name);
  const others = names.filter((name) => name !== fromFilter);
  return {
    amounts: others.length,
    rising: false,
    at: (amount) => ({ change: 'start-filter', filter: others[amount - 1], fromFilter }),
  };
}

export function moreFilterChanges({ limits: { maxFilterChanges: now } }: Shoot): Kind | undefined {
  if (now === undefined) return undefined;
  return {
    amounts: MOST_FILTER_CHANGES - now,
    rising: true,
    at: (amount) => ({
      change: 'more-filter-changes',
      maxFilterChanges: now + amount,
      fromFilterChanges: now,
    }),
  };
}

export function darkerLook(shoot: Shoot): Kind | undefined {
  const { look } = shoot;
  if (!('nightEv' in look)) return undefined;
  return {
    amounts: Math.round((look.nightEv + MOST_LOOK_EV) * 10),
    rising: false, // a darker look falls faster
    at: (amount) => ({
      change: 'darker-look',
      nightEv: rounded(look.nightEv - amount / 10),
      fromNightEv: look.nightEv,
    }),
  };
}

export function looserTolerance(shoot: Shoot): Kind {
  const { toleranceEv } = shoot.limits;
  const now = Math.floor(toleranceEv * 20 + 1e-9); // twentieths of a stop
  return {
    amounts: MOST_TOLERANCE_EV * 20 - now,
    rising: true,
    at: (amount) => ({
      change: 'looser-tolerance',
      toleranceEv: rounded((now + amount) / 20),
      fromToleranceEv: toleranceEv,
    }),
  };
}

export function largerSteps(shoot: Shoot): Kind {
  const { largestStepEv } = shoot.limits;
  const { stepsPerStop } = shoot.camera;
  const now = Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
  return {
    amounts: MOST_STEP_EV * stepsPerStop - now,
    rising: true,
    at: (amount) => ({
      change: 'larger-steps',
      largestStepEv: (now + amount) / stepsPerStop,
      fromStepEv: now / stepsPerStop,
    }),
  };
}

export function closerCues(shoot: Shoot): Kind {
  const { limits, intervalS } = shoot;
  const now = Math.ceil(limits.secondsBetweenCues / intervalS - 1e-9);
  return {
    amounts: now - 1,
    rising: true,
    at: (amount) => ({
      change: 'closer-cues',
      secondsBetweenCues: rounded((now - amount) * intervalS),
      fromSeconds: limits.secondsBetweenCues,
    }),
  };
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
