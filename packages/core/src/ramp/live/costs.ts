// The optimum ahead, backward over the grid: the recurrence of cost-to-go.ts between places for cues.
//
//   cost(k, s) = min( segment k at s + cost(k+1, s),  cue price + arrive(k, s') )    s' one legal cue away
//   arrive(k, s') = segments k … free-1 at s' + cost(free, s')                       free: next place for a cue
//
// Nothing is cut at the tolerance and the funnel always holds a way, so a cost is never infinite everywhere.

import type { Grid } from '../grid.js';
import { filterPrice, type Lattice, netWindow } from '../lattice.js';
import type { StackErrors } from './errors.js';

export interface LiveModel {
  readonly kit: Lattice;
  readonly grid: Grid;
  readonly errors: readonly StackErrors[]; // by stack
}

/** Cost from segment k to the end by segment, stack, aperture, level and ISO up to isoTop, in that order. */
export interface LiveCosts {
  readonly cost: Float64Array;
  readonly base: Int32Array; // where (segment, stack) begins, at index segment * stackCount + stack
}

/** @param afterFilter the table a filter change leads into, as in cost-to-go.ts */
export function liveCosts(
  { kit, grid, errors }: LiveModel,
  afterFilter: LiveCosts | 'same' | undefined,
): LiveCosts {
  const { stops, apertureCount, isoCount, largestStep, price } = kit;
  const { shutterMin, shutterMax, apertureMin, isoMin } = kit;
  const segments = grid.at.length - 1;
  const stackCount = stops.length;
  const base = new Int32Array((segments + 1) * stackCount);
  let cells = 0;
  let tallest = 1;
  for (let k = 0, at = 0; k <= segments; k++) {
    for (let stack = 0; stack < stackCount; stack++, at++) {
      const count = errors[stack].count[k];
      base[at] = cells;
      cells += count * apertureCount * (errors[stack].isoTop[k] + 1);
      if (count > tallest) tallest = count;
    }
  }
  const cost = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  const table: LiveCosts = { cost, base };
  const source = afterFilter === 'same' ? table : afterFilter;

  // Rows of arrivals, padded so that a row shifted in ISO needs no bounds.
  const pad = Math.min(isoCount, largestStep);
  const stride = isoCount + 2 * pad;
  const byCue = new Float64Array(stackCount * apertureCount * tallest * stride);
  const byFilter = source === undefined ? byCue : new Float64Array(byCue.length);
  const cheapest = new Float64Array(stackCount * apertureCount * tallest);
  const time = price.time;
  const isoPrice = price.iso;

  for (let stack = 0; stack < stackCount; stack++) fillEnd(stack);
  for (let k = segments - 1; k >= 0; k--) {
    arrivals(byCue, table, k, grid.freeAfterCue[k], 0);
    const filterTo = source === undefined ? 0 : grid.freeAfterFilter[k];
    if (source !== undefined && filterTo > 0) arrivals(byFilter, source, k, filterTo, kit.lost);
    for (let stack = 0; stack < stackCount; stack++) {
      for (let aperture = 0; aperture < apertureCount; aperture++) relaxLevels(k, stack, aperture, filterTo);
    }
  }
  return table;

  /** Shutter index, above the longest, at ISO index 0. */
  function shutterAt(aperture: number, level: number): number {
    return level - apertureMin - aperture + isoMin - shutterMin;
  }

  function fillEnd(stack: number): void {
    const { low, count, isoTop } = errors[stack];
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let i = 0; i < count[segments]; i++) {
        const line = aperture * count[segments] + i;
        const row = base[segments * stackCount + stack] + line * (isoTop[segments] + 1);
        const at = shutterAt(aperture, low[segments] + i);
        const from = Math.max(0, -at);
        const to = Math.min(isoTop[segments], shutterMax - shutterMin - at);
        for (let iso = from; iso <= to; iso++) cost[row + iso] = 0;
      }
    }
  }

  /** Rows of arriving by a cue at segment k and standing until segment `free`, the first frames spoilt. */
  function arrivals(rows: Float64Array, from: LiveCosts, k: number, free: number, spoilt: number): void {
    rows.fill(Number.POSITIVE_INFINITY);
    const frames = grid.at[free] - grid.at[k];
    const judged = frames - spoilt;
    for (let stack = 0; stack < stackCount; stack++) {
      const { low, count, isoTop, spent, width, base: baseLevel } = errors[stack];
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let i = 0; i < count[free]; i++) {
          const level = low[free] + i;
          const column = level - baseLevel;
          const stood = spent[free * width + column] - spent[k * width + column];
          // A spoilt frame's error is not counted; its share of the whole is near enough.
          const paid = spoilt === 0 ? stood : (stood * judged) / frames + spoilt * price.affectedFrame;
          const row =
            from.base[free * stackCount + stack] + (aperture * count[free] + i) * (isoTop[free] + 1);
          const line = (stack * apertureCount + aperture) * tallest + i;
          const into = line * stride + pad;
          const at = shutterAt(aperture, level);
          const first = Math.max(0, -at);
          const last = Math.min(isoTop[free], shutterMax - shutterMin - at);
          let least = Number.POSITIVE_INFINITY;
          for (let iso = first; iso <= last; iso++) {
            const arrived = from.cost[row + iso] + paid + judged * (time[at + iso] + isoPrice[iso]);
            rows[into + iso] = arrived;
            if (arrived < least) least = arrived;
          }
          if (spoilt > 0) cheapest[line] = least;
        }
      }
    }
  }

  function relaxLevels(k: number, stack: number, aperture: number, filterTo: number): void {
    const { low, count, isoTop, spent, width, base: baseLevel } = errors[stack];
    const frames = grid.at[k + 1] - grid.at[k];
    const next = k + 1;
    const free = grid.freeAfterCue[k];
    const lowFree = low[free];
    const highFree = lowFree + count[free] - 1;
    const line = (a: number, level: number) =>
      ((stack * apertureCount + a) * tallest + level - lowFree) * stride + pad;
    for (let i = 0; i < count[k]; i++) {
      const level = low[k] + i;
      const row = base[k * stackCount + stack] + (aperture * count[k] + i) * (isoTop[k] + 1);
      const at = shutterAt(aperture, level);
      const first = Math.max(0, -at);
      const last = Math.min(isoTop[k], shutterMax - shutterMin - at);
      const j = level - low[next];
      if (j >= 0 && j < count[next]) {
        const stay = base[next * stackCount + stack] + (aperture * count[next] + j) * (isoTop[next] + 1);
        const column = level - baseLevel;
        const stood = spent[next * width + column] - spent[k * width + column];
        const kept = Math.min(last, isoTop[next]);
        for (let iso = first; iso <= kept; iso++) {
          cost[row + iso] = cost[stay + iso] + stood + frames * (time[at + iso] + isoPrice[iso]);
        }
      }
      for (let step = 1; step <= largestStep; step++) {
        const above = level + step;
        if (above >= lowFree && above <= highFree) {
          relax(row, byCue, line(aperture, above), first, last, price.shorter);
          if (step <= pad) relax(row, byCue, line(aperture, above) - step, first, last, price.isoDown);
          if (aperture + step < apertureCount) {
            relax(row, byCue, line(aperture + step, above), first, last, price.narrower);
          }
        }
        const below = level - step;
        if (below >= lowFree && below <= highFree) {
          relax(row, byCue, line(aperture, below), first, last, price.longer);
          if (step <= pad) relax(row, byCue, line(aperture, below) + step, first, last, price.isoUp);
          if (aperture >= step) relax(row, byCue, line(aperture - step, below), first, last, price.wider);
        }
      }
      if (filterTo > 0) relaxFilters(stack, aperture, level, row, first, last, filterTo);
    }
  }

  /** Filter changes with the shutter set anew, or shutter and ISO; where only ISO would be, both are paid. */
  function relaxFilters(
    stack: number,
    aperture: number,
    level: number,
    row: number,
    first: number,
    last: number,
    free: number,
  ): void {
    for (let other = 0; other < stackCount; other++) {
      const count = errors[other].count[free];
      if (other === stack || count === 0) continue;
      const swap = filterPrice(kit, stack, other);
      const window = netWindow(kit, stack, other, level);
      const lowest = errors[other].low[free];
      // Both dials are in hand, so of all levels in reach only those about the target are worth a look.
      const wanted = errors[other].best[free];
      const from = Math.max(Math.min(Math.max(window.low, wanted - 1), window.high), lowest);
      const to = Math.min(Math.max(Math.min(window.high, wanted + 1), window.low), lowest + count - 1);
      let both = Number.POSITIVE_INFINITY;
      for (let x = from; x <= to; x++) {
        const line = (other * apertureCount + aperture) * tallest + x - lowest;
        if (cheapest[line] < both) both = cheapest[line];
        const reset = x === level ? swap : swap + price.shutterReset;
        relax(row, byFilter, line * stride + pad, first, last, reset);
      }
      both += swap + price.shutterReset + price.isoReset;
      for (let iso = first; iso <= last; iso++) if (both < cost[row + iso]) cost[row + iso] = both;
    }
  }

  /** cost[row + iso] = min(itself, source[at + iso] + more) over a stretch of ISOs. */
  function relax(
    row: number,
    source: Float64Array,
    at: number,
    first: number,
    last: number,
    more: number,
  ): void {
    for (let iso = first; iso <= last; iso++) {
      const through = source[at + iso] + more;
      if (through < cost[row + iso]) cost[row + iso] = through;
    }
  }
}
