/**
 * What the lens sees of sun, moon, night sky and town, and what readings tell of it.
 *
 * @module @evenfall/core/light
 */

export {
  type EvBand,
  forecastBand,
  type Known,
  METER_EV,
  NOTHING_KNOWN,
} from '../light/band.js';
export { type CieSkyType, cieSky } from '../light/cie-sky.js';
export { type Cloud, cloudOfEighths, overcastSkyToward } from '../light/cloud.js';
export { driftEv } from '../light/drift.js';
export { type Moon, moonIlluminanceLx, moonlitSkyCdM2 } from '../light/moon.js';
export { magToLuminanceCdM2, type Night, nightOfGroundLx, nightOfZenith } from '../light/night.js';
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
} from '../light/reading.js';
export { type Lamps, type Scene, type SceneLight, type Sky, sceneLight } from '../light/scene.js';
export { clearSkyLuminanceCdM2 } from '../light/sky.js';
export { clearIlluminanceLx, sunIlluminanceLx } from '../light/sunlight.js';
export { CLOUDS, GREY_REFLECTANCE, knownOf, LAMPS, NIGHTS, SURFACES, sceneOf } from '../light/words.js';
export { lookOffsetEv } from '../look.js';
export type {
  CloudWord,
  Facing,
  LampsWord,
  Look,
  NightWord,
  SceneWords,
  SurfaceWord,
} from '../shoot.js';
