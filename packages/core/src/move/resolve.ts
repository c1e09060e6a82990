// From a move as the shoot file says it to a length in degrees or metres and a motor's limits in the same unit.

import { angleOfSizeDeg, type Optics, turnBetweenBearings, turnBetweenPoints } from './angle.js';
import type { Ease } from './ease.js';
import type { MoveFault, MoveFaultFacts } from './fault.js';
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
  readonly toward?: 'side' | 'forward' | undefined;
  /** Of a slide: distance of the nearest thing in the picture, metres. */
  readonly nearestM?: number | undefined;
}

/** Degrees or metres, the hundredth of what the finest gear steps: less is no way. Our choice. */
const LEAST_WAY = 1e-6;

/** Everything in the moves that contradicts itself or lacks what it needs; empty where they can be planned. */
export function moveFaults(moves: readonly Move[], optics?: Optics): MoveFault[] {
  return moves.flatMap((move, index) => {
    const fault = (keys: readonly string[], facts: MoveFaultFacts) => [
      { path: ['moves', index, ...keys], ...facts },
    ];
    const { axis, by, mode, gear } = move;
    if (moves.findIndex((other) => other.axis === axis) < index) {
      return fault(['axis'], { kind: 'second-move', axis });
    }
    if (axis !== 'pan' && 'fromBearingDeg' in by) return fault(['by'], { kind: 'bearings-turn-a-pan' });
    if ('fromPoint' in by && optics === undefined) return fault(['by'], { kind: 'points-need-lens' });
    const length = lengthOf(move, optics);
    if ('trackM' in by && length <= 0) {
      return fault(['by', 'trackM'], { kind: 'track-too-short', trackM: by.trackM });
    }
    if (Math.abs(length) < LEAST_WAY) return fault(['by'], { kind: 'goes-nowhere' });
    if (mode === 'stopped' && topSpeedOf(move) === undefined && gear.moveS === undefined) {
      const speedKey = axis === 'slide' ? 'topSpeedMPerS' : 'topSpeedDegPerS';
      return fault(['gear'], { kind: 'no-step-time', speedKey });
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
  // What a person reads is said when the shoot is read; a page that plans need not load those sentences.
  if (fault !== undefined) throw new RangeError(`${fault.path.join('.')}: ${fault.kind}`);
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
