// The choices between cues, error and ISO, as a table for a person.

import type { PlanChoice } from '@evenfall/core';
import { columnsThatFit, linesOf, table } from './layout.js';
import type { CommandWords } from './words/words.js';

/** What a narrow screen does without, the first of them first: filters, rms, ISO, worst. */
const LEAST = [1, 2, 4, 3];

/** A line a choice, fewest cues first, with the weights that plan it. */
export function choicesText(choices: readonly PlanChoice[], words: CommandWords, columns: number): string {
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
  const cells = [[...words.choices.columns, ''], ...rows];
  const kept = columnsThatFit(cells, LEAST, columns);
  const [head, ...body] = cells.map((row) => kept.map((i) => row[i]!));
  return [
    ...table(
      head!,
      body,
      kept.map((i) => (i < 5 ? 'right' : 'left')),
    ),
    '',
    ...linesOf(words.choices.advice, columns),
    '  weights: { error: 0.33, iso: 0.07 }',
    ...(kept.length === cells[0]!.length ? [] : linesOf(words.widerShows, columns)),
    '',
  ].join('\n');
}

function short(weight: number): string {
  return String(Number(weight.toPrecision(3)));
}
