// Shoot files as people might write them, valid by construction: for properties of everything that reads them, and for
// the files that are spoilt in hard-files.mjs.

import { dialLabels } from '@evenfall/core';
import fc from 'fast-check';

// JSON has no negative zero, so none is made.
const between = (min, max) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const positive = (max) => between(1e-3, max);
/** @returns {fc.Arbitrary<object>} */
const optional = (arbitrary, key) =>
  fc.option(arbitrary, { nil: undefined }).map((value) => (value === undefined ? {} : { [key]: value }));
/** @returns {fc.Arbitrary<any>} */
const merged = (...parts) => fc.tuple(...parts).map((all) => Object.assign({}, ...all));
const line = (max) => fc.string({ unit: 'grapheme-ascii', maxLength: max });

/** Two marks of a dial, the lower step first. */
const pair = (control, stepsPerStop) => {
  const labels = dialLabels(control, stepsPerStop);
  return fc
    .tuple(fc.nat(labels.length - 1), fc.nat(labels.length - 1))
    .map(([a, b]) => [labels[Math.min(a, b)], labels[Math.max(a, b)]]);
};

/** A bracket of whole clicks, a stop or more, where the shutter's two marks lie far enough apart for one; no wider than 15 stops. */
const bracketBetween = (longest, shortest, stepsPerStop) => {
  const labels = dialLabels('shutter', stepsPerStop);
  const clicks = Math.min(labels.indexOf(shortest) - labels.indexOf(longest), 15 * stepsPerStop);
  const counts = [3, 5, 7, 9].filter((frames) => (frames - 1) * stepsPerStop <= clicks);
  if (counts.length === 0) return fc.constant({});
  const bracket = fc.constantFrom(...counts).chain((frames) =>
    fc.record({
      frames: fc.constant(frames),
      stepEv: fc
        .integer({ min: stepsPerStop, max: Math.floor(clicks / (frames - 1)) })
        .map((click) => click / stepsPerStop),
      betweenS: between(0, 1),
    }),
  );
  return optional(bracket, 'bracket');
};

const cameraArbitrary = fc.constantFrom(2, 3).chain((stepsPerStop) =>
  merged(
    fc.constant({ stepsPerStop }),
    pair('shutter', stepsPerStop).chain(([longest, shortest]) =>
      merged(
        fc.constant({ shutter: { shortest, longest } }),
        bracketBetween(longest, shortest, stepsPerStop),
      ),
    ),
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
    optional(between(0.01, 1), 'coldFactor'),
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
    fc.oneof(
      fc.constant('street'),
      fc.record({ ev100: between(-15, 25), share: between(0, 1) }),
      fc.record({ word: fc.constant('street'), on: fc.constant('always') }),
      fc.record({
        word: fc.constant('floodlit'),
        on: fc.record({ fromSunAltitudeDeg: between(0, 5), toSunAltitudeDeg: between(-9, -1) }),
      }),
    ),
    'lamps',
  ),
  optional(
    fc.oneof(
      between(-10, 89),
      fc.array(fc.record({ azimuthDeg: between(0, 360), altitudeDeg: between(-10, 89) }), {
        minLength: 1,
        maxLength: 4,
      }),
    ),
    'skylineDeg',
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
            .map((sunAltitudeDeg, i) => ({ sunAltitudeDeg, offsetEv: offsets[i] })),
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
  fc.record({ sizeM: between(1, 100_000), distanceM: between(0.01, 1e6) }),
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

/** Hours from the middle of the day at the place on, by clock, and readings up to twelve hours before it. */
function hoursWithReadings(date, { longitudeDeg, timeZone }, readings, hours) {
  const noonMs = Date.parse(`${date}T12:00:00Z`) - (timeZone === undefined ? longitudeDeg * 240_000 : 0);
  const startMs = Math.floor(noonMs / 3_600_000) * 3_600_000;
  const at = (minute) => new Date(startMs + minute * 60_000).toISOString();
  return {
    span: { startAt: at(0), endAt: at(60 * hours) },
    readings: readings.map(({ minute, ev100 }) => ({ at: at(minute), ev100 })),
  };
}

/** A camera that can do most evenings. */
const ableDials = fc.record({
  shutter: fc.record({ shortest: fc.constant('1/8000'), longest: fc.constantFrom('30', '15', '8') }),
  iso: fc.record({ lowest: fc.constant(100), highest: fc.constantFrom(6400, 25_600) }),
  aperture: fc.constantFrom('1.4', '2.8', '4', { widest: '2.8', narrowest: '8' }),
});

/**
 * Shoots of every kind, planned in a moment; heavy ones ask for all that a shoot may: short intervals, long spans, many
 * filters, dials of every kind at once.
 *
 * @param {{ heavy?: boolean, able?: boolean }} [which] `able`: with a camera that can do most evenings
 * @returns {fc.Arbitrary<any>}
 */
export function shoots({ heavy = false, able = false } = {}) {
  return partsOf(heavy).chain((parts) =>
    able
      ? ableDials.map((dials) => assembled(parts, heavy, dials))
      : fc.constant(assembled(parts, heavy, {})),
  );
}

/** @returns {fc.Arbitrary<any>} */
const partsOf = (heavy) =>
  fc.tuple(
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
      optional(
        fc.oneof(line(120), fc.constantFrom("it's", '"Quoted"', 'Lamps: the wall', '🌇 ø', '# no comment')),
        'title',
      ),
      fc.oneof(fc.constant({}), spanArbitrary),
      optional(between(0.1, 1000), 'clipFps'),
      optional(fc.boolean(), 'stackFilters'),
      optional(lookArbitrary, 'look'),
      optional(fc.constantFrom('hand', 'rig'), 'crew'),
      optional(
        merged(
          optional(positive(heavy ? 10 : 2), 'toleranceEv'),
          optional(positive(10), 'largestStepEv'),
          optional(between(0, 86400), 'secondsBetweenCues'),
          optional(fc.nat(1000), 'framesLostPerFilterChange'),
          optional(fc.nat(heavy ? 100 : 2), 'maxFilterChanges'),
        ),
        'limits',
      ),
      optional(weightsArbitrary, 'weights'),
      optional(movesArbitrary, 'moves'),
    ),
    // More than two shutters of "60" (64 s) and the largest gap; `assembled` sees to brackets.
    heavy ? fc.constantFrom(0.9, 1, 2, 5, 10, 20) : between(150, 86_400),
    fc.nat(),
    fc.array(fc.record({ minute: fc.integer({ min: -720, max: 0 }), ev100: between(-15, 25) }), {
      maxLength: 4,
    }),
    optional(between(0, 1000), 'isoBehindFilter'),
  );

function assembled([shoot, intervalS, pick, readings, behindFilter], heavy, dials) {
  const { stackFilters, bulb } = { bulb: shoot.camera.bulb, ...shoot };
  const camera = { ...shoot.camera, ...dials };
  const wide = typeof camera.aperture !== 'string';
  // Few frames and filters where every one asks for much, so that a plan is made in a moment.
  const asksMuch = !heavy && (stackFilters || wide || bulb);
  const filters = shoot.filters.slice(0, stackFilters && !heavy ? 5 : 12);
  return {
    ...shoot,
    filters,
    camera: bulb && wide ? { ...camera, aperture: camera.aperture.widest } : camera,
    ...(shoot.weights === undefined ? {} : { weights: { ...shoot.weights, ...behindFilter } }),
    // Stops apart, all exposures of a bracket are less than two of the longest: 128 s, twice with dark frames.
    intervalS: asksMuch ? 86_400 : camera.bracket && !heavy ? Math.max(intervalS, 300) : intervalS,
    ...(bulb ? { crew: 'rig' } : {}),
    ...(readings.length === 0 ? {} : hoursWithReadings(shoot.date, shoot.place, readings, heavy ? 30 : 1)),
    ...(filters.length > 0 && pick % 2 === 0 ? { startFilter: filters[pick % filters.length].name } : {}),
  };
}

/** Shoots for properties. */
export const shootArbitrary = shoots();
