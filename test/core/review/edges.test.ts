// The numbers that a review decides by, each tried on both sides of its edge: a tenth more or less gives another answer.
// They are our choices (docs/review.md); what should come out is worked out by hand beside each.

import { describe, expect, test } from 'vitest';
import {
  frameOfTags,
  learnedReadings,
  type PlanMade,
  type Review,
  type ReviewOptions,
  reviewFrames,
  type TakenFrame,
  writeReviewCsv,
} from '../../../packages/core/src/index.js';
import { framesOfShots } from '../../../packages/core/src/review/brackets.js';
import { hoursFastMs } from '../../../packages/core/src/review/camera-clock.js';
import { cuesStanding } from '../../../packages/core/src/review/cues-done.js';
import { lensesOf } from '../../../packages/core/src/review/lens.js';
import { markReader } from '../../../packages/core/src/review/marks.js';
import { placesOf } from '../../../packages/core/src/review/places.js';
import { smoothedOver } from '../../../packages/core/src/review/smoothed.js';
import type { Shot } from '../../../packages/core/src/review/taken.js';
import { seeded } from '../../reference/random.js';
import { duskPlan, takenAs } from './taken.js';

const plan = duskPlan();
const perfect = plan.frames.map((frame) => takenAs(frame));
const kinds = (review: Review) => review.notes.map(({ kind }) => kind);
const reviewed = (taken: readonly TakenFrame[], options?: ReviewOptions) =>
  reviewFrames(plan, taken, options);

/** f/1 at ISO 100, so that the shutter is 2^-EV seconds. */
const shotAt = (atS: number, ev: number, more: Partial<Shot> = {}): Shot => ({
  taken: { file: `${atS}.jpg`, at: '', shutterS: 2 ** -ev, iso: 100 },
  ...{ clockMs: 1000 * atS, isFine: true, shutter: `${ev} EV`, shutterS: 2 ** -ev },
  ...{ iso: 100, isoExact: 100, aperture: '1', fNumber: 1, bareEv100: ev },
  ...more,
});

/** As much of a plan as a part of the review asks for. */
const partOf = (parts: object) => parts as unknown as PlanMade;
const framesWith = (evs: readonly number[]) =>
  evs.map((settingEv100, frame) => ({ frame, settingEv100, filterStops: 0 }));

describe('a bracket', () => {
  const bracketed = (shots: readonly Shot[], stepEv: number, intervalS: number) => {
    const camera = { bracket: { frames: 3, stepEv, betweenS: 0 }, stepsPerStop: 3, bulb: true };
    return framesOfShots(shots, partOf({ shoot: { intervalS, camera }, frames: framesWith([0]) })).length;
  };

  test('has exposures whose prints lie up to 0.15 stops off their step', () => {
    const third = (offEv: number) => [shotAt(0, 5), shotAt(1, 4), shotAt(2, 6 + offEv)];
    expect(bracketed(third(0.145), 1, 20)).toBe(1);
    expect(bracketed(third(0.155), 1, 20)).toBe(2);
  });

  test('ends with its interval: times to the second may be off by one against one another, finer ones by 0.3 s', () => {
    // 1 s, 4 s and 1/4 s, the last of them begun 7 s after the first.
    const whole = [
      [0, 0],
      [1, -2],
      [7, 2],
    ].map(([atS, ev]) => shotAt(atS!, ev!, { isFine: false }));
    expect(bracketed(whole, 2, 8.1)).toBe(1);
    expect(bracketed(whole, 2, 8)).toBe(2);
    const fine = (lastS: number) => [shotAt(0, 0), shotAt(2, -2), shotAt(lastS, 2)];
    expect(bracketed(fine(7.68), 2, 8)).toBe(1);
    expect(bracketed(fine(7.72), 2, 8)).toBe(2);
  });

  test('keeps its order where its middle one is within 0.4 stops of that before', () => {
    // The usual order is middle, darker, brighter. The next two are brighter, middle: another order, unless a cue came between.
    const next = (byEv: number) => [
      ...[shotAt(0, 5), shotAt(1, 6), shotAt(2, 4)],
      ...[shotAt(20, 4 + byEv), shotAt(21, 5 + byEv)],
    ];
    expect(bracketed(next(0.38), 1, 20)).toBe(3);
    expect(bracketed(next(0.42), 1, 20)).toBe(2);
  });
});

describe("a camera's clock", () => {
  const QUARTER_S = 900;
  // A frame every quarter of an hour, so that the next place is another zone.
  const fastMs = (evs: readonly number[], shots: readonly Shot[]) =>
    hoursFastMs(shots, partOf({ shoot: { intervalS: QUARTER_S }, frames: framesWith(evs) }), 0);

  test('is in another zone where the settings are clearly nearer there, by 0.3 stops', () => {
    // The light falls by the same in every quarter, and the shots are what was planned for the next one.
    const dimming = (byEv: number) => {
      const evs = Array.from({ length: 40 }, (_, i) => -byEv * i);
      return fastMs(
        evs,
        evs.slice(10, 30).map((ev, i) => shotAt((i + 9) * QUARTER_S, ev)),
      );
    };
    expect(dimming(0.28)).toBe(0);
    expect(dimming(0.32)).toBe(-QUARTER_S * 1000);
  });

  test('is not where half of the frames would lie beside the plan, each as two stops off', () => {
    // As they are both shots are off by as much; a quarter on the first fits, and the second lies beside the plan: one stop.
    const half = (offEv: number) =>
      fastMs([20, 0, offEv], [shotAt(QUARTER_S, offEv), shotAt(2 * QUARTER_S, 2 * offEv)]);
    expect(half(1.25)).toBe(0);
    expect(half(1.35)).toBe(-QUARTER_S * 1000);
  });

  test('is up to 14 hours fast by its zone, as far as zones reach (IANA: Pacific/Kiritimati)', () => {
    // Without the first of four frames: where no zone explains it, its first frame is put on the plan's.
    const fastQuarters = (quarters: number) =>
      fastMs(
        [0, 5, 10, 15],
        [5, 10, 15].map((ev, i) => shotAt((quarters + 1 + i) * QUARTER_S, ev)),
      ) /
      (1000 * QUARTER_S);
    expect(fastQuarters(56)).toBe(56);
    expect(fastQuarters(57)).toBe(58);
  });
});

describe('cues', () => {
  /** A cue a frame; the state after each by its shutter's label and its EV. */
  const standing = (
    states: readonly { readonly shutter: string; readonly ev: number }[],
    shot: Shot,
    place: number,
  ) => {
    const frames = states.map(({ shutter, ev }) => ({
      ...{ shutter, iso: 100, aperture: '1', settingEv100: ev, filterStops: 0 },
    }));
    const cues = frames.slice(1).map((_, i) => ({ frame: i + 1 }));
    const { done } = cuesStanding(
      [shot],
      [place],
      partOf({ frames, cues, shoot: { camera: { bulb: false } } }),
    );
    return done[0];
  };

  test('of a setting that no cue gives, a stop counts as 25 cues: 0.05 for a stop, 0.002 for a cue', () => {
    const done = (cuesOff: number) =>
      standing(
        Array.from({ length: 41 }, (_, i) => ({ shutter: `after ${i}`, ev: i === 30 - cuesOff ? 0 : 1 })),
        shotAt(0, 0),
        30,
      );
    expect(done(24)).toBe(6);
    expect(done(26)).toBe(30);
  });

  test('are looked for up to 150 cues off', () => {
    const done = (is: number) =>
      standing(
        Array.from({ length: 401 }, (_, i) => ({ shutter: i === is ? '0 EV' : `after ${i}`, ev: 0 })),
        shotAt(0, 0),
        200,
      );
    expect(done(50)).toBe(50);
    expect(done(49)).toBe(200);
  });
});

test('a filter is told from the light from 0.8 stops on', () => {
  // Twenty shots; the filter was to come off at the tenth and came off at the twelfth.
  const seen = (stops: number) => {
    const shots = Array.from({ length: 20 }, (_, i) => shotAt(i, 0));
    const frames = shots.map((_, i) => ({ filters: i < 10 ? ['ND'] : [], filterStops: i < 10 ? stops : 0 }));
    const cues = [{ frame: 10, changes: [{ control: 'filter' }] }];
    const found = lensesOf(shots, {
      plan: partOf({ shoot: { filters: [{ name: 'ND', stops }] }, frames, cues }),
      options: {},
      timesMs: shots.map((_, i) => 1000 * i),
      done: shots.map((_, i) => (i < 10 ? 0 : 1)),
      bareOverForecastEv: shots.map((_, i) => (i < 12 ? -stops : 0)),
    });
    return [...found.seen];
  };
  expect(seen(0.85)).toEqual([[0, 12]]);
  expect(seen(0.75)).toEqual([]);
});

test.each([
  // 30 is 0.093 stops off 32 s; shorter still by more than 0.02 it is neither. 4 s is exact, and so are ISO 100 and f/4,
  // of which a stop is a factor of √2.
  { control: 'shutter', printed: 30 * 2 ** -0.019, label: '30' },
  { control: 'shutter', printed: 30 * 2 ** -0.021, label: '29.6' },
  { control: 'shutter', printed: 4 * 2 ** 0.095, label: '4' },
  { control: 'shutter', printed: 4 * 2 ** 0.105, label: '4.3' },
  { control: 'iso', printed: 100 * 2 ** 0.095, label: '100' },
  { control: 'iso', printed: 100 * 2 ** 0.105, label: '107.549' },
  { control: 'aperture', printed: 4 * 2 ** (0.095 / 2), label: '4' },
  { control: 'aperture', printed: 4 * 2 ** (0.105 / 2), label: '4.15' },
] as const)(
  'a print up to 0.02 stops off a mark, or 0.1 off its exact value, is that mark: $control $printed',
  ({ control, printed, label }) => {
    expect(markReader(3)(control, printed).label).toBe(label);
  },
);

test('places follow a fifth of what a shot is off, and so an interval up to a tenth longer', () => {
  // A shot x intervals late each time is x / 0.2 off its place in the end: half an interval, where x is a tenth.
  const places = (byShare: number) => {
    const shots = Array.from({ length: 60 }, (_, i) => shotAt(8 * i * (1 + byShare), 0));
    const frames = framesWith(shots.map(() => 0));
    const timesMs = shots.map(({ clockMs }) => clockMs);
    return placesOf(shots, timesMs, { startMs: 0, plan: partOf({ shoot: { intervalS: 8 }, frames }) }).places;
  };
  expect(places(0.095).at(-1)).toBe(59);
  expect(places(0.105).at(-1)).toBeGreaterThan(59);
});

describe('what a person is told', () => {
  const rig = duskPlan({ crew: 'rig', camera: { ...plan.shoot.camera, bulb: true } });

  test('settings off the forecast by more than half a stop', () => {
    const off = (byEv: number) =>
      reviewFrames(
        rig,
        rig.frames.map((frame) => ({ ...takenAs(frame), shutterS: frame.shutterS * 2 ** byEv })),
      );
    expect(kinds(off(0.48))).not.toContain('off-forecast');
    expect(kinds(off(0.52))).toContain('off-forecast');
  });

  test('another interval, from half a hundredth on', () => {
    const at = (byShare: number) =>
      reviewed(
        plan.frames.map((frame, i) => ({
          ...takenAs(frame),
          at: new Date(Date.parse(plan.frames[0]!.at) + 8000 * i * (1 + byShare)).toISOString(),
        })),
        { clockFastS: 0 },
      );
    expect(kinds(at(0.0048))).not.toContain('other-interval');
    expect(kinds(at(0.0052))).toContain('other-interval');
  });

  test('five runs of frames, and that there are more', () => {
    const text = (missing: readonly number[]) =>
      reviewed(perfect.filter((_, i) => !missing.includes(i))).notes.find(
        ({ kind }) => kind === 'missing-frames',
      )!.text;
    const five = [10, 20, 30, 40, 50];
    expect(text(five)).toContain('11, 21, 31, 41, 51:');
    expect(text([...five, 60])).toContain('11, 21, 31, 41, 51 and more:');
  });
});

describe('levels', () => {
  // Grey by ISO 12232, 0.18 of white, at the forecast's light.
  const level = (frame: PlanMade['frames'][number], overEv = 0) => ({
    ...takenAs(frame),
    level: { mean: 0.18 * 2 ** (frame.sceneEv100 + overEv - frame.settingEv100) },
  });

  test('tell of an evening from five on', () => {
    const from = (count: number) =>
      reviewed(
        plan.frames.map((frame, i) => (i % 100 === 0 && i < 100 * count ? level(frame) : takenAs(frame))),
      ).summary.lightFrom;
    expect(from(4)).toBe('forecast');
    expect(from(5)).toBe('levels');
  });

  test('beside a filter change, more than half a stop off the light are spoilt', () => {
    const { frame: changed } = plan.cues.find(({ changes }) =>
      changes.some(({ control }) => control === 'filter'),
    )!;
    const spoilt = (byEv: number) =>
      reviewed(plan.frames.map((frame, i) => level(frame, i === changed ? byEv : 0))).frames[changed]!.spoilt;
    expect(spoilt(-0.48)).toBeUndefined();
    expect(spoilt(-0.52)).toBe(true);
  });

  test('give the light every five minutes: 38 intervals of 8 s', () => {
    const { light } = reviewed(plan.frames.map((frame) => level(frame)));
    expect(Date.parse(light[1]!.at) - Date.parse(light[0]!.at)).toBe(304_000);
  });

  test('teach another evening where its sun is within a quarter of a degree as high', () => {
    const [first] = plan.frames;
    const readings = (offDeg: number) =>
      learnedReadings(
        plan,
        {
          ...reviewed(perfect),
          light: [
            { at: first!.at, sunAltitudeDeg: first!.sunAltitudeDeg + offDeg, ev100: 10, forecastEv100: 10 },
          ],
        },
        plan.shoot,
      );
    expect(readings(0.24)).toHaveLength(1);
    expect(readings(0.26)).toEqual([]);
  });
});

describe('the smooth line', () => {
  /** Ups and downs of so many stops about 0, a wild one among them. */
  const lineAt = (scatterEv: number, wild: number | undefined) => {
    const samples = Array.from({ length: 81 }, (_, i) => ({
      ms: 1000 * i,
      value: i % 2 === 0 ? scatterEv : -scatterEv,
    }));
    const all =
      wild === undefined ? samples.filter((_, i) => i !== 40) : samples.with(40, { ms: 40_000, value: wild });
    return smoothedOver(all, 10_000)(40_500);
  };

  test('passes over what stands out by six times the usual scatter (Cleveland 1979)', () => {
    // 5.7 times has (1 - 0.95²)² of a weight, of about nine samples in reach: 0.0095 · 5.7 / 9, six thousandths.
    expect(Math.abs(lineAt(1, 6.3) - lineAt(1, undefined))).toBeLessThan(0.001);
    expect(Math.abs(lineAt(1, 5.7) - lineAt(1, undefined))).toBeGreaterThan(0.002);
  });

  test('takes differences below 0.03 stops, six times 0.005, for no outliers', () => {
    expect(Math.abs(lineAt(0, 0.031))).toBeLessThan(1e-12);
    expect(Math.abs(lineAt(0, 0.029))).toBeGreaterThan(1e-6);
  });

  test('has eight samples or more, however far off', () => {
    // One a minute, of which five seconds reach one at most. At 20.2 minutes the eighth nearest is the 24th, the ninth the 16th.
    const at = (moved: number) => {
      const samples = Array.from({ length: 41 }, (_, i) => ({
        ms: 60_000 * i,
        value: i === moved ? 0.02 : 0,
      }));
      return Math.abs(smoothedOver(samples, 5000)(20.2 * 60_000));
    };
    expect(at(24)).toBeGreaterThan(0);
    expect(at(16)).toBe(0);
  });

  test('is weighed anew four times, as worked out the long way', () => {
    const random = seeded(7);
    const samples = Array.from({ length: 60 }, (_, i) => ({
      ms: 1000 * i,
      value: Math.sin(i / 9) + random.between(-0.1, 0.1) + (i % 11 === 0 ? 0.2 : 0),
    }));
    const reach = 12_000;
    const middle = (values: readonly number[]) => {
      const sorted = [...values].sort((a, b) => a - b);
      return (sorted[Math.ceil(sorted.length / 2) - 1]! + sorted[Math.floor(sorted.length / 2)]!) / 2;
    };
    // Cleveland's tricube of distance and bisquare of residuals; the line by its normal equations.
    const fitAt = (ms: number, trust: readonly number[]) => {
      const rows = samples.map((sample, i) => {
        const away = Math.min(1, Math.abs(sample.ms - ms) / reach);
        return { x: sample.ms - ms, y: sample.value, w: trust[i]! * (1 - away ** 3) ** 3 };
      });
      const sum = (of: (row: (typeof rows)[number]) => number) =>
        rows.reduce((a, row) => a + row.w * of(row), 0);
      const [n, x, xx, y, xy] = [
        sum(() => 1),
        sum((r) => r.x),
        sum((r) => r.x ** 2),
        sum((r) => r.y),
        sum((r) => r.x * r.y),
      ];
      return (xx * y - x * xy) / (n * xx - x * x);
    };
    const near = samples.map((_, i) =>
      middle(samples.slice(Math.max(0, i - 7), i + 8).map(({ value }) => value)),
    );
    const first = samples.map(({ value }, i) => Math.abs(value - near[i]!));
    let trust: number[] = first.map((off) => (off < 6 * middle(first) ? 1 : 0));
    for (let round = 0; round < 4; round++) {
      const off = samples.map(({ ms, value }) => Math.abs(value - fitAt(ms, trust)));
      const scale = 6 * middle(off);
      trust = off.map((each) => (each < scale ? (1 - (each / scale) ** 2) ** 2 : 0));
    }
    const line = smoothedOver(samples, reach);
    for (const { ms } of samples) expect(line(ms)).toBeCloseTo(fitAt(ms, trust), 9);
  });
});

test('no offset is beyond three stops, unless another limit is asked for', () => {
  // Four stops darker than planned by its shutter.
  const taken = perfect.map((frame, i) => (i === 120 ? { ...frame, shutterS: frame.shutterS / 16 } : frame));
  const { frames, summary } = reviewed(taken);
  expect(summary.mostEv).toBe(3);
  expect(frames[120]!.offsetEv).toBe(3);
});

test('a camera has a name of 200 characters at most, and stops in a table three digits', () => {
  const tags = {
    DateTimeOriginal: '2026:10:14 18:07:31',
    ExposureTime: 0.008,
    ISO: 100,
    Model: 'x'.repeat(300),
  };
  expect(frameOfTags('1.jpg', tags)).toMatchObject({ frame: { camera: 'x'.repeat(200) } });
  const review = reviewed(perfect);
  const [, ...rows] = writeReviewCsv(review).trim().split('\r\n');
  const offsets = rows.map((row) => row.split(',')[1]!);
  expect(offsets).toEqual(review.frames.map(({ offsetEv }) => String(Number(offsetEv.toFixed(3)) + 0)));
});
