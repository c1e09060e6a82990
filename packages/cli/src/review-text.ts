// A review for a person to read: what happened, what it was off, what to do about it.

import { reviewNoteText } from '@evenfall/chart';
import type { PlanMade, Review } from '@evenfall/core';
import type { Colors } from './colors.js';
import { COLUMNS, hanging, linesOf, table } from './layout.js';
import { changesText, headingLines, wordsOver } from './wording.js';
import type { CommandWords } from './words/words.js';

const LEAD = 15;
/** A table of more cues than this is read by nobody; the review file has them all. */
const MOST_CUES = 30;

export function reviewText(review: Review, plan: PlanMade, inWords: CommandWords, colors: Colors): string {
  const words = wordsOver(plan, inWords);
  return `${[
    ...headingLines(plan.shoot, words.card.untitled, words, colors),
    '',
    ...factLines(review, words),
    ...cueLines(review, plan, words, colors),
    ...noteLines(review, words, colors),
  ].join('\n')}\n`;
}

function factLines(
  { summary, frames, cues, missingFrames, forecast }: Review,
  { review: w, fixed, card, range }: CommandWords,
) {
  const fact = (name: string, text: string) => hanging(name.padEnd(LEAD), text);
  const onTime = cues.filter(({ lateS }) => lateS === 0).length;
  const missed = cues.filter(({ lateS, seen }) => lateS === null && seen).length;
  const [first, last] = [frames[0]!, frames[frames.length - 1]!];
  return [
    fact(w.taken, range(card.clock(first.at, true), card.clock(last.at, true))),
    fact(w.frames, w.framesText(summary.takenFrames, summary.plannedFrames, missingFrames.length)),
    fact(w.cues, cues.length === 0 ? w.noCues : w.cuesText(onTime, cues.length - onTime - missed, missed)),
    fact(w.offBy, w.offByText(fixed(summary.rmsErrorEv, 2), fixed(summary.stepBeforeEv, 2))),
    fact(
      w.correction,
      w.correctionText({
        largest: fixed(summary.largestOffsetEv, 2),
        step: fixed(summary.stepAfterEv, 3),
        seen: fixed(summary.justNoticeableEv, 3),
        whiteCdM2: summary.whiteCdM2,
        isUnseen: summary.stepAfterEv <= summary.justNoticeableEv,
      }),
    ),
    fact(w.light, w.lightFrom[summary.lightFrom]),
    ...(forecast === undefined
      ? []
      : [
          fact(
            w.forecast,
            w.forecastText({
              offset: fixed(Math.abs(forecast.offsetEv)),
              isBrighter: forecast.offsetEv > 0,
              spread: fixed(forecast.spreadEv, 2),
              percent: Math.round(100 * forecast.inRangeShare),
            }),
          ),
        ]),
  ];
}

/** Cues that were not done on time, a line each. */
function cueLines(review: Review, plan: PlanMade, words: CommandWords, colors: Colors): string[] {
  const { review: w, card } = words;
  const off = review.cues.filter(({ lateS, seen }) => lateS !== 0 && seen);
  if (off.length === 0) return [];
  const rows = off
    .slice(0, MOST_CUES)
    .map(({ cue, frame, at, lateS }) => [
      String(cue),
      card.clock(at, true),
      String(frame + 1),
      changesText(plan.cues[cue - 1]!, card).slice(0, COLUMNS - 40),
      lateS === null ? w.never : w.lateText(Math.abs(lateS), lateS > 0),
    ]);
  const lines = table(w.columns, rows, ['right', 'left', 'right', 'left', 'left']);
  const more = off.length > rows.length ? [w.more(off.length - rows.length)] : [];
  return ['', colors.bold(w.cuesOff), ...lines, ...more];
}

function noteLines({ notes }: Review, words: CommandWords, colors: Colors): string[] {
  if (notes.length === 0) return [];
  return [
    '',
    colors.bold(words.plan.notes),
    ...notes.flatMap((note) => {
      const level = words.plan.levels[note.level];
      return linesOf(`${level}: ${reviewNoteText(note, words.card)}`).map((line) =>
        note.level === 'warning' ? colors.red(line) : line,
      );
    }),
  ];
}
