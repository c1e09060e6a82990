// Evenings whose frames tell how bright they came out. The light is made up; a frame's mean follows from it by APEX:
// 0.18 of white where it is exposed as metered, doubled for each stop more (ISO 12232, ISO 2721).

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlanFrame, reviewFrames, type TakenFrame } from '../../../packages/core/src/index.js';
import { smoothedOver } from '../../../packages/core/src/review/smoothed.js';
import { readTable } from '../../reference/csv.js';
import { duskPlan, takenAs } from './taken.js';

const plan = duskPlan();
const filterCue = plan.cues.findIndex(({ changes }) => changes.some(({ control }) => control === 'filter'));
const changed = plan.cues[filterCue]!.frame;

/** A frame's level where the light is so many stops over the forecast; a foreground that is darker than grey. */
function seen(frame: PlanFrame, overEv: number, more: { stops?: number; grey?: number } = {}): TakenFrame {
  const { stops = frame.filterStops, grey = 0.09 } = more;
  const settingEv100 = frame.settingEv100 - frame.filterStops + stops;
  return {
    ...takenAs(frame),
    level: { mean: Math.min(1, grey * 2 ** (frame.sceneEv100 + overEv - settingEv100)) },
  };
}

describe('the light read off the frames', () => {
  test('a perfect evening still has the errors of the plan, however dark its foreground', () => {
    const review = reviewFrames(
      plan,
      plan.frames.map((frame) => seen(frame, 0)),
    );
    expect(review.summary.lightFrom).toBe('levels');
    for (const [i, { offsetEv }] of review.frames.entries()) {
      expect(offsetEv).toBeCloseTo(plan.frames[i]!.errorEv, 6);
    }
    // log2 (0.09 / 0.18): the frame is a stop below grey throughout.
    expect(review.forecast?.offsetEv).toBeCloseTo(-1, 6);
    expect(review.forecast?.spreadEv).toBeCloseTo(0, 6);
  });

  test('is followed without lag: a sky that dims over twenty minutes', () => {
    const dimmingEv = (i: number) => -1.2 / (1 + Math.exp(-(i - 350) / 40));
    const review = reviewFrames(
      plan,
      plan.frames.map((frame, i) => seen(frame, dimmingEv(i), { grey: 0.18 })),
    );
    const over = review.frames.map(({ sceneEv100 }, i) => sceneEv100 - plan.frames[i]!.sceneEv100);
    for (const [i, ev] of over.entries()) expect(Math.abs(ev - dimmingEv(i))).toBeLessThan(0.02);
    // Early and late by as much: no lag.
    const at = (level: number) => over.findIndex((ev) => ev < level);
    expect(Math.abs(at(-0.6) - 350)).toBeLessThan(2);
  });

  test('passing lights move nothing but their own frames, and stay in the picture', () => {
    const lights = new Map([
      [200, 1.5],
      [201, 2],
      [202, 0.8],
      [500, 1],
    ]);
    const dark = plan.frames.map((frame) => seen(frame, 0));
    const lit = plan.frames.map((frame, i) => seen(frame, lights.get(i) ?? 0));
    const [without, withThem] = [reviewFrames(plan, dark), reviewFrames(plan, lit)];
    for (const [i, { offsetEv }] of withThem.frames.entries()) {
      expect(Math.abs(offsetEv - without.frames[i]!.offsetEv)).toBeLessThan(0.005);
    }
  });

  test('bridges a gap of ten minutes', () => {
    const dimmingEv = (i: number) => -i / 709;
    const taken = plan.frames.map((frame, i) => seen(frame, dimmingEv(i)));
    const whole = reviewFrames(plan, taken);
    const cut = reviewFrames(
      plan,
      taken.filter((_, i) => i < 300 || i >= 375),
    );
    const sceneOf = new Map(cut.frames.map(({ frame, sceneEv100 }) => [frame, sceneEv100]));
    let compared = 0;
    for (const { frame, sceneEv100 } of whole.frames) {
      const other = sceneOf.get(frame);
      if (other === undefined) continue;
      compared++;
      expect(Math.abs(other - sceneEv100)).toBeLessThan(0.02);
    }
    expect(compared).toBe(plan.frames.length - 75);
  });

  test('small differences of shutter and aperture are taken out on request, a passing light is not', () => {
    const tremor = plan.frames.map((_, i) => 0.05 * Math.sin(12.9898 * i * i));
    const taken = plan.frames.map((frame, i) => seen(frame, i === 400 ? 1.2 : tremor[i]!));
    const plain = reviewFrames(plan, taken);
    const even = reviewFrames(plan, taken, { evenFlicker: true });
    expect(plain.frames.every(({ flickerEv }) => flickerEv === undefined)).toBe(true);
    for (const [i, frame] of even.frames.entries()) {
      const { settingEv100, targetEv100, offsetEv, flickerEv = 0 } = frame;
      expect(settingEv100 - offsetEv - flickerEv).toBeCloseTo(targetEv100, 9);
      if (i === 400) expect(flickerEv).toBe(0);
      else expect(Math.abs(flickerEv - tremor[i]!)).toBeLessThan(0.02);
    }
  });
});

describe('filters', () => {
  const [on, off] = [plan.frames[changed - 1]!.filterStops, 0];

  test('a filter that stayed on is seen, said, and counted', () => {
    const review = reviewFrames(
      plan,
      plan.frames.map((frame) => seen(frame, 0, { stops: on })),
      { mostEv: 10 },
    );
    expect(review.cues[filterCue]).toMatchObject({ lateS: null, seen: true });
    const note = review.notes.find(({ kind }) => kind === 'filter-stayed');
    expect(note).toMatchObject({ cue: filterCue + 1, filters: ['ND 1.8'] });
    // Six stops of ND 1.8, by the density: 1.8 / log10 2.
    expect(on).toBeCloseTo(1.8 / Math.log10(2), 9);
    const frame = review.frames[changed + 100]!;
    expect(frame.offsetEv).toBeCloseTo(plan.frames[changed + 100]!.errorEv + on, 6);
    expect(frame.filters).toEqual(['ND 1.8']);
  });

  test('a filter that came off late is off from then on', () => {
    const late = 12;
    const taken = plan.frames.map((frame, i) => seen(frame, 0, { stops: i < changed + late ? on : off }));
    const review = reviewFrames(plan, taken, { mostEv: 10 });
    expect(review.cues[filterCue]).toMatchObject({ lateS: 8 * late });
    expect(review.frames[changed + late - 1]!.filterStops).toBe(on);
    expect(review.frames[changed + late]!.filterStops).toBe(0);
  });

  test('frames with a hand before the lens are found, and replaced by a neighbour on request', () => {
    const spoilt = [changed, changed + 1];
    const taken = plan.frames.map((frame, i) => seen(frame, spoilt.includes(i) ? -2.5 : 0));
    const review = reviewFrames(plan, taken);
    expect(review.frames.flatMap(({ spoilt, frame }) => (spoilt ? [frame] : []))).toEqual(spoilt);
    const shown = reviewFrames(plan, taken, { replaceSpoilt: true });
    const frame = shown.frames[changed]!;
    expect(frame.shows).toBe(shown.frames[changed - 1]!.file);
    // The neighbour's setting, brought to this frame's own target.
    expect(shown.frames[changed - 1]!.settingEv100 - frame.offsetEv).toBeCloseTo(frame.targetEv100, 9);
    expect(shown.frames[changed - 1]!.shows).toBeUndefined();
  });
});

describe('what is left after the correction', () => {
  test('is no step that anyone sees, and the least that is seen is the published one', () => {
    const row = readTable('review/gsdf_jnd.csv').find(({ luminance_cd_m2 }) => luminance_cd_m2 === '200')!;
    const review = reviewFrames(
      plan,
      plan.frames.map((frame) => takenAs(frame)),
    );
    expect(review.summary.justNoticeableEv).toBe(Number(row.one_jnd_in_stops));
    expect(review.summary.whiteCdM2).toBe(200);
    // Two thirds of a stop at a click, and a third more where the filter comes off.
    expect(review.summary.stepBeforeEv).toBeGreaterThan(0.5);
    expect(review.summary.stepAfterEv).toBeLessThan(review.summary.justNoticeableEv);
    const targets = review.frames.map(({ settingEv100, offsetEv }) => settingEv100 - offsetEv);
    const planned = plan.frames.map(({ targetEv100 }) => targetEv100);
    for (let i = 1; i < targets.length; i++) {
      const step = targets[i]! - targets[i - 1]! - (planned[i]! - planned[i - 1]!);
      expect(Math.abs(step)).toBeLessThan(Number(row.one_jnd_in_stops));
    }
  });
});

describe('whatever was taken', () => {
  const taken = fc.array(
    fc.record({
      frame: fc.integer({ min: 0, max: plan.frames.length - 1 }),
      shutterS: fc.constantFrom(1 / 250, 1 / 60, 0.3, 1 / 3, 1.3, 2, 6, 30),
      iso: fc.constantFrom(100, 125, 640, 3200),
      mean: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
      lateMs: fc.integer({ min: -4000, max: 4000 }),
    }),
    { minLength: 1, maxLength: 60 },
  );
  const filesOf = (records: typeof taken extends fc.Arbitrary<infer T> ? T : never): TakenFrame[] =>
    records.map(({ frame, shutterS, iso, mean, lateMs }, i) => ({
      file: `${i}.jpg`,
      at: new Date(Date.parse(plan.frames[frame]!.at) + lateMs).toISOString(),
      ...{ shutterS, iso, fNumber: 5.6 },
      ...(mean === undefined ? {} : { level: { mean } }),
    }));

  test('offsets and settings come to the target exactly, and no offset is beyond the largest', () => {
    fc.assert(
      fc.property(
        taken,
        fc.double({ min: 0.1, max: 6, noNaN: true }),
        fc.boolean(),
        (records, mostEv, evenFlicker) => {
          const { frames } = reviewFrames(plan, filesOf(records), { mostEv, evenFlicker });
          expect(frames.length).toBeGreaterThan(0);
          for (const { settingEv100, targetEv100, offsetEv, beyondEv = 0, flickerEv = 0 } of frames) {
            expect(Math.abs(offsetEv)).toBeLessThanOrEqual(mostEv);
            expect(Math.abs(settingEv100 - offsetEv - beyondEv - flickerEv - targetEv100)).toBeLessThan(1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('the order of the files does not matter', () => {
    fc.assert(
      fc.property(taken, fc.infiniteStream(fc.nat()), (records, keys) => {
        const files = filesOf(records);
        const shuffled = files
          .map((file) => ({ file, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ file }) => file);
        expect(reviewFrames(plan, shuffled)).toEqual(reviewFrames(plan, files));
      }),
      { numRuns: 40 },
    );
  });
});

describe('the smooth line', () => {
  const minute = 60_000;

  test('leaves a straight line as it is, at its ends too', () => {
    const samples = Array.from({ length: 50 }, (_, i) => ({ ms: i * minute, value: 3 - 0.1 * i }));
    const line = smoothedOver(samples, 5 * minute);
    for (const { ms, value } of samples) expect(line(ms)).toBeCloseTo(value, 9);
  });

  test('is symmetric in time: reversed samples give the reversed line', () => {
    const samples = Array.from({ length: 80 }, (_, i) => ({
      ms: i * minute,
      value: Math.sin(i / 7) + (i === 30 ? 5 : 0),
    }));
    const reversed = samples.map(({ ms, value }) => ({ ms: 79 * minute - ms, value })).reverse();
    const [line, back] = [smoothedOver(samples, 6 * minute), smoothedOver(reversed, 6 * minute)];
    for (const { ms } of samples) expect(back(79 * minute - ms)).toBeCloseTo(line(ms), 9);
  });
});
