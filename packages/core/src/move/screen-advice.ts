// How the moves will look in the clip, where that is worth a word: too fast, too slow, in jumps, smeared.

import type { Asked } from './asked.js';
import { finding } from './english.js';
import type { MoveChange, MoveFinding } from './finding.js';
import { otherLengths } from './lengths.js';
import { fewerFrames, moreFrames } from './pace.js';
import type { Travel } from './resolve.js';
import { COMFORT_CROSSING_S, fastestOnScreen, fewestFrames, UNSEEN_CROSSING_S } from './screen.js';
import { largestStep, stepsBelowSmallest } from './steps.js';

/** Smear above this share of the frame's width is worth a caution: two pixels of a clip 1920 wide. Our own choice. */
const BLUR_SHARE = 1 / 1000;

// A speed that is met to the last bits is met.
const tooFast = (crossingS: number) => crossingS < COMFORT_CROSSING_S * (1 - 1e-9);
const tooSlow = (crossingS: number) => crossingS > UNSEEN_CROSSING_S * (1 + 1e-9);

/** A picture that passes faster than comfort allows, or so slowly that nobody sees it move. */
export function onScreen(asked: Asked): MoveFinding[] {
  const { travels, budgets, clipFps, optics } = asked;
  const fastest = fastestOnScreen(travels, budgets.length, clipFps, optics);
  if (fastest === undefined) return [];
  const { frame, crossingS } = fastest;
  if (tooFast(crossingS)) {
    const frameCount = fewestFrames(travels, optics, clipFps, COMFORT_CROSSING_S);
    return [
      finding('caution', { kind: 'too-fast', frame, crossingS, limitS: COMFORT_CROSSING_S }, [
        ...(frameCount === undefined ? [] : moreFrames(asked, frameCount)),
        ...otherSpeed(asked, crossingS / COMFORT_CROSSING_S, (s) => !tooFast(s)),
      ]),
    ];
  }
  if (tooSlow(crossingS)) {
    const slow = fewestFrames(travels, optics, clipFps, UNSEEN_CROSSING_S);
    return [
      finding('info', { kind: 'too-slow', frame, crossingS, limitS: UNSEEN_CROSSING_S }, [
        ...otherSpeed(asked, crossingS / UNSEEN_CROSSING_S, (s) => !tooSlow(s)),
        ...(slow === undefined ? [] : fewerFrames(asked, slow - 1)),
      ]),
    ];
  }
  return [];
}

/**
 * All moves by a share of their length near the one given, so that their speed on screen is as wanted. Where a slide
 * runs against a pan, rounding each may leave more of the other: then a little further.
 */
function otherSpeed(
  { travels, budgets, clipFps, optics }: Asked,
  share: number,
  wanted: (crossingS: number) => boolean,
): MoveChange[] {
  const further = share < 1 ? 0.99 : 1.01;
  for (let tries = 0; tries < 50; tries++) {
    const remedy = otherLengths(travels, share * further ** tries);
    const changed = travels.map((travel, i) => ({ ...travel, length: remedy.lengths[i] }));
    const fastest = fastestOnScreen(changed, budgets.length, clipFps, optics);
    if (fastest !== undefined && wanted(fastest.crossingS)) return [remedy];
  }
  return [];
}

/** Steps smaller than the motor can make. */
export function smallSteps(asked: Asked): MoveFinding[] {
  const { travels, budgets } = asked;
  return travels.flatMap((travel) => {
    const { axis, unit, motor } = travel;
    const count = stepsBelowSmallest(travel, budgets.length);
    if (count === 0 || motor.smallestStep === undefined) return [];
    const longest = largestStep(travel, budgets.length);
    const all = longest < motor.smallestStep * (1 - 1e-9);
    const found = {
      kind: 'steps-too-small',
      axis,
      unit,
      smallestStep: motor.smallestStep,
      count,
      steps: budgets.length - 1,
      all,
    } as const;
    return [
      finding(
        all ? 'caution' : 'info',
        found,
        all ? [otherLengths(travels, motor.smallestStep / longest, (other) => other === travel)] : [],
      ),
    ];
  });
}

/** Smear of continuous moves, at the frame where it is most. */
export function smear({ travels, optics }: Asked, blurPx: readonly (number | undefined)[]): MoveFinding[] {
  if (!travels.some(({ mode }) => mode === 'continuous')) return [];
  const widthPx = optics?.sensor.widthPx;
  const frame = blurPx.reduce((most: number, px, i) => ((px ?? 0) > (blurPx[most] ?? 0) ? i : most), 0);
  const most = blurPx[frame];
  if (widthPx === undefined || most === undefined) return [];
  const caution = most > widthPx * BLUR_SHARE;
  return [
    finding(
      caution ? 'caution' : 'info',
      { kind: 'blur', frame, blurPx: most },
      caution && travels.every(canStop) ? [{ change: 'stop' }] : [],
    ),
  ];
}

/** Whether it is known how long a step would take. */
function canStop({ motor }: Travel): boolean {
  return motor.moveS !== undefined || motor.topSpeed !== undefined;
}
