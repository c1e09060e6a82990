// The review composed: frames and plan in, what happened out.

import { within } from '../check.js';
import { exposingS } from '../footage/bracket.js';
import { groupWith, hold, listOf, text } from '../hold.js';
import { checkMade } from '../plan/plan-check.js';
import type { PlanMade } from '../plan/types.js';
import { parseRfc3339, rfc3339, type Zone, zoneOf } from '../sky/clock.js';
import { framesOfShots } from './brackets.js';
import { hoursFastMs, secondsFast } from './camera-clock.js';
import { reviewedCues } from './cues.js';
import { type CuesStanding, cuesStanding } from './cues-done.js';
import { type Lens, lensesOf, median } from './lens.js';
import { type LightThen, levelsOf, lightOf } from './light.js';
import { noticed } from './notes.js';
import { offsetsOf, type Wanted } from './offsets.js';
import { placesOf } from './places.js';
import { planLight } from './plan-light.js';
import { type Shot, shotsOf } from './taken.js';
import type { ForecastCheck, LightRead, Review, ReviewFrame, ReviewOptions, TakenFrame } from './types.js';

/** Our choice: what the sliders of most raw developers reach, less some. */
const MOST_EV = 3;
/** One just-noticeable difference in stops, and the white for which it holds. Source: DICOM PS3.14, grayscale standard display function. */
const JUST_NOTICEABLE = { justNoticeableEv: 0.01015, whiteCdM2: 200 };
const LIGHT_EVERY_S = 300;

/**
 * Holds frames that were taken against the plan: which frame each is, when every cue was done, what went wrong, what the light
 * did, and by how many stops each frame is to be brightened so that the clip follows the plan's look. The order of the frames
 * does not matter. Source: W. S. Cleveland, Robust locally weighted regression and smoothing scatterplots, JASA 74 (1979).
 *
 * @param plan that was shot
 * @param frames as their files have them, one or more
 * @param options what else is known
 * @returns the review; `settingEv100 - offsetEv` of a frame is its `targetEv100`
 * @throws RangeError without frames, on a time that is none, a shutter, ISO or f-number that is not positive, a filter that is
 *   not the shoot's, or a mostEv that is not from 0.01 to 10
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { reviewFrames } from '@evenfall/core';
 *
 * const taken = plan.frames.map(({ frame, at, shutterS, iso, fNumber }) => ({
 *   file: `IMG_${frame}.JPG`, at, shutterS, iso, fNumber,
 * }));
 * const review = reviewFrames(plan, taken.filter((_, frame) => frame !== 7));
 * review.missingFrames; // → [7]
 * review.cues.every(({ lateS }) => lateS === 0); // → true
 * Math.abs(review.frames[0].offsetEv - plan.frames[0].errorEv) < 1e-9; // → true
 * reviewFrames(plan, taken, { mostEv: 0 }); // throws RangeError: mostEv must be from 0.01 to 10, got 0
 * ```
 */
export function reviewFrames(
  plan: PlanMade,
  frames: readonly TakenFrame[],
  options: ReviewOptions = {},
): Review {
  checkMade(plan);
  hold('frames', frames, listOf(groupWith({ file: text })));
  hold('options', options, groupWith({}));
  const mostEv = within('mostEv', options.mostEv ?? MOST_EV, 0.01, 10);
  const zone = zoneOf(plan.shoot.place);
  const { shots: files, others, copies } = shotsOf(frames, plan, zone);
  if (files.length === 0) throw new RangeError('frames must hold one or more, got none');
  const shots = framesOfShots(files, plan);
  const startMs = parseRfc3339(plan.frames[0]!.at)!;
  const { intervalS } = plan.shoot;
  const { fastMs, timesMs, places, isDoubled, standing } = inTime(shots, plan, startMs, options);

  const lightAt = planLight(plan, startMs);
  const levels = levelsOf(shots, timesMs, options.calibration);
  const isInside = (place: number) => place >= 0 && place < plan.frames.length;
  const forecasts = timesMs.map((ms) => lightAt(ms));
  const bareOverForecastEv = shots.map(({ bareEv100 }, i) => {
    const level = levels[i];
    return level === undefined || !isInside(places[i]!)
      ? Number.NaN
      : bareEv100 + level.overMeteredEv - forecasts[i]!.sceneEv100;
  });
  const lens = lensesOf(shots, { plan, options, timesMs, done: standing.done, bareOverForecastEv });
  const settings = shots.map(({ bareEv100 }, i) => bareEv100 + lens.lenses[i]!.stops);
  const plannedErrors = places.map((place) => plan.frames[place]?.errorEv ?? 0);
  const light = lightOf({
    timesMs,
    forecasts,
    settings,
    plannedErrors,
    overForecastEv: bareOverForecastEv.map((ev, i) => ev + lens.lenses[i]!.stops),
    isClipped: levels.map((level) => level?.isClipped ?? false),
    isPlannedLens: places.map(
      (place, i) => plan.frames[place]?.filters.join('\n') === lens.lenses[i]!.names.join('\n'),
    ),
    readings: options.readings ?? [],
    lightAt,
    reachMs: Math.max(15_000 * intervalS, 180_000),
  });
  const spoilt = spoiltBy(lens.lenses, plan, places, light);
  const wanted: Wanted[] = shots.map((_, i) => ({
    settingEv100: settings[i]!,
    targetEv100: light.targetEv100[i]!,
    flickerEv: options.evenFlicker === true ? (light.flickerEv[i] ?? 0) : 0,
    // Another frame stands in for what is spoilt; what has no place of its own stands in for nobody.
    isGood:
      !spoilt.isSpoilt[i]! &&
      !isDoubled[i]! &&
      !(levels[i]?.isClipped ?? false) &&
      !shots[i]!.missingEv?.includes(0),
    replace: options.replaceSpoilt === true && spoilt.isSpoilt[i]!,
  }));
  const offsets = offsetsOf(wanted, mostEv);

  const reviewed = shots.map((shot, i): ReviewFrame => {
    const place = places[i]!;
    const { offsetEv, beyondEv, flickerEv, shownShot } = offsets.frames[i]!;
    const busyS = exposingS(shot.shutterS, plan.shoot.camera);
    return {
      file: shot.taken.file,
      frame: isInside(place) ? place : null,
      at: rfc3339(timesMs[i]!, zone),
      shutter: shot.shutter,
      shutterS: shot.shutterS,
      iso: shot.iso,
      isoExact: shot.isoExact,
      aperture: shot.aperture,
      fNumber: shot.fNumber,
      filters: lens.lenses[i]!.names,
      filterStops: lens.lenses[i]!.stops,
      settingEv100: settings[i]!,
      ...(isInside(place) ? { plannedEv100: plan.frames[place]!.settingEv100 } : {}),
      sceneEv100: light.sceneEv100[i]!,
      targetEv100: light.targetEv100[i]!,
      offsetEv,
      ...(flickerEv === 0 ? {} : { flickerEv }),
      ...(beyondEv === 0 ? {} : { beyondEv }),
      ...(levels[i] === undefined ? {} : { readEv100: settings[i]! + levels[i].overMeteredEv }),
      ...(levels[i]?.isClipped ? { clipped: true } : {}),
      ...(spoilt.isSpoilt[i] ? { spoilt: true } : {}),
      ...(isDoubled[i] ? { doubled: true } : {}),
      ...(standing.isUnplanned[i] ? { unplanned: true } : {}),
      ...(busyS > intervalS * (1 + 1e-9) ? { ranOver: true } : {}),
      ...(shownShot === undefined ? {} : { shows: shots[shownShot]!.taken.file }),
      ...(shot.exposures && { exposures: shot.exposures }),
      ...(shot.missingEv && shot.missingEv.length > 0 ? { missingEv: shot.missingEv } : {}),
    };
  });
  const taken = new Set(places);
  const missingFrames = plan.frames.map(({ frame }) => frame).filter((frame) => !taken.has(frame));
  const cues = reviewedCues(plan, { shots, places, done: standing.done, seen: lens.seen });
  const [first, last] = [0, shots.length - 1];
  const summary: Review['summary'] = {
    plannedFrames: plan.frames.length,
    takenFrames: shots.length,
    ...(places[last]! > places[first]!
      ? { intervalS: (timesMs[last]! - timesMs[first]!) / 1000 / (places[last]! - places[first]!) }
      : {}),
    clockFastS: fastMs / 1000,
    ...offsets.summary,
    mostEv,
    ...JUST_NOTICEABLE,
    lightFrom: light.from,
  };
  const offEv = median(settings.map((ev, i) => ev - light.targetEv100[i]! - plannedErrors[i]!));
  return {
    format: 'evenfall-review/1',
    title: plan.shoot.title,
    summary,
    frames: reviewed,
    cues,
    missingFrames,
    ...(light.check === undefined ? {} : { forecast: light.check satisfies ForecastCheck }),
    light: light.from === 'forecast' ? [] : lightRows(plan, light, startMs, places, zone),
    notes: noticed(plan, {
      ...{ summary, frames: reviewed, cues, missingFrames, others, copies, places, timesMs },
      isFine: shots.map((shot) => shot.isFine),
      stayed: [...lens.seen].flatMap(([cue, at]) => (at === undefined ? [cue] : [])),
      stackBefore: (cue) => plan.frames[plan.cues[cue]!.frame - 1]!.filters,
      isAssumed: lens.isAssumed,
      isSpoiltSeen: spoilt.isSeen,
      offForecastEv: light.from === 'forecast' ? offEv : 0,
    }),
  };
}

/** True times, places and cues, once the camera's clock is put right. */
function inTime(shots: readonly Shot[], plan: PlanMade, startMs: number, { clockFastS }: ReviewOptions) {
  const { intervalS } = plan.shoot;
  const withClock = (fastMs: number) => {
    const timesMs = shots.map(({ clockMs }) => clockMs - fastMs);
    const { places, isDoubled } = placesOf(shots, timesMs, { startMs, plan });
    return { fastMs, timesMs, places, isDoubled, standing: standingOf(shots, places, isDoubled, plan) };
  };
  if (clockFastS !== undefined) return withClock(1000 * clockFastS);
  const hoursMs = hoursFastMs(shots, plan, startMs);
  const found = withClock(hoursMs);
  const { timesMs, places, standing } = found;
  const lates = reviewedCues(plan, { shots, places, done: standing.done, seen: new Map() }).flatMap(
    ({ lateS, seen }) => (lateS === null || !seen ? [] : [lateS]),
  );
  const endMs = startMs + 1000 * intervalS * (plan.frames.length - 1);
  const moreS = secondsFast(
    {
      first: (timesMs[0]! - startMs) / 1000,
      last: (timesMs[timesMs.length - 1]! - endMs) / 1000,
      cues: lates,
    },
    intervalS,
  );
  return moreS === 0 ? found : withClock(hoursMs + 1000 * moreS);
}

/** Cues that stand at each shot; at one whose place another has, those that stand at that one. */
function standingOf(
  shots: readonly Shot[],
  places: readonly number[],
  isDoubled: readonly boolean[],
  plan: PlanMade,
): CuesStanding {
  const single = shots.flatMap((_, i) => (isDoubled[i] ? [] : [i]));
  const { done, isUnplanned } = cuesStanding(
    single.map((i) => shots[i]!),
    single.map((i) => places[i]!),
    plan,
  );
  const nthOf = new Map(single.map((i, nth) => [places[i]!, nth]));
  return {
    done: places.map((place) => done[nthOf.get(place)!]!),
    isUnplanned: isDoubled.map((doubled, i) => !doubled && isUnplanned[nthOf.get(places[i]!)!]!),
  };
}

/** Stops off the light from which a frame beside a filter change is spoilt. */
const SPOILT_EV = 0.5;

/** Frames that a hand on the lens spoilt, where levels show it, or may have, where the plan says so. */
function spoiltBy(
  lenses: readonly Lens[],
  plan: PlanMade,
  places: readonly number[],
  light: LightThen,
): { readonly isSpoilt: readonly boolean[]; readonly isSeen: boolean } {
  const isSpoilt = lenses.map(() => false);
  const affected = plan.frames.filter((frame) => frame.affected).length;
  const changes = plan.cues.filter(({ changes }) =>
    changes.some(({ control }) => control === 'filter'),
  ).length;
  const each = changes === 0 ? 0 : Math.round(affected / changes);
  const isSeen = light.from === 'levels';
  for (let i = 1; i < lenses.length; i++) {
    if (lenses[i]!.names.join('\n') === lenses[i - 1]!.names.join('\n')) continue;
    for (let j = 0; j < lenses.length; j++) {
      const after = places[j]! - places[i]!;
      if (isSeen ? Math.abs(after) > each + 2 : after < 0 || after >= each) continue;
      isSpoilt[j] ||= isSeen ? Math.abs(light.awayEv[j] ?? 0) > SPOILT_EV : true;
    }
  }
  return { isSpoilt, isSeen };
}

function lightRows(
  plan: PlanMade,
  light: LightThen,
  startMs: number,
  places: readonly number[],
  zone: Zone,
): LightRead[] {
  const { intervalS } = plan.shoot;
  const every = Math.max(1, Math.round(LIGHT_EVERY_S / intervalS));
  const [from, to] = [Math.max(0, places[0]!), places[places.length - 1]!];
  return plan.frames
    .filter(({ frame }) => frame >= from && frame <= to && (frame - from) % every === 0)
    .map(({ frame, sunAltitudeDeg, sceneEv100 }) => {
      const ms = startMs + 1000 * intervalS * frame;
      const at = rfc3339(ms, zone);
      return { at, sunAltitudeDeg, ev100: sceneEv100 + light.overForecastAt(ms), forecastEv100: sceneEv100 };
    });
}
