// Plans as tables for a spreadsheet: comma-separated values with a header row.
// Source: docs/sources.md#rfc4180.

import { changesByClock } from '../plan/cues.js';
import { checkMade } from '../plan/plan-check.js';
import type { Control, PlanFrame, PlanMade } from '../plan/types.js';

const CONTROLS: readonly Control[] = ['shutter', 'iso', 'aperture', 'filter'];

/**
 * Cues as a table, one a row, and where a rig times the shutter freely a row for every third of a stop that it moves: frame (from 0), time, sun altitude, each control's change from and to (empty
 * where it stays), and the whole setting after it. Source: RFC 4180, Common Format and MIME Type for CSV Files (2005).
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @returns comma-separated values with a header row; lines end in CRLF
 * @throws RangeError on a plan that is none, or is infeasible
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { writeCuesCsv } from '@evenfall/core';
 *
 * const lines = writeCuesCsv(plan).split('\r\n');
 * lines[0]?.slice(0, 39); // → 'frame,at,sunAltitudeDeg,shutterFrom,shu'
 * lines.length - 2; // → plan.cues.length
 * ```
 */
export function writeCuesCsv(plan: PlanMade): string {
  checkMade(plan);
  const header = [
    'frame',
    'at',
    'sunAltitudeDeg',
    ...CONTROLS.flatMap((control) => [`${control}From`, `${control}To`]),
    'shutter',
    'shutterS',
    'iso',
    'aperture',
    'filters',
  ];
  const rows = changesByClock(plan).map(({ frame, at, sunAltitudeDeg, changes }) => {
    const after = plan.frames[frame]!;
    const turns = CONTROLS.flatMap((control) => {
      const change = changes.find((each) => each.control === control);
      return [change?.from ?? '', change?.to ?? ''];
    });
    const { shutter, shutterS, iso, aperture, filters } = after;
    return [frame, at, sunAltitudeDeg, ...turns, shutter, shutterS, iso, aperture, filters.join(' + ')];
  });
  return csv([header, ...rows]);
}

const FRAME_COLUMNS = [
  'frame',
  'at',
  'sunAltitudeDeg',
  'sceneEv100',
  'lowEv100',
  'highEv100',
  'targetEv100',
  'shutter',
  'shutterS',
  'iso',
  'isoExact',
  'aperture',
  'fNumber',
  'filters',
  'filterStops',
  'settingEv100',
  'errorEv',
  'affected',
] as const satisfies readonly (keyof PlanFrame)[];

/** Columns of a plan with a bracket or moves; those that no frame has, of axes that stand still, are left out. */
const MORE_COLUMNS = [
  'bracketShortest',
  'bracketLongest',
  'panDeg',
  'tiltDeg',
  'slideM',
  'panSteps',
  'tiltSteps',
  'slideSteps',
  'bracketS',
  'darkS',
  'writeS',
  'moveS',
  'settleS',
  'slackS',
  'widthsPerS',
  'blurPx',
] as const satisfies readonly (keyof PlanFrame)[];

/**
 * Frames as a table, one a row, every key of the plan file a column; filters on the lens are joined by " + ".
 * Source: RFC 4180, Common Format and MIME Type for CSV Files (2005).
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @returns comma-separated values with a header row; lines end in CRLF
 * @throws RangeError on a plan that is none, or is infeasible
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { writeFramesCsv } from '@evenfall/core';
 *
 * writeFramesCsv(plan).split('\r\n').length - 2; // → plan.frames.length
 * ```
 */
export function writeFramesCsv(plan: PlanMade): string {
  checkMade(plan);
  const more = MORE_COLUMNS.filter((column) => plan.frames.some((frame) => frame[column] !== undefined));
  const columns = [...FRAME_COLUMNS, ...more];
  const rows = plan.frames.map((frame) =>
    columns.map((column) => (column === 'filters' ? frame.filters.join(' + ') : (frame[column] ?? ''))),
  );
  return csv([columns, ...rows]);
}

type Field = string | number | boolean;

/** Rows as text, the first the names of the columns. */
export function csv(rows: readonly (readonly Field[])[]): string {
  return rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('');
}

/**
 * A field, in quotes where a comma, a quote or a line break would end it early. Text that a spreadsheet would take for a
 * formula has an apostrophe before it: shoots travel by link, and a filter may have any name. Source:
 * OWASP, CSV Injection.
 */
function csvField(field: Field): string {
  const text = typeof field === 'string' && /^[=+\-@\t\r]/.test(field) ? `'${field}` : String(field);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
