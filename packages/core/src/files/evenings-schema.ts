// Evenings to choose from, evenfall-evenings/1, as a schema.

import * as v from 'valibot';
import { finite, flag, format, instant, list, number, text, whole } from './parts.js';
import { reasonSchema } from './said-schema.js';
import { MOST_FRAMES } from './shoot-rules.js';
import { shootFileSchema } from './shoot-schema.js';

const at = instant();
const degrees = finite('degrees');
const stops = finite('stops');
const share = number('a fraction', 'a number from 0 to 1', 0, 1);
const count = whole('a number', 'a whole number from 0', 0, MOST_FRAMES);

const light = v.strictObject({
  steepest: v.exactOptional(v.strictObject({ at, sunAltitudeDeg: degrees, evPerMin: finite('EV a minute') })),
  rampStops: stops,
  moonLitFraction: share,
  moonWaxing: flag('true or false'),
  moonAltitudeDeg: degrees,
  moonAzimuthDeg: degrees,
});

const plan = v.strictObject({
  frameCount: count,
  startAt: at,
  endAt: at,
  cueCount: count,
  worstErrorEv: stops,
  reserveDarkEv: stops,
  reserveBrightEv: stops,
  eveningsHeldShare: share,
});

export const eveningsSchema = v.strictObject({
  format: format('evenfall-evenings/1'),
  shoot: shootFileSchema,
  evenings: list(
    v.strictObject({
      date: text('a date', 'YYYY-MM-DD', 10),
      horizonAt: v.exactOptional(at),
      light: v.exactOptional(light),
      plan: v.exactOptional(plan),
      infeasible: v.exactOptional(reasonSchema),
    }),
    'evenings',
    366,
  ),
});
