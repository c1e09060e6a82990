// Camera moves, lens and sensor in the shoot file, as schemas. Keys and meaning: docs/moves.md.

import * as v from 'valibot';
import { aboveZero, choice, holds, isGroup, list, number, whole, word } from './parts.js';

export const lens = v.strictObject({
  focalMm: number('a focal length', 'millimetres from 0.1 to 5000', 0.1, 5000),
});

const side = number('a side of the sensor', 'millimetres from 0.1 to 500', 0.1, 500);

export const sensor = v.strictObject({
  widthMm: side,
  heightMm: side,
  widthPx: v.exactOptional(whole('a number of pixels', 'a whole number from 1 to 100000', 1, 100_000)),
});

const share = v.optional(number('a share of the frame', 'a number from 0 to 1', 0, 1), 0.5);
const point = v.strictObject({ fromLeft: share, fromBottom: share });
const bearing = number('a bearing', 'degrees clockwise from north, 0 to 360', 0, 360);

const degrees = v.strictObject({ deg: number('a turn', 'degrees from -3600 to 3600', -3600, 3600) });
const bearings = v.strictObject({
  fromBearingDeg: bearing,
  toBearingDeg: bearing,
  way: v.exactOptional(word(['shorter', 'clockwise', 'counterclockwise'])),
});
const points = v.strictObject({
  fromPoint: point,
  toPoint: point,
  focalMm: v.exactOptional(lens.entries.focalMm),
  cameraTiltDeg: v.exactOptional(number('a tilt', 'degrees from -90 to 90', -90, 90)),
});
const size = v.strictObject({
  sizeM: number('a size', 'metres from -100000 to 100000', -100_000, 100_000),
  distanceM: aboveZero('a distance', 'metres above 0, at most 1000000', 1_000_000),
});
const turnBy = choice(
  [degrees, bearings, points, size],
  {
    what: 'a turn',
    give: 'deg, or fromPoint and toPoint, or fromBearingDeg and toBearingDeg, or sizeM and distanceM',
  },
  (input) => {
    if (holds(input, 'deg')) return degrees;
    if (holds(input, 'fromPoint') || holds(input, 'toPoint')) return points;
    if (holds(input, 'fromBearingDeg') || holds(input, 'toBearingDeg')) return bearings;
    return holds(input, 'sizeM') || holds(input, 'distanceM') ? size : undefined;
  },
);

const metres = v.strictObject({ m: number('a way', 'metres from -10000 to 10000', -10_000, 10_000) });
const beside = v.exactOptional(number('a length', 'metres from 0 to 1000', 0, 1000));
const track = v.strictObject({
  trackM: aboveZero('a track', 'metres above 0, at most 10000', 10_000),
  carriageM: beside,
  marginM: beside,
});
const slideBy = choice(
  [metres, track],
  { what: 'a way', give: 'm, or trackM with carriageM and marginM' },
  (input) => {
    if (holds(input, 'm')) return metres;
    return holds(input, 'trackM') ? track : undefined;
  },
);

const trapezoid = v.strictObject({
  trapezoid: number('a slope', 'a share of the time from 0 to 0.5', 0, 0.5),
});
const easeWord = word(['linear', 'smoothstep', 'quintic']);
const ease = choice(
  [easeWord, trapezoid],
  { what: 'an ease', give: '"linear", "smoothstep", "quintic", or trapezoid' },
  (input) => (typeof input === 'string' ? easeWord : isGroup(input) ? trapezoid : undefined),
);

const settleS = v.optional(number('a rest', 'seconds from 0 to 3600', 0, 3600), 1);
const moveS = v.exactOptional(aboveZero('a time for a step', 'seconds above 0, at most 3600', 3600));

const turnGear = v.strictObject({
  settleS,
  moveS,
  topSpeedDegPerS: v.exactOptional(aboveZero('a speed', 'degrees a second above 0, at most 1000', 1000)),
  accelerationDegPerS2: v.exactOptional(
    aboveZero('an acceleration', 'degrees a second squared above 0, at most 10000', 10_000),
  ),
  smallestStepDeg: v.exactOptional(aboveZero('a motor step', 'degrees above 0, at most 90', 90)),
});
const slideGear = v.strictObject({
  settleS,
  moveS,
  topSpeedMPerS: v.exactOptional(aboveZero('a speed', 'metres a second above 0, at most 100', 100)),
  accelerationMPerS2: v.exactOptional(
    aboveZero('an acceleration', 'metres a second squared above 0, at most 100', 100),
  ),
  smallestStepM: v.exactOptional(aboveZero('a motor step', 'metres above 0, at most 10', 10)),
});

const how = {
  mode: v.optional(word(['stopped', 'continuous']), 'stopped'),
  ease: v.optional(ease, 'smoothstep'),
};
const turn = v.strictObject({
  axis: word(['pan', 'tilt']),
  by: turnBy,
  ...how,
  gear: v.optional(turnGear, {}),
});
const slide = v.strictObject({
  axis: word(['slide']),
  by: slideBy,
  ...how,
  gear: v.optional(slideGear, {}),
  toward: v.optional(word(['side', 'forward']), 'side'),
  nearestM: v.exactOptional(aboveZero('a distance', 'metres above 0, at most 100000', 100_000)),
});
const move = choice(
  [turn, slide],
  { what: 'a move', give: 'axis "pan", "tilt" or "slide", and by how far' },
  (input) => {
    if (!isGroup(input)) return undefined;
    if (input.axis === 'slide') return slide;
    return input.axis === 'pan' || input.axis === 'tilt' ? turn : undefined;
  },
);

/** Camera moves, at most one an axis. */
export const moves = list(move, 'moves', 3);
