// How bright a frame came out: its mean in linear light, and how much of it is clipped.

import { finite, within } from '../check.js';

/** The brightness of a frame, as whatever reads it gives it. Alpha does not count. */
export type FrameLevel =
  | {
      /** Of all pixels, in linear light: black 0, white (full scale) 1. Noise about black may bring it below 0. */
      readonly mean: number;
      /** Share of the pixels that are clipped at white, 0 to 1; absent: not known. */
      readonly clippedShare?: number | undefined;
    }
  | {
      /**
       * Mean of the sRGB values, 0 to 255. Exact for an even frame only: the curve makes a contrasty one read too dark,
       * half black and half white by 1.2 stops. A histogram does not.
       */
      readonly srgbMean: number;
      /** Share of the pixels that are clipped at white, 0 to 1; absent: not known. */
      readonly clippedShare?: number | undefined;
    }
  | {
      /** Pixels, or their share, by value: the first entry for black, the last for white, evenly apart. Two or more. */
      readonly histogram: ArrayLike<number>;
      /** What the values are: in proportion to light, or sRGB. */
      readonly curve: 'linear' | 'srgb';
    }
  | {
      /** sRGB values, 0 to 255, pixel by pixel: as a canvas or a decoded JPEG gives them. */
      readonly srgbPixels: ArrayLike<number>;
      /** Values a pixel: grey, red-green-blue, or with alpha. */
      readonly channels: 1 | 3 | 4;
    };

/** Our choice: the values 254 and 255 of a JPEG. */
const WHITE = 0.99;
// Luminance from linear red, green and blue. Source: docs/sources.md#srgb.
const LUMA = [0.2126, 0.7152, 0.0722] as const;

/** Linear mean, and the share at white; undefined where nothing tells. */
export function measured(level: FrameLevel): { mean: number; clippedShare: number | undefined } {
  if ('mean' in level) return { mean: finite('mean', level.mean), clippedShare: shareOf(level) };
  if ('srgbMean' in level) {
    const mean = linearOfSrgb(within('srgbMean', level.srgbMean, 0, 255) / 255);
    return { mean, clippedShare: shareOf(level) };
  }
  return 'histogram' in level ? ofHistogram(level) : ofPixels(level);
}

function shareOf({ clippedShare }: { readonly clippedShare?: number | undefined }): number | undefined {
  return clippedShare === undefined ? undefined : within('clippedShare', clippedShare, 0, 1);
}

function ofHistogram({ histogram, curve }: Extract<FrameLevel, { histogram: unknown }>) {
  const last = histogram.length - 1;
  if (last < 1) throw new RangeError(`histogram must have two entries or more, got ${histogram.length}`);
  let pixels = 0;
  let sum = 0;
  let clipped = 0;
  for (let i = 0; i <= last; i++) {
    const count = within(`histogram[${i}]`, histogram[i]!, 0, Number.MAX_VALUE);
    const light = curve === 'srgb' ? linearOfSrgb(i / last) : i / last;
    pixels += count;
    sum += count * light;
    if (light >= WHITE) clipped += count;
  }
  if (!(pixels > 0 && Number.isFinite(pixels))) {
    throw new RangeError(`histogram must count one pixel or more, got ${pixels}`);
  }
  return { mean: sum / pixels, clippedShare: clipped / pixels };
}

function ofPixels({ srgbPixels, channels }: Extract<FrameLevel, { srgbPixels: unknown }>) {
  const { length } = srgbPixels;
  if (length === 0 || length % channels !== 0) {
    throw new RangeError(`srgbPixels must hold ${channels} values a pixel, one pixel or more, got ${length}`);
  }
  const light = Float64Array.from({ length: 256 }, (_, i) => linearOfSrgb(i / 255));
  const at = (i: number) => light[within(`srgbPixels[${i}]`, Math.round(srgbPixels[i]!), 0, 255)]!;
  let sum = 0;
  let clipped = 0;
  for (let i = 0; i < length; i += channels) {
    if (channels === 1) {
      const grey = at(i);
      sum += grey;
      if (grey >= WHITE) clipped++;
      continue;
    }
    const [red, green, blue] = [at(i), at(i + 1), at(i + 2)];
    sum += LUMA[0] * red + LUMA[1] * green + LUMA[2] * blue;
    // One channel at its end hides how bright the pixel is.
    if (Math.max(red, green, blue) >= WHITE) clipped++;
  }
  const pixels = length / channels;
  return { mean: sum / pixels, clippedShare: clipped / pixels };
}

/** Source: IEC 61966-2-1, sRGB. */
function linearOfSrgb(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}
