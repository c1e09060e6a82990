// The same move over other numbers of frames: in the same time with another interval, or at the same interval
// in another time.

import { clipLengthS, frameCountOf } from '../footage/frames.js';
import { type Asked, longestShutterS, recordingOf } from './asked.js';
import type { MoveChange } from './finding.js';
import { gapOf, shutterRoomS } from './time-budget.js';

/** An interval a person can set: tenths of a second from 1 s on, hundredths below. */
export function roundedInterval(intervalS: number, toward: 'down' | 'up'): number {
  const scale = intervalS < 1 ? 100 : 10;
  return (
    (toward === 'down' ? Math.floor(intervalS * scale + 1e-9) : Math.ceil(intervalS * scale - 1e-9)) / scale
  );
}

/** At least so many frames: by a shorter interval, where one leaves the shutter room, and by a longer recording. */
export function moreFrames(asked: Asked, frameCount: number): MoveChange[] {
  const { intervalS, clipFps, travels, writeS } = asked;
  const recordingS = (frameCount - 1) * intervalS;
  const longer: MoveChange = {
    change: 'longer-recording',
    frameCount,
    intervalS,
    recordingS,
    fromRecordingS: recordingOf(asked),
    clipS: clipLengthS(frameCount, clipFps),
  };
  const closer = roundedInterval(recordingOf(asked) / (frameCount - 1), 'down');
  if (closer <= 0) return [longer];
  const count = frameCountOf(recordingOf(asked), closer);
  const roomS = shutterRoomS(closer, gapOf(travels, count, writeS).gapS, asked);
  if (roomS <= 0) return [longer];
  const longestS = longestShutterS(asked);
  return [
    {
      change: 'more-frames',
      frameCount: count,
      intervalS: closer,
      recordingS: recordingOf(asked),
      clipS: clipLengthS(count, clipFps),
      ...(roomS < longestS ? { shutterS: roomS, longestS } : {}),
    },
    longer,
  ];
}

/** At most so many frames, in the same time. */
export function fewerFrames(asked: Asked, frameCount: number): MoveChange[] {
  if (frameCount < 2) return [];
  const intervalS = roundedInterval(recordingOf(asked) / (frameCount - 1), 'up');
  const count = frameCountOf(recordingOf(asked), intervalS);
  return [
    {
      change: 'fewer-frames',
      frameCount: count,
      intervalS,
      recordingS: recordingOf(asked),
      clipS: clipLengthS(count, asked.clipFps),
    },
  ];
}
