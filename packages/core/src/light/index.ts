/**
 * What the lens sees of sun, moon, night sky and town, and what readings tell of it.
 *
 * @module @evenfall/core/light
 */

export type { Look } from '../light/look.js';
export type {
  CloudWord,
  Facing,
  LampsOn,
  LampsOnByClock,
  LampsOnBySun,
  LampsWord,
  NightWord,
  SceneWords,
  SurfaceWord,
} from '../light/scene-words.js';
export type { EvBand, Known } from './band.js';
export type { Cloud } from './cloud.js';
export type { Field } from './field.js';
export type { FrameParts } from './frame-light.js';
export type { Night } from './night.js';
export type { Correction, Forecast as LightForecast, Reading, Refusal } from './reading.js';
export type { RefusalReason } from './refusal.js';
export { type Lamps, type Scene, type SceneLight, type Sky, sceneLight, type View } from './scene.js';
export type { SkylinePoint } from './skyline.js';
export type { CloudKnown } from './weather.js';
export { LAMPS_ON, sceneOf } from './words.js';
