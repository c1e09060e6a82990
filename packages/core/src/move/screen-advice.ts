// How the moves will look in the clip, where that is worth a word: too fast, too slow, in jumps, smeared.

import type { Asked, MoveFinding, MoveRemedy } from './asked.js';
import { otherLengths } from './lengths.js';
import { fewerFrames, moreFrames } from './pace.js';
import { COMFORT_CROSSING_S, fastestOnScreen, fewestFrames, UNSEEN_CROSSING_S } from './screen.js';
import { largestStep, stepsBelowSmallest } from './steps.js';
import { lengthText, secondsText } from './words.js';

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
  const at = `At its fastest, frame ${frame + 1}, the picture passes its own width in ${secondsText(crossingS)} of clip`;
  if (tooFast(crossingS)) {
    const frameCount = fewestFrames(travels, optics, clipFps, COMFORT_CROSSING_S) as number; // speed is known
    return [
      {
        kind: 'too-fast',
        level: 'caution',
        frame,
        text: `${at}; under ${COMFORT_CROSSING_S} s a move is hard to watch.`,
        remedies: [
          ...moreFrames(asked, frameCount),
          ...otherSpeed(asked, crossingS / COMFORT_CROSSING_S, (s) => !tooFast(s)),
        ],
      },
    ];
  }
  if (tooSlow(crossingS)) {
    const slow = fewestFrames(travels, optics, clipFps, UNSEEN_CROSSING_S) as number;
    return [
      {
        kind: 'too-slow',
        level: 'info',
        frame,
        text: `${at}: so slowly that it is hardly seen to move.`,
        remedies: [
          ...otherSpeed(asked, crossingS / UNSEEN_CROSSING_S, (s) => !tooSlow(s)),
          ...fewerFrames(asked, slow - 1),
        ],
      },
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
): MoveRemedy[] {
  const further = share < 1 ? 0.99 : 1.01;
  for (let tries = 0; tries < 50; tries++) {
    const remedy = otherLengths(travels, share * further ** tries);
    const changed = travels.map((travel, i) => ({ ...travel, length: remedy.lengths?.[i] ?? travel.length }));
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
    const smallest = `the motor's smallest, ${lengthText(motor.smallestStep, unit)}`;
    return [
      {
        kind: 'steps-too-small' as const,
        level: all ? ('caution' as const) : ('info' as const),
        text: all
          ? `Every step of the ${axis} is below ${smallest}: the picture will stand and jump.`
          : `${count} of ${budgets.length - 1} steps of the ${axis}, where it starts and ends, are below ${smallest}; frames repeat there.`,
        remedies: all
          ? [otherLengths(travels, motor.smallestStep / longest, (other) => other === travel)]
          : [],
      },
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
  return [
    {
      kind: 'blur',
      level: most > widthPx * BLUR_SHARE ? 'caution' : 'info',
      frame,
      text: `The move goes on while the shutter is open: at most ${Number(most.toPrecision(2))} pixels of smear, at frame ${frame + 1}. Stopped at every frame there is none.`,
      remedies: [],
    },
  ];
}
