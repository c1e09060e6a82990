// How far legal settings reach: forward through the frames, which settings can be stood at. No costs, so the ISOs
// of a level are one set of bits, and a whole row moves at once.

import { type Lattice, netWindow, SLACK, shutterAt } from './lattice.js';

/** ISO indices as bits, thirty to a word: no ISO dial has more than sixty steps. */
interface IsoSet {
  readonly low: number;
  readonly high: number;
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
 * spoilt by a filter change that lands within tolerance: a frame the kit cannot render may be crossed, and the
 * answer is the first one where that is no help.
 *
 * @param limit filter changes allowed in all
 */
export function firstUnmet(lattice: Lattice, limit: number): Reached {
  const { frameCount, stops, apertureCount, band, spacing, lost, largestStep } = lattice;
  // One layer for each number of filter changes made, where that is limited.
  const layers = Number.isFinite(limit) ? limit + 1 : 1;
  const base = new Float64Array(frameCount * stops.length);
  let rows = 0;
  for (let at = 0; at < base.length; at++) {
    base[at] = rows;
    rows += band.count[at] * apertureCount * layers;
  }
  // By frame, stack, layer, aperture and level: the ISOs that can be stood at, free to change on the next frame.
  const low = new Int32Array(rows);
  const high = new Int32Array(rows);
  const front = new Front(lattice);

  const rowAt = (frame: number, stack: number, layer: number, aperture: number, level: number) => {
    const at = frame * stops.length + stack;
    return base[at] + (layer * apertureCount + aperture) * band.count[at] + level - band.low[at];
  };

  /** Stands at a level from frame `judged` on, set by a cue at frame j, as long as the rules hold it there. */
  const arrive = (
    j: number,
    judged: number,
    stack: number,
    layer: number,
    aperture: number,
    level: number,
    isosLow: number,
    isosHigh: number,
  ) => {
    const dial = isosOnDial(lattice, aperture, level);
    const setLow = isosLow & dial.low;
    const setHigh = isosHigh & dial.high;
    const free = Math.min(Math.max(j + spacing - 1, judged), frameCount - 1);
    if ((setLow | setHigh) === 0 || !front.hold(stack, level, judged, free)) return;
    const row = rowAt(free, stack, layer, aperture, level);
    low[row] |= setLow;
    high[row] |= setHigh;
  };

  for (let stack = 0; stack < stops.length; stack++) {
    if (lattice.startStack !== undefined && stack !== lattice.startStack) continue;
    // Only levels next to the target matter, but the nearest outside tolerance tells how far off the kit is.
    const nearest = Math.round((lattice.target[0] - stops[stack]) * lattice.stepsPerStop);
    const from = Math.min(nearest - 1, band.low[stack]);
    const to = Math.max(nearest + 1, band.low[stack] + band.count[stack] - 1);
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let level = from; level <= to; level++) {
        const dial = isosOnDial(lattice, aperture, level);
        if ((dial.low | dial.high) === 0 || !front.hold(stack, level, 0, 0)) continue;
        const row = rowAt(0, stack, 0, aperture, level);
        low[row] = dial.low;
        high[row] = dial.high;
      }
    }
  }

  for (let frame = 0; frame < frameCount - 1; frame++) {
    const j = frame + 1;
    for (let stack = 0; stack < stops.length; stack++) {
      const lowest = band.low[frame * stops.length + stack];
      const highest = lowest + band.count[frame * stops.length + stack] - 1;
      for (let layer = 0; layer < layers; layer++) {
        for (let aperture = 0; aperture < apertureCount; aperture++) {
          for (let level = lowest; level <= highest; level++) {
            const row = rowAt(frame, stack, layer, aperture, level);
            if ((low[row] | high[row]) !== 0) goOn(j, stack, layer, aperture, level, low[row], high[row]);
          }
        }
      }
    }
  }
  return { frame: front.last + 1, excessEv: front.excessEv };

  /** Every legal way on from the ISOs of one level: stay, one dial, or another stack. */
  function goOn(
    j: number,
    stack: number,
    layer: number,
    aperture: number,
    level: number,
    isosLow: number,
    isosHigh: number,
  ): void {
    if (front.hold(stack, level, j, j)) {
      const on = rowAt(j, stack, layer, aperture, level);
      low[on] |= isosLow;
      high[on] |= isosHigh;
    }
    for (let step = 1; step <= largestStep; step++) {
      // A level up by the shutter, or by ISO going down; a level down by the shutter, or by ISO going up.
      const less = shiftedDown(isosLow, isosHigh, step);
      const more = shiftedUp(isosLow, isosHigh, step);
      arrive(j, j, stack, layer, aperture, level + step, isosLow | less.low, isosHigh | less.high);
      arrive(j, j, stack, layer, aperture, level - step, isosLow | more.low, isosHigh | more.high);
      if (aperture + step < apertureCount) {
        arrive(j, j, stack, layer, aperture + step, level + step, isosLow, isosHigh);
      }
      if (aperture >= step) arrive(j, j, stack, layer, aperture - step, level - step, isosLow, isosHigh);
    }
    const after = layers === 1 && !Number.isFinite(limit) ? layer : layer + 1;
    if (after >= layers || j + lost >= frameCount) return;
    for (let other = 0; other < stops.length; other++) {
      if (other === stack) continue;
      const window = netWindow(lattice, stack, other, level);
      for (let x = window.low; x <= window.high; x++)
        arrive(j, j + lost, other, after, aperture, x, ALL, ALL);
    }
  }
}

/** The ISOs whose shutter, at an aperture and level, is on the dial. */
function isosOnDial(lattice: Lattice, aperture: number, level: number): IsoSet {
  const atIsoMin = shutterAt(lattice, aperture, level);
  const from = Math.max(0, lattice.shutterMin - atIsoMin);
  const to = Math.min(lattice.isoCount - 1, lattice.shutterMax - atIsoMin);
  return { low: bits(from, Math.min(to, WORD - 1)), high: bits(Math.max(0, from - WORD), to - WORD) };
}

/** Bits from…to of a word; none where from > to. */
function bits(from: number, to: number): number {
  return from > to ? 0 : 2 ** (to + 1) - 2 ** from;
}

function shiftedUp(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { low: 0, high: by < 2 * WORD ? (low << (by - WORD)) & ALL : 0 };
  return { low: (low << by) & ALL, high: ((high << by) | (low >>> (WORD - by))) & ALL };
}

function shiftedDown(low: number, high: number, by: number): IsoSet {
  if (by >= WORD) return { low: by < 2 * WORD ? high >>> (by - WORD) : 0, high: 0 };
  return { low: (low >>> by) | ((high << (WORD - by)) & ALL), high: high >>> by };
}

/** Furthest frame met so far, and the smallest excess over tolerance seen on the one after it. */
class Front {
  last = -1;
  excessEv = Number.POSITIVE_INFINITY;
  private readonly lattice: Lattice;

  constructor(lattice: Lattice) {
    this.lattice = lattice;
  }

  /** Holds a level through frames from…to and answers whether all are within tolerance. */
  hold(stack: number, level: number, from: number, to: number): boolean {
    const { stops, stepsPerStop, target, toleranceEv } = this.lattice;
    const exposureEv = level / stepsPerStop + stops[stack];
    let frame = from;
    while (frame <= to && Math.abs(exposureEv - target[frame]) <= toleranceEv + SLACK) frame++;
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
