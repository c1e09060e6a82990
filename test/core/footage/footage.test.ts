import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dialLabel, timeOfStep } from '../../../packages/core/src/exposure/dial.js';
import {
  exactFps,
  FRAME_RATES,
  footageOf,
  longestMarkedShutter,
  shutterAngleDeg,
} from '../../../packages/core/src/footage/footage.js';
import { clipLengthS, frameCountOf } from '../../../packages/core/src/footage/frames.js';
import { INTERVALS_BY_SUBJECT, type Subject } from '../../../packages/core/src/footage/interval-advice.js';
import { framesOnCard, framesOnCharge, lastingOf } from '../../../packages/core/src/footage/supplies.js';
import { readTable } from '../../reference/csv.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const thirds = { gapS: 0, darkFrame: false, stepsPerStop: 3 } as const;

describe('frame rates', () => {
  // Source: definition: the slowed rates are 1000/1001 of the round ones.
  test.each([
    [23.976, 24_000 / 1001],
    [23.98, 24_000 / 1001],
    [24, 24],
    [25, 25],
    [29.97, 30_000 / 1001],
    [30, 30],
    [50, 50],
    [59.94, 60_000 / 1001],
    [60, 60],
    [12.5, 12.5],
  ])('%d means %d', (said, exact) => expect(exactFps(said)).toBe(exact));

  test('every label is the rate to its own digits', () => {
    expect(FRAME_RATES.length).toBe(8);
    for (const { label, fps } of FRAME_RATES) {
      expect(fps.toFixed(label.split('.')[1]?.length ?? 0)).toBe(label);
      expect(exactFps(Number(label))).toBe(fps);
    }
  });

  // Source: worked_examples.csv W049.
  test('240 frames at 23.976 last 10.01 s', () => {
    expect(clipLengthS(240, exactFps(23.976))).toBeCloseTo(10.01, 9);
  });
});

describe('any two give the third', () => {
  // Source: worked_examples.csv W045, W047.
  test('clip and interval, recording and interval', () => {
    expect(footageOf({ clipS: 10, intervalS: 4 }, 30)).toEqual({
      frameCount: 300,
      recordingS: 1196,
      intervalS: 4,
      clipS: 10,
    });
    expect(footageOf({ recordingS: 7200, intervalS: 7 }, 24)).toMatchObject({
      frameCount: 1029,
      recordingS: 7196,
    });
  });

  // Source: hand: 12 · 24 = 288 frames, 287 gaps in 5400 s; 18 s apart there are 301.
  test('a clip of 12 s from 90 min of light, and the night shutter that its interval allows', () => {
    const exact = footageOf({ recordingS: 5400, clipS: 12 }, 24);
    expect(exact).toMatchObject({ frameCount: 288, clipS: 12, intervalS: expect.closeTo(5400 / 287, 9) });
    const whole = footageOf({ recordingS: 5400, clipS: 12 }, 24, { wholeSeconds: true });
    expect(whole).toEqual({
      frameCount: 301,
      intervalS: 18,
      recordingS: 5400,
      clipS: expect.closeTo(301 / 24, 9),
    });
    expect(longestMarkedShutter(whole.intervalS, { ...thirds, gapS: 1 })).toEqual({ label: '15', timeS: 16 });
    // Whole seconds stay what they are.
    const { recordingS, intervalS } = whole;
    expect(footageOf({ recordingS, intervalS }, 24, { wholeSeconds: true })).toEqual(whole);
  });

  test('each answer given back leads to the same frames, at every rate', () => {
    fc.assert(
      fc.property(
        between(60, 20_000),
        between(1, 60),
        fc.constantFrom(...FRAME_RATES),
        (recordingS, intervalS, { fps }) => {
          const a = footageOf({ recordingS, intervalS }, fps);
          expect(a.recordingS).toBeLessThanOrEqual(recordingS + 1e-6);
          expect(recordingS - a.recordingS).toBeLessThan(intervalS);
          const b = footageOf({ clipS: a.clipS, intervalS }, fps);
          const c = footageOf({ clipS: a.clipS, recordingS: a.recordingS }, fps);
          expect([b.frameCount, c.frameCount]).toEqual([a.frameCount, a.frameCount]);
          expect(b.recordingS).toBeCloseTo(a.recordingS, 6);
          expect(c.intervalS).toBeCloseTo(intervalS, 6);
        },
      ),
      { seed: 30 },
    );
  });

  test('a clip is never shorter than asked for, and less than a frame longer', () => {
    fc.assert(
      fc.property(
        between(0.2, 100),
        between(1, 60),
        fc.constantFrom(...FRAME_RATES),
        (clipS, intervalS, { fps }) => {
          const got = footageOf({ clipS, intervalS }, fps).clipS;
          expect(got).toBeGreaterThanOrEqual(clipS - 1e-6);
          expect(got - clipS).toBeLessThan(1 / fps);
          const whole = footageOf({ clipS, recordingS: 3600 }, fps, { wholeSeconds: true });
          expect(whole.clipS).toBeGreaterThanOrEqual(clipS - 1e-6);
        },
      ),
      { seed: 31 },
    );
  });

  test('errors name the argument and the value', () => {
    expect(() => footageOf({ clipS: 0.01, recordingS: 60 }, 24)).toThrow(
      'clipS must hold two frames or more, got 0.01',
    );
    expect(() => footageOf({ clipS: 1, intervalS: 0 }, 24)).toThrow(
      'intervalS must be positive and finite, got 0',
    );
  });
});

describe('the shutter in the interval', () => {
  // Source: worked_examples.csv W051, W053: marked "30" is 32 s; noise reduction takes as long again.
  test('in its true time', () => {
    expect(longestMarkedShutter(30, thirds)).toEqual({ label: '25', timeS: expect.closeTo(25.398, 3) });
    expect(longestMarkedShutter(32, thirds)).toEqual({ label: '30', timeS: 32 });
    expect(longestMarkedShutter(40, { ...thirds, darkFrame: true })).toMatchObject({
      label: '15',
      timeS: 16,
    });
    expect(longestMarkedShutter(64, { ...thirds, darkFrame: true })).toMatchObject({
      label: '30',
      timeS: 32,
    });
    expect(longestMarkedShutter(1, { ...thirds, gapS: 1 })).toBeUndefined();
    expect(longestMarkedShutter(1e6, thirds)?.timeS).toBe(2 ** 14);
  });

  test('a time that is a mark to the last bit is that mark', () => {
    for (const stepsPerStop of [2, 3] as const) {
      for (let step = -18; step <= 13 * stepsPerStop; step++) {
        expect(longestMarkedShutter(timeOfStep(step, stepsPerStop), { ...thirds, stepsPerStop })).toEqual({
          label: dialLabel('shutter', step, stepsPerStop),
          timeS: timeOfStep(step, stepsPerStop),
        });
      }
    }
  });

  test('what is named fits, and the next mark does not', () => {
    fc.assert(
      fc.property(between(0.01, 600), fc.constantFrom(2 as const, 3 as const), (intervalS, stepsPerStop) => {
        const { timeS } = longestMarkedShutter(intervalS, { ...thirds, stepsPerStop })!;
        expect(timeS).toBeLessThanOrEqual(intervalS * (1 + 1e-9));
        expect(timeS * 2 ** (1 / stepsPerStop)).toBeGreaterThan(intervalS);
      }),
      { seed: 32 },
    );
  });

  // Source: worked_examples.csv W055, W057.
  test('half the interval is 180°, a quarter 90°', () => {
    expect(shutterAngleDeg(1.5, 3)).toBe(180);
    expect(shutterAngleDeg(2, 8)).toBe(90);
  });
});

describe('card and battery', () => {
  // Source: worked_examples.csv W099, W101; the rest by hand.
  test('decimal gigabytes', () => {
    expect(framesOnCard(64, 30)).toBe(2133);
    // 1.1 · 1000 / 1.1 comes out a hair below: rounding must not lose a frame.
    expect(framesOnCard(1.1, 1.1)).toBe(1000);
  });

  // Source: worked_examples.csv W103, W105: Battery University BU-502: 100 % at 27 °C, typically 50 % at -18 °C.
  test('cold', () => {
    expect(framesOnCharge(900, 0.7)).toBe(630);
    expect(() => framesOnCharge(900, 1.1)).toThrow('coldFactor must be from 0 to 1, got 1.1');
  });

  // Source: hand.
  test('when it is out by the clock, and what would fit', () => {
    const use = { startMs: 5000, frameCount: 201, intervalS: 10 };
    expect(lastingOf(201, use)).toEqual({ frames: 201, lasts: true, needed: 1 });
    expect(lastingOf(100, use)).toEqual({
      frames: 100,
      lasts: false,
      outAtMs: 1_005_000,
      fitIntervalS: 20.21,
      needed: 3,
    });
    expect(lastingOf(0, use)).toEqual({ frames: 0, lasts: false, outAtMs: 5000 });
  });

  test('at the interval that fits, the recording does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 2000 }),
        fc.integer({ min: 1, max: 500 }),
        between(1, 60),
        (frames, more, intervalS) => {
          const use = { startMs: 0, frameCount: frames + more, intervalS };
          const { fitIntervalS } = lastingOf(frames, use);
          const recordingS = (use.frameCount - 1) * intervalS;
          expect(frameCountOf(recordingS, fitIntervalS as number)).toBeLessThanOrEqual(frames);
          expect((frames - 1) * (fitIntervalS as number)).toBeGreaterThanOrEqual(recordingS - 1e-6);
          expect((frames - 1) * ((fitIntervalS as number) - 0.0101)).toBeLessThan(recordingS);
        },
      ),
      { seed: 33 },
    );
  });
});

const ALL = [...new Set(Object.values(INTERVALS_BY_SUBJECT).flatMap(({ rows }) => rows))];

describe('intervals by subject', () => {
  // Source: intervals_by_subject.csv, each row its own.
  const rows = readTable('move/intervals_by_subject.csv');
  test('the table is its sources, row by row', () => {
    expect(rows.length).toBe(20);
    const site = {
      skarbnik: 'skarbnik.wixsite.com',
      cogto: 'cogto.com',
      'aperture-authority': 'apertureauthority.com',
    };
    expect(ALL.map(({ words, minS, maxS, source }) => [words, minS, maxS, site[source]]).sort()).toEqual(
      rows
        .map((row) => [
          row.subject,
          Number(row.interval_min_s),
          Number(row.interval_max_s),
          Object.values(site).find((name) => row.source!.includes(name)),
        ])
        .sort(),
    );
  });

  test('a row stands under every subject that its words name, and under no other', () => {
    const named: Readonly<Record<string, RegExp>> = {
      traffic: /traffic|^cars|people in cars/,
      'fast-clouds': /fast clouds|clouds very fast/,
      clouds: /clouds normal|slower clouds$|skies/,
      people: /people|crowds/,
      sunset: /sunsets/,
      'slow-clouds': /slower clouds|clouds very slow/,
      shadows: /shadow|path of sun/,
      stars: /stars/,
      plants: /plants/,
      construction: /construction/,
      'city-into-night': /city from/,
    };
    for (const [subject, words] of Object.entries(named)) {
      const { rows } = INTERVALS_BY_SUBJECT[subject as Subject];
      const meant = ALL.filter((row) => words.test(row.words));
      expect([subject, rows.map((row) => row.words).sort()]).toEqual([
        subject,
        meant.map((row) => row.words).sort(),
      ]);
    }
  });

  test('a subject is advised the whole range of what is said of it', () => {
    expect(INTERVALS_BY_SUBJECT['city-into-night']).toMatchObject({ minS: 5, maxS: 7 });
    expect(INTERVALS_BY_SUBJECT.stars).toMatchObject({ minS: 15, maxS: 60 });
    expect(INTERVALS_BY_SUBJECT.stars.rows).toHaveLength(4);
    expect(INTERVALS_BY_SUBJECT.sunset).toMatchObject({ minS: 1, maxS: 5 });
  });
});
