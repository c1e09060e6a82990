// How far legal settings reach: forward through the frames, which settings can be stood at. No costs, so the ISOs
// of a level are one set of bits, and a whole row moves at once.

import { type Lattice, SLACK, shutterAt } from '../lattice.js';
import { type Swap, swapsOf } from '../swaps.js';

/**
 * ISO indices as bits, thirty to a word: no ISO dial has more than sixty steps. Keys of their own: engines keep groups
 * with the same keys as one kind, and slow down by ten where another of that kind holds a fraction or -0.
 */
interface IsoSet {
  readonly first: number;
  readonly rest: number;
}

const WORD = 30;
const ALL = 2 ** WORD - 1;

/** The furthest frame met, and the smallest excess over tolerance seen on the one after it. */
export interface Reached {
  readonly frame: number; // first frame that no legal start of a ramp can meet; frameCount where all can
  readonly excessEv: number;
}

/**
 * The first frame no legal start of a ramp can meet, and how far outside tolerance the nearest setting in reach is
 * on it. A frame counts as met where some legal settings of all frames up to it leave it within tolerance, or
 * affected by a filter change that lands within tolerance: a frame the kit cannot render may be crossed, and the
 * answer is the first one where that is no help.
 *
 * @param limit filter changes allowed in all
 */
export function firstUnmet(lattice: Lattice, limit: number): Reached {
  const reach = new Reach(lattice, limit);
  reach.start();
  for (let frame = 0; frame < lattice.frameCount - 1; frame++) reach.goOnFrom(frame);
  return { frame: reach.front.last + 1, excessEv: reach.front.excessEv };
}

/** Which settings can be stood at. A class for the reason given in cost-to-go.ts. */
class Reach {
  readonly front: Front;
  private readonly lattice: Lattice;
  private readonly limited: boolean;
  private readonly layers: number; // one for each number of filter changes made, where that is limited
  private readonly base: Float64Array; // where (frame, stack) begins
  // By frame, stack, layer, aperture and level: the ISOs that can be stood at, free to change on the next frame.
  private readonly low: Int32Array;
  private readonly high: Int32Array;
  private readonly swaps: readonly (readonly Swap[])[];
  // A filter change resets both dials, so what it arrives at does not depend on where it comes from: once a
  // frame is enough. By stack, layer, aperture and level: the frame that last arrived.
  private readonly arrived: Int32Array;

  constructor(lattice: Lattice, limit: number) {
    const { frameCount, stops, apertureCount, band } = lattice;
    this.lattice = lattice;
    this.front = new Front(lattice);
    this.limited = Number.isFinite(limit);
    this.layers = this.limited ? limit + 1 : 1;
    this.base = new Float64Array(frameCount * stops.length);
    let rows = 0;
    for (let at = 0; at < this.base.length; at++) {
      this.base[at] = rows;
      rows += band.count[at] * apertureCount * this.layers;
    }
    this.low = new Int32Array(rows);
    this.high = new Int32Array(rows);
    this.swaps = swapsOf(lattice);
    this.arrived = new Int32Array(stops.length * this.layers * apertureCount * this.front.levels);
  }

  /** Every setting the first frame may have. */
  start(): void {
    const { lattice, front } = this;
    const { stops, apertureCount, band } = lattice;
    for (let stack = 0; stack < stops.length; stack++) {
      if (lattice.startStack !== undefined && stack !== lattice.startStack) continue;
      // Levels in the band, and those next to the target, which tell how far off the kit is where none is.
      const nearest = Math.round((lattice.target[0] - stops[stack]) * lattice.stepsPerStop);
      const from = Math.min(nearest - 1, band.low[stack]);
      const to = Math.max(nearest + 1, band.low[stack] + band.count[stack] - 1);
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let level = from; level <= to; level++) {
          const dial = isosOnDial(lattice, aperture, level);
          if ((dial.first | dial.rest) === 0 || !front.hold(stack, level, 0, 0)) continue;
          const row = this.rowAt(0, stack, 0, aperture, level);
          this.low[row] = dial.first;
          this.high[row] = dial.rest;
        }
      }
    }
  }

  goOnFrom(frame: number): void {
    const { stops, apertureCount, band } = this.lattice;
    for (let stack = 0; stack < stops.length; stack++) {
      const lowest = band.low[frame * stops.length + stack];
      const highest = lowest + band.count[frame * stops.length + stack] - 1;
      for (let layer = 0; layer < this.layers; layer++) {
        for (let aperture = 0; aperture < apertureCount; aperture++) {
          for (let level = lowest; level <= highest; level++) {
            const row = this.rowAt(frame, stack, layer, aperture, level);
            if ((this.low[row] | this.high[row]) === 0) continue;
            this.turnDial(frame + 1, stack, layer, aperture, level, row);
            this.changeFilter(frame + 1, stack, layer, aperture, level);
          }
        }
      }
    }
  }

  private rowAt(frame: number, stack: number, layer: number, aperture: number, level: number): number {
    const { stops, apertureCount, band } = this.lattice;
    const at = frame * stops.length + stack;
    return this.base[at] + (layer * apertureCount + aperture) * band.count[at] + level - band.low[at];
  }

  /** Stay, or one dial by 1…m steps. */
  private turnDial(
    j: number,
    stack: number,
    layer: number,
    aperture: number,
    level: number,
    row: number,
  ): void {
    const { apertureCount, largestStep } = this.lattice;
    const low = this.low[row];
    const high = this.high[row];
    if (this.front.hold(stack, level, j, j)) {
      const on = this.rowAt(j, stack, layer, aperture, level);
      this.low[on] |= low;
      this.high[on] |= high;
    }
    for (let step = 1; step <= largestStep; step++) {
      // A level up by the shutter, or by ISO going down; a level down by the shutter, or by ISO going up.
      const less = shiftedDown(low, high, step);
      const more = shiftedUp(low, high, step);
      this.arrive(j, j, stack, layer, aperture, level + step, low | less.first, high | less.rest);
      this.arrive(j, j, stack, layer, aperture, level - step, low | more.first, high | more.rest);
      if (aperture + step < apertureCount) {
        this.arrive(j, j, stack, layer, aperture + step, level + step, low, high);
      }
      if (aperture >= step) this.arrive(j, j, stack, layer, aperture - step, level - step, low, high);
    }
  }

  private changeFilter(j: number, stack: number, layer: number, aperture: number, level: number): void {
    const { lattice, arrived, layers } = this;
    const { frameCount, apertureCount, affectedFrames, kitLevels } = lattice;
    const after = this.limited ? layer + 1 : layer;
    if (after >= layers || j + affectedFrames >= frameCount) return;
    const swaps = this.swaps[stack];
    const { levels } = this.front;
    for (let s = 0; s < swaps.length; s++) {
      const { to } = swaps[s];
      const lowest = Math.max(kitLevels.low, level + swaps[s].low);
      const highest = Math.min(kitLevels.high, level + swaps[s].high);
      const stamps = ((to * layers + after) * apertureCount + aperture) * levels - kitLevels.low;
      for (let x = lowest; x <= highest; x++) {
        if (arrived[stamps + x] === j) continue;
        arrived[stamps + x] = j;
        this.arrive(j, j + affectedFrames, to, after, aperture, x, ALL, ALL);
      }
    }
  }

  /** Stands at a level from frame `judged` on, set by a cue at frame j, as long as the rules hold it there. */
  private arrive(
    j: number,
    judged: number,
    stack: number,
    layer: number,
    aperture: number,
    level: number,
    isosLow: number,
    isosHigh: number,
  ): void {
    const { frameCount, spacing } = this.lattice;
    const dial = isosOnDial(this.lattice, aperture, level);
    const low = isosLow & dial.first;
    const high = isosHigh & dial.rest;
    if ((low | high) === 0) return;
    const free = Math.min(Math.max(j + spacing - 1, judged), frameCount - 1);
    if (!this.front.hold(stack, level, judged, free)) return;
    const row = this.rowAt(free, stack, layer, aperture, level);
    this.low[row] |= low;
    this.high[row] |= high;
  }
}

/** The ISOs whose shutter, at an aperture and level, is on the dial. */
function isosOnDial(lattice: Lattice, aperture: number, level: number): IsoSet {
  const atIsoMin = shutterAt(lattice, aperture, level);
  const from = Math.max(0, lattice.shutterMin - atIsoMin);
  const to = Math.min(lattice.isoCount - 1, lattice.shutterMax - atIsoMin);
  return {
    first: bits(from, Math.min(to, WORD - 1)),
    rest: bits(Math.max(0, from - WORD), to - WORD),
  };
}

/** Bits from…to of a word; none where from > to. */
function bits(from: number, to: number): number {
  return from > to ? 0 : (1 << (to + 1)) - (1 << from);
}

function shiftedUp(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { first: 0, rest: by < 2 * WORD ? (low << (by - WORD)) & ALL : 0 };
  return { first: (low << by) & ALL, rest: ((high << by) | (low >>> (WORD - by))) & ALL };
}

function shiftedDown(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { first: by < 2 * WORD ? high >>> (by - WORD) : 0, rest: 0 };
  return { first: (low >>> by) | ((high << (WORD - by)) & ALL), rest: high >>> by };
}

/** Furthest frame met so far, and the smallest excess over tolerance seen on the one after it. */
class Front {
  last = -1;
  excessEv = Number.POSITIVE_INFINITY;
  readonly levels: number; // of the kit
  private readonly lattice: Lattice;
  // By stack and level: from which frame on, and up to which it is known to be within tolerance. A cue at the next frame
  // holds most of the same ones.
  private readonly known: Int32Array;

  constructor(lattice: Lattice) {
    const { stops, kitLevels } = lattice;
    this.lattice = lattice;
    this.levels = kitLevels.high - kitLevels.low + 1;
    this.known = new Int32Array(2 * stops.length * this.levels);
  }

  /** Holds a level of the kit through frames from…to and answers whether all are within tolerance. */
  hold(stack: number, level: number, from: number, to: number): boolean {
    const { known } = this;
    const { stops, stepsPerStop, target, toleranceEv, kitLevels } = this.lattice;
    const exposureEv = level / stepsPerStop + stops[stack];
    const at = 2 * (stack * this.levels + level - kitLevels.low);
    if (from < known[at] || from > known[at + 1]) known.fill(from, at, at + 2);
    let frame = Math.max(from, known[at + 1]);
    while (frame <= to && Math.abs(exposureEv - target[frame]) <= toleranceEv + SLACK) frame++;
    known[at + 1] = frame;
    frame = Math.min(frame, to + 1);
    if (frame > from && frame - 1 > this.last) {
      this.last = frame - 1;
      this.excessEv = Number.POSITIVE_INFINITY;
    }
    if (frame <= to && frame === this.last + 1) {
      this.excessEv = Math.min(this.excessEv, Math.abs(exposureEv - target[frame]) - toleranceEv);
    }
    return frame > to;
  }
}
