/**
 * Where sun and moon stand, and when they cross an altitude.
 *
 * @module @evenfall/core/sun
 */

export type { Direction, Place } from '../shoot.js';
export { skyTrack } from '../sky-track.js';
export {
  type Crossing,
  crossings,
  type EventTime,
  horizonAzimuthDeg,
  type MissingEvent,
  type SkyEvent,
  type SkyEvents,
  type SkyPosition,
  type SunPass,
  skyEvents,
  sunAndMoon,
  sunPass,
  sunPosition,
} from '../sun.js';
