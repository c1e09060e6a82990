// How times, places, settings and changes read on the screen.

import { exposureText, labelText, placeTexts } from '@evenfall/chart';
import { type ClocksBack, clockOver, type PlanCue, type PlanFrame, type Shoot } from '@evenfall/core';
import type { Screen } from './colors.js';
import { linesOf } from './layout.js';
import { printable } from './printable.js';
import type { CommandWords } from './words/words.js';

/** Words whose clock gives the offset with every time that comes twice in what they are to tell of. */
export function wordsOver(
  { clocksBack }: { readonly clocksBack?: ClocksBack | undefined },
  words: CommandWords,
): CommandWords {
  return { ...words, card: { ...words.card, clock: clockOver(clocksBack, words.card.clock) } };
}

/** A word as it can be pasted into a shell. */
export function asArgument(word: string): string {
  return /^[\w./@%+:,-]+$/.test(word) ? word : `'${printable(word).replaceAll("'", "'\\''")}'`;
}

/** What it is of: the title, or `untitled`; when; where. */
export function headingLines(
  { title, date, direction, place }: Shoot,
  untitled: string,
  { card, directions }: CommandWords,
  { bold, columns }: Pick<Screen, 'bold' | 'columns'>,
): string[] {
  return [
    ...linesOf(title === '' ? untitled : title, columns).map((line) => bold(line)),
    ...linesOf(`${card.date(date)}, ${directions[direction]}`, columns),
    ...linesOf(placeText(place, card), columns),
  ];
}

/** "38.6970° N, 9.4210° W, Europe/Lisbon". */
export function placeText(place: Shoot['place'], card: CommandWords['card']): string {
  return placeTexts(place, card).join(', ');
}

/** "1/60, ISO 400, f/8, ND 3"; the bare lens goes without saying. */
export function shortSettingText(frame: PlanFrame): string {
  return [exposureText(frame, ', '), ...(frame.filters.length > 0 ? [frame.filters.join(' + ')] : [])].join(
    ', ',
  );
}

/** "shutter 1/250 → 1/200, ISO 100 → 200". */
export function changesText({ changes }: Pick<PlanCue, 'changes'>, card: CommandWords['card']): string {
  return changes
    .map(({ control, from, to }) => {
      const [old, next] = [from, to].map((label) => labelText(control, label, card));
      // The f of "f/8" says which control it is.
      return control === 'aperture' ? `${old} → ${next}` : `${card.lanes[control]} ${old} → ${next}`;
    })
    .join(', ');
}
