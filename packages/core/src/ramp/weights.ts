// What each thing a ramp does is priced at.

/** Prices of the cost. Defaults: {@link rampWeights}. */
export interface RampWeights {
  /** Per frame and squared stop. */
  readonly error: number;
  /** Per frame and squared stop away from half the interval. */
  readonly blur: number;
  /** Per frame and stop shorter than 1/100 s. */
  readonly shortShutter: number;
  /** Per frame and stop above the lowest ISO. */
  readonly iso: number;
  /** The same on top, with a filter on: it comes off before ISO rises. */
  readonly isoBehindFilter: number;
  /** Per affected frame. */
  readonly affectedFrame: number;
  /** Per cue that turns the shutter. */
  readonly shutterCue: number;
  /** Per cue that turns ISO. */
  readonly isoCue: number;
  /** Per cue that turns the aperture. */
  readonly apertureCue: number;
  /** Per cue that changes the filter. */
  readonly filterCue: number;
  /** Per cue and control that moves against the light. */
  readonly againstLight: number;
}

/** Prices that differ from the defaults; one that is undefined does not. */
export type SomeWeights = { readonly [Key in keyof RampWeights]?: number | undefined };

/**
 * The contract's prices for a crew.
 *
 * @param crew who turns the dials
 * @returns every price
 * @example
 * ```ts
 * import { rampWeights } from '@evenfall/core';
 *
 * // A program holds the exposure closer than a person is asked to.
 * rampWeights('hand').error; // → 0.33
 * rampWeights('rig').error; // → 5
 * ```
 */
export function rampWeights(crew: 'hand' | 'rig'): RampWeights {
  return {
    error: crew === 'rig' ? 5 : 0.33,
    blur: 0.005,
    shortShutter: 0.02,
    iso: 0.07,
    isoBehindFilter: 0.5,
    affectedFrame: 1,
    shutterCue: 1,
    isoCue: 1.5,
    apertureCue: 50,
    filterCue: 20,
    againstLight: 6,
  };
}
