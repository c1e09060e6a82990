// What would make an impossible shoot possible: single changes, each with its least amount, each tried.
// A remedy is a changed shoot, so that nothing is promised that planning it again does not keep.

import { type DialControl, dialLabel, dialStep, timeOfStep } from '../../exposure/dial.js';
import { longestTimeInside } from '../../footage/frames.js';
import { rampExists } from '../../ramp/solve.js';
import type { Camera, Shoot } from '../../shoot/shoot.js';
import { shootSpan } from '../../shoot/span.js';
import { shootGap, shutterFits } from '../../shoot/time-left.js';
import { MOST_WORK, planWork, verdictWork } from '../../shoot/work.js';
import { rfc3339 } from '../../sky/clock.js';
import { sunPosition } from '../../sky/sun.js';
import { type Forecast, forecastLight } from '../forecast.js';
import { rampProblemOf } from '../targets.js';
import type { Remedy } from '../types.js';
import { appliedTo } from './apply.js';
import type { RemedyChange } from './change.js';
import type { Kind } from './kind.js';
import { remedyFor } from './remedy.js';
import { intervalFor, isCutShort, longerInterval, timeKinds } from './time.js';

export type Reason = 'too-dark' | 'too-bright' | 'too-fast';

// How far each change may go before it is no longer advice.
const LONGEST_SHUTTER_S = 256;
const MOST_LOOK_EV = 6;
const MOST_TOLERANCE_EV = 2;
const MOST_STEP_EV = 3;

/** Most work that trying remedies may be; those of an evening take a third. What it cuts off is left out. */
const MOST_WORK_TRIED = 16_000_000;
/** Light computed again, in units of a verdict's work, a frame. */
const WORK_OF_LIGHT = 10;

/** An impossible shoot, its light, and the work of all that was tried on it so far. */
interface Trial {
  readonly shoot: Shoot;
  readonly forecast: Forecast;
  worked: number;
}

/**
 * Remedies in the order in which a photographer would try them: longer shutter (and the interval it needs), more
 * of the interval for it, higher ISO, another aperture, another filter, darker look, looser tolerance, larger steps, closer cues,
 * shorter span. A kind that no amount of would cure is left out.
 *
 * @param frame first frame that cannot be met
 */
export function remediesFor(shoot: Shoot, forecast: Forecast, reason: Reason, frame: number): Remedy[] {
  const count = forecast.times.length;
  const kinds = [
    ...(reason === 'too-bright' ? [] : [longerShutter(shoot, count)]),
    ...(reason === 'too-bright' || !isCutShort(shoot, count) ? [] : timeKinds(shoot)),
    ...(reason === 'too-bright' ? [] : [higherIso(shoot)]),
    otherAperture(shoot, reason),
    ...(reason === 'too-dark' ? [] : [ANOTHER_FILTER]),
    ...(reason === 'too-bright' ? [] : [darkerLook(shoot)]),
    looserTolerance(shoot),
    largerSteps(shoot),
    closerCues(shoot),
  ];
  const trial: Trial = { shoot, forecast, worked: 0 };
  const found = curesAmong(kinds, trial);
  const shorter = shorterSpan(trial, frame);
  return asRemedies(shorter === undefined ? found : [...found, shorter], trial);
}

/** Remedies for a shoot whose intervals have no time for any shutter at all. */
export function timeRemedies(shoot: Shoot, forecast: Forecast): Remedy[] {
  const kinds = [longerInterval(shoot, forecast.times.length), ...timeKinds(shoot)];
  const trial: Trial = { shoot, forecast, worked: 0 };
  return asRemedies(curesAmong(kinds, trial), trial);
}

function asRemedies(changes: readonly RemedyChange[], { shoot, forecast }: Trial): Remedy[] {
  return changes.flatMap((change) => remedyFor(shoot, forecast, change) ?? []);
}

function curesAmong(kinds: readonly (Kind | undefined)[], trial: Trial): RemedyChange[] {
  return kinds.flatMap((kind) => (kind && leastCure(kind, trial)) ?? []);
}

function leastCure({ amounts, at, rising }: Kind, trial: Trial): RemedyChange | undefined {
  const cures = (amount: number) => isPossible(at(amount), trial);
  if (!rising) {
    for (let amount = 1; amount <= amounts; amount++) if (cures(amount)) return at(amount);
    return undefined;
  }
  if (amounts < 1 || !cures(amounts)) return undefined;
  let [fails, works] = [0, amounts];
  while (works - fails > 1) {
    const middle = (fails + works) >> 1;
    if (cures(middle)) works = middle;
    else fails = middle;
  }
  return isWornOut(trial) ? undefined : at(works);
}

/** Whether a changed shoot has a ramp, as far as work is left; its light is computed again only where its frames or their views differ. */
function isPossible(change: RemedyChange, trial: Trial): boolean {
  const { shoot, forecast } = trial;
  const changed = { ...shoot, ...appliedTo(shoot, forecast, change) };
  if (!hasExtent(changed)) return false;
  const { intervalS, span: asked, moves } = shoot;
  if (changed.intervalS === intervalS && changed.span === asked && changed.moves === moves) {
    return mayTry(changed, forecast.times.length, 0, trial) && hasRamp(changed, forecast);
  }
  const span = shootSpan(changed);
  if (span.kind !== 'ok' || !mayTry(changed, span.times.length, WORK_OF_LIGHT, trial)) return false;
  return hasRamp(changed, forecastLight(changed, span.times));
}

/** Counts the work of a verdict; false where too much is done, or where the remedy would be no shoot to plan. */
function mayTry(changed: Shoot, frameCount: number, workOfFrame: number, trial: Trial): boolean {
  if (planWork(changed, frameCount) > MOST_WORK) return false;
  trial.worked += verdictWork(changed, frameCount) + workOfFrame * frameCount;
  return !isWornOut(trial);
}

function isWornOut({ worked }: Trial): boolean {
  return worked > MOST_WORK_TRIED;
}

function hasRamp(shoot: Shoot, forecast: Forecast): boolean {
  const { problem } = rampProblemOf(shoot, forecast);
  return shutterFits(problem) && rampExists(problem);
}

/** Whether a span by sun altitude runs the way its direction does: one cut short may have turned round. */
function hasExtent({ span, direction }: Shoot): boolean {
  if ('startAt' in span) return true;
  const fall = span.fromSunAltitudeDeg - span.toSunAltitudeDeg;
  return direction === 'dusk' ? fall > 0 : fall < 0;
}

function stepOf({ stepsPerStop }: Camera, control: DialControl, label: string): number {
  return dialStep(control, label, stepsPerStop) as number; // the shoot was checked
}

function longerShutter(shoot: Shoot, frameCount: number): Kind {
  const { camera, intervalS } = shoot;
  const { stepsPerStop } = camera;
  const { gapS } = shootGap(shoot, frameCount);
  const longest = stepOf(camera, 'shutter', camera.shutter.longest);
  const inside = Math.ceil(
    -stepsPerStop * Math.log2(longestTimeInside(intervalS, { ...camera, gapS })) - 1e-9,
  );
  const first = Math.max(longest, inside); // what the interval leaves of the dial today
  const last = Math.ceil(-stepsPerStop * Math.log2(LONGEST_SHUTTER_S));
  return {
    amounts: first - last,
    rising: false, // a longer interval has fewer frames, and so more light to follow from one to the next
    at: (amount) => {
      const step = first - amount;
      // Where no interval is long enough for the move as well, the shoot stays as it is, and impossible.
      const needS = intervalFor(shoot, frameCount, timeOfStep(step, stepsPerStop)) ?? intervalS;
      return {
        change: 'longer-shutter',
        shutter: dialLabel('shutter', Math.min(step, longest), stepsPerStop),
        fromShutter: dialLabel('shutter', longest, stepsPerStop),
        ...(needS > intervalS ? { intervalS: needS } : {}),
        fromIntervalS: intervalS,
      };
    },
  };
}

function higherIso(shoot: Shoot): Kind {
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
function otherAperture(shoot: Shoot, reason: Reason): Kind | undefined {
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

const ANOTHER_FILTER: Kind = {
  amounts: 10,
  rising: false,
  at: (stops) => ({ change: 'another-filter', stops }),
};

function darkerLook(shoot: Shoot): Kind | undefined {
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

function looserTolerance(shoot: Shoot): Kind {
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

function largerSteps(shoot: Shoot): Kind {
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

function closerCues(shoot: Shoot): Kind {
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

/** The longest stretch before the frame that cannot be met, or, if that is nothing, the longest after it. */
function shorterSpan(trial: Trial, frame: number): RemedyChange | undefined {
  const { shoot, forecast } = trial;
  const last = forecast.times.length - 1;
  // An end that is moved may leave a filter change without room to land: go on a little.
  for (let end = frame - 1; end >= Math.max(1, frame - 12); end--) {
    const candidate = cut(shoot, forecast, 0, end);
    if (isPossible(candidate, trial)) return candidate;
  }
  let [fails, works] = [frame, last];
  if (works - fails < 1 || !isPossible(cut(shoot, forecast, works - 1, last), trial)) return undefined;
  while (works - fails > 1) {
    const middle = (fails + works) >> 1;
    if (isPossible(cut(shoot, forecast, middle, last), trial)) works = middle;
    else fails = middle;
  }
  const candidate = cut(shoot, forecast, works, last);
  return isPossible(candidate, trial) ? candidate : undefined;
}

function cut(shoot: Shoot, { times, zone }: Forecast, first: number, last: number): RemedyChange {
  const { latitudeDeg, longitudeDeg } = shoot.place;
  const clock = (i: number) => rfc3339(times[i], zone);
  if ('startAt' in shoot.span) {
    return { change: 'shorter-span', span: { startAt: clock(first), endAt: clock(last) } };
  }
  // Rounded inward, so that the shorter span holds no frame more.
  const degrees = (i: number) => sunPosition(times[i], latitudeDeg, longitudeDeg).altitudeDeg;
  const falls = shoot.direction === 'dusk';
  const inward = (deg: number, up: boolean) =>
    rounded((up ? Math.ceil(deg * 10) : Math.floor(deg * 10)) / 10);
  const from = first === 0 ? shoot.span.fromSunAltitudeDeg : inward(degrees(first), !falls);
  const to = last === times.length - 1 ? shoot.span.toSunAltitudeDeg : inward(degrees(last), falls);
  return { change: 'shorter-span', span: { fromSunAltitudeDeg: from, toSunAltitudeDeg: to } };
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
