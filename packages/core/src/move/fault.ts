// What in a move does not go together, as data, and the English of it.

import type { Sentences } from '../words/sentences.js';
import type { MoveAxis } from './moves.js';

/**
 * What is wrong with a move, told apart by `kind`: a second one of its `axis`, say, or a track of `trackM` metres, or a
 * speed that is missing under `speedKey`.
 */
export type MoveFaultFacts =
  /** A move of this axis comes before it. */
  | { readonly kind: 'second-move'; readonly axis: MoveAxis }
  /** Compass bearings for anything but a pan. */
  | { readonly kind: 'bearings-turn-a-pan' }
  /** Points of a picture without lens and sensor. */
  | { readonly kind: 'points-need-lens' }
  /** A track no longer than carriage and margins. */
  | { readonly kind: 'track-too-short'; readonly trackM: number }
  /** A move of no length. */
  | { readonly kind: 'goes-nowhere' }
  /** A stopped move without a time for its steps; `speedKey` would give one. */
  | { readonly kind: 'no-step-time'; readonly speedKey: 'topSpeedMPerS' | 'topSpeedDegPerS' };

/** Something in a move that does not go together, and where. */
export type MoveFault = MoveFaultFacts & {
  /** From `moves` on. */
  readonly path: readonly (string | number)[];
};

export const englishMoveFaults: Sentences<MoveFaultFacts> = {
  'second-move': ({ axis }) => `a second ${axis}; give one move for each of pan, tilt and slide`,
  'bearings-turn-a-pan': () => 'compass bearings turn a pan; give deg, points, or sizeM and distanceM',
  'points-need-lens': () => 'points need camera.lens and camera.sensor; give both, or give deg',
  'track-too-short': ({ trackM }) =>
    `${trackM} m leaves no way beside carriage and margins; give a longer track`,
  'goes-nowhere': () => 'goes nowhere; give a longer way, or leave the move out',
  'no-step-time': ({ speedKey }) => `a stopped move needs time for its steps; give ${speedKey} or moveS`,
};
