// The light table, evenfall-light/1, as a schema.

import * as v from 'valibot';
import { MOST_FRAMES } from '../shoot/work.js';
import { clocksBackSchema, eventSchema } from './event-schema.js';
import { finite, format, instant, kindOf, list, number } from './parts.js';
import { missingSchema } from './said-schema.js';

const degrees = finite('degrees');
const ev100 = finite('ev100');

export const lightSchema = v.strictObject({
  format: format('evenfall-light/1'),
  kind: kindOf('ok'),
  events: list(eventSchema, 'events', 100),
  missing: list(missingSchema, 'missing', 100),
  clocksBack: v.exactOptional(clocksBackSchema),
  rows: list(
    v.strictObject({
      at: instant(),
      sunAltitudeDeg: degrees,
      sunAzimuthDeg: degrees,
      moonAltitudeDeg: degrees,
      moonAzimuthDeg: degrees,
      moonLitFraction: number('fraction', 'number', 0, 1),
      illuminanceLx: finite('lux'),
      moonIlluminanceLx: finite('lux'),
      skyLuminanceCdM2: finite('cd-per-m2'),
      sceneEv100: ev100,
      lowEv100: ev100,
      highEv100: ev100,
      slopeEvPerMin: finite('ev-per-min'),
    }),
    'rows',
    MOST_FRAMES,
  ),
});
