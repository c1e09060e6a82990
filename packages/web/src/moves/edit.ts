// A move as it is first put down, and the ways to say how far it goes.

import type { Move, MoveAxis } from '@evenfall/core';

/** Moves as they stand in the controls: any of it may be half typed. */
export type Draft = Partial<Omit<Move, 'by' | 'gear'>> & { readonly by?: object; readonly gear?: object };

export const AXES: readonly MoveAxis[] = ['pan', 'tilt', 'slide'];

const TURN_GEAR = { settleS: 1, topSpeedDegPerS: 3 };
const SLIDE_GEAR = { settleS: 1, topSpeedMPerS: 0.02 };
const SOFT = { mode: 'stopped', ease: 'smoothstep' } as const;

/** A small move with a plain motor: it can be planned at once, and every number of it changed. */
export function firstMove(axis: MoveAxis): Move {
  if (axis === 'slide') return { axis, by: { m: 1 }, ...SOFT, gear: SLIDE_GEAR, toward: 'side' };
  return { axis, by: { deg: axis === 'pan' ? 30 : 10 }, ...SOFT, gear: TURN_GEAR };
}

/** Ways to say how far. */
export type ByKind = 'deg' | 'points' | 'bearings' | 'size' | 'm' | 'track';

export const BY_KINDS: Readonly<Record<MoveAxis, readonly ByKind[]>> = {
  pan: ['deg', 'points', 'bearings', 'size'],
  tilt: ['deg', 'points', 'size'],
  slide: ['m', 'track'],
};

/** A key that only this way has. */
const SIGNS: Readonly<Record<ByKind, readonly string[]>> = {
  deg: ['deg'],
  points: ['fromPoint', 'toPoint'],
  bearings: ['fromBearingDeg', 'toBearingDeg'],
  size: ['sizeM', 'distanceM'],
  m: ['m'],
  track: ['trackM'],
};

/** The way in which a draft says it; undefined where it says nothing yet. */
export function kindOf(by: unknown): ByKind | undefined {
  if (typeof by !== 'object' || by === null) return undefined;
  return (Object.keys(SIGNS) as ByKind[]).find((kind) => SIGNS[kind].some((key) => key in by));
}

/** What a way begins with: where it can be, the same length as before. */
export function firstBy(kind: ByKind, axis: MoveAxis, length: number): object {
  const sense = length < 0 ? -1 : 1;
  const size = Math.abs(length);
  switch (kind) {
    case 'deg':
      return { deg: Math.round(length * 100) / 100 };
    case 'points': {
      const ends = sense > 0 ? [0.25, 0.75] : [0.75, 0.25];
      const [fromPoint, toPoint] = ends.map((share) =>
        axis === 'pan' ? { fromLeft: share, fromBottom: 0.5 } : { fromLeft: 0.5, fromBottom: share },
      );
      return { fromPoint, toPoint };
    }
    case 'bearings':
      return { fromBearingDeg: 0, toBearingDeg: Math.round((length + 360) % 360) };
    case 'size':
      return { sizeM: 40 * sense, distanceM: 100 };
    case 'm':
      return { m: Math.round(length * 1000) / 1000 };
    case 'track':
      return { trackM: Math.round((size + 0.2) * 1000) / 1000, carriageM: 0.2 };
  }
}
