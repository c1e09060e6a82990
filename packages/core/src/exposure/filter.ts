// Neutral-density filters. A filter is what it is: a factor of 1000 is 9.966 stops, not 10.
// Source: docs/sources.md#nd.

import { finite, positive } from '../check.js';
import { groupWith, hold, text } from '../hold.js';

/**
 * A filter by its `name` and what its rim states: `stops`, optical `density` (0.9 is 3 stops), or `factor` (8
 * is 3 stops). Stops and density >= 0, a factor >= 1.
 */
export type FilterSpec =
  | { readonly name: string; readonly stops: number }
  | { readonly name: string; readonly density: number }
  | { readonly name: string; readonly factor: number };

/** Filters on the lens at one time. */
export interface FilterStack {
  /** In the order owned; empty for the bare lens. */
  readonly names: readonly string[];
  /** Their sum, exact, >= 0. */
  readonly stops: number;
}

/**
 * Exact stops of a filter: density / log10 2, or log2 of the factor. Source: definition of optical density.
 *
 * @param spec a filter, by whichever number its rim states
 * @returns stops, >= 0
 * @throws RangeError unless stops or density is finite, factor is positive and finite, and the filter does
 *   not brighten
 * @example
 * ```ts
 * import { filterStops } from '@evenfall/core';
 *
 * filterStops({ name: 'ND 0.9', density: 0.9 }); // → 2.9897
 * filterStops({ name: 'ND 1000', factor: 1000 }); // → 9.966
 * ```
 */
export function filterStops(spec: FilterSpec): number {
  hold('spec', spec, groupWith({ name: text }));
  const stops =
    'stops' in spec
      ? finite('stops', spec.stops)
      : 'density' in spec
        ? finite('density', spec.density) / Math.log10(2)
        : Math.log2(positive('factor', spec.factor));
  if (stops >= 0) return stops;
  throw new RangeError(`filter "${spec.name}" must not brighten the picture, got ${stops} stops`);
}

/**
 * Every stack the owned filters allow: the bare lens, each filter alone and, where `stackFilters` is true,
 * each pair.
 *
 * @param owned filters, none or more
 * @param stackFilters whether two may be on the lens at once
 * @returns weakest first; equals keep the owner's order
 * @throws RangeError on a filter that {@link filterStops} refuses
 */
export function filterStacks(owned: readonly FilterSpec[], stackFilters: boolean): FilterStack[] {
  const single = owned.map((spec) => ({ names: [spec.name], stops: filterStops(spec) }));
  const pairs = stackFilters
    ? single.flatMap((a, i) =>
        single.slice(i + 1).map((b) => ({ names: [...a.names, ...b.names], stops: a.stops + b.stops })),
      )
    : [];
  return [{ names: [], stops: 0 }, ...single, ...pairs].sort((a, b) => a.stops - b.stops);
}
