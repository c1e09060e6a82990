// What a camera that moves by itself can do to people and gear. Common practice, no standard was read.
// Source: docs/sources.md#move-cautions.

import { groupWith, hold, listOf, text } from '../hold.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { Move } from './moves.js';

/** One caution; shown wherever a move is planned. */
export interface MoveCaution {
  /** Which. */
  readonly kind: 'pinch' | 'drop' | 'overhead' | 'trip' | 'wind' | 'law' | 'track-ends' | 'rigging';
  /** What it is about. */
  readonly topic: 'pinch' | 'drop' | 'overhead' | 'trip' | 'wind' | 'law';
  /** For a person, one sentence or two. */
  readonly text: string;
}

/** Cautions in English. */
export const englishCautions: Sentences<Pick<MoveCaution, 'kind'>> = {
  pinch: () =>
    'A motor does not feel fingers, hair or straps: keep clear of heads, belts and carriages, and have the switch in reach.',
  drop: () =>
    'Check clamps, plate and balance over the whole move, cables included, before it is left alone; tether what could fall.',
  overhead: () =>
    'Nothing heavy may hang or travel over people. Look up for cables, branches and power lines before a stand or arm goes up.',
  trip: () =>
    'After dark nobody sees legs, tracks and leads: keep them off paths, mark them with a dim light out of the picture, and stay with them.',
  wind: () =>
    'Wind shakes a moving head more than a standing one and can throw it over: weigh the legs down, and stop when it gusts.',
  law: () =>
    'Local rules come first: ask for permission where stands, tracks or cables stand on public ground.',
  'track-ends': () =>
    'Stop the carriage at both ends of the track by something solid, not by the motor alone.',
  rigging: () =>
    'A cable or rail above the ground is rigging: leave its anchors, loads and testing to licensed riggers.',
};

const caution = (kind: MoveCaution['kind'], topic: MoveCaution['topic']): MoveCaution => ({
  kind,
  topic,
  text: sentenceOf(englishCautions, 'kind', { kind }),
});

const ANY = (['pinch', 'drop', 'overhead', 'trip', 'wind', 'law'] as const).map((kind) =>
  caution(kind, kind),
);
const ALONG = [caution('track-ends', 'pinch'), caution('rigging', 'overhead')];

/**
 * Cautions for these moves. Source: common practice on sets and at night.
 *
 * @param moves of which the axes alone count
 * @returns none without moves, two more where something travels along a track
 * @throws RangeError on what is no list of moves
 * @example
 * ```ts
 * import { moveCautions } from '@evenfall/core';
 *
 * moveCautions([]); // → []
 * moveCautions([{ axis: 'slide' }]).length; // → 8
 * ```
 */
export function moveCautions(moves: readonly Pick<Move, 'axis'>[]): readonly MoveCaution[] {
  hold('moves', moves, listOf(groupWith({ axis: text })));
  if (moves.length === 0) return [];
  return moves.some(({ axis }) => axis === 'slide') ? [...ANY, ...ALONG] : ANY;
}
