// How often an evening's light lies within so many stops of its forecast.
// Source: docs/sources.md#weather-spread.

import type { EvBand } from './band.js';

/** Share of evenings that lie below each offset from the forecast, rising in both. */
type Quantiles = readonly { readonly share: number; readonly ev: number }[];

// Measured minutes of any weather against clear sky, sun from 1° to 3°: test/data/light/dtu_allweather_stops_vs_clear.csv.
const ANY_WEATHER: Quantiles = [
  { share: 0.01, ev: -3.63 },
  { share: 0.02, ev: -3.39 },
  { share: 0.05, ev: -2.96 },
  { share: 0.1, ev: -2.49 },
  { share: 0.25, ev: -1.63 },
  { share: 0.5, ev: -0.78 },
  { share: 0.75, ev: -0.1 },
  { share: 0.9, ev: 0.3 },
  { share: 0.95, ev: 0.51 },
  { share: 0.98, ev: 0.75 },
];

// The normal distribution at the same shares, in units of its 95 % point.
const BELL: Quantiles = [
  { share: 0.01, ev: -1.4143 },
  { share: 0.02, ev: -1.2486 },
  { share: 0.05, ev: -1 },
  { share: 0.1, ev: -0.7791 },
  { share: 0.25, ev: -0.4101 },
  { share: 0.5, ev: 0 },
  { share: 0.75, ev: 0.4101 },
  { share: 0.9, ev: 0.7791 },
  { share: 0.95, ev: 1 },
  { share: 0.98, ev: 1.2486 },
  { share: 0.99, ev: 1.4143 },
];

/**
 * Share of evenings on which the light lies from `darkEv` below to `brightEv` above its forecast the whole
 * evening long. Between the measured shares it goes straight, and on at the same slope beyond them. Source:
 * docs/sources.md#weather-spread.
 *
 * @param reserve `darkEv` and `brightEv`, stops, both >= 0
 * @param band the 5 and 95 % points; the distribution is stretched on each side of 0 to meet them
 * @param spread `any-weather`: as measured, lopsided, since cloud mostly takes light: the band of an unknown
 *   sky; `bell`: as a normal distribution, for a sky that was stated or metered
 * @returns 0 to 1
 */
export function shareOfEvenings(
  { darkEv, brightEv }: { readonly darkEv: number; readonly brightEv: number },
  band: EvBand,
  spread: 'any-weather' | 'bell',
): number {
  const quantiles = spread === 'any-weather' ? ANY_WEATHER : BELL;
  const evAt = (share: number) => quantiles.find((q) => q.share === share)!.ev;
  const inShape = (ev: number) =>
    ev < 0 ? (ev / -band.lowEv) * -evAt(0.05) : (ev / band.highEv) * evAt(0.95);
  return shareBelow(inShape(brightEv), quantiles) - shareBelow(inShape(-darkEv), quantiles);
}

function shareBelow(ev: number, quantiles: Quantiles): number {
  const above = quantiles.findIndex((q) => q.ev >= ev);
  const upper = above < 0 ? quantiles.length - 1 : Math.max(1, above);
  const [a, b] = [quantiles[upper - 1]!, quantiles[upper]!];
  const share = a.share + ((ev - a.ev) / (b.ev - a.ev)) * (b.share - a.share);
  return Math.min(1, Math.max(0, share));
}
