// Brackets that were taken, held against a plan with a bracket. What should come out is known from how each evening was made up.

import { describe, expect, test } from 'vitest';
import { reviewNoteText, wordsFor } from '../../../packages/chart/src/index.js';
import {
  type PlanFrame,
  type ReviewNote,
  reviewFrames,
  type TakenFrame,
  writeReview,
  writeReviewCsv,
} from '../../../packages/core/src/index.js';
import { duskPlan, printed, takenAs } from './taken.js';

const BRACKET = { frames: 3, stepEv: 2, betweenS: 0.3 } as const;
const plan = duskPlan({
  intervalS: 20,
  camera: {
    shutter: { shortest: '1/4000', longest: '30' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '2.8',
    bracket: BRACKET,
  },
});

/** Files of one frame, two stops apart in the camera's order; its times to the second, as most cameras have them. */
function bracketOf(frame: PlanFrame, byEvs: readonly number[]): TakenFrame[] {
  let atS = 0;
  return byEvs.map((byEv, k) => {
    const at = new Date(Date.parse(`${takenAs(frame).at}Z`) + 1000 * atS).toISOString().slice(0, 19);
    const label = { 0: frame.shutter, [-2]: frame.bracketShortest!, 2: frame.bracketLongest! }[byEv]!;
    atS += frame.shutterS * 2 ** byEv + BRACKET.betweenS;
    const name = `IMG_${String(3 * frame.frame + k).padStart(4, '0')}.JPG`;
    return { ...takenAs(frame, { name }), at, shutterS: printed(label) };
  });
}

const evening = (byEvs: readonly number[] = [0, -2, 2]) =>
  plan.frames.map((frame) => bracketOf(frame, byEvs));
const noteOf = (notes: readonly ReviewNote[], kind: ReviewNote['kind']) =>
  notes.find((note) => note.kind === kind);

test.each([[[0, -2, 2]], [[-2, 0, 2]], [[2, 0, -2]]])(
  'a perfect evening, exposures in the order %j: a frame each, whole, with the errors of the plan itself',
  (order) => {
    const review = reviewFrames(plan, evening(order).flat());
    expect(review.summary.takenFrames).toBe(plan.frames.length);
    expect(review.missingFrames).toEqual([]);
    for (const [i, frame] of review.frames.entries()) {
      expect(frame).toMatchObject({ frame: i, shutter: plan.frames[i]!.shutter });
      expect(frame.offsetEv).toBeCloseTo(plan.frames[i]!.errorEv, 9);
      expect(frame.missingEv).toBeUndefined();
      expect(frame.exposures!.map(({ byEv }) => byEv)).toEqual([2, 0, -2]);
      const middle = 3 * i + order.indexOf(0);
      expect(frame.file).toBe(`IMG_${String(middle).padStart(4, '0')}.JPG`);
    }
    expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
    expect(review.notes.map(({ kind }) => kind)).not.toContain('doubled-frames');
    expect(review.notes.map(({ kind }) => kind)).not.toContain('ran-over');
    expect(JSON.parse(writeReview(review))).toEqual(JSON.parse(JSON.stringify(review)));
  },
);

describe('exposures that are missing', () => {
  // By day, in the steepest part, and at night where a bracket nearly fills its interval.
  const last = plan.frames.length - 1;
  const lost: Readonly<Record<number, number>> = { 5: 2, 40: -2, 41: 0, [last - 20]: 2, [last - 4]: 0 };
  const files = evening().map((bracket, i) =>
    lost[i] === undefined ? bracket : bracket.filter((_, k) => [0, -2, 2][k] !== lost[i]),
  );
  const review = reviewFrames(plan, files.flat());

  test('are named, and move no other frame', () => {
    const missing = review.frames.flatMap(({ frame, missingEv = [] }) => missingEv.map((ev) => [frame, ev]));
    expect(missing).toEqual(Object.entries(lost).map(([frame, ev]) => [Number(frame), ev]));
    expect(review.missingFrames).toEqual([]);
    expect(review.frames.map(({ frame }) => frame)).toEqual(plan.frames.map((_, i) => i));
    expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
    const note = noteOf(review.notes, 'brackets-incomplete')!;
    expect(note).toMatchObject({ count: 5, missing: 5, level: 'warning' });
    expect(note.text).toMatch(/^Frames 6, 41 to 42, \d+, \d+: 5 brackets with 5 exposures missing\.$/);
    expect(reviewNoteText(note, wordsFor({ language: 'de' }))).toMatch(
      /: 5 Reihen, in denen 5 Belichtungen fehlen\.$/,
    );
  });

  test('a frame without its middle one has the setting of that one, and the file nearest to it', () => {
    const frame = review.frames[41]!;
    expect(frame.shutter).toBe(plan.frames[41]!.shutter);
    expect(frame.settingEv100).toBeCloseTo(plan.frames[41]!.settingEv100, 9);
    expect(frame.exposures!.map(({ byEv }) => byEv)).toEqual([2, -2]);
    expect(frame.exposures!.map(({ file }) => file)).toContain(frame.file);
  });

  test('the table has a row for every file: how far it is from the middle one, and what is missing', () => {
    const [header, ...rows] = writeReviewCsv(review)
      .trimEnd()
      .split('\r\n')
      .map((line) => line.split(','));
    const column = (row: readonly string[], name: string) => row[header!.indexOf(name)];
    expect(rows).toHaveLength(3 * plan.frames.length - 5);
    expect(new Set(rows.map((row) => column(row, 'file'))).size).toBe(rows.length);
    const sixth = rows.filter((row) => column(row, 'frame') === '5');
    expect(sixth.map((row) => column(row, 'bracketEv'))).toEqual(['0', '-2']);
    expect(sixth.map((row) => column(row, 'missingEv'))).toEqual(['2', '2']);
    expect(new Set(sixth.map((row) => column(row, 'offsetEv'))).size).toBe(1);
  });
});

test('a single exposure is placed by the frame before it, and a fourth one is one too many', () => {
  const files = evening();
  files[30] = [files[30]![2]!];
  files[60] = [...files[60]!, { ...files[60]![2]!, file: 'IMG_9999.JPG' }];
  const review = reviewFrames(plan, files.flat());
  expect(review.frames[30]).toMatchObject({ frame: 30, missingEv: [0, -2] });
  expect(review.frames[30]!.settingEv100).toBeCloseTo(plan.frames[30]!.settingEv100, 9);
  expect(noteOf(review.notes, 'doubled-frames')).toMatchObject({ count: 1, frames: [{ from: 60, to: 60 }] });
});

test('a late cue is as late, and a whole bracket that does not fit its interval ran over', () => {
  // The first cue of the shutter alone, done three frames late.
  const cue = plan.cues.find(({ changes }) => changes.length === 1 && changes[0]!.control === 'shutter')!;
  const files = plan.frames.map((frame) => {
    const isLate = frame.frame >= cue.frame && frame.frame < cue.frame + 3;
    return bracketOf(
      isLate ? { ...plan.frames[cue.frame - 1]!, frame: frame.frame, at: frame.at } : frame,
      [0, -2, 2],
    );
  });
  const review = reviewFrames(plan, files.flat());
  const late = review.cues.filter(({ lateS }) => lateS !== 0);
  expect(late).toEqual([expect.objectContaining({ frame: cue.frame, lateS: 60 })]);
  // Of the last frame the middle one at 4 s: 1 + 4 + 16 s, and pauses of 0.6 s, are more than 20 s.
  const long = plan.frames.at(-1)!;
  const over = { ...long, shutter: '4', shutterS: 4, bracketShortest: '1', bracketLongest: '15' };
  const taken = [...evening().slice(0, -1), bracketOf(over, [0, -2, 2])];
  expect(reviewFrames(plan, taken.flat()).frames.at(-1)).toMatchObject({ ranOver: true });
});
