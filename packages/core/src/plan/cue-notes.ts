// What to know at a cue beside what to turn: where filters change, motion blurs otherwise, and two of them could move in two ways.

import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { CueNoteFacts } from './note.js';
import type { PlanCue, PlanFrame } from './types.js';

/** Stops of motion blur below which a jump is hardly seen in moving water. Our choice. */
const BLUR_TOLD_STOPS = 1;

/** What to know at cues, in English. */
export const englishCueNotes: Sentences<CueNoteFacts> = {
  'blur-jump': ({ stops }) =>
    `From here on motion blurs ${Math.abs(stops).toFixed(1)} stops ${stops > 0 ? 'more' : 'less'}.`,
  'both-filters': () => 'Both filters at once: one after the other is no better.',
  'one-filter': () => 'One filter now, the other apart: both at once is no better.',
};

/** The cues, with what is to be known where filters change. */
export function withCueNotes(cues: readonly PlanCue[], frames: readonly PlanFrame[]): PlanCue[] {
  return cues.map((cue) => {
    if (cue.changes.every(({ control }) => control !== 'filter')) return cue;
    const [before, after] = [frames[cue.frame - 1], frames[cue.frame]];
    const facts = [...blurJump(before, after), ...filterOrder(before.filters, after.filters)];
    if (facts.length === 0) return cue;
    return {
      ...cue,
      notes: facts.map((note) => ({ ...note, text: sentenceOf(englishCueNotes, 'kind', note) })),
    };
  });
}

function blurJump(before: PlanFrame, after: PlanFrame): CueNoteFacts[] {
  const stops = Math.log2(after.shutterS / before.shutterS);
  return Math.abs(stops) < BLUR_TOLD_STOPS - 1e-9 ? [] : [{ kind: 'blur-jump', stops }];
}

/** Between the bare lens and two filters, or between those two and one of them. */
function filterOrder(before: readonly string[], after: readonly string[]): CueNoteFacts[] {
  const [less, more] = before.length < after.length ? [before, after] : [after, before];
  if (more.length < 2 || !less.every((name) => more.includes(name))) return [];
  if (less.length === 0) return [{ kind: 'both-filters' }];
  return less.length < more.length ? [{ kind: 'one-filter' }] : [];
}
