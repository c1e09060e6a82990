// Evenings as they happen, held against the plan. What should come out is known from how each was made up: by hand.

import { expect, test } from 'vitest';
import {
  type PlanFrame,
  type Review,
  type ReviewNote,
  reviewFrames,
} from '../../../packages/core/src/index.js';
import { duskPlan, takenAs } from './taken.js';

const plan = duskPlan();
const perfect = plan.frames.map((frame) => takenAs(frame));

/** The setting that stands where a cue is done so many frames late; a cue that is never done, for good. */
function settingAt(frame: number, lateFrames: Readonly<Record<number, number>>): PlanFrame {
  // Cues in order: a cue whose own controls are not turned leaves them as they were.
  let setting = plan.frames[0]!;
  for (const [index, cue] of plan.cues.entries()) {
    if (frame < cue.frame + (lateFrames[index + 1] ?? 0)) continue;
    const after = plan.frames[cue.frame]!;
    setting = { ...setting, ...kept(after) };
  }
  return { ...plan.frames[frame]!, ...kept(setting) };
}

const kept = ({ shutter, iso, aperture, filters, filterStops }: PlanFrame) => ({
  shutter,
  iso,
  aperture,
  filters,
  filterStops,
});

const evening = (lateFrames: Readonly<Record<number, number>>) =>
  plan.frames.map(({ frame }) => takenAs(settingAt(frame, lateFrames)));

function noteOf<Kind extends ReviewNote['kind']>({ notes }: Review, kind: Kind) {
  return notes.find((note): note is Extract<ReviewNote, { kind: Kind }> => note.kind === kind);
}

test('a perfect evening: every cue on time, no frame missing, offsets are the errors of the plan itself', () => {
  const review = reviewFrames(plan, perfect);
  expect(review.cues).toHaveLength(plan.cues.length);
  for (const { lateS, seen } of review.cues) expect({ lateS, seen }).toEqual({ lateS: 0, seen: true });
  expect(review.missingFrames).toEqual([]);
  for (const [i, frame] of review.frames.entries()) {
    expect(frame.frame).toBe(i);
    expect(frame.settingEv100).toBeCloseTo(plan.frames[i]!.settingEv100, 9);
    expect(frame.offsetEv).toBeCloseTo(plan.frames[i]!.errorEv, 9);
  }
  expect(review.notes.map(({ kind }) => kind)).toEqual(['spoilt', 'filters-assumed']);
});

test('a late cue: by how many seconds, and its frames want what the click would have given', () => {
  // Cue 5, 1 s to 1.6 s, two thirds of a stop, done five frames of 8 s late.
  const review = reviewFrames(plan, evening({ 5: 5 }));
  expect(review.cues[4]).toMatchObject({ cue: 5, lateS: 40, doneFrame: plan.cues[4]!.frame + 5 });
  expect(review.cues.filter(({ lateS }) => lateS !== 0)).toHaveLength(1);
  expect(noteOf(review, 'cues-off-time')).toMatchObject({ count: 1, cue: 5, lateS: 40 });
  const first = plan.cues[4]!.frame;
  for (let frame = first; frame < first + 5; frame++) {
    const wanted = plan.frames[frame]!.errorEv + 2 / 3;
    expect(review.frames[frame]!.offsetEv).toBeCloseTo(wanted, 9);
  }
  expect(review.frames[first + 5]!.offsetEv).toBeCloseTo(plan.frames[first + 5]!.errorEv, 9);
});

test('an early cue has its seconds below zero', () => {
  const review = reviewFrames(plan, evening({ 5: -3 }));
  expect(review.cues[4]).toMatchObject({ lateS: -24 });
});

test('a missed cue was never done, and the one after it is on time', () => {
  const review = reviewFrames(plan, evening({ 6: Number.POSITIVE_INFINITY }));
  expect(review.cues[5]).toMatchObject({ cue: 6, lateS: null, seen: true });
  expect(review.cues[6]).toMatchObject({ cue: 7, lateS: 0 });
  expect(noteOf(review, 'cues-missed')?.cues).toEqual([6]);
});

test('two cues done together were both late, where what both turn stands', () => {
  // Cue 16, the last of the shutter, waits for cue 17, the first of the ISO.
  const wait = plan.cues[16]!.frame - plan.cues[15]!.frame;
  const review = reviewFrames(plan, evening({ 16: wait }));
  expect(review.cues[15]).toMatchObject({ lateS: 8 * wait });
  expect(review.cues[16]).toMatchObject({ lateS: 0 });
});

test('the last cue, missed to the end', () => {
  const review = reviewFrames(plan, evening({ 20: Number.POSITIVE_INFINITY }));
  expect(review.cues[19]).toMatchObject({ lateS: null, seen: true });
});

test.each([3600, -3600, 20_700, 86_400 * 2, 20, -35])('a camera clock that is %d s fast', (fastS) => {
  const taken = plan.frames.map((frame) => takenAs(frame, { fastS }));
  const review = reviewFrames(plan, taken);
  expect(review.summary.clockFastS).toBe(fastS);
  expect(noteOf(review, 'clock-off')?.fastS).toBe(fastS);
  expect(review.missingFrames).toEqual([]);
  expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
  expect(review.frames[0]!.at).toBe(plan.frames[0]!.at);
});

test('an hour is found where frames are missing at both ends', () => {
  const taken = plan.frames.slice(20, -7).map((frame) => takenAs(frame, { fastS: 3600 }));
  const review = reviewFrames(plan, taken);
  expect(review.summary.clockFastS).toBe(3600);
  expect(review.missingFrames).toHaveLength(27);
});

test('whoever begins and ends late has a clock that is right', () => {
  const review = reviewFrames(plan, perfect.slice(4));
  expect(review.summary.clockFastS).toBe(0);
  expect(review.missingFrames).toEqual([0, 1, 2, 3]);
  expect(noteOf(review, 'clock-off')).toBeUndefined();
});

test('a clock that is said to be right is taken as it is', () => {
  const taken = plan.frames.map((frame) => takenAs(frame, { fastS: 80 }));
  const review = reviewFrames(plan, taken, { clockFastS: 0 });
  expect(review.summary.clockFastS).toBe(0);
  expect(review.frames[0]!.frame).toBe(10);
  expect(noteOf(review, 'outside')).toMatchObject({ before: 0, after: 10 });
});

test('missing frames, a frame too many, and one that slipped', () => {
  const taken = perfect.filter((_, i) => ![100, 101, 500].includes(i));
  const extra = {
    ...perfect[200]!,
    file: 'IMG_9999.JPG',
    at: perfect[200]!.at.replace(/\d$/, (s) => String((Number(s) + 2) % 10)),
  };
  const review = reviewFrames(plan, [...taken, extra]);
  expect(review.missingFrames).toEqual([100, 101, 500]);
  expect(noteOf(review, 'missing-frames')).toMatchObject({
    count: 3,
    frames: [
      { from: 100, to: 101 },
      { from: 500, to: 500 },
    ],
  });
  expect(review.frames.filter(({ doubled }) => doubled).map(({ file }) => file)).toEqual(['IMG_9999.JPG']);
  const slipped = perfect.map((frame, i) => (i === 300 ? { ...frame, at: later(frame.at, 3) } : frame));
  expect(noteOf(reviewFrames(plan, slipped), 'slipped')).toMatchObject({ count: 2, worstS: 3, frame: 299 });
});

test("a camera's own interval, a twentieth of a second longer, moves no frame but those that it loses", () => {
  const taken = perfect.map((frame, i) => ({ ...frame, at: laterMs(frame.at, 50 * i) }));
  const review = reviewFrames(plan, taken, { clockFastS: 0 });
  expect(noteOf(review, 'other-interval')).toMatchObject({ plannedS: 8 });
  expect(review.summary.intervalS).toBeCloseTo(8.05, 3);
  expect(review.missingFrames).toEqual([]);
  expect(noteOf(review, 'doubled-frames')).toBeUndefined();
});

test('another camera, raw beside JPEG, and a counter that starts over', () => {
  const named = perfect.map((frame, i) => ({
    ...frame,
    camera: 'one',
    // Two frames fall into one second now and then: the counter tells their order.
    file: `DSC_${String((9700 + i) % 10_000).padStart(4, '0')}.JPG`,
  }));
  const raw = named.map((frame) => ({ ...frame, file: `raw/${frame.file.replace('.JPG', '.DNG')}` }));
  const other = perfect.slice(0, 50).map((frame) => ({ ...frame, camera: 'two', file: `two/${frame.file}` }));
  const review = reviewFrames(plan, [...other, ...raw, ...named]);
  expect(review.frames).toHaveLength(plan.frames.length);
  expect(noteOf(review, 'other-camera')).toMatchObject({ camera: 'two', count: 50 });
  expect(noteOf(review, 'copies')).toMatchObject({ count: plan.frames.length });
  // What any program shows is kept.
  expect(review.frames.every(({ file }) => file.endsWith('.JPG'))).toBe(true);
  const sameSecond = named.map((frame, i) => (i === 300 ? { ...frame, at: named[299]!.at } : frame));
  const files = reviewFrames(plan, sameSecond).frames.map(({ file }) => file);
  expect(files.indexOf('DSC_9999.JPG')).toBe(299);
  expect(files.indexOf('DSC_0000.JPG')).toBe(300);
});

test('parts of a second order frames of a short interval', () => {
  const quick = duskPlan({
    intervalS: 2.5,
    camera: { ...plan.shoot.camera, shutter: { shortest: '1/4000', longest: '1' } },
  });
  const fine = quick.frames.map((frame) => ({
    ...takenAs(frame),
    at: laterMs(takenAs(frame).at, Number(frame.at.includes('.') ? 500 : 0)),
  }));
  expect(reviewFrames(quick, fine).missingFrames).toEqual([]);
  // In whole seconds, cut short, every place still has its frame.
  const review = reviewFrames(
    quick,
    quick.frames.map((frame) => takenAs(frame)),
  );
  expect(review.missingFrames).toEqual([]);
  expect(review.frames.some(({ doubled }) => doubled)).toBe(false);
});

test('of a bracket the middle exposure is reviewed, the others are told apart', () => {
  // Three exposures, a stop apart, two seconds from one to the next, the darkest first.
  const brackets = perfect.flatMap((frame, i) =>
    [-1, 0, 1].map((ev, k) => ({
      ...frame,
      file: `IMG_${String(3 * i + k).padStart(4, '0')}.JPG`,
      at: later(frame.at, k),
      iso: ev === 0 ? frame.iso : frame.iso * 2 ** ev,
    })),
  );
  const review = reviewFrames(plan, brackets);
  const kept = review.frames.filter(({ doubled }) => doubled !== true);
  expect(kept.map(({ file }) => Number(file.slice(4, 8)) % 3)).toEqual(kept.map(() => 1));
  expect(kept).toHaveLength(plan.frames.length);
  expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
  expect(noteOf(review, 'unplanned')).toBeUndefined();
  expect(noteOf(review, 'doubled-frames')?.count).toBe(2 * plan.frames.length);
});

test('a setting nobody planned, and an exposure that runs into the next', () => {
  const taken = perfect.map((frame, i) =>
    i === 120 ? { ...frame, shutterS: 0.5 } : i === 400 ? { ...frame, shutterS: 10 } : frame,
  );
  const review = reviewFrames(plan, taken);
  expect(noteOf(review, 'unplanned')).toMatchObject({ count: 2 });
  expect(noteOf(review, 'ran-over')).toMatchObject({ count: 1, frames: [{ from: 400, to: 400 }] });
});

test('what no setting can cure is listed, and says by how much', () => {
  const taken = perfect.map((frame, i) => (i === 120 ? { ...frame, shutterS: 1 / 100 } : frame));
  const review = reviewFrames(plan, taken, { mostEv: 2 });
  const frame = review.frames[120]!;
  expect(frame.offsetEv).toBe(2);
  expect(frame.settingEv100 - frame.offsetEv - frame.beyondEv!).toBeCloseTo(frame.targetEv100, 9);
  expect(noteOf(review, 'beyond')).toMatchObject({ count: 1, frames: [{ from: 120, to: 120 }], mostEv: 2 });
  expect(review.summary.stepAfterEv).toBeCloseTo(frame.beyondEv!, 9);
});

test('a filter log is believed, by the true clock', () => {
  const changed = plan.cues.find(({ changes }) => changes.some(({ control }) => control === 'filter'))!;
  const atMs = Date.parse(changed.at) + 80_000;
  const filterLog = [
    { atMs: Date.parse(plan.frames[0]!.at), filters: ['ND 1.8'] },
    { atMs, filters: [] },
  ];
  const review = reviewFrames(plan, perfect, { filterLog });
  expect(review.frames[changed.frame + 9]!.filters).toEqual(['ND 1.8']);
  expect(review.frames[changed.frame + 10]!.filters).toEqual([]);
  expect(noteOf(review, 'filters-assumed')).toBeUndefined();
  expect(() => reviewFrames(plan, perfect, { filterLog: [{ atMs, filters: ['ND 9'] }] })).toThrow(
    'filters must be the shoot\'s, ND 1.8, got "ND 9"',
  );
});

test('readings move the target: a darker evening, followed, wants no brightening', () => {
  const darkerEv = -1;
  // Every click comes as the light has it: as the plan, one stop on.
  const followed = plan.frames.map((frame) => ({ ...takenAs(frame), iso: frame.iso * 2 }));
  const readings = [0, 200, 400, 700].map((i) => ({
    atMs: Date.parse(plan.frames[i]!.at),
    ev100: plan.frames[i]!.sceneEv100 + darkerEv,
  }));
  const blind = reviewFrames(plan, followed);
  expect(noteOf(blind, 'off-forecast')?.byEv).toBeCloseTo(-1, 6);
  const review = reviewFrames(plan, followed, { readings });
  expect(noteOf(review, 'off-forecast')).toBeUndefined();
  expect(review.summary.lightFrom).toBe('readings');
  expect(review.forecast).toMatchObject({ count: 4 });
  expect(review.forecast!.offsetEv).toBeCloseTo(-1, 9);
  for (const [i, frame] of review.frames.entries()) {
    expect(frame.offsetEv).toBeCloseTo(plan.frames[i]!.errorEv, 6);
  }
});

test('a dial in halves, and a camera in halves beside a plan in thirds', () => {
  const halves = duskPlan({
    camera: {
      ...plan.shoot.camera,
      stepsPerStop: 2,
      aperture: '5.6',
      shutter: { shortest: '1/4000', longest: '6' },
    },
  });
  const review = reviewFrames(
    halves,
    halves.frames.map((frame) => takenAs(frame)),
  );
  expect(review.cues.length).toBeGreaterThan(5);
  expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
  for (const [i, frame] of review.frames.entries())
    expect(frame.offsetEv).toBeCloseTo(halves.frames[i]!.errorEv, 9);
  const other = reviewFrames(plan, [{ ...perfect[0]!, shutterS: 1 / 45 }]);
  expect(other.frames[0]).toMatchObject({ shutter: '1/45', unplanned: true });
  expect(other.frames[0]!.shutterS).toBeCloseTo(2 ** -5.5, 12);
});

test('a shutter that a rig times freely is what the file says', () => {
  const rig = duskPlan({ crew: 'rig', camera: { ...plan.shoot.camera, bulb: true } });
  const taken = rig.frames.map((frame) => ({ ...takenAs(frame), shutterS: frame.shutterS }));
  const review = reviewFrames(rig, taken);
  expect(review.cues.every(({ lateS }) => lateS === 0)).toBe(true);
  for (const [i, frame] of review.frames.entries())
    expect(frame.offsetEv).toBeCloseTo(rig.frames[i]!.errorEv, 6);
});

test('without frames, or with a time that is none, it says so', () => {
  expect(() => reviewFrames(plan, [])).toThrow('frames must hold one or more, got none');
  expect(() => reviewFrames(plan, [{ ...perfect[0]!, at: 'noon' }])).toThrow('got "noon" of IMG_1000.JPG');
  expect(() => reviewFrames(plan, [{ ...perfect[0]!, at: '2026-13-14T18:00:00' }])).toThrow(
    'at must be a time',
  );
});

test('one frame is reviewed too', () => {
  const review = reviewFrames(plan, [perfect[20]!]);
  expect(review.missingFrames).toHaveLength(plan.frames.length - 1);
  expect(review.frames[0]).toMatchObject({ frame: 20 });
});

function later(at: string, byS: number): string {
  return new Date(Date.parse(`${at}Z`) + 1000 * byS).toISOString().slice(0, 19);
}

function laterMs(at: string, byMs: number): string {
  return new Date(Date.parse(`${at}Z`) + byMs).toISOString().slice(0, 23);
}
