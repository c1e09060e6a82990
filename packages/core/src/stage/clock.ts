// `@evenfall/core/clock`: frame times, civil dates, zones.

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
