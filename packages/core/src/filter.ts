// Neutral-density filters. A filter is what it is: a factor of 1000 is 9.966 stops, not 10.
// Source: docs/sources.md#nd.

import { finite, positive } from './check.js';

/** A filter as its rim states it: by stops, by optical density, or by factor. */
export type FilterSpec =
  | { readonly name: string; readonly stops: number }
  | { readonly name: string; readonly density: number }
  | { readonly name: string; readonly factor: number };

/** Filters on the lens at one time; `names` is empty for the bare lens. */
export interface FilterStack {
  /** In the order owned. */
  readonly names: readonly string[];
  /** Sum, exact, >= 0. */
  readonly stops: number;
}

/** Exact stops: density / log10 2, or log2 of the factor. ND 0.9 is 2.9897. Throws RangeError unless >= 0. */
export function filterStops(spec: FilterSpec): number {
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
 * Every stack the owned filters allow: the bare lens, each filter alone and, where
 * `stackFilters` is true, each pair. Weakest first; equals keep the owner's order.
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
