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
  type StepsPerStop,
  valueOfStep,
} from './dial.js';
export { type Exposure, ev100Of } from './exposure.js';
export { type FilterSpec, type FilterStack, filterStops } from './filter.js';
