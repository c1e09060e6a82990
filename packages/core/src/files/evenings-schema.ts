// Evenings to choose from, evenfall-evenings/1, as a schema.

import * as v from 'valibot';
import { MOST_FRAMES } from '../shoot/work.js';
import { finite, flag, format, instant, list, number, phrase, text, wholeFromZero, word } from './parts.js';
import { reasonSchema } from './said-schema.js';
import { shootFileSchema } from './shoot-schema.js';

const at = instant();
const degrees = finite('degrees');
const stops = finite('stops');
const share = number('fraction', 'number', 0, 1);
const count = wholeFromZero('number', MOST_FRAMES);

const light = v.strictObject({
  steepest: v.exactOptional(v.strictObject({ at, sunAltitudeDeg: degrees, evPerMin: finite('ev-per-min') })),
  rampStops: stops,
  moonLitFraction: share,
  moonWaxing: flag(),
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
      kind: v.exactOptional(word(['ok', 'infeasible'])),
      date: text('date', 10, 0, phrase('plain-date')),
      horizonAt: v.exactOptional(at),
      light: v.exactOptional(light),
      plan: v.exactOptional(plan),
      infeasible: v.exactOptional(reasonSchema),
    }),
    'evenings',
    366,
  ),
});
