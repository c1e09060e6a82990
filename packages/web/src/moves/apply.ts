// What a move's remedy changes in the shoot: the library gives numbers, a press puts them in.

import {
  longestMarkedShutter,
  type Move,
  type MoveRemedy,
  moveOfLength,
  type PlanMade,
  rfc3339,
  type ShootChange,
  zoneOf,
} from '@evenfall/core';

/** Keys to put in place of the shoot's own; undefined where the remedy is none that a press can do. */
export function changeOf({ shoot, summary }: PlanMade, remedy: MoveRemedy): ShootChange | undefined {
  const { camera, moves } = shoot;
  const { change, intervalS, recordingS, shutterS, settleS, writeS, lengths } = remedy;
  switch (change) {
    case 'more-frames':
    case 'fewer-frames':
    case 'longer-interval':
    case 'longer-recording': {
      const nowS = (summary.frameCount - 1) * shoot.intervalS;
      const longer = recordingS !== undefined && recordingS > nowS + 1e-6;
      return {
        ...(intervalS === undefined ? {} : { intervalS }),
        ...(longer ? { span: spanOf(summary.startAt, recordingS, zoneOf(shoot.place)) } : {}),
      };
    }
    case 'shorter-shutter': {
      // A shutter beside no gap at all: the longest mark that is no longer than this.
      const mark =
        shutterS === undefined
          ? undefined
          : longestMarkedShutter(shutterS, { gapS: 0, darkFrame: false, stepsPerStop: camera.stepsPerStop });
      return mark && { camera: { ...camera, shutter: { ...camera.shutter, longest: mark.label } } };
    }
    case 'no-dark-frame':
      return { camera: { ...camera, darkFrame: false } };
    case 'shorter-write':
      return writeS === undefined ? undefined : { camera: { ...camera, gapS: writeS } };
    case 'shorter-settle':
      return settleS === undefined ? undefined : { moves: moves.map((move) => settled(move, settleS)) };
    case 'shorter-move':
    case 'longer-move':
      return (
        lengths && {
          moves: moves.map((move, i) => (i < lengths.length ? moveOfLength(move, lengths[i]!) : move)),
        }
      );
  }
}

/** From the first frame on for so long: by the clock, since the sun would stop short. */
function spanOf(startAt: string, recordingS: number, zone: Parameters<typeof rfc3339>[1]) {
  return { startAt, endAt: rfc3339(Math.ceil(Date.parse(startAt) + recordingS * 1000), zone) };
}

// One line for both, but the compiler keeps the two kinds of gear apart.
function settled(move: Move, mostS: number): Move {
  const settleS = Math.min(mostS, move.gear.settleS);
  return move.axis === 'slide'
    ? { ...move, gear: { ...move.gear, settleS } }
    : { ...move, gear: { ...move.gear, settleS } };
}

/** The same moves at rest while the shutter is open; undefined where a motor's speed is not known. */
export function stopped(moves: readonly Move[]): ShootChange | undefined {
  const knows = ({ axis, gear }: Move) =>
    gear.moveS !== undefined || (axis === 'slide' ? 'topSpeedMPerS' in gear : 'topSpeedDegPerS' in gear);
  return moves.every(knows) ? { moves: moves.map((move) => ({ ...move, mode: 'stopped' })) } : undefined;
}
