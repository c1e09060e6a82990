// Card and battery: how many frames they hold, when they run out by the clock, and what would fit.
// Sources: docs/sources.md#storage, docs/sources.md#battery-cold.

import { finite, positive, whole, within } from '../check.js';

/** Whole frames that fit a card; megabytes and gigabytes are decimal, as cards are sold. 64 GB hold 2133 of 30 MB. */
export function framesOnCard(cardGB: number, frameMB: number): number {
  // A card that holds a whole number of frames must not lose one to rounding.
  return Math.floor((positive('cardGB', cardGB) * 1000) / positive('frameMB', frameMB) + 1e-9);
}

/** What a computer that counts in powers of two calls so many gigabytes: 64 GB are 59.6 GiB. */
export function gibibytes(gigabytes: number): number {
  return (finite('gigabytes', gigabytes) * 1e9) / 2 ** 30;
}

/** Megabytes a second that a card must take for as long as the shoot lasts. 45 MB every 2 s are 22.5. */
export function writeRateMBPerS(frameMB: number, intervalS: number): number {
  return positive('frameMB', frameMB) / positive('intervalS', intervalS);
}

/** Seconds that one frame takes to write at a card's sustained speed. */
export function writeTimeS(frameMB: number, cardMBPerS: number): number {
  return positive('frameMB', frameMB) / positive('cardMBPerS', cardMBPerS);
}

/** Warmest temperature of the published table, where a battery has all its charge. */
const WARM_C = 27;
/** Coldest, where it typically has half. */
const COLD_C = -18;

/**
 * Share of a battery's charge that is left to use in the cold: 1 from 27 °C up, a half at -18 °C, a straight line
 * between, and a half below, where nothing was measured. A guide only: chemistries, age and camera differ.
 */
export function coldFactorAt(temperatureC: number): number {
  const cold = (WARM_C - finite('temperatureC', temperatureC)) / (WARM_C - COLD_C);
  return 1 - 0.5 * Math.min(1, Math.max(0, cold));
}

/**
 * Whole frames one charge gives in the cold.
 *
 * @param coldFactor share of the charge that is left to use, 0 to 1; 1 in the warm
 */
export function framesOnCharge(batteryFrames: number, coldFactor = 1): number {
  return Math.floor(positive('batteryFrames', batteryFrames) * within('coldFactor', coldFactor, 0, 1) + 1e-9);
}

/** Hours a battery lasts at a steady draw. 14.4 Wh at 3.2 W are 4.5 h. */
export function batteryHours(capacityWh: number, drawW: number, coldFactor = 1): number {
  return (
    (positive('capacityWh', capacityWh) * within('coldFactor', coldFactor, 0, 1)) / positive('drawW', drawW)
  );
}

/** A shoot that uses something up frame by frame. */
export interface Use {
  /** First frame, UTC epoch milliseconds. */
  readonly startMs: number;
  /** Wanted. */
  readonly frameCount: number;
  readonly intervalS: number;
}

/** How far a supply of so many frames lasts. */
export interface Lasting {
  /** That the supply gives. */
  readonly frames: number;
  readonly lasts: boolean;
  /** Start of the first frame that is not to be had; absent where it lasts. */
  readonly outAtMs?: number;
  /** At which these frames last to the end, hundredths; absent for one frame or none. */
  readonly fitIntervalS?: number;
  /** Supplies of this size the shoot wants, rounded up; absent where this one gives nothing. */
  readonly needed?: number;
}

/**
 * Whether a supply of frames lasts, when it is out, and what would fit. 100 frames of 201, 10 s apart, are out at
 * 1000 s; 20.21 s apart, the 100 last the whole 2000 s.
 *
 * @param frames whole, 0 or more: from `framesOnCard` or `framesOnCharge`
 */
export function lastingOf(frames: number, { startMs, frameCount, intervalS }: Use): Lasting {
  within('frames', whole('frames', frames), 0, Number.MAX_SAFE_INTEGER);
  positive('intervalS', intervalS);
  const needed = frames === 0 ? {} : { needed: Math.ceil(frameCount / frames) };
  if (frameCount <= frames) return { frames, lasts: true, ...needed };
  const recordingS = (frameCount - 1) * intervalS;
  return {
    frames,
    lasts: false,
    outAtMs: startMs + frames * intervalS * 1000,
    // Rounded up, so that the number to set is enough.
    ...(frames < 2 ? {} : { fitIntervalS: Math.ceil((recordingS / (frames - 1)) * 100 - 1e-7) / 100 }),
    ...needed,
  };
}
