// What is found in moves, and what would fix it, in English.

import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { LengthChange, MoveChange, MoveFinding, MoveFound, MoveRemedy, Pace } from './finding.js';
import { lengthText, secondsText } from './words.js';

const PARTS = [
  ['shutter', 'shutterS'],
  ['dark frame', 'darkS'],
  ['writing', 'writeS'],
  ['moving', 'moveS'],
  ['settling', 'settleS'],
] as const;

const fastest = ({ frame, crossingS }: Extract<MoveFound, { kind: 'too-fast' | 'too-slow' }>) =>
  `At its fastest, frame ${frame + 1}, the picture passes its own width in ${secondsText(crossingS)} of clip`;

/** Findings in English. */
export const englishFindings: Sentences<MoveFound> = {
  'no-time': ({ frame, intervalS, slackS, failing, frameCount, ...budget }) => {
    const parts = PARTS.filter(([, part]) => budget[part] > 0).map(
      ([what, part]) => `${what} ${secondsText(budget[part])}`,
    );
    return `Frame ${frame + 1} needs ${secondsText(-slackS)} more than its interval of ${intervalS} s: ${parts.join(', ')}. ${failing} of ${frameCount} frames do not fit.`;
  },
  'gear-too-slow': ({ axis, unit, speed, topSpeed }) => {
    const text = (value: number) => `${Number(value.toPrecision(3))}${unit === 'deg' ? '°' : ' m'} a second`;
    return `The ${axis} would have to reach ${text(speed)}; its motor goes ${text(topSpeed)}.`;
  },
  'steps-too-small': ({ axis, unit, smallestStep, count, steps, all }) => {
    const smallest = `the motor's smallest, ${lengthText(smallestStep, unit)}`;
    return all
      ? `Every step of the ${axis} is below ${smallest}: the picture will stand and jump.`
      : `${count} of ${steps} steps of the ${axis}, where it starts and ends, are below ${smallest}; frames repeat there.`;
  },
  'too-fast': (found) => `${fastest(found)}; under ${found.limitS} s a move is hard to watch.`,
  'too-slow': (found) => `${fastest(found)}: so slowly that it is hardly seen to move.`,
  blur: ({ frame, blurPx }) =>
    `The move goes on while the shutter is open: at most ${Number(blurPx.toPrecision(2))} pixels of smear, at frame ${frame + 1}. Stopped at every frame there is none.`,
};

const inTheSameTime = ({ frameCount, intervalS, clipS }: Pace) =>
  `Shoot ${frameCount} frames in the same time: an interval of ${intervalS} s, a clip of ${secondsText(clipS)}.`;
const otherLengths = (changed: readonly LengthChange[]) =>
  `${changed.map(({ axis, unit, from, to }) => `${axis} ${lengthText(to, unit)} instead of ${lengthText(from, unit)}`).join(', ')}.`;

/** Changes that fix a move, in English. */
export const englishMoveChanges: Sentences<MoveChange, 'change'> = {
  'more-frames': ({ shutterS, longestS, ...pace }) =>
    shutterS === undefined || longestS === undefined
      ? inTheSameTime(pace)
      : `${inTheSameTime(pace)} It leaves ${secondsText(shutterS)} for a shutter that the plan opens for ${secondsText(longestS)}.`,
  'fewer-frames': inTheSameTime,
  'longer-recording': ({ frameCount, recordingS, fromRecordingS, clipS }) =>
    `Shoot ${frameCount} frames at the same interval: ${secondsText(recordingS)} instead of ${secondsText(fromRecordingS)}, a clip of ${secondsText(clipS)}.`,
  'longer-interval': ({
    intervalS,
    fromIntervalS,
    fromRecordingS,
    frameCount,
    recordingS = 0,
    clipS = 0,
  }) => {
    if (fromRecordingS === undefined) return `Raise the interval from ${fromIntervalS} to ${intervalS} s.`;
    return recordingS > fromRecordingS + 1e-6
      ? `Raise the interval to ${intervalS} s for the same frames: ${secondsText(recordingS)} in all.`
      : `Raise the interval to ${intervalS} s: ${frameCount} frames in the same time, a clip of ${secondsText(clipS)}.`;
  },
  'shorter-shutter': ({ shutterS }) => `Keep the shutter at ${shutterS} s or shorter in true time.`,
  'no-dark-frame': () =>
    'Turn long-exposure noise reduction off: its dark frame takes as long as the shutter.',
  'shorter-write': ({ writeS, fromWriteS }) =>
    `Use a card or a format that writes in ${writeS} s${fromWriteS === undefined ? '' : ` instead of ${fromWriteS} s`}.`,
  'shorter-settle': ({ settleS, fromSettleS }) =>
    fromSettleS === undefined
      ? `Let the camera settle for ${settleS} s, no longer.`
      : `Let the camera settle for ${settleS} s after a move, not ${fromSettleS} s.`,
  'shorter-move': ({ changed }) => `Shorten the move: ${otherLengths(changed)}`,
  'longer-move': ({ changed }) => `Lengthen the move: ${otherLengths(changed)}`,
  stop: () => 'Stop at every frame: then nothing smears.',
};

/** A change with its sentence. */
export function moveRemedy(change: MoveChange): MoveRemedy {
  return { ...change, text: sentenceOf(englishMoveChanges, 'change', change) };
}

/** A finding with its sentence. */
export function finding(
  level: MoveFinding['level'],
  found: MoveFound,
  changes: readonly MoveChange[],
): MoveFinding {
  return {
    ...found,
    level,
    text: sentenceOf(englishFindings, 'kind', found),
    remedies: changes.map(moveRemedy),
  };
}
