// From a move as the shoot file says it to a length in degrees or metres and a motor's limits in the same unit.

import { angleOfSizeDeg, type Optics, turnBetweenBearings, turnBetweenPoints } from './angle.js';
import type { Ease } from './ease.js';
import type { Motor } from './gear.js';
import type { Move, MoveAxis, MoveMode, SlideBy, TurnBy } from './moves.js';

/** A move in numbers alone. */
export interface Travel {
  /** What moves. */
  readonly axis: MoveAxis;
  /** Of `length` and of the motor's numbers: degrees or metres. */
  readonly unit: 'deg' | 'm';
  /** The whole way, signed. */
  readonly length: number;
  /** Whether it stops for every frame. */
  readonly mode: MoveMode;
  /** How it starts and ends. */
  readonly ease: Ease;
  /** What the motor can do. */
  readonly motor: Motor;
  /** Of a slide: across the view, or along it. */
  readonly toward?: 'side' | 'forward';
  /** Of a slide: distance of the nearest thing in the picture, metres. */
  readonly nearestM?: number;
}

/** Something in a move that does not go together, and where. */
export interface MoveFault {
  /** From `moves` on. */
  readonly path: readonly (string | number)[];
  /** What is wrong, and what would be right. */
  readonly text: string;
}

/** Everything in the moves that contradicts itself or lacks what it needs; empty where they can be planned. */
export function moveFaults(moves: readonly Move[], optics?: Optics): MoveFault[] {
  return moves.flatMap((move, index) => {
    const fault = (keys: readonly string[], text: string) => [{ path: ['moves', index, ...keys], text }];
    const { axis, by, mode, gear } = move;
    if (moves.findIndex((other) => other.axis === axis) < index) {
      return fault(['axis'], `a second ${axis}; give one move for each of pan, tilt and slide`);
    }
    if (axis !== 'pan' && 'fromBearingDeg' in by) {
      return fault(['by'], 'compass bearings turn a pan; give deg, points, or sizeM and distanceM');
    }
    if ('fromPoint' in by && optics === undefined) {
      return fault(['by'], 'points need camera.lens and camera.sensor; give both, or give deg');
    }
    const length = lengthOf(move, optics);
    if ('trackM' in by && length <= 0) {
      return fault(
        ['by', 'trackM'],
        `${by.trackM} m leaves no way beside carriage and margins; give a longer track`,
      );
    }
    if (length === 0) return fault(['by'], 'goes nowhere; give a length other than 0, or leave the move out');
    if (mode === 'stopped' && topSpeedOf(move) === undefined && gear.moveS === undefined) {
      const speed = axis === 'slide' ? 'topSpeedMPerS' : 'topSpeedDegPerS';
      return fault(['gear'], `a stopped move needs time for its steps; give ${speed} or moveS`);
    }
    return [];
  });
}

/**
 * Moves in numbers, in the order given.
 *
 * @throws RangeError on anything `moveFaults` would name
 */
export function travelsOf(moves: readonly Move[], optics?: Optics): Travel[] {
  const [fault] = moveFaults(moves, optics);
  if (fault !== undefined) throw new RangeError(`${fault.path.join('.')}: ${fault.text}`);
  return moves.map((move) => ({
    axis: move.axis,
    unit: move.axis === 'slide' ? 'm' : 'deg',
    length: lengthOf(move, optics),
    mode: move.mode,
    ease: move.ease,
    motor: motorOf(move),
    ...(move.axis === 'slide' ? { toward: move.toward } : {}),
    ...(move.axis === 'slide' && move.nearestM !== undefined ? { nearestM: move.nearestM } : {}),
  }));
}

function lengthOf(move: Move, optics: Optics | undefined): number {
  return move.axis === 'slide' ? slideM(move.by) : turnDeg(move.axis, move.by, optics);
}

function slideM(by: SlideBy): number {
  if ('m' in by) return by.m;
  return by.trackM - (by.carriageM ?? 0) - 2 * (by.marginM ?? 0);
}

function turnDeg(axis: 'pan' | 'tilt', by: TurnBy, optics: Optics | undefined): number {
  if ('deg' in by) return by.deg;
  if ('fromBearingDeg' in by) return turnBetweenBearings(by.fromBearingDeg, by.toBearingDeg, by.way);
  if ('sizeM' in by) return angleOfSizeDeg(by.sizeM, by.distanceM);
  if (optics === undefined) return 0; // named by moveFaults before it is used
  const lens = by.focalMm === undefined ? optics.lens : { focalMm: by.focalMm };
  const turn = turnBetweenPoints(by.fromPoint, by.toPoint, { ...optics, lens }, by.cameraTiltDeg);
  return axis === 'pan' ? turn.panDeg : turn.tiltDeg;
}

function topSpeedOf(move: Move): number | undefined {
  return move.axis === 'slide' ? move.gear.topSpeedMPerS : move.gear.topSpeedDegPerS;
}

function motorOf(move: Move): Motor {
  const { settleS, moveS } = move.gear;
  const topSpeed = topSpeedOf(move);
  const acceleration = move.axis === 'slide' ? move.gear.accelerationMPerS2 : move.gear.accelerationDegPerS2;
  const smallestStep = move.axis === 'slide' ? move.gear.smallestStepM : move.gear.smallestStepDeg;
  return {
    settleS,
    ...(moveS === undefined ? {} : { moveS }),
    ...(topSpeed === undefined ? {} : { topSpeed }),
    ...(acceleration === undefined ? {} : { acceleration }),
    ...(smallestStep === undefined ? {} : { smallestStep }),
  };
}
