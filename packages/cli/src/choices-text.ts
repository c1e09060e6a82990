// The choices between cues, error and ISO, as a table for a person.

import type { PlanChoice } from '@evenfall/core';
import { linesOf, table } from './layout.js';

const NAMES: Readonly<Record<PlanChoice['names'][number], string>> = {
  'fewest-cues': 'fewest',
  smoothest: 'smoothest',
  'cleanest-iso': 'lowest ISO',
  'as-asked': 'as asked',
};

/** A line a choice, fewest cues first, with the weights that plan it. */
export function choicesText(choices: readonly PlanChoice[]): string {
  const rows = choices.map(
    ({ names, cueCount, filterChanges, rmsErrorEv, worstErrorEv, highestIso, apply }) => [
      String(cueCount),
      String(filterChanges),
      rmsErrorEv.toFixed(2),
      worstErrorEv.toFixed(2),
      String(highestIso),
      `error: ${short(apply.weights.error)}, iso: ${short(apply.weights.iso)}`,
      names.map((name) => NAMES[name]).join(', '),
    ],
  );
  const head = ['cues', 'filters', 'rms', 'worst', 'ISO', 'weights', ''];
  const advice =
    'Error is in stops, what is left to smooth afterwards; ISO is the highest used. To take a line, write its weights into the shoot file:';
  return [
    ...table(head, rows, ['right', 'right', 'right', 'right', 'right', 'left', 'left']),
    '',
    ...linesOf(advice),
    '  weights: { error: 0.33, iso: 0.07 }',
    '',
  ].join('\n');
}

function short(weight: number): string {
  return String(Number(weight.toPrecision(3)));
}
