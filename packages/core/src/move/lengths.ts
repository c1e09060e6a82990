// Moves made shorter or longer by one share, in numbers a person can type.

import type { MoveChange } from './finding.js';
import type { Move } from './moves.js';
import type { Travel } from './resolve.js';
import { decimalsFor } from './words.js';

/** Rounded to the digits a person reads, toward zero or away from it, so that the number given is enough. */
export function roundedLength(length: number, unit: Travel['unit'], toward: 'zero' | 'away'): number {
  const scale = 10 ** decimalsFor(length, unit);
  const size = Math.abs(length) * scale;
  return (Math.sign(length) * (toward === 'zero' ? Math.floor(size + 1e-9) : Math.ceil(size - 1e-9))) / scale;
}

/** All chosen moves by one share of their length: below 1 shorter, above 1 longer. */
export function otherLengths(
  travels: readonly Travel[],
  share: number,
  chosen: (travel: Travel) => boolean = () => true,
): Extract<MoveChange, { readonly lengths: unknown }> {
  const toward = share < 1 ? 'zero' : 'away';
  const lengths = travels.map((travel) =>
    chosen(travel) ? roundedLength(travel.length * share, travel.unit, toward) : travel.length,
  );
  const changed = travels.flatMap((travel, i) => {
    const { axis, unit, length } = travel;
    return chosen(travel) ? [{ axis, unit, from: length, to: lengths[i] }] : [];
  });
  return { change: share < 1 ? 'shorter-move' : 'longer-move', lengths, changed };
}

/**
 * A move with another length in place of its own, from where it starts: a pan by the compass keeps its first bearing.
 *
 * @param move of a shoot
 * @param length of a remedy, degrees or metres, signed, finite
 * @returns the move with its `by` changed
 */
export function moveOfLength(move: Move, length: number): Move {
  if (move.axis === 'slide') return { ...move, by: { m: length } };
  // Bearings tell no whole turn.
  if (!('fromBearingDeg' in move.by) || Math.abs(length) >= 360) return { ...move, by: { deg: length } };
  const { fromBearingDeg } = move.by;
  const toBearingDeg = Number(((fromBearingDeg + length + 720) % 360).toFixed(6));
  const way = length < 0 ? 'counterclockwise' : 'clockwise';
  return { ...move, by: { fromBearingDeg, toBearingDeg, way } };
}
