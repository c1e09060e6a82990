// Evenings to choose from, as a file and as a table.

import type * as v from 'valibot';
import { aGroup, groupWith, hold, listOf, oneOf } from '../hold.js';
import type { EveningInfeasible, EveningLight, Evenings } from '../plan/evenings.js';
import { csv } from './csv.js';
import { eveningsSchema } from './evenings-schema.js';
import { type Written, written } from './written.js';

const EVENINGS = groupWith({ format: oneOf(['evenfall-evenings/1']), evenings: listOf(aGroup) });

/**
 * Evenings as the text of a file: JSON, keys in the order of the format, an evening a line. Never throws.
 *
 * @param evenings from {@link planEvenings}
 * @returns text that ends with a line break; the same for the same evenings
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { planEvenings, writeEvenings } from '@evenfall/core';
 *
 * const found = planEvenings({ ...shoot, intervalS: 600 }, { days: 3 });
 * JSON.parse(writeEvenings(found)); // → { format: 'evenfall-evenings/1', evenings: found.evenings }
 * ```
 */
export function writeEvenings(evenings: Evenings): string {
  hold('evenings', evenings, EVENINGS);
  // The assignment has the compiler hold the schema against Evenings.
  const file: Written<v.InferOutput<typeof eveningsSchema>> = evenings;
  return written(eveningsSchema, file);
}

const COLUMNS = [
  'date',
  'horizonAt',
  'steepestAt',
  'steepestEvPerMin',
  'moonLitFraction',
  'moonWaxing',
  'moonAltitudeDeg',
  'moonAzimuthDeg',
  'rampStops',
  'possible',
  'startAt',
  'endAt',
  'frameCount',
  'cueCount',
  'worstErrorEv',
  'reserveDarkEv',
  'reserveBrightEv',
  'eveningsHeldShare',
  'reason',
  'worstShortfallEv',
  'text',
];

/**
 * Evenings as a table, one a row; a field without a value is empty. Source: RFC 4180, Common Format and MIME Type for CSV Files (2005).
 *
 * @param evenings from {@link planEvenings}
 * @returns comma-separated values with a header row; lines end in CRLF
 * @throws RangeError on what holds no evenings
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { planEvenings, writeEveningsCsv } from '@evenfall/core';
 *
 * const lines = writeEveningsCsv(planEvenings({ ...shoot, intervalS: 600 }, { days: 3 })).split('\r\n');
 * lines[0]?.slice(0, 25); // → 'date,horizonAt,steepestAt'
 * lines.length - 2; // → 3
 * ```
 */
export function writeEveningsCsv(evenings: Evenings): string {
  hold('evenings', evenings, EVENINGS);
  const rows = evenings.evenings.map((evening) => {
    const { date, horizonAt, light } = evening;
    const { at: steepestAt, evPerMin: steepestEvPerMin } = light?.steepest ?? {};
    const all: Readonly<Record<string, string | number | boolean | undefined>> = {
      ...{ date, horizonAt, steepestAt, steepestEvPerMin, possible: evening.kind === 'ok' },
      ...(light === undefined ? {} : moonAndRamp(light)),
      ...(evening.kind === 'ok' ? evening.plan : whyNot(evening)),
    };
    return COLUMNS.map((column) => all[column] ?? '');
  });
  return csv([COLUMNS, ...rows]);
}

function whyNot({ infeasible }: EveningInfeasible) {
  const { reason, text } = infeasible;
  return {
    ...{ reason, text },
    worstShortfallEv: 'shortfallEv' in infeasible ? infeasible.worstShortfallEv : undefined,
  };
}

function moonAndRamp({ steepest: _, ...rest }: EveningLight) {
  return rest;
}
