/**
 * Frame times, civil dates, zones.
 *
 * @module @evenfall/core/clock
 */

export {
  civilDay,
  frameTimes,
  parseRfc3339,
  rfc3339,
  wallToMs,
  type Zone,
  zoneOf,
} from '../clock.js';
export type { Place } from '../shoot.js';
