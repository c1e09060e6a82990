// A review for a person to read: what happened, what it was off, what to do about it.

import { reviewNoteText } from '@evenfall/chart';
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
    ...factLines(review, words, screen.columns),
    ...cueLines(review, plan, words, screen),
    ...noteLines(review, words, screen),
  ].join('\n')}\n`;
}

function factLines(
  { summary, frames, cues, missingFrames, forecast }: Review,
  { review: w, fixed, card, range }: CommandWords,
  columns: number,
) {
  const fact = (name: string, text: string) => hanging(name.padEnd(LEAD), text, columns);
  const onTime = cues.filter(({ lateS }) => lateS === 0).length;
  const missed = cues.filter(({ lateS, seen }) => lateS === null && seen).length;
  const [first, last] = [frames[0]!, frames[frames.length - 1]!];
  return [
    fact(w.taken, range(card.clock(first.at, true), card.clock(last.at, true))),
    fact(w.frames, w.framesText(summary.takenFrames, summary.plannedFrames, missingFrames.length)),
    ...bracketFacts(frames, w).map((text) => fact(w.brackets, text)),
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

/** How many exposures were taken of all brackets, and how many brackets are whole; none without brackets. */
function bracketFacts(frames: Review['frames'], w: CommandWords['review']): string[] {
  const brackets = frames.filter(({ exposures, doubled }) => exposures !== undefined && doubled !== true);
  if (brackets.length === 0) return [];
  const taken = brackets.reduce((sum, { exposures = [] }) => sum + exposures.length, 0);
  const whole = brackets.filter(({ missingEv }) => missingEv === undefined).length;
  return [w.bracketsText(taken, brackets.length, whole)];
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
      lateS === null ? w.never : w.lateText(Math.abs(lateS), lateS > 0),
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
