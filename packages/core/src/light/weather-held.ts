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
  // The tightest first: what they leave bounds the walk of all others.
  const inOrder = [...frames].sort((a, b) => Math.min(a.darkEv, a.brightEv) - Math.min(b.darkEv, b.brightEv));
  for (const frame of inOrder) {
    const about = {
      frame,
      forecast: luminanceUnder(frame.parts, base),
      besideEv: besideWeatherEv(frame.parts, base),
    };
    darkEv = reach(darker, -1, darkEv, about);
    brightEv = reach(brighter, 1, brightEv, about);
  }
  return { darkEv, brightEv };
}

/** A frame with its forecast, cd/m², and how far it may lie off beside the weather, stops. */
interface About {
  readonly frame: HeldFrame;
  readonly forecast: number;
  readonly besideEv: number;
}

/**
 * How far along the steps of one way a frame stays within both its reserves; `most` where it does so that far. A walk is
 * most of what a plan's reserve costs: it works each sky out once, and without `Math.hypot`, which is slow.
 */
function reach(
  steps: readonly Step[],
  way: -1 | 1,
  most: number,
  { frame, forecast, besideEv }: About,
): number {
  const withEv = way < 0 ? frame.darkEv : frame.brightEv;
  const againstEv = way < 0 ? frame.brightEv : frame.darkEv;
  let left = withEv;
  let leftAgainst = againstEv;
  for (let k = 0; k < steps.length && k * STEP < most; k++) {
    const { state, far } = steps[k]!;
    const ev = way * Math.log2(luminanceUnder(frame.parts, state) / forecast);
    // What the ground does not tell goes with the weather: as far off as it, as often.
    const beside = besideEv * far;
    const next = withEv - (ev > 0 ? Math.sqrt(ev * ev + beside * beside) : beside);
    const nextAgainst = againstEv + ev;
    if (next < 0 || nextAgainst < 0) {
      return Math.min(most, STEP * (k + Math.min(crossing(left, next), crossing(leftAgainst, nextAgainst))));
    }
    left = next;
    leftAgainst = nextAgainst;
  }
  return most;
}

/** Where between two steps nothing is left of a reserve, 0 to 1; infinite where something still is. */
const crossing = (left: number, next: number) => (next < 0 ? left / (left - next) : Number.POSITIVE_INFINITY);
