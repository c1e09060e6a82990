import { readShoot, type Shoot, writeShoot } from '@evenfall/core';
import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import { dialLabels } from '../../../packages/core/src/dial.js';
import type { ShootFile } from '../../../packages/core/src/files/shoot-schema.js';
import { LEAST, shootOf } from './sample.js';

const SEED = 20260912;

describe('defaults', () => {
  // Source: the tables of docs/formats.md, written out by hand.
  test('the least file gets every default', () => {
    expect(shootOf(LEAST)).toEqual({
      format: 'evenfall-shoot/1',
      title: '',
      place: { latitudeDeg: 57.05, longitudeDeg: 9.92 },
      date: '2026-09-12',
      direction: 'dusk',
      span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
      intervalS: 6,
      clipFps: 24,
      camera: {
        stepsPerStop: 3,
        shutter: { shortest: '1/4000', longest: '4' },
        bulb: false,
        iso: { lowest: 100, highest: 3200 },
        aperture: '5.6',
        gapS: 1,
        darkFrame: false,
      },
      filters: [],
      stackFilters: false,
      scene: {
        facing: 'toward-sun',
        viewAltitudeDeg: 15,
        skyShare: 0.5,
        reflectance: 0.18,
        cloud: 'clear',
        night: 'rural',
        lamps: 'none',
      },
      look: { nightEv: -1.5 },
      readings: [],
      crew: 'hand',
      limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 60, framesLostPerFilterChange: 2 },
      moves: [],
    });
  });

  test('a dawn runs the other way', () => {
    expect(shootOf({ ...LEAST, direction: 'dawn' }).span).toEqual({
      fromSunAltitudeDeg: -12,
      toSunAltitudeDeg: 6,
    });
  });

  test('a rig turns one dial step at a time, as often as it likes', () => {
    expect(shootOf({ ...LEAST, crew: 'rig' }).limits).toEqual({
      toleranceEv: 1 / 3,
      largestStepEv: 1 / 3,
      secondsBetweenCues: 0,
      framesLostPerFilterChange: 2,
    });
    const halves = { ...LEAST.camera, stepsPerStop: 2, shutter: { shortest: '1/4000', longest: '4' } };
    expect(shootOf({ ...LEAST, crew: 'rig', camera: halves }).limits.toleranceEv).toBe(1 / 2);
  });

  test('what the file says stands against any default', () => {
    const { limits, scene } = shootOf({
      ...LEAST,
      crew: 'rig',
      limits: { secondsBetweenCues: 20 },
      scene: { surface: 'snow' },
    });
    expect(limits.secondsBetweenCues).toBe(20);
    expect(scene.surface).toBe('snow');
    expect(scene.reflectance).toBeUndefined();
  });
});

test('marks may be written as numbers where the number is the mark', () => {
  const { camera } = shootOf({
    ...LEAST,
    intervalS: 40,
    camera: { shutter: { shortest: 0.5, longest: 30 }, iso: { lowest: 100, highest: 200 }, aperture: 5.6 },
  });
  expect(camera.shutter).toEqual({ shortest: '0.5', longest: '30' });
  expect(camera.aperture).toBe('5.6');
});

test('a longest shutter that does not fit inside the interval is no fault of the file', () => {
  const longest = { shortest: '1/4000', longest: '60' };
  expect(shootOf({ ...LEAST, camera: { ...LEAST.camera, shutter: longest } }).camera.shutter.longest).toBe(
    '60',
  );
});

test('an interval of exactly shutter plus gap is enough', () => {
  const camera = { ...LEAST.camera, shutter: { shortest: '4', longest: '4' } };
  expect(shootOf({ ...LEAST, intervalS: 5, camera }).intervalS).toBe(5);
});

test('the schema has every key of a shoot', () => {
  expectTypeOf<keyof Shoot>().toEqualTypeOf<keyof ShootFile>();
  expectTypeOf<keyof Shoot['camera']>().toEqualTypeOf<keyof ShootFile['camera']>();
  expectTypeOf<keyof Shoot['scene']>().toEqualTypeOf<keyof ShootFile['scene']>();
  expectTypeOf<keyof Shoot['limits']>().toEqualTypeOf<keyof ShootFile['limits']>();
  expectTypeOf<Shoot['scene']['surface']>().toEqualTypeOf<ShootFile['scene']['surface']>();
});

// Valid shoots, built rather than filtered.
// JSON has no negative zero, so none is made.
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const positive = (max: number) => between(1e-3, max);
const optional = <T>(arbitrary: fc.Arbitrary<T>, key: string) =>
  fc.option(arbitrary, { nil: undefined }).map((value) => (value === undefined ? {} : { [key]: value }));
const merged = (...parts: fc.Arbitrary<object>[]) =>
  fc.tuple(...parts).map((all) => Object.assign({}, ...all));
const line = (max: number) => fc.string({ unit: 'grapheme-ascii', maxLength: max });

/** Two marks of a dial, the lower step first. */
const pair = (control: 'shutter' | 'iso' | 'aperture', stepsPerStop: 2 | 3) => {
  const labels = dialLabels(control, stepsPerStop);
  return fc
    .tuple(fc.nat(labels.length - 1), fc.nat(labels.length - 1))
    .map(([a, b]) => [labels[Math.min(a, b)]!, labels[Math.max(a, b)]!] as const);
};

const cameraArbitrary = fc.constantFrom(2 as const, 3 as const).chain((stepsPerStop) =>
  merged(
    fc.constant({ stepsPerStop }),
    pair('shutter', stepsPerStop).map(([longest, shortest]) => ({ shutter: { shortest, longest } })),
    pair('iso', stepsPerStop).map(([lowest, highest]) => ({
      iso: { lowest: Number(lowest), highest: Number(highest) },
    })),
    fc.oneof(
      fc.constantFrom(...dialLabels('aperture', stepsPerStop)).map((aperture) => ({ aperture })),
      pair('aperture', stepsPerStop).map(([widest, narrowest]) => ({ aperture: { widest, narrowest } })),
    ),
    optional(between(0, 20), 'gapS'),
    optional(fc.boolean(), 'darkFrame'),
    optional(fc.boolean(), 'bulb'),
    optional(positive(200), 'frameMB'),
    optional(positive(2000), 'cardGB'),
    optional(fc.integer({ min: 1, max: 5000 }), 'batteryFrames'),
  ),
);

const filtersArbitrary = fc.uniqueArray(
  fc.record({ name: fc.integer({ min: 1, max: 999 }).map((n) => `ND ${n}`) }).chain(({ name }) =>
    fc.oneof(
      between(0, 30).map((stops) => ({ name, stops })),
      between(0, 9).map((density) => ({ name, density })),
      between(1, 1e9).map((factor) => ({ name, factor })),
    ),
  ),
  { selector: ({ name }) => name, maxLength: 12 },
);

const sceneArbitrary = merged(
  optional(
    fc.oneof(fc.constantFrom('toward-sun', 'side', 'away'), fc.record({ azimuthDeg: between(0, 360) })),
    'facing',
  ),
  optional(between(0, 90), 'viewAltitudeDeg'),
  optional(between(0, 1), 'skyShare'),
  optional(between(0, 1), 'uprightShare'),
  fc.oneof(
    optional(between(0.001, 1), 'reflectance'),
    fc.constantFrom('grass', 'sand', 'snow', 'water', 'rock', 'city').map((surface) => ({ surface })),
  ),
  optional(fc.oneof(fc.constantFrom('clear', 'heavy'), fc.record({ eighths: between(0, 8) })), 'cloud'),
  optional(
    fc.oneof(
      fc.constantFrom('remote', 'city'),
      fc.record({ zenithMagArcsec2: between(14, 23) }),
      fc.record({ groundLx: positive(200) }),
    ),
    'night',
  ),
  optional(
    fc.oneof(fc.constant('street'), fc.record({ ev100: between(-15, 25), share: between(0, 1) })),
    'lamps',
  ),
);

const spanArbitrary = fc.tuple(between(-90, 89), between(0.001, 1), fc.boolean()).map(([low, up, dusk]) => {
  const high = Math.min(90, low + up * (90 - low));
  return dusk
    ? { direction: 'dusk', span: { fromSunAltitudeDeg: high, toSunAltitudeDeg: low } }
    : { direction: 'dawn', span: { fromSunAltitudeDeg: low, toSunAltitudeDeg: high } };
});

const lookArbitrary = fc.oneof(
  fc.record({ nightEv: between(-10, 10) }),
  fc
    .uniqueArray(fc.integer({ min: -90, max: 90 }), { minLength: 1, maxLength: 8 })
    .chain((altitudes) =>
      fc
        .array(between(-10, 10), { minLength: altitudes.length, maxLength: altitudes.length })
        .map((offsets) =>
          altitudes
            .sort((a, b) => a - b)
            .map((sunAltitudeDeg, i) => ({ sunAltitudeDeg, offsetEv: offsets[i]! })),
        ),
    ),
);

/** An hour from the middle of the day at the place on, by clock, and readings up to twelve hours before it. */
function hourWithReadings(
  date: string,
  { longitudeDeg, timeZone }: { longitudeDeg: number; timeZone?: string },
  readings: readonly { minute: number; ev100: number }[],
) {
  const noonMs = Date.parse(`${date}T12:00:00Z`) - (timeZone === undefined ? longitudeDeg * 240_000 : 0);
  const startMs = Math.floor(noonMs / 3_600_000) * 3_600_000;
  const at = (minute: number) => new Date(startMs + minute * 60_000).toISOString();
  return {
    span: { startAt: at(0), endAt: at(60) },
    readings: readings.map(({ minute, ev100 }) => ({ at: at(minute), ev100 })),
  };
}

const shootArbitrary = fc
  .tuple(
    merged(
      fc.record({
        format: fc.constant('evenfall-shoot/1'),
        date: fc
          .date({ min: new Date('1900-01-01'), max: new Date('2199-12-31'), noInvalidDate: true })
          .map((date) => date.toISOString().slice(0, 10)),
        place: merged(
          fc.record({ latitudeDeg: between(-90, 90), longitudeDeg: between(-180, 180) }),
          optional(between(-500, 9000), 'elevationM'),
          optional(fc.constantFrom('Europe/Lisbon', 'Asia/Kathmandu', 'UTC'), 'timeZone'),
        ),
        camera: cameraArbitrary,
        filters: filtersArbitrary,
        scene: sceneArbitrary,
      }),
      optional(line(120), 'title'),
      fc.oneof(fc.constant({}), spanArbitrary),
      optional(positive(1000), 'clipFps'),
      optional(fc.boolean(), 'stackFilters'),
      optional(lookArbitrary, 'look'),
      optional(fc.constantFrom('hand', 'rig'), 'crew'),
      optional(
        merged(
          optional(positive(10), 'toleranceEv'),
          optional(positive(10), 'largestStepEv'),
          optional(between(0, 86400), 'secondsBetweenCues'),
          optional(fc.nat(1000), 'framesLostPerFilterChange'),
          optional(fc.nat(100), 'maxFilterChanges'),
        ),
        'limits',
      ),
    ),
    // More than two shutters of "60" (64 s) and the largest gap.
    between(150, 86_400),
    fc.nat(),
    fc.array(fc.record({ minute: fc.integer({ min: -720, max: 0 }), ev100: between(-15, 25) }), {
      maxLength: 4,
    }),
  )
  .map(([shoot, intervalS, pick, readings]) => ({
    ...shoot,
    intervalS,
    ...(readings.length === 0 ? {} : hourWithReadings(shoot.date, shoot.place, readings)),
    ...(shoot.filters.length > 0 && pick % 2 === 0
      ? { startFilter: shoot.filters[pick % shoot.filters.length].name }
      : {}),
  }));

describe('properties', () => {
  test('a valid shoot reads, holds what it said, and reads back the same from its own text', () => {
    fc.assert(
      fc.property(shootArbitrary, (file) => {
        const shoot = shootOf(file);
        expect(shoot).toMatchObject(file);
        const text = writeShoot(shoot);
        expect(text.endsWith('}\n')).toBe(true);
        const again = shootOf(JSON.parse(text));
        expect(again).toEqual(shoot);
        expect(writeShoot(again)).toBe(text);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test('text does not depend on the order in which keys were read', () => {
    const reversed = (value: object): object =>
      Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, each]) => [
            key,
            typeof each === 'object' && !Array.isArray(each) ? reversed(each) : each,
          ]),
      );
    fc.assert(
      fc.property(shootArbitrary, (file) => {
        expect(writeShoot(shootOf(reversed(file)))).toBe(writeShoot(shootOf(file)));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('no garbage makes it throw, and every message is one line', () => {
    let wrong = 0;
    const garbage = fc.oneof(
      fc.anything({
        withBigInt: true,
        withDate: true,
        withMap: true,
        withNullPrototype: true,
        withTypedArray: true,
      }),
      // A valid shoot with one value anywhere replaced by anything.
      fc.tuple(shootArbitrary, fc.nat(), fc.anything({ withNullPrototype: true })).map(([file, at, what]) => {
        const paths = pathsOf(file);
        return replaced(file, paths[at % paths.length]!, what);
      }),
    );
    fc.assert(
      fc.property(garbage, (value) => {
        const read = readShoot(value, () => ({ line: 1 }), 'x.yaml');
        if (read.kind === 'ok') return;
        wrong++;
        expect(read.errors.length).toBeGreaterThan(0);
        for (const { message } of read.errors) {
          expect(message).toMatch(/^x\.yaml:1: /);
          expect(message).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
    expect(wrong).toBeGreaterThan(1000);
  });
});

type Path = readonly (string | number)[];

function pathsOf(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([key, each]) => pathsOf(each, [...at, key]))];
}

function replaced(value: unknown, [first, ...rest]: Path, by: unknown): unknown {
  if (first === undefined) return by;
  if (Array.isArray(value))
    return value.map((each, i) => (String(i) === first ? replaced(each, rest, by) : each));
  const group = value as Record<string, unknown>;
  return { ...group, [first]: replaced(group[first], rest, by) };
}
