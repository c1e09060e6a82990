// Camera moves, lens and sensor in the shoot file, as schemas. Keys and meaning: docs/moves.md.

import * as v from 'valibot';
import { choice, holds, isGroup, list, number, phrase, whole, word } from './parts.js';

export const lens = v.strictObject({
  focalMm: number('focal length', 'millimetres', 0.1, 5000),
});

const side = number('side of the sensor', 'millimetres', 0.1, 500);

export const sensor = v.strictObject({
  widthMm: side,
  heightMm: side,
  widthPx: v.exactOptional(whole('number of pixels', 1, 100_000)),
});

const share = v.optional(number('share of the frame', 'number', 0, 1), 0.5);
const point = v.strictObject({ fromLeft: share, fromBottom: share });
const bearing = number('bearing', 'degrees-from-north', 0, 360);

const degrees = v.strictObject({ deg: number('turn', 'degrees', -3600, 3600) });
const bearings = v.strictObject({
  fromBearingDeg: bearing,
  toBearingDeg: bearing,
  way: v.exactOptional(word(['shorter', 'clockwise', 'counterclockwise'])),
});
const points = v.strictObject({
  fromPoint: point,
  toPoint: point,
  focalMm: v.exactOptional(lens.entries.focalMm),
  cameraTiltDeg: v.exactOptional(number('tilt', 'degrees', -90, 90)),
});
const size = v.strictObject({
  sizeM: number('size', 'metres', -100_000, 100_000),
  distanceM: number('distance', 'metres', 0.01, 1_000_000),
});
const turnBy = choice(
  [degrees, bearings, points, size],
  {
    what: 'turn',
    give: {
      give: 'shapes',
      words: [],
      groups: [['deg'], ['fromPoint', 'toPoint'], ['fromBearingDeg', 'toBearingDeg'], ['sizeM', 'distanceM']],
    },
  },
  (input) => {
    if (holds(input, 'deg')) return degrees;
    if (holds(input, 'fromPoint') || holds(input, 'toPoint')) return points;
    if (holds(input, 'fromBearingDeg') || holds(input, 'toBearingDeg')) return bearings;
    return holds(input, 'sizeM') || holds(input, 'distanceM') ? size : undefined;
  },
);

const metres = v.strictObject({ m: number('way', 'metres', -10_000, 10_000) });
const beside = v.exactOptional(number('length', 'metres', 0, 1000));
const track = v.strictObject({
  trackM: number('track', 'metres', 0.001, 10_000),
  carriageM: beside,
  marginM: beside,
});
const slideBy = choice([metres, track], { what: 'way', give: phrase('track-or-metres') }, (input) => {
  if (holds(input, 'm')) return metres;
  return holds(input, 'trackM') ? track : undefined;
});

const trapezoid = v.strictObject({
  trapezoid: number('slope', 'share-of-time', 0, 0.5),
});
const EASES = ['linear', 'smoothstep', 'quintic'] as const;
const easeWord = word(EASES);
const ease = choice(
  [easeWord, trapezoid],
  { what: 'ease', give: { give: 'shapes', words: EASES, groups: [['trapezoid']] } },
  (input) => (typeof input === 'string' ? easeWord : isGroup(input) ? trapezoid : undefined),
);

const settleS = v.optional(number('rest', 'seconds', 0, 3600), 1);
const moveS = v.exactOptional(number('time for a step', 'seconds', 0.001, 3600));

const turnGear = v.strictObject({
  settleS,
  moveS,
  topSpeedDegPerS: v.exactOptional(number('speed', 'degrees-per-s', 0.0001, 1000)),
  accelerationDegPerS2: v.exactOptional(number('acceleration', 'degrees-per-s2', 0.0001, 10_000)),
  smallestStepDeg: v.exactOptional(number('motor step', 'degrees', 0.000001, 90)),
});
const slideGear = v.strictObject({
  settleS,
  moveS,
  topSpeedMPerS: v.exactOptional(number('speed', 'metres-per-s', 0.000001, 100)),
  accelerationMPerS2: v.exactOptional(number('acceleration', 'metres-per-s2', 0.000001, 100)),
  smallestStepM: v.exactOptional(number('motor step', 'metres', 0.000001, 10)),
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
  nearestM: v.exactOptional(number('distance', 'metres', 0.01, 100_000)),
});
const move = choice([turn, slide], { what: 'move', give: phrase('move') }, (input) => {
  if (!isGroup(input)) return undefined;
  if (input.axis === 'slide') return slide;
  return input.axis === 'pan' || input.axis === 'tilt' ? turn : undefined;
});

/** Camera moves, at most one an axis. */
export const moves = list(move, 'moves', 3);
