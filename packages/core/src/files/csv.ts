// Plans as tables for a spreadsheet: comma-separated values with a header row.
// Source: docs/sources.md#rfc4180.

import type { Control, PlanFrame, PlanMade } from '../plan-format.js';

const CONTROLS: readonly Control[] = ['shutter', 'iso', 'aperture', 'filter'];

/**
 * Cues, one a row: frame (from 0), time, sun altitude, each control's change from and to (empty where it stays),
 * and the whole setting after it.
 */
export function writeCuesCsv(plan: PlanMade): string {
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
  const rows = plan.cues.map(({ frame, at, sunAltitudeDeg, changes }) => {
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

/** Columns of a plan with moves; those that no frame has, of axes that stand still, are left out. */
const MOVE_COLUMNS = [
  'panDeg',
  'tiltDeg',
  'slideM',
  'panSteps',
  'tiltSteps',
  'slideSteps',
  'darkS',
  'writeS',
  'moveS',
  'settleS',
  'slackS',
  'widthsPerS',
  'blurPx',
] as const satisfies readonly (keyof PlanFrame)[];

/** Frames, one a row, every key of the plan file a column; filters on the lens are joined by " + ". */
export function writeFramesCsv(plan: PlanMade): string {
  const moved = MOVE_COLUMNS.filter((column) => plan.frames.some((frame) => frame[column] !== undefined));
  const columns = [...FRAME_COLUMNS, ...moved];
  const rows = plan.frames.map((frame) =>
    columns.map((column) => (column === 'filters' ? frame.filters.join(' + ') : (frame[column] ?? ''))),
  );
  return csv([columns, ...rows]);
}

type Field = string | number | boolean;

function csv(rows: readonly (readonly Field[])[]): string {
  return rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('');
}

/** A field, in quotes where a comma, a quote or a line break would end it early. */
function csvField(field: Field): string {
  const text = String(field);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
