// What a person should know of a review.

import type { PlanMade } from '../plan/types.js';
import { sentenceOf } from '../words/sentences.js';
import { englishReviewNotes } from './english.js';
import type { FrameRun } from './frame-run.js';
import type { ReviewNote, ReviewNoteFacts } from './note.js';
import type { Review, ReviewFrame } from './types.js';

interface Found extends Pick<Review, 'summary' | 'frames' | 'cues' | 'missingFrames'> {
  readonly others: readonly { readonly camera: string; readonly count: number }[];
  readonly copies: number;
  readonly places: readonly number[];
  readonly timesMs: readonly number[];
  readonly isFine: readonly boolean[];
  /** Cues, by their place in the plan, at which a filter stayed. */
  readonly stayed: readonly number[];
  readonly stackBefore: (cue: number) => readonly string[];
  readonly isAssumed: boolean;
  readonly isSpoiltSeen: boolean;
  readonly offForecastEv: number;
}

/** Stops that settings may lie off a forecast before somebody should look. */
const OFF_FORECAST_EV = 0.5;
/** Share by which an interval may differ. */
const OTHER_INTERVAL = 0.005;

const LEVELS: Readonly<Record<ReviewNoteFacts['kind'], ReviewNote['level']>> = {
  beyond: 'warning',
  'filter-stayed': 'warning',
  'cues-missed': 'warning',
  'missing-frames': 'warning',
  'brackets-incomplete': 'warning',
  'cues-off-time': 'caution',
  unplanned: 'caution',
  spoilt: 'caution',
  'ran-over': 'caution',
  clipped: 'caution',
  slipped: 'caution',
  'doubled-frames': 'caution',
  'off-forecast': 'caution',
  'clock-off': 'info',
  'other-interval': 'info',
  outside: 'info',
  'other-camera': 'info',
  copies: 'info',
  'filters-assumed': 'info',
};
const ORDER = Object.keys(LEVELS);

export function noticed(plan: PlanMade, found: Found): ReviewNote[] {
  return factsOf(plan, found)
    .sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind))
    .map((facts) => ({
      ...facts,
      level: LEVELS[facts.kind],
      text: sentenceOf(englishReviewNotes, 'kind', facts),
    }));
}

function factsOf({ shoot, frames: planned }: PlanMade, found: Found): ReviewNoteFacts[] {
  const { summary, frames, cues, missingFrames, places } = found;
  const facts: ReviewNoteFacts[] = [];
  if (Math.abs(summary.clockFastS) >= 0.5) facts.push({ kind: 'clock-off', fastS: summary.clockFastS });
  for (const { camera, count } of found.others) facts.push({ kind: 'other-camera', count, camera });
  if (found.copies > 0) facts.push({ kind: 'copies', count: found.copies });
  const before = places.filter((place) => place < 0).length;
  const after = places.filter((place) => place >= planned.length).length;
  if (before + after > 0) facts.push({ kind: 'outside', before, after });
  if (missingFrames.length > 0) {
    facts.push({ kind: 'missing-frames', count: missingFrames.length, frames: runsOf(missingFrames) });
  }
  const marked = (isMarked: (frame: ReviewFrame) => boolean | undefined) => {
    const of = frames.filter(isMarked);
    const numbers = of.flatMap(({ frame }) => (frame === null ? [] : [frame]));
    return { count: of.length, frames: runsOf(numbers) };
  };
  const tell = <Facts extends ReviewNoteFacts & { readonly count: number }>(fact: Facts) => {
    if (fact.count > 0) facts.push(fact);
  };
  tell({ kind: 'doubled-frames', ...marked(({ doubled }) => doubled) });
  const missing = frames.reduce((sum, { missingEv = [] }) => sum + missingEv.length, 0);
  tell({ kind: 'brackets-incomplete', ...marked(({ missingEv }) => missingEv !== undefined), missing });
  tell({ kind: 'unplanned', ...marked(({ unplanned }) => unplanned) });
  tell({ kind: 'ran-over', ...marked(({ ranOver }) => ranOver) });
  tell({ kind: 'spoilt', ...marked(({ spoilt }) => spoilt), isSeen: found.isSpoiltSeen });
  tell({ kind: 'clipped', ...marked(({ clipped }) => clipped) });
  tell({ kind: 'beyond', ...marked(({ beyondEv }) => beyondEv !== undefined), mostEv: summary.mostEv });
  facts.push(...slips(shoot.intervalS, found));
  const { intervalS } = summary;
  if (intervalS !== undefined && Math.abs(intervalS / shoot.intervalS - 1) > OTHER_INTERVAL) {
    facts.push({ kind: 'other-interval', intervalS, plannedS: shoot.intervalS });
  }
  const offTime = cues.flatMap(({ cue, lateS }) => (lateS === null || lateS === 0 ? [] : [{ cue, lateS }]));
  if (offTime.length > 0) {
    const worst = offTime.reduce((a, b) => (Math.abs(b.lateS) > Math.abs(a.lateS) ? b : a));
    facts.push({ kind: 'cues-off-time', count: offTime.length, ...worst });
  }
  const missed = cues.filter(({ lateS, seen }) => lateS === null && seen).map(({ cue }) => cue);
  if (missed.length > 0) facts.push({ kind: 'cues-missed', cues: missed });
  for (const cue of found.stayed) {
    facts.push({ kind: 'filter-stayed', cue: cue + 1, filters: found.stackBefore(cue) });
  }
  if (found.isAssumed) facts.push({ kind: 'filters-assumed' });
  if (Math.abs(found.offForecastEv) > OFF_FORECAST_EV) {
    facts.push({ kind: 'off-forecast', byEv: found.offForecastEv });
  }
  return facts;
}

/** Intervals longer or shorter than planned; where times are in whole seconds, by more than they can be off. */
function slips(plannedS: number, { places, timesMs, isFine }: Found): ReviewNoteFacts[] {
  const found = places.flatMap((place, i) => {
    const count = i === 0 ? 0 : place - places[i - 1]!;
    if (count === 0) return [];
    const byS = (timesMs[i]! - timesMs[i - 1]!) / 1000 - count * plannedS;
    const mostS = Math.max(plannedS / 4, isFine[i] && isFine[i - 1] ? 0.3 : 1.05);
    return Math.abs(byS) > mostS ? [{ frame: places[i - 1]!, byS }] : [];
  });
  if (found.length === 0) return [];
  const { frame, byS } = found.reduce((a, b) => (Math.abs(b.byS) > Math.abs(a.byS) ? b : a));
  return [{ kind: 'slipped', count: found.length, worstS: byS, frame: Math.max(0, frame) }];
}

/** Numbers in order, as runs; each counts once. */
function runsOf(numbers: readonly number[]): FrameRun[] {
  const runs: { from: number; to: number }[] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && number <= last.to + 1) last.to = number;
    else runs.push({ from: number, to: number });
  }
  return runs;
}
