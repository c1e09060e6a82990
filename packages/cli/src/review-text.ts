// A review for a person to read: what happened, what it was off, what to do about it.

import { cueDoneText, reviewFacts, reviewNoteText } from '@evenfall/chart';
import type { PlanMade, Review } from '@evenfall/core';
import type { Screen } from './colors.js';
import { hanging, linesOf, table } from './layout.js';
import { changesText, headingLines, wordsOver } from './wording.js';
import type { CommandWords } from './words/words.js';

const LEAD = 15;
/** A table of more cues than this is read by nobody; the review file has them all. */
const MOST_CUES = 30;

export function reviewText(review: Review, plan: PlanMade, inWords: CommandWords, screen: Screen): string {
  const words = wordsOver(plan, inWords);
  return `${[
    ...headingLines(plan.shoot, words.card.untitled, words, screen),
    '',
    ...reviewFacts(review, words.card).map(({ name, text }) =>
      hanging(name.padEnd(LEAD), text, screen.columns),
    ),
    ...cueLines(review, plan, words, screen),
    ...noteLines(review, words, screen),
  ].join('\n')}\n`;
}

/** Cues that were not done on time, a line each. */
function cueLines(review: Review, plan: PlanMade, words: CommandWords, screen: Screen): string[] {
  const { review: w, card } = words;
  const off = review.cues.filter(({ lateS, seen }) => lateS !== 0 && seen);
  if (off.length === 0) return [];
  const rows = off
    .slice(0, MOST_CUES)
    .map(({ cue, frame, at, lateS }) => [
      String(cue),
      card.clock(at, true),
      String(frame + 1),
      changesText(plan.cues[cue - 1]!, card).slice(0, screen.columns - 40),
      cueDoneText(lateS, card),
    ]);
  const lines = table(w.columns, rows, ['right', 'left', 'right', 'left', 'left']);
  const more = off.length > rows.length ? [w.more(off.length - rows.length)] : [];
  return ['', screen.bold(w.cuesOff), ...lines, ...more];
}

function noteLines({ notes }: Review, words: CommandWords, screen: Screen): string[] {
  if (notes.length === 0) return [];
  return [
    '',
    screen.bold(words.plan.notes),
    ...notes.flatMap((note) => {
      const level = words.plan.levels[note.level];
      return linesOf(`${level}: ${reviewNoteText(note, words.card)}`, screen.columns).map((line) =>
        note.level === 'warning' ? screen.red(line) : line,
      );
    }),
  ];
}
