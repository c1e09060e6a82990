// How far legal settings reach: forward through the frames, which settings can be stood at. No costs, so the ISOs
// of a level are one set of bits, and a whole row moves at once.

import { type Lattice, SLACK, shutterAt } from './lattice.js';
import { type Swap, swapsOf } from './swaps.js';

/**
 * ISO indices as bits, thirty to a word: no ISO dial has more than sixty steps. Keys of their own: engines keep groups
 * with the same keys as one kind, and slow down by ten where another of that kind holds a fraction or -0.
 */
interface IsoSet {
  readonly lowBits: number;
  readonly highBits: number;
}

/** Levels beyond the kit's that are asked for. */
const NEAREST = 1;

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
 * spoilt by a filter change that lands within tolerance: a frame the kit cannot render may be crossed, and the
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
  // A filter change sets every dial anew, so what it arrives at does not depend on where it comes from: once a
  // frame is enough. By stack, layer, aperture and level: the frame that last arrived.
  private readonly arrived: Int32Array;

  constructor(lattice: Lattice, limit: number) {
    const { frameCount, stops, apertureCount, band, kitLevels } = lattice;
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
    const levels = kitLevels.high - kitLevels.low + 1;
    this.arrived = new Int32Array(stops.length * this.layers * apertureCount * levels);
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
          if ((dial.lowBits | dial.highBits) === 0 || !front.hold(stack, level, 0, 0)) continue;
          const row = this.rowAt(0, stack, 0, aperture, level);
          this.low[row] = dial.lowBits;
          this.high[row] = dial.highBits;
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
      this.arrive(j, j, stack, layer, aperture, level + step, low | less.lowBits, high | less.highBits);
      this.arrive(j, j, stack, layer, aperture, level - step, low | more.lowBits, high | more.highBits);
      if (aperture + step < apertureCount) {
        this.arrive(j, j, stack, layer, aperture + step, level + step, low, high);
      }
      if (aperture >= step) this.arrive(j, j, stack, layer, aperture - step, level - step, low, high);
    }
  }

  private changeFilter(j: number, stack: number, layer: number, aperture: number, level: number): void {
    const { lattice, arrived, layers } = this;
    const { frameCount, apertureCount, lost, kitLevels } = lattice;
    const after = this.limited ? layer + 1 : layer;
    if (after >= layers || j + lost >= frameCount) return;
    const swaps = this.swaps[stack];
    const levels = kitLevels.high - kitLevels.low + 1;
    for (let s = 0; s < swaps.length; s++) {
      const { to } = swaps[s];
      const lowest = Math.max(kitLevels.low, level + swaps[s].low);
      const highest = Math.min(kitLevels.high, level + swaps[s].high);
      const stamps = ((to * layers + after) * apertureCount + aperture) * levels - kitLevels.low;
      for (let x = lowest; x <= highest; x++) {
        if (arrived[stamps + x] === j) continue;
        arrived[stamps + x] = j;
        this.arrive(j, j + lost, to, after, aperture, x, ALL, ALL);
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
    const low = isosLow & dial.lowBits;
    const high = isosHigh & dial.highBits;
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
    lowBits: bits(from, Math.min(to, WORD - 1)),
    highBits: bits(Math.max(0, from - WORD), to - WORD),
  };
}

/** Bits from…to of a word; none where from > to. */
function bits(from: number, to: number): number {
  return from > to ? 0 : (1 << (to + 1)) - (1 << from);
}

function shiftedUp(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { lowBits: 0, highBits: by < 2 * WORD ? (low << (by - WORD)) & ALL : 0 };
  return { lowBits: (low << by) & ALL, highBits: ((high << by) | (low >>> (WORD - by))) & ALL };
}

function shiftedDown(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { lowBits: by < 2 * WORD ? high >>> (by - WORD) : 0, highBits: 0 };
  return { lowBits: (low >>> by) | ((high << (WORD - by)) & ALL), highBits: high >>> by };
}

/** Furthest frame met so far, and the smallest excess over tolerance seen on the one after it. */
class Front {
  last = -1;
  excessEv = Number.POSITIVE_INFINITY;
  private readonly lattice: Lattice;
  // By stack and level: frames from…to known to be within tolerance, one after another. A cue at the next frame holds
  // most of the same ones.
  private readonly knownFrom: Int32Array;
  private readonly knownTo: Int32Array;
  private readonly lowest: number;
  private readonly levels: number;

  constructor(lattice: Lattice) {
    const { stops, kitLevels } = lattice;
    this.lattice = lattice;
    // Levels next to the kit's own tell how far off it is.
    this.lowest = kitLevels.low - NEAREST;
    this.levels = Math.max(0, kitLevels.high - kitLevels.low + 1 + 2 * NEAREST);
    this.knownFrom = new Int32Array(stops.length * this.levels);
    this.knownTo = new Int32Array(stops.length * this.levels).fill(-1);
  }

  /** Holds a level through frames from…to and answers whether all are within tolerance. */
  hold(stack: number, level: number, from: number, to: number): boolean {
    const { stops, stepsPerStop, target, toleranceEv } = this.lattice;
    const exposureEv = level / stepsPerStop + stops[stack];
    const at = this.knownAt(stack, level);
    const goesOn = at >= 0 && from >= this.knownFrom[at] && from <= this.knownTo[at] + 1;
    let frame = goesOn ? Math.max(from, this.knownTo[at] + 1) : from;
    while (frame <= to && Math.abs(exposureEv - target[frame]) <= toleranceEv + SLACK) frame++;
    if (at >= 0) {
      if (!goesOn) this.knownFrom[at] = from;
      this.knownTo[at] = frame - 1;
    }
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

  /** Where what is known of a stack and level stands; -1 for a level far from the kit. */
  private knownAt(stack: number, level: number): number {
    const n = level - this.lowest;
    return n >= 0 && n < this.levels ? stack * this.levels + n : -1;
  }
}
