// The choices between cues, error and ISO, as a table for a person.

import type { PlanChoice } from '@evenfall/core';
import { linesOf, table } from './layout.js';
import type { CommandWords } from './words/words.js';

/** A line a choice, fewest cues first, with the weights that plan it. */
export function choicesText(choices: readonly PlanChoice[], words: CommandWords): string {
  const rows = choices.map(
    ({ names, cueCount, filterChanges, rmsErrorEv, worstErrorEv, highestIso, apply }) => [
      String(cueCount),
      String(filterChanges),
      words.fixed(rmsErrorEv, 2),
      words.fixed(worstErrorEv, 2),
      String(highestIso),
      // As the shoot file has them.
      `error: ${short(apply.weights.error)}, iso: ${short(apply.weights.iso)}`,
      names.map((name) => words.choices.names[name]).join(', '),
    ],
  );
  return [
    ...table([...words.choices.columns, ''], rows, [
      'right',
      'right',
      'right',
      'right',
      'right',
      'left',
      'left',
    ]),
    '',
    ...linesOf(words.choices.advice),
    '  weights: { error: 0.33, iso: 0.07 }',
    '',
  ].join('\n');
}

function short(weight: number): string {
  return String(Number(weight.toPrecision(3)));
}
