// What a review tells, in English. Frames count from 1 where people read.

import type { Sentences } from '../words/sentences.js';
import type { FrameRun } from './frame-run.js';
import type { ReviewNoteFacts } from './note.js';

const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
const stops = (ev: number) => `${Math.abs(ev).toFixed(1)} stops`;
const seconds = (s: number) => `${Number(Math.abs(s).toPrecision(3))} s`;
const MOST_RUNS = 5;

/** "13, 20 to 24". */
function runsText(runs: readonly FrameRun[]): string {
  const told = runs
    .slice(0, MOST_RUNS)
    .map(({ from, to }) => (from === to ? String(from + 1) : `${from + 1} to ${to + 1}`));
  return runs.length > MOST_RUNS ? `${told.join(', ')} and more` : told.join(', ');
}

/** "Frame 13: " or "Frames 13, 20 to 24: ". */
const at = (runs: readonly FrameRun[]) =>
  runs.length === 0
    ? ''
    : `${runs.length === 1 && runs[0]!.from === runs[0]!.to ? 'Frame' : 'Frames'} ${runsText(runs)}: `;

/** Notes of a review in English. */
export const englishReviewNotes: Sentences<ReviewNoteFacts> = {
  'clock-off': ({ fastS }) =>
    `The camera's clock was ${clockText(fastS)} ${fastS > 0 ? 'fast' : 'slow'}; times here are put right.`,
  'other-camera': ({ count, camera }) =>
    `${counted(count, 'frame')} of ${camera === '' ? 'a camera that gives no name' : `another camera, ${camera},`} ${count === 1 ? 'is' : 'are'} left out.`,
  copies: ({ count }) =>
    `${counted(count, 'file')} ${count === 1 ? 'shows a frame' : 'show frames'} once more and ${count === 1 ? 'is' : 'are'} left out.`,
  outside: ({ before, after }) =>
    `${[
      ...(before > 0 ? [`${counted(before, 'frame')} before the plan's first`] : []),
      ...(after > 0 ? [`${counted(after, 'frame')} after its last`] : []),
    ].join(', ')}: held against the light of the plan's ends.`,
  'missing-frames': ({ count, frames }) =>
    `${at(frames)}${counted(count, 'frame')} of the plan ${count === 1 ? 'was' : 'were'} not taken.`,
  'brackets-incomplete': ({ count, frames, missing }) =>
    `${at(frames)}${counted(count, 'bracket')} with ${counted(missing, 'exposure')} missing.`,
  'doubled-frames': ({ count, frames }) =>
    `${at(frames)}${counted(count, 'file')} more than one a frame; the one nearest to the plan is kept.`,
  slipped: ({ count, worstS, frame }) =>
    `${counted(count, 'interval')} slipped; the worst, after frame ${frame + 1}, was ${seconds(worstS)} too ${worstS > 0 ? 'long' : 'short'}.`,
  'other-interval': ({ intervalS, plannedS }) =>
    `Frames came every ${Number(intervalS.toPrecision(4))} s, planned were ${plannedS} s.`,
  'cues-off-time': ({ count, cue, lateS }) =>
    `${counted(count, 'cue')} came late or early; the worst, cue ${cue}, ${seconds(lateS)} ${lateS > 0 ? 'late' : 'early'}.`,
  'cues-missed': ({ cues }) =>
    `${cues.length === 1 ? 'Cue' : 'Cues'} ${cues.join(', ')} ${cues.length === 1 ? 'was' : 'were'} never done.`,
  'filter-stayed': ({ cue, filters }) =>
    filters.length === 0
      ? `At cue ${cue} no filter went on: the lens stayed bare.`
      : `At cue ${cue} ${filters.join(' + ')} stayed on the lens.`,
  'filters-assumed': () =>
    'No file tells which filter was on the lens: each is taken to have changed with its cue.',
  unplanned: ({ count, frames }) =>
    `${at(frames)}${counted(count, 'frame')} with a setting that nobody planned.`,
  'ran-over': ({ count, frames }) =>
    `${at(frames)}${counted(count, 'exposure')} did not fit the interval and ran into the next frame.`,
  spoilt: ({ count, frames, isSeen }) =>
    `${at(frames)}${counted(count, 'frame')} ${isSeen ? (count === 1 ? 'was' : 'were') : 'may have been'} spoilt by a filter change.`,
  clipped: ({ count, frames }) =>
    `${at(frames)}${counted(count, 'frame')} with white or black that hides what the light was.`,
  beyond: ({ count, frames, mostEv }) =>
    `${at(frames)}${counted(count, 'frame')} would need more than ${stops(mostEv)} of correction, the most that is allowed.`,
  'off-forecast': ({ byEv }) =>
    `The settings lie ${stops(byEv)} ${byEv > 0 ? 'darker' : 'brighter'} than the forecast wants them, as a rule: where they followed the real light, give readings or the frames' levels.`,
};

/** "1 h", "1 h 0 min 12 s", "8 s". */
function clockText(fastS: number): string {
  const all = Math.abs(fastS);
  if (all < 60) return seconds(fastS);
  const [h, min, s] = [Math.floor(all / 3600), Math.floor(all / 60) % 60, Math.round(all % 60)];
  return [h > 0 ? `${h} h` : '', min > 0 ? `${min} min` : '', s > 0 ? `${s} s` : '']
    .filter((part) => part !== '')
    .join(' ');
}
