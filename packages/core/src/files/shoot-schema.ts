// The shoot file, evenfall-shoot/1, as a schema: shapes, ranges and fixed defaults.
// What one key asks of another stands in shoot-rules.ts.

import * as v from 'valibot';
import { MOST_FRAMES_LOST } from '../shoot/frames-lost.js';
import { lens, moves, sensor } from './move-schema.js';
import {
  aboveZero,
  choice,
  flag,
  format,
  formed,
  holds,
  instant,
  isGroup,
  list,
  mark,
  number,
  oneOf,
  text,
  whole,
  word,
} from './parts.js';

/** Most filters a bag holds; pairs of them grow with the square. */
const MOST_FILTERS = 12;
/** Most rows a look or a list of readings holds. */
const MOST_ROWS = 1000;

const altitude = number('a sun altitude', 'degrees from -90 to 90', -90, 90);
const share = number('a share', 'a number from 0 to 1', 0, 1);
const evStops = number('an exposure value', 'EV at ISO 100 from -15 to 25', -15, 25);
const at = instant();

const place = v.strictObject({
  latitudeDeg: number('a latitude', 'degrees from -90 to 90', -90, 90),
  longitudeDeg: number('a longitude', 'degrees from -180 to 180', -180, 180),
  elevationM: v.exactOptional(number('an elevation', 'metres from -500 to 9000', -500, 9000)),
  aboveHorizonM: v.exactOptional(number('a height', 'metres from 0 to 9000', 0, 9000)),
  timeZone: v.exactOptional(text('a time zone', 'an IANA name such as "Europe/Lisbon"', 64, 1)),
});

const sunSpan = v.strictObject({ fromSunAltitudeDeg: altitude, toSunAltitudeDeg: altitude });
const clockSpan = v.strictObject({ startAt: at, endAt: at });
const span = choice(
  [sunSpan, clockSpan],
  { what: 'a span', give: 'fromSunAltitudeDeg and toSunAltitudeDeg, or startAt and endAt' },
  (input) => {
    if (!isGroup(input)) return undefined;
    return holds(input, 'startAt') || (holds(input, 'endAt') && !holds(input, 'fromSunAltitudeDeg'))
      ? clockSpan
      : sunSpan;
  },
);

const apertureMark = mark('a marked f-number such as "5.6"');
const apertureRange = v.strictObject({ widest: apertureMark, narrowest: apertureMark });
const isoMark = number('an ISO', 'a marked ISO such as 100', 1, 10_000_000);

const camera = v.strictObject({
  stepsPerStop: v.optional(oneOf([2, 3], '2 or 3', '3 for a dial in thirds of a stop, 2 for halves'), 3),
  shutter: v.strictObject({
    shortest: mark('the shortest marked shutter time, such as "1/4000"'),
    longest: mark('the longest marked shutter time, such as "15"'),
  }),
  bulb: v.optional(flag('true or false'), false),
  iso: v.strictObject({ lowest: isoMark, highest: isoMark }),
  aperture: choice(
    [apertureMark, apertureRange],
    { what: 'an aperture', give: 'a marked f-number such as "5.6", or widest and narrowest' },
    (input) => (isGroup(input) ? apertureRange : apertureMark),
  ),
  gapS: v.optional(number('a gap', 'seconds from 0 to 3600', 0, 3600), 1),
  darkFrame: v.optional(flag('true or false'), false),
  frameMB: v.exactOptional(aboveZero('a frame size', 'megabytes above 0, at most 10000', 10_000)),
  cardGB: v.exactOptional(aboveZero('a card size', 'gigabytes above 0, at most 1000000', 1_000_000)),
  batteryFrames: v.exactOptional(
    whole('a number of frames', 'a whole number from 1 to 10000000', 1, 10_000_000),
  ),
  coldFactor: v.exactOptional(aboveZero('a share', 'a number above 0, at most 1', 1)),
  lens: v.exactOptional(lens),
  sensor: v.exactOptional(sensor),
});

const name = text('a name', 'one line of 1 to 40 characters', 40, 1);
const byStops = v.strictObject({ name, stops: number('a filter strength', 'stops from 0 to 30', 0, 30) });
const byDensity = v.strictObject({
  name,
  density: number('a density', 'an optical density from 0 to 9', 0, 9),
});
const byFactor = v.strictObject({
  name,
  factor: number('a factor', 'a factor from 1 to 1000000000', 1, 1e9),
});
const filter = choice(
  [byStops, byDensity, byFactor],
  { what: 'a filter', give: 'a name and one of stops, density, factor' },
  (input) => {
    if (!isGroup(input)) return undefined;
    if (holds(input, 'stops')) return byStops;
    if (holds(input, 'density')) return byDensity;
    if (holds(input, 'factor')) return byFactor;
    // A mistyped key is told with the nearest; where there is none at all, all three are.
    return Object.keys(input).some((key) => key !== 'name') ? byStops : undefined;
  },
);

const facingWord = word(['toward-sun', 'side', 'away']);
const facingAzimuth = v.strictObject({
  azimuthDeg: number('an azimuth', 'degrees clockwise from north, 0 to 360', 0, 360),
});
const cloudWord = word(['clear', 'thin', 'broken', 'overcast', 'heavy']);
const cloudEighths = v.strictObject({ eighths: number('a cloud cover', 'eighths from 0 to 8', 0, 8) });
const nightWord = word(['remote', 'rural', 'suburb', 'town', 'city']);
const nightSky = v.strictObject({
  zenithMagArcsec2: number('a sky brightness', 'magnitudes a square arcsecond from 14 to 23', 14, 23),
});
const nightGround = v.strictObject({
  groundLx: number('an illuminance', 'lux from 1e-9 to 200', 1e-9, 200),
});
const lampsWord = word(['none', 'street', 'floodlit', 'skyline']);
const alwaysLit = word(['always']);
const litBySun = v.strictObject({ fromSunAltitudeDeg: altitude, toSunAltitudeDeg: altitude });
const litByClock = v.strictObject({
  fromAt: instant(),
  overMin: v.optional(number('a time to come on', 'minutes from 0 to 240', 0, 240), 0),
});
const lampsOn = choice(
  [alwaysLit, litBySun, litByClock],
  { what: 'a time of switching', give: '"always", the sun\'s altitudes, or fromAt and overMin' },
  (input) => textOr(input, alwaysLit, holds(input, 'fromAt') ? litByClock : litBySun),
);
const lampsEv = v.strictObject({ ev100: evStops, share, on: v.exactOptional(lampsOn) });
const lampsNamed = v.strictObject({ word: lampsWord, on: lampsOn });
const skylineDegrees = number('a skyline', 'degrees from -10 to 89', -10, 89);
const skylinePoints = list(
  v.strictObject({
    azimuthDeg: number('an azimuth', 'degrees clockwise from north, 0 to 360', 0, 360),
    altitudeDeg: skylineDegrees,
  }),
  'points of the skyline',
  72,
  1,
);

const scene = v.strictObject({
  facing: v.optional(
    choice(
      [facingWord, facingAzimuth],
      { what: 'a direction', give: '"toward-sun", "side", "away", or azimuthDeg' },
      (input) => textOr(input, facingWord, facingAzimuth),
    ),
    'toward-sun',
  ),
  viewAltitudeDeg: v.optional(number('a view altitude', 'degrees from 0 to 90', 0, 90), 15),
  skyShare: v.optional(share, 0.5),
  surface: v.exactOptional(word(['grass', 'sand', 'snow', 'water', 'rock', 'city'])),
  reflectance: v.exactOptional(number('a reflectance', 'a number from 0.001 to 1', 0.001, 1)),
  uprightShare: v.exactOptional(share),
  cloud: v.optional(
    choice(
      [cloudWord, cloudEighths],
      { what: 'a cloud cover', give: '"clear", "thin", "broken", "overcast", "heavy", or eighths' },
      (input) => textOr(input, cloudWord, cloudEighths),
    ),
    'clear',
  ),
  night: v.optional(
    choice(
      [nightWord, nightSky, nightGround],
      {
        what: 'a night',
        give: '"remote", "rural", "suburb", "town", "city", or zenithMagArcsec2, or groundLx',
      },
      (input) => textOr(input, nightWord, holds(input, 'groundLx') ? nightGround : nightSky),
    ),
    'rural',
  ),
  lamps: v.optional(
    choice(
      [lampsWord, lampsEv, lampsNamed],
      { what: 'a kind of lamps', give: '"none", "street", "floodlit", "skyline", or ev100 and share' },
      (input) => textOr(input, lampsWord, holds(input, 'word') ? lampsNamed : lampsEv),
    ),
    'none',
  ),
  skylineDeg: v.exactOptional(
    choice(
      [skylineDegrees, skylinePoints],
      { what: 'a skyline', give: 'degrees, or points by direction' },
      (input) =>
        typeof input === 'number' ? skylineDegrees : Array.isArray(input) ? skylinePoints : undefined,
    ),
  ),
});

/** Text was meant as the word, keys as the group; anything else could be either. */
function textOr<Word, Group>(input: unknown, asWord: Word, asGroup: Group): Word | Group | undefined {
  if (typeof input === 'string') return asWord;
  return isGroup(input) ? asGroup : undefined;
}

const offset = number('an offset', 'EV from -10 to 10, negative is darker', -10, 10);
const lookNight = v.strictObject({ nightEv: offset });
const lookTable = list(
  v.strictObject({ sunAltitudeDeg: altitude, offsetEv: offset }),
  '{sunAltitudeDeg, offsetEv}',
  MOST_ROWS,
  1,
);
const look = choice(
  [lookNight, lookTable],
  { what: 'a look', give: '{nightEv}, or rows of {sunAltitudeDeg, offsetEv}' },
  (input) => (Array.isArray(input) ? lookTable : isGroup(input) ? lookNight : undefined),
);

const tolerance = aboveZero('a tolerance', 'stops above 0, at most 10', 10);
const largestStep = aboveZero('a step', 'stops above 0, at most 10', 10);
const spacing = number('a spacing', 'seconds from 0 to 86400', 0, 86_400);
const filterChanges = v.exactOptional(
  whole('a limit on filter changes', 'a whole number from 0 to 100', 0, 100),
);
const framesLost = whole('a number of frames', 'a whole number from 0 to 1000', 0, MOST_FRAMES_LOST);

const limits = v.strictObject({
  toleranceEv: v.exactOptional(tolerance),
  largestStepEv: v.exactOptional(largestStep),
  secondsBetweenCues: v.exactOptional(spacing),
  maxFilterChanges: filterChanges,
  framesLostPerFilterChange: v.exactOptional(framesLost),
});

const weight = v.exactOptional(number('a weight', 'a price from 0 to 1000', 0, 1000));
const weights = v.strictObject({
  error: weight,
  blur: weight,
  shortShutter: weight,
  iso: weight,
  isoBehindFilter: weight,
  affectedFrame: weight,
  shutterCue: weight,
  isoCue: weight,
  apertureCue: weight,
  filterCue: weight,
  againstLight: weight,
});

/** The shoot file as written: defaults that depend on no other key are filled in on reading. */
export const shootFileSchema = v.strictObject({
  format: format('evenfall-shoot/1'),
  title: v.optional(text('a title', 'one line of at most 120 characters', 120), ''),
  place,
  date: formed('a date', 'a date as YYYY-MM-DD', /^\d{4}-\d{2}-\d{2}$/),
  direction: v.optional(word(['dusk', 'dawn']), 'dusk'),
  span: v.exactOptional(span),
  intervalS: aboveZero('an interval', 'seconds above 0, at most 86400', 86_400),
  clipFps: v.optional(aboveZero('a frame rate', 'frames a second above 0, at most 1000', 1000), 24),
  camera,
  filters: v.optional(list(filter, 'filters', MOST_FILTERS), []),
  stackFilters: v.optional(flag('true or false'), false),
  startFilter: v.exactOptional(name),
  scene: v.optional(scene, {}),
  look: v.optional(look, { nightEv: -1.5 }),
  readings: v.optional(list(v.strictObject({ at, ev100: evStops }), '{at, ev100}', MOST_ROWS), []),
  crew: v.optional(word(['hand', 'rig']), 'hand'),
  limits: v.optional(limits, {}),
  weights: v.exactOptional(weights),
  moves: v.optional(moves, []),
});

/** What a remedy may change in a shoot: whole values of its keys, defaults filled in. */
export const shootChangeSchema = v.strictObject({
  span: v.exactOptional(span),
  intervalS: v.exactOptional(shootFileSchema.entries.intervalS),
  camera: v.exactOptional(camera),
  filters: v.exactOptional(list(filter, 'filters', MOST_FILTERS + 1)),
  look: v.exactOptional(look),
  limits: v.exactOptional(
    v.strictObject({
      toleranceEv: tolerance,
      largestStepEv: largestStep,
      secondsBetweenCues: spacing,
      maxFilterChanges: filterChanges,
      framesLostPerFilterChange: framesLost,
    }),
  ),
  moves: v.exactOptional(moves),
});

/** A shoot file that satisfies the schema; not yet the rules between its keys. */
export type ShootFile = v.InferOutput<typeof shootFileSchema>;
