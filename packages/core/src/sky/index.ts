/**
 * Where sun and moon stand, when they cross an altitude; frame times, civil dates, zones.
 *
 * @module @evenfall/core/sky
 */

export { altitudeText } from './altitude-text.js';
export { type ClockOfZone, clocksNear } from './border.js';
export { civilDay, clocksBack, frameTimes, rfc3339, wallToMs, type Zone, zoneOf } from './clock.js';
export type { Direction } from './direction.js';
export type { WhyMissing, WhyNoPass } from './missing.js';
export type { Place } from './place.js';
export {
  type EventTime,
  horizonAzimuthDeg,
  type MissingEvent,
  type SkyEvent,
  type SkyEvents,
  type SkyPosition,
  skyEvents,
  sunAndMoon,
  sunPosition,
} from './sun.js';
