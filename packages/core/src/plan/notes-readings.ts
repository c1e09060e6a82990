// What became of the readings that a shoot brings.

import { instant } from '../shoot/span.js';
import { rfc3339 } from '../sky/clock.js';
import type { Forecast } from './forecast.js';
import type { MoveNote } from './note-context.js';
import type { PlanMade } from './types.js';

type Made = Pick<PlanMade, 'shoot' | 'summary'>;

/** None without readings. */
export function readingNotes(plan: Made, forecast: Forecast): MoveNote[] {
  return [...underWay(plan, forecast), ...refused(forecast)];
}

/** A reading taken after the start: the plan changes a past that has been shot, and says so before all else. */
function underWay({ shoot, summary }: Made, forecast: Forecast): MoveNote[] {
  const startMs = instant(summary.startAt);
  const after = shoot.readings.map(({ at }) => instant(at)).filter((atMs) => atMs > startMs);
  if (after.length === 0) return [];
  const readingAt = rfc3339(Math.min(...after), forecast.zone);
  return [{ level: 'warning', kind: 'under-way', startAt: summary.startAt, readingAt }];
}

function refused(forecast: Forecast): MoveNote[] {
  return forecast.correction.refused.map(({ reading, text: _, ...because }) => ({
    level: 'warning',
    kind: 'reading-refused',
    ev100: reading.ev100,
    because,
  }));
}
