// Shoot files as people might write them, valid by construction, for properties of everything that reads them.

import fc from 'fast-check';
import { dialLabels } from '../../../packages/core/src/exposure/dial.js';

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
    optional(positive(1), 'coldFactor'),
    optional(fc.record({ focalMm: between(0.1, 5000) }), 'lens'),
    optional(fc.record({ widthMm: between(0.1, 500), heightMm: between(0.1, 500) }), 'sensor'),
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
      fc.record({ groundLx: between(1e-9, 200) }),
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

const slopeArbitrary = fc.oneof(
  fc.constantFrom('linear', 'smoothstep', 'quintic'),
  fc.record({ trapezoid: between(0, 0.5) }),
);
const panBy = fc.oneof(
  fc.record({ deg: between(1, 3600) }),
  fc.record({ fromBearingDeg: between(0, 170), toBearingDeg: between(180, 359) }),
  fc.record({ sizeM: between(1, 100_000), distanceM: positive(1e6) }),
);

/** A pan and a slide, either, or none; a stopped one with the time its steps need. */
const movesArbitrary = fc
  .tuple(
    optional(panBy, 'pan'),
    optional(
      fc.record({ trackM: between(3, 10_000), carriageM: between(0, 1), marginM: between(0, 0.9) }),
      'slide',
    ),
    fc.constantFrom('stopped', 'continuous'),
    slopeArbitrary,
    positive(3600),
  )
  .map(([pan, slide, mode, ease, moveS]) =>
    Object.entries({ ...pan, ...slide }).map(([axis, by]) => ({ axis, by, mode, ease, gear: { moveS } })),
  );

const weightsArbitrary = fc
  .array(
    fc.constantFrom('error', 'blur', 'shortShutter', 'iso', 'affectedFrame', 'filterCue', 'againstLight'),
  )
  .chain((keys) => fc.record(Object.fromEntries(keys.map((key) => [key, between(0, 1000)]))));

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

export const shootArbitrary = fc
  .tuple(
    merged(
      fc.record({
        format: fc.constant('evenfall-shoot/1'),
        date: fc
          .date({ min: new Date('1900-01-02'), max: new Date('2199-12-30'), noInvalidDate: true })
          .map((date) => date.toISOString().slice(0, 10)),
        place: merged(
          fc.record({ latitudeDeg: between(-90, 90), longitudeDeg: between(-180, 180) }),
          optional(between(-500, 9000), 'elevationM'),
          optional(between(0, 9000), 'aboveHorizonM'),
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
          optional(positive(2), 'toleranceEv'),
          optional(positive(10), 'largestStepEv'),
          optional(between(0, 86400), 'secondsBetweenCues'),
          optional(fc.nat(1000), 'framesLostPerFilterChange'),
          optional(fc.nat(2), 'maxFilterChanges'),
        ),
        'limits',
      ),
      optional(weightsArbitrary, 'weights'),
      optional(movesArbitrary, 'moves'),
    ),
    // More than two shutters of "60" (64 s) and the largest gap.
    between(150, 86_400),
    fc.nat(),
    fc.array(fc.record({ minute: fc.integer({ min: -720, max: 0 }), ev100: between(-15, 25) }), {
      maxLength: 4,
    }),
  )
  .map(([shoot, intervalS, pick, readings]) => {
    // Few frames and filters where every one asks for much, so that a plan is made in a moment.
    const { camera, stackFilters, bulb } = { bulb: shoot.camera.bulb, ...shoot };
    const wide = typeof camera.aperture !== 'string';
    const filters = shoot.filters.slice(0, stackFilters ? 5 : 12);
    return {
      ...shoot,
      filters,
      camera: bulb && wide ? { ...camera, aperture: camera.aperture.widest } : camera,
      intervalS: stackFilters || wide || bulb ? 86_400 : intervalS,
      ...(bulb ? { crew: 'rig' } : {}),
      ...(readings.length === 0 ? {} : hourWithReadings(shoot.date, shoot.place, readings)),
      ...(filters.length > 0 && pick % 2 === 0 ? { startFilter: filters[pick % filters.length].name } : {}),
    };
  });

/** Keys and list positions from the root. */
export type Path = readonly (string | number)[];

/** Every place in a value, the root first. */
export function pathsOf(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([key, each]) => pathsOf(each, [...at, key]))];
}

/** The value with another one at a path. */
export function replaced(value: unknown, [first, ...rest]: Path, by: unknown): unknown {
  if (first === undefined) return by;
  if (Array.isArray(value))
    return value.map((each, i) => (String(i) === first ? replaced(each, rest, by) : each));
  const group = (value ?? {}) as Record<string, unknown>;
  return { ...group, [first]: replaced(group[first], rest, by) };
}
