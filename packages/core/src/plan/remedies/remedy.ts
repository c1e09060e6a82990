// A change as a remedy: its sentence, and the keys it puts in place.

import type { Shoot } from '../../shoot/shoot.js';
import { sentenceOf } from '../../words/sentences.js';
import { englishRemedies } from '../english.js';
import type { Forecast } from '../forecast.js';
import type { Remedy } from '../types.js';
import { appliedTo } from './apply.js';
import type { RemedyChange } from './change.js';

/** Undefined where the change is none that this shoot can take. */
export function remedyFor(
  shoot: Shoot,
  forecast: Pick<Forecast, 'times' | 'zone'>,
  change: RemedyChange,
): Remedy | undefined {
  const apply = appliedTo(shoot, forecast, change);
  return apply && { ...change, text: sentenceOf(englishRemedies, 'change', change), apply };
}
