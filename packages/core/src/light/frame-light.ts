// The light of one frame, taken apart so that another weather can be put in its place. Light adds as luminance.

import type { Cloud } from './cloud.js';

/** Mean luminance of a frame, cd/m², by what it comes from. */
export interface FrameParts {
  /** From sun and moon by way of a clear sky, before cloud takes any. */
  readonly clearCdM2: number;
  /** The same light by way of an overcast sky, before cloud takes any. */
  readonly overcastCdM2: number;
  /** From the night sky and the glow of towns, clear. */
  readonly nightCdM2: number;
  /** By how much of itself a closed deck of cloud brightens that, -1 or more; 0 while the sun is above -8°. */
  readonly nightGain: number;
  /** From lamps in the frame, as far as they are lit. */
  readonly lampsCdM2: number;
  /** How far the clear light itself may be off here beside any weather, stops, >= 0. */
  readonly modelEv: number;
}

/** A cloud as it acts on the parts. */
export interface SkyState {
  /** Share of the light from sun and moon that is left. */
  readonly kept: number;
  /** Share of the sky it covers. */
  readonly cover: number;
}

export function skyState({ stops, cover }: Cloud): SkyState {
  return { kept: 2 ** stops, cover };
}

/** What sun and moon give, cd/m². */
export function skylightUnder({ clearCdM2, overcastCdM2 }: FrameParts, { kept, cover }: SkyState): number {
  return kept * ((1 - cover) * clearCdM2 + cover * overcastCdM2);
}

/** Mean luminance of the frame, cd/m². */
export function luminanceUnder(parts: FrameParts, sky: SkyState): number {
  const { nightCdM2, nightGain, lampsCdM2 } = parts;
  return skylightUnder(parts, sky) + nightCdM2 * (1 + sky.cover * nightGain) + lampsCdM2;
}
