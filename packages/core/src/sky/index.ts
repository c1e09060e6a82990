/**
 * Where sun and moon stand, when they cross an altitude; civil dates, zones.
 *
 * @module @evenfall/core/sky
 */

export { type ClockOfZone, clocksNear } from './border.js';
export { civilDay, rfc3339, wallToMs, type Zone, zoneOf } from './clock.js';
export type { Direction } from './direction.js';
export type { WhyMissing, WhyNoPass } from './missing.js';
export type { Place } from './place.js';
export {
  type EventTime,
  type MissingEvent,
  type SkyEvent,
  type SkyEvents,
  type SkyPosition,
  skyEvents,
  sunAndMoon,
} from './sun.js';
