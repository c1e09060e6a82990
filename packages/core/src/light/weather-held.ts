// How far the weather may go before some frame of an evening is beyond what it has in reserve.

import { besideWeatherEv, type Known } from './band.js';
import { type FrameParts, luminanceUnder, type SkyState, skyState } from './frame-light.js';
import { skyOfLoss, weatherRange } from './weather.js';

/** A frame, and by how many stops it may turn out darker or brighter than forecast. */
export interface HeldFrame {
  readonly parts: FrameParts;
  readonly darkEv: number; // >= 0
  readonly brightEv: number; // >= 0
}

const STEP = 0.25;
const FARTHEST = 12; // stops; no weather takes more

interface Step {
  readonly state: SkyState;
  readonly far: number; // of the way to the end of the range of nine minutes in ten
}

/**
 * Stops of level ground, below and above the forecast's, that every frame holds; infinite where no weather takes a frame
 * beyond its reserve. The tightest frame sets each, as if it lasted the whole evening.
 */
export function weatherHeld(frames: Iterable<HeldFrame>, known: Known): { darkEv: number; brightEv: number } {
  const { lowStops, stops, highStops } = weatherRange(known.cloud, known.base);
  const base = skyState(known.base);
  const walk = (way: -1 | 1, rangeEv: number) =>
    Array.from({ length: FARTHEST / STEP }, (_, k): Step => {
      const ev = STEP * (k + 1);
      return { state: skyState(skyOfLoss(stops + way * ev, known.base)), far: ev / rangeEv };
    });
  const darker = walk(-1, stops - lowStops);
  const brighter = walk(1, Math.max(STEP, highStops - stops));
  let darkEv = Number.POSITIVE_INFINITY;
  let brightEv = Number.POSITIVE_INFINITY;
  for (const { parts, ...held } of frames) {
    const forecast = luminanceUnder(parts, base);
    const besideEv = besideWeatherEv(parts, base);
    const ev = ({ state }: Step) => Math.log2(luminanceUnder(parts, state) / forecast);
    // What the ground does not tell goes with the weather: as far off as it, as often.
    const off = (stops: number, { far }: Step) => Math.hypot(Math.max(0, stops), besideEv * far);
    darkEv = Math.min(
      reach(darker, darkEv, held.darkEv, (step) => off(-ev(step), step)),
      reach(darker, darkEv, held.brightEv, ev),
    );
    brightEv = Math.min(
      reach(brighter, brightEv, held.brightEv, (step) => off(ev(step), step)),
      reach(brighter, brightEv, held.darkEv, (step) => -ev(step)),
    );
  }
  return { darkEv, brightEv };
}

/** How far along the steps a frame stays within its reserve; `most` where it does so that far. */
function reach(
  steps: readonly Step[],
  most: number,
  reserveEv: number,
  offEv: (step: Step) => number,
): number {
  let left = reserveEv;
  for (let k = 0; k < steps.length && k * STEP < most; k++) {
    const next = reserveEv - offEv(steps[k]!);
    if (next < 0) return Math.min(most, STEP * (k + left / (left - next)));
    left = next;
  }
  return most;
}
