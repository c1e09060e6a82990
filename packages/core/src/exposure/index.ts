/**
 * Exposure arithmetic, marked against exact values, ND filters.
 *
 * @module @evenfall/core/exposure
 */

export {
  type DialControl,
  dialLabel,
  dialLabels,
  dialStep,
  fNumberOfStep,
  isoOfStep,
  type StepsPerStop,
  timeOfStep,
} from './dial.js';
export {
  apertureAv,
  type Exposure,
  ev100Of,
  ev100ToLuminance,
  fitTime,
  INCIDENT_C,
  illuminanceToEv100,
  isoSv,
  luminanceToEv100,
  REFLECTED_K,
  type TimeFit,
  timeTv,
} from './exposure.js';
export { type FilterSpec, type FilterStack, filterStacks, filterStops } from './filter.js';
