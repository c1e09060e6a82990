// A change as a remedy: its sentence, and the keys it puts in place.

import type { Shoot } from '../../shoot/shoot.js';
import { sentenceOf } from '../../words/sentences.js';
import { englishRemedies, englishReserve } from '../english.js';
import type { Forecast } from '../forecast.js';
import type { Remedy, RemedyLeaves } from '../types.js';
import { appliedTo } from './apply.js';
import type { RemedyChange } from './change.js';

/**
 * Undefined where the change is none that this shoot can take.
 *
 * @param leaves what the plan it gives keeps, where that is known
 */
export function remedyFor(
  shoot: Shoot,
  forecast: Pick<Forecast, 'times' | 'zone'>,
  change: RemedyChange,
  leaves?: RemedyLeaves,
): Remedy | undefined {
  const apply = appliedTo(shoot, forecast, change);
  if (apply === undefined) return undefined;
  const reserve = leaves === undefined ? {} : { ...leaves, reserveText: englishReserve(leaves) };
  return { ...change, text: sentenceOf(englishRemedies, 'change', change), apply, ...reserve };
}
