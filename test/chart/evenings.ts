// Twenty invented shoots between the equator and 65 degrees, dusks and dawns, few cues and many.

import type { PlanMade } from '@evenfall/core';
import { madePlan } from './made-plan.js';

const KITS = [
  [],
  [{ name: 'ND 6-stop', stops: 6 }],
  [
    { name: 'ND 3-stop', stops: 2.99 },
    { name: 'ND 10-stop', stops: 9.97 },
  ],
];

export const EVENINGS: readonly { readonly name: string; readonly plan: PlanMade }[] = Array.from(
  { length: 20 },
  (_, i) => {
    const options = {
      latitudeDeg: Math.round((65 * i) / 19),
      direction: i % 2 === 0 ? ('dusk' as const) : ('dawn' as const),
      cues: [5, 12, 23, 40, 48, 70, 110, 200][i % 8]!,
      filters: KITS[i % 3]!,
      apertureMoves: i % 5 === 4,
      intervalS: [5, 7, 12][i % 3]!,
      nightEv: i % 4 === 3 ? 0 : -1.5,
      title: `Evening ${i + 1}`,
    };
    return { name: JSON.stringify(options), plan: madePlan(options) };
  },
);
