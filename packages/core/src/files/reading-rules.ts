// Readings must belong to the shoot they stand in.

import type { Shoot } from '../shoot/shoot.js';
import { shootSpan } from '../shoot/span.js';
import { parseRfc3339, rfc3339, type Zone } from '../sky/clock.js';
import { type Fault, shown } from './file-error.js';

/** The light of a morning tells nothing of the evening after it. */
const METERED_AHEAD_H = 12;

/** Readings after the last frame, or long before the first; of a shoot that is right in all else. */
export function strayReadingFaults(shoot: Shoot, zone: Zone): Fault[] {
  if (shoot.readings.length === 0) return [];
  const span = shootSpan(shoot);
  if (span.kind === 'no-span') return [];
  const [firstMs, lastMs] = [span.times[0], span.times[span.times.length - 1]];
  return shoot.readings.flatMap(({ at }, index) => {
    const atMs = parseRfc3339(at) ?? firstMs;
    const where =
      atMs > lastMs
        ? `after the last frame, ${rfc3339(lastMs, zone)}`
        : atMs < firstMs - METERED_AHEAD_H * 3_600_000
          ? `long before the first frame, ${rfc3339(firstMs, zone)}`
          : undefined;
    if (where === undefined) return [];
    const give = `give a time during the shoot, or up to ${METERED_AHEAD_H} hours before it`;
    return [{ path: ['readings', index, 'at'], text: `${shown(at)} is ${where}; ${give}` }];
  });
}
