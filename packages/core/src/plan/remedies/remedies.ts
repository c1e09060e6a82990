// What would make an impossible shoot possible: single changes, each with its least amount, each tried.
// A remedy is a changed shoot, so that nothing is promised that planning it again does not keep.

import { timeOfStep } from '../../exposure/dial.js';
import { exposingS } from '../../footage/bracket.js';
import { exactFps } from '../../footage/footage.js';
import { clipLengthS } from '../../footage/frames.js';
import { type RampProblem, shutterEnds } from '../../ramp/problem.js';
import { rampExists, solved } from '../../ramp/solve.js';
import type { Shoot } from '../../shoot/shoot.js';
import { spanOf } from '../../shoot/span.js';
import { shutterFits } from '../../shoot/time-left.js';
import { MOST_WORK, planWork, verdictWork } from '../../shoot/work.js';
import { rfc3339 } from '../../sky/clock.js';
import { sunPosition } from '../../sky/sun.js';
import { type Forecast, forecastOver } from '../forecast.js';
import { isMargin } from '../notes-tight.js';
import { reserveOf } from '../reserve.js';
import { type StopSignal, stopIf } from '../stop.js';
import { problemOver } from '../targets.js';
import type { Remedy, RemedyLeaves } from '../types.js';
import { appliedTo } from './apply.js';
import type { RemedyChange } from './change.js';
import type { Kind } from './kind.js';
import {
  ANOTHER_FILTER,
  closerCues,
  closerExposures,
  darkerLook,
  fasterShutter,
  fewerExposures,
  higherIso,
  largerSteps,
  longerShutter,
  looserTolerance,
  moreFilterChanges,
  otherAperture,
  type Reason,
  startFilter,
} from './kit-kinds.js';
import { remedyFor } from './remedy.js';
import { isCutShort, longerInterval, timeKinds } from './time.js';

/** Share of the frames: a remedy that leaves fewer says so. Our choice. */
const LEAST_CLIP_SHARE = 2 / 3;
/** Stops: what leaves less comes after what leaves more. Our choice. */
const LITTLE_RESERVE_EV = 0.5;
/** Less of a span by the sun is no shoot: some six minutes of most evenings. Our choice. */
const LEAST_SPAN_DEG = 1;

/** Most work that trying remedies may be; those of an evening take a third. What it cuts off is left out. */
const MOST_WORK_TRIED = 16_000_000;
/** Light computed again, in units of a verdict's work, a frame. */
const WORK_OF_LIGHT = 10;

/** An impossible shoot, its light, and the work of all that was tried on it so far. */
interface Trial {
  readonly shoot: Shoot;
  readonly forecast: Forecast;
  /** When to give up. */
  readonly signal: StopSignal | undefined;
  worked: number;
  /** Work of the plans solved to see how tight they are. */
  solved: number;
  /** Of the last change that was found to cure; `work` is its plan's. */
  cured?: { readonly problem: RampProblem; readonly work: number };
}

type SunSpan = Exclude<Shoot['span'], { readonly startAt: string }>;
type ShorterSpan = Extract<RemedyChange, { change: 'shorter-span' }>;

/** A change that cures, with what it keeps of the kit's reach. */
interface Cure {
  readonly change: RemedyChange;
  readonly leaves: RemedyLeaves;
}

/**
 * Remedies in the order in which a photographer would try them: longer or shorter shutter (and the interval it needs), more
 * of the interval for it, a smaller bracket, higher ISO, another aperture, another filter, another one to begin with, more filter changes,
 * darker look, looser tolerance, larger steps, closer cues, shorter span; but those that leave less than half a stop of
 * reserve after those that leave more. A kind that no amount of would cure is left out.
 *
 * @param unmet why there is no ramp, and the first frame that cannot be met
 */
export function remediesFor(
  shoot: Shoot,
  forecast: Forecast,
  { reason, frame }: { readonly reason: Reason; readonly frame: number },
  signal?: StopSignal,
): Remedy[] {
  const count = forecast.times.length;
  const kinds = [
    ...(reason === 'too-bright' ? [] : [longerShutter(shoot, count)]),
    ...(reason === 'too-bright' || !isCutShort(shoot, count) ? [] : timeKinds(shoot)),
    fewerExposures(shoot),
    closerExposures(shoot),
    ...(reason === 'too-dark' ? [] : [fasterShutter(shoot)]),
    ...(reason === 'too-bright' ? [] : [higherIso(shoot)]),
    otherAperture(shoot, reason),
    ...(reason === 'too-dark' ? [] : [ANOTHER_FILTER]),
    startFilter(shoot),
    moreFilterChanges(shoot),
    ...(reason === 'too-bright' ? [] : [darkerLook(shoot)]),
    looserTolerance(shoot),
    largerSteps(shoot),
    closerCues(shoot),
  ];
  const trial: Trial = { shoot, forecast, signal, worked: 0, solved: 0 };
  const found = curesAmong(kinds, trial);
  const shorter = cureBy(shorterSpan(trial, frame), trial);
  return asRemedies([...found, ...shorter], trial);
}

/** Remedies for a shoot whose intervals have no time for any shutter at all. */
export function timeRemedies(shoot: Shoot, forecast: Forecast, signal?: StopSignal): Remedy[] {
  const kinds = [
    longerInterval(shoot, forecast.times.length),
    ...timeKinds(shoot),
    fewerExposures(shoot),
    closerExposures(shoot),
  ];
  const trial: Trial = { shoot, forecast, signal, worked: 0, solved: 0 };
  return asRemedies(curesAmong(kinds, trial), trial);
}

/**
 * The part that the sun does reach of a span that it does not pass through, or, where that has no ramp, the longest part
 * of it that has; none where there is none.
 *
 * @param span within what the sun reaches that day
 */
export function spanRemedies(shoot: Shoot, span: SunSpan, signal?: StopSignal): Remedy[] {
  const whole = { change: 'shorter-span', span } as const;
  if (!isWorthIt(whole)) return [];
  const reached = { ...shoot, span };
  const passed = spanOf(reached);
  if (passed.kind !== 'ok' || planWork(reached, passed.times.length) > MOST_WORK) return [];
  const forecast = forecastOver(reached, passed.times);
  const trial: Trial = { shoot: reached, forecast, signal, worked: 0, solved: 0 };
  if (isPossible(whole, trial)) return asRemedies(cureBy(whole, trial), trial);
  const { problem } = problemOver(reached, forecast);
  if (!shutterFits(problem)) return [];
  const ramp = solved(problem);
  return ramp.kind === 'ok' ? [] : asRemedies(cureBy(shorterSpan(trial, ramp.frame), trial), trial);
}

function asRemedies(cures: readonly Cure[], { shoot, forecast }: Trial): Remedy[] {
  const isLittle = ({ leaves }: Cure) => Number(leaves.reserveEv < LITTLE_RESERVE_EV);
  return [...cures]
    .sort((a, b) => isLittle(a) - isLittle(b))
    .flatMap(({ change, leaves }) => remedyFor(shoot, forecast, change, leaves) ?? []);
}

function curesAmong(kinds: readonly (Kind | undefined)[], trial: Trial): Cure[] {
  return kinds.flatMap((kind) => (kind === undefined ? [] : cureBy(leastCure(kind, trial), trial)));
}

/** A change just found with what it keeps: every search ends with the last change that cured. */
function cureBy(change: RemedyChange | undefined, trial: Trial): Cure[] {
  const { cured } = trial;
  if (change === undefined || cured === undefined) return [];
  const { darkEv, brightEv } = reserveOf(cured.problem);
  const reserveEv = Math.min(darkEv, brightEv);
  return [
    { change, leaves: { reserveEv, ...littleSpare(cured, trial), ...clipCut(change, cured.problem, trial) } },
  ];
}

/** What a longer interval leaves of the clip, where that is little; a shorter span says itself what it leaves out. */
function clipCut(
  change: RemedyChange,
  { targetEv100 }: RampProblem,
  { shoot, forecast }: Trial,
): Pick<RemedyLeaves, 'clip'> {
  const [left, asked] = [targetEv100.length, forecast.times.length];
  if (change.change === 'shorter-span' || left >= LEAST_CLIP_SHARE * asked) return {};
  const fps = exactFps(shoot.clipFps);
  return { clip: { clipS: clipLengthS(left, fps), fromClipS: clipLengthS(asked, fps) } };
}

/** The time that the tightest interval of the plan keeps, where that is no margin; known where its plan is not too much work. */
function littleSpare(
  { problem, work }: NonNullable<Trial['cured']>,
  trial: Trial,
): Pick<RemedyLeaves, 'spareS'> {
  // Most kits cannot be tight at all: then nothing is solved.
  if (isMargin(spareS(problem, shutterEnds(problem).longestStep), problem.intervalS)) return {};
  if (trial.solved + work > MOST_WORK_TRIED) return {};
  trial.solved += work;
  const ramp = solved(problem);
  if (ramp.kind !== 'ok') return {};
  const longest = ramp.frames.reduce((least, { shutterStep }) => Math.min(least, shutterStep), Infinity);
  const left = spareS(problem, longest);
  return isMargin(left, problem.intervalS) ? {} : { spareS: Math.max(0, left) };
}

function spareS(problem: RampProblem, shutterStep: number): number {
  const { kit, intervalS, gapS } = problem;
  return intervalS - gapS - exposingS(timeOfStep(shutterStep, kit.stepsPerStop), problem);
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
  return budgetSpent(trial) ? undefined : at(works);
}

/** Whether a changed shoot has a ramp, as far as work is left; its light is computed again only where its frames or their views differ. */
function isPossible(change: RemedyChange, trial: Trial): boolean {
  const { shoot, forecast, signal } = trial;
  stopIf(signal);
  const changed = { ...shoot, ...appliedTo(shoot, forecast, change) };
  if (!hasExtent(changed)) return false;
  const { intervalS, span: asked, moves } = shoot;
  if (changed.intervalS === intervalS && changed.span === asked && changed.moves === moves) {
    return mayTry(changed, forecast.times.length, 0, trial) && hasRamp(changed, forecast, trial);
  }
  const span = spanOf(changed);
  if (span.kind !== 'ok' || !mayTry(changed, span.times.length, WORK_OF_LIGHT, trial)) return false;
  return hasRamp(changed, forecastOver(changed, span.times), trial);
}

/** Counts the work of a verdict; false where too much is done, or where the remedy would be no shoot to plan. */
function mayTry(changed: Shoot, frameCount: number, workOfFrame: number, trial: Trial): boolean {
  if (planWork(changed, frameCount) > MOST_WORK) return false;
  trial.worked += verdictWork(changed, frameCount) + workOfFrame * frameCount;
  return !budgetSpent(trial);
}

function budgetSpent({ worked }: Trial): boolean {
  return worked > MOST_WORK_TRIED;
}

function hasRamp(shoot: Shoot, forecast: Forecast, trial: Trial): boolean {
  const { problem } = problemOver(shoot, forecast);
  const has = shutterFits(problem) && rampExists(problem);
  if (has) trial.cured = { problem, work: planWork(shoot, forecast.times.length) };
  return has;
}

/** Whether a span by sun altitude runs the way its direction does: one cut short may have turned round. */
function hasExtent({ span, direction }: Shoot): boolean {
  if ('startAt' in span) return true;
  const fall = span.fromSunAltitudeDeg - span.toSunAltitudeDeg;
  return direction === 'dusk' ? fall > 0 : fall < 0;
}

/** The longest stretch before the frame that cannot be met, or, if that is nothing, the longest after it. */
function shorterSpan(trial: Trial, frame: number): RemedyChange | undefined {
  const { shoot, forecast } = trial;
  const last = forecast.times.length - 1;
  // An end that is moved may leave a filter change without room to land: go on a little.
  for (let end = frame - 1; end >= Math.max(1, frame - 12); end--) {
    const candidate = cut(shoot, forecast, 0, end);
    if (!isPossible(candidate, trial)) continue;
    if (isWorthIt(candidate)) return candidate;
    break;
  }
  let [fails, works] = [frame, last];
  if (works - fails < 1 || !isPossible(cut(shoot, forecast, works - 1, last), trial)) return undefined;
  while (works - fails > 1) {
    const middle = (fails + works) >> 1;
    if (isPossible(cut(shoot, forecast, middle, last), trial)) works = middle;
    else fails = middle;
  }
  const candidate = cut(shoot, forecast, works, last);
  return isWorthIt(candidate) && isPossible(candidate, trial) ? candidate : undefined;
}

function isWorthIt({ span }: ShorterSpan): boolean {
  if ('startAt' in span) return true;
  return Math.abs(span.fromSunAltitudeDeg - span.toSunAltitudeDeg) >= LEAST_SPAN_DEG;
}

function cut(shoot: Shoot, { times, zone }: Forecast, first: number, last: number): ShorterSpan {
  const clock = (i: number) => rfc3339(times[i], zone);
  if ('startAt' in shoot.span) {
    return { change: 'shorter-span', span: { startAt: clock(first), endAt: clock(last) } };
  }
  // Rounded inward, so that the shorter span holds no frame more.
  const degrees = (i: number) => sunPosition(times[i], shoot.place).altitudeDeg;
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
