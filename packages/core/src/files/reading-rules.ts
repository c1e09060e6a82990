// Readings must belong to the shoot they stand in.

import type { Shoot } from '../shoot/shoot.js';
import { shootSpan } from '../shoot/span.js';
import { parseRfc3339, rfc3339, type Zone } from '../sky/clock.js';
import { givenOf } from './fault.js';
import type { Fault } from './file-error.js';

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
    const stray = (side: 'after-last' | 'before-first', frameMs: number): Fault[] => [
      {
        path: ['readings', index, 'at'],
        kind: 'reading-of-another-time',
        given: givenOf(at),
        side,
        frameAt: rfc3339(frameMs, zone),
        mostHours: METERED_AHEAD_H,
      },
    ];
    if (atMs > lastMs) return stray('after-last', lastMs);
    return atMs < firstMs - METERED_AHEAD_H * 3_600_000 ? stray('before-first', firstMs) : [];
  });
}
