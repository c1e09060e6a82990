// Where the moves do not fit into the time: each single change that would make them fit.

import { clipLengthS, frameCountOf } from '../footage/frames.js';
import { type Asked, longestShutterS, type MoveFinding, type MoveRemedy, recordingOf } from './asked.js';
import { easePeakSlope } from './ease.js';
import { otherLengths } from './lengths.js';
import { moreFrames, roundedInterval } from './pace.js';
import { type FrameBudget, fits, leastIntervalS, lengthShareThatFits } from './time-budget.js';
import { secondsText } from './words.js';

/** A move cut to less than this share of itself is another move, and no remedy. Our own choice. */
const LEAST_SHARE = 0.05;

/** Frame with the least slack, the first of equals. */
export function tightestFrame(budgets: readonly FrameBudget[]): number {
  // Sums that differ in their last bits are equal.
  return budgets.reduce((tight, { slackS }, i) => (slackS < budgets[tight].slackS - 1e-9 ? i : tight), 0);
}

/** What an interval fails to hold, or nothing. */
export function noTime(asked: Asked): MoveFinding[] {
  const failing = asked.budgets.filter((budget) => !fits(budget));
  if (failing.length === 0) return [];
  const frame = tightestFrame(asked.budgets);
  const { shutterS, darkS, writeS, moveS, settleS, slackS } = asked.budgets[frame];
  const parts = (
    [
      ['shutter', shutterS],
      ['dark frame', darkS],
      ['writing', writeS],
      ['moving', moveS],
      ['settling', settleS],
    ] as const
  )
    .filter(([, seconds]) => seconds > 0)
    .map(([what, seconds]) => `${what} ${secondsText(seconds)}`);
  return [
    {
      kind: 'no-time',
      level: 'warning',
      frame,
      text: `Frame ${frame + 1} needs ${secondsText(-slackS)} more than its interval of ${asked.intervalS} s: ${parts.join(', ')}. ${failing.length} of ${asked.budgets.length} frames do not fit.`,
      remedies: [
        ...longerInterval(asked),
        ...shorterShutter(asked, failing),
        ...withoutDarkFrame(asked),
        ...shorterMove(asked),
        ...shorterSettle(asked, failing),
        ...shorterWrite(asked, failing),
      ],
    },
  ];
}

function longerInterval(asked: Asked): MoveRemedy[] {
  const recordingS = recordingOf(asked);
  const intervalS = leastIntervalS(asked.travels, recordingS, longestShutterS(asked), asked);
  if (intervalS === undefined || intervalS <= asked.intervalS) return [];
  const frameCount = frameCountOf(recordingS, intervalS);
  const clipS = clipLengthS(frameCount, asked.clipFps);
  return [
    {
      change: 'longer-interval',
      text: `Raise the interval to ${intervalS} s: ${frameCount} frames in the same time, a clip of ${secondsText(clipS)}.`,
      intervalS,
      frameCount,
      recordingS,
      clipS,
    },
  ];
}

function shorterShutter({ darkFrame }: Asked, failing: readonly FrameBudget[]): MoveRemedy[] {
  const rooms = failing.map(({ shutterS, slackS }) => shutterS + slackS / (darkFrame ? 2 : 1));
  const shutterS = Math.floor(Math.min(...rooms) * 1000) / 1000;
  if (shutterS <= 0) return [];
  return [
    {
      change: 'shorter-shutter',
      text: `Keep the shutter at ${shutterS} s or shorter in true time.`,
      shutterS,
    },
  ];
}

function withoutDarkFrame({ budgets, darkFrame }: Asked): MoveRemedy[] {
  if (!darkFrame || budgets.some(({ darkS, slackS }) => slackS + darkS < -1e-9)) return [];
  return [
    {
      change: 'no-dark-frame',
      text: 'Turn long-exposure noise reduction off: its dark frame takes as long as the shutter.',
    },
  ];
}

function shorterMove({ travels, budgets }: Asked): MoveRemedy[] {
  const share = lengthShareThatFits(
    travels,
    budgets.map(({ moveS, slackS }) => moveS + slackS),
  );
  if (share < LEAST_SHARE || share >= 1) return [];
  return [otherLengths(travels, share, ({ mode }) => mode === 'stopped')];
}

function shorterSettle(_: Asked, failing: readonly FrameBudget[]): MoveRemedy[] {
  const settleS = Math.floor(least(failing.map((budget) => budget.settleS + budget.slackS)) * 100) / 100;
  if (settleS < 0) return [];
  return [{ change: 'shorter-settle', text: `Let the camera settle for ${settleS} s, no longer.`, settleS }];
}

function shorterWrite(_: Asked, failing: readonly FrameBudget[]): MoveRemedy[] {
  const writeS = Math.floor(least(failing.map((budget) => budget.writeS + budget.slackS)) * 100) / 100;
  if (writeS < 0) return [];
  return [{ change: 'shorter-write', text: `Use a card or a format that writes in ${writeS} s.`, writeS }];
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

/** Continuous moves that would have to go faster than their motor can. */
export function gearTooSlow(asked: Asked): MoveFinding[] {
  const recordingS = recordingOf(asked);
  if (recordingS === 0) return [];
  return asked.travels.flatMap((travel) => {
    const { axis, unit, mode, motor, length, ease } = travel;
    const peak = (Math.abs(length) * easePeakSlope(ease)) / recordingS;
    const { topSpeed } = motor;
    if (mode !== 'continuous' || topSpeed === undefined || peak <= topSpeed * (1 + 1e-9)) return [];
    const speed = (value: number) => `${Number(value.toPrecision(3))}${unit === 'deg' ? '°' : ' m'} a second`;
    const frameCount = Math.ceil((recordingS * peak) / topSpeed / asked.intervalS - 1e-9) + 1;
    const intervalS = roundedInterval((recordingS * peak) / topSpeed / (asked.budgets.length - 1), 'up');
    const longer = (asked.budgets.length - 1) * intervalS;
    return [
      {
        kind: 'gear-too-slow' as const,
        level: 'warning' as const,
        text: `The ${axis} would have to reach ${speed(peak)}; its motor goes ${speed(topSpeed)}.`,
        remedies: [
          otherLengths(asked.travels, topSpeed / peak, (other) => other === travel),
          ...moreFrames(asked, frameCount).filter(({ change }) => change === 'longer-recording'),
          {
            change: 'longer-interval' as const,
            text: `Raise the interval to ${intervalS} s for the same frames: ${secondsText(longer)} in all.`,
            intervalS,
            frameCount: asked.budgets.length,
            recordingS: longer,
            clipS: clipLengthS(asked.budgets.length, asked.clipFps),
          },
        ],
      },
    ];
  });
}
