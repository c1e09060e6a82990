// Where the moves do not fit into the time: each single change that would make them fit.

import { bracketSum } from '../footage/bracket.js';
import { clipLengthS, frameCountOf } from '../footage/frames.js';
import { type Asked, longestShutterS, recordingOf } from './asked.js';
import { easePeakSlope } from './ease.js';
import { finding } from './english.js';
import type { MoveChange, MoveFinding } from './finding.js';
import { otherLengths } from './lengths.js';
import { moreFrames, roundedInterval } from './pace.js';
import { type FrameBudget, fits, leastIntervalS, lengthShareThatFits } from './time-budget.js';

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
  const found = {
    kind: 'no-time',
    frame,
    intervalS: asked.intervalS,
    failing: failing.length,
    frameCount: asked.budgets.length,
    ...asked.budgets[frame],
  } as const;
  return [
    finding('warning', found, [
      ...longerInterval(asked),
      ...shorterShutter(asked, failing),
      ...withoutDarkFrame(asked),
      ...shorterMove(asked),
      ...shorterSettle(asked, failing),
      ...shorterWrite(asked, failing),
    ]),
  ];
}

function longerInterval(asked: Asked): MoveChange[] {
  const recordingS = recordingOf(asked);
  const intervalS = leastIntervalS(asked.travels, recordingS, longestShutterS(asked), asked);
  if (intervalS === undefined || intervalS <= asked.intervalS) return [];
  const frameCount = frameCountOf(recordingS, intervalS);
  return [
    {
      change: 'longer-interval',
      intervalS,
      fromIntervalS: asked.intervalS,
      frameCount,
      recordingS,
      fromRecordingS: recordingS,
      clipS: clipLengthS(frameCount, asked.clipFps),
    },
  ];
}

function shorterShutter({ darkFrame, bracket }: Asked, failing: readonly FrameBudget[]): MoveChange[] {
  const rooms = failing.map(
    ({ shutterS, slackS }) => shutterS + slackS / (bracketSum(bracket) * (darkFrame ? 2 : 1)),
  );
  const shutterS = Math.floor(Math.min(...rooms) * 1000) / 1000;
  if (shutterS <= 0) return [];
  return [{ change: 'shorter-shutter', shutterS }];
}

function withoutDarkFrame({ budgets, darkFrame }: Asked): MoveChange[] {
  if (!darkFrame || budgets.some(({ darkS, slackS }) => slackS + darkS < -1e-9)) return [];
  return [{ change: 'no-dark-frame' }];
}

function shorterMove({ travels, budgets }: Asked): MoveChange[] {
  const share = lengthShareThatFits(
    travels,
    budgets.map(({ moveS, slackS }) => moveS + slackS),
  );
  if (share < LEAST_SHARE || share >= 1) return [];
  return [otherLengths(travels, share, ({ mode }) => mode === 'stopped')];
}

function shorterSettle(_: Asked, failing: readonly FrameBudget[]): MoveChange[] {
  const settleS = Math.floor(least(failing.map((budget) => budget.settleS + budget.slackS)) * 100) / 100;
  if (settleS < 0) return [];
  return [{ change: 'shorter-settle', settleS }];
}

function shorterWrite(_: Asked, failing: readonly FrameBudget[]): MoveChange[] {
  const writeS = Math.floor(least(failing.map((budget) => budget.writeS + budget.slackS)) * 100) / 100;
  if (writeS < 0) return [];
  return [{ change: 'shorter-write', writeS }];
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
    const frameCount = Math.ceil((recordingS * peak) / topSpeed / asked.intervalS - 1e-9) + 1;
    const intervalS = roundedInterval((recordingS * peak) / topSpeed / (asked.budgets.length - 1), 'up');
    return [
      finding('warning', { kind: 'gear-too-slow', axis, unit, speed: peak, topSpeed }, [
        otherLengths(asked.travels, topSpeed / peak, (other) => other === travel),
        ...moreFrames(asked, frameCount).filter(({ change }) => change === 'longer-recording'),
        {
          change: 'longer-interval',
          intervalS,
          fromIntervalS: asked.intervalS,
          frameCount: asked.budgets.length,
          recordingS: (asked.budgets.length - 1) * intervalS,
          fromRecordingS: recordingS,
          clipS: clipLengthS(asked.budgets.length, asked.clipFps),
        },
      ]),
    ];
  });
}
