/**
 * What the lens sees of sun, moon, night sky and town, and what readings tell of it.
 *
 * @module @evenfall/core/light
 */

export type { Look } from '../light/look.js';
export type {
  CloudWord,
  Facing,
  LampsWord,
  NightWord,
  SceneWords,
  SurfaceWord,
} from '../light/scene-words.js';
export {
  type EvBand,
  forecastBand,
  type Known,
  METER_EV,
  NOTHING_KNOWN,
} from './band.js';
export { type CieSkyType, cieSky } from './cie-sky.js';
export { type Cloud, cloudOfEighths, overcastSkyToward } from './cloud.js';
export { driftEv } from './drift.js';
export type { FrameParts } from './frame-light.js';
export { lookOffsetEv } from './look.js';
export { type Moon, moonIlluminanceLx, moonlitSkyCdM2 } from './moon.js';
export { magToLuminanceCdM2, type Night, nightOfGroundLx, nightOfZenith } from './night.js';
export {
  addReading,
  type Correction,
  correctedBandAt,
  correctedEv100At,
  correctForecast,
  type Forecast as LightForecast,
  type Reading,
  type Refusal,
  startCorrection,
} from './reading.js';
export { englishRefusals, type RefusalReason } from './refusal.js';
export { type Lamps, type Scene, type SceneLight, type Sky, sceneLight, type View } from './scene.js';
export { clearSkyLuminanceCdM2 } from './sky.js';
export { clearIlluminanceLx, sunIlluminanceLx } from './sunlight.js';
export { CLOUDS, GREY_REFLECTANCE, knownOf, LAMPS, LAMPS_ON, NIGHTS, SURFACES, sceneOf } from './words.js';
