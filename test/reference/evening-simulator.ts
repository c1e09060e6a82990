// Evenings that differ from their forecast as measured ones do, each from a seed. What a frame sees is the forecast
// plus the evening's offset, a slow drift and passing cloud.
//
// Offset: any weather against clear sky, drawn from the measured percentiles with the sun at 3 to 5 degrees.
// Drift: a straight error of slope and a bend over the evening; 0.3 and 0.15 stop, after the 0.3 stop within which
//   overcast dusks keep their loss. Not measured minute by minute.
// Cloud: an Ornstein-Uhlenbeck process whose vigour differs from evening to evening and comes and goes within one,
//   smoothed over some seconds. Its six numbers were fitted by random search to the 25 of dtu_cloud_jitter_stops.csv
//   for the sun at 2 to 10 degrees: spread and four percentiles of the change over 1, 2, 5, 10 and 30 minutes;
//   test/core/follow/simulator.test.ts holds them against that table. Below 2 degrees nothing was measured: the same
//   is carried on, although a scene without direct sun is likely to be calmer.

import { readTable } from './csv.js';
import { type Random, seeded } from './random.js';

/** The fit. Times in minutes. */
const CLOUD = {
  spreadEv: 0.61, // of an evening of middling vigour
  memoryMin: 27, // in which cloud forgets itself to 1/e
  eveningVigour: 0.34, // spread of its logarithm from evening to evening
  vigour: 0.75, // and within one
  vigourMemoryMin: 8.5,
  smoothMin: 0.29,
};

const SLOPE_EV = 0.3; // first frame to last
const BEND_EV = 0.15; // in the middle

/** One evening: by how much each frame's scene is brighter than forecast, in stops. */
export interface SimulatedEvening {
  readonly offsetEv: Float64Array;
  /** A meter's own error, one for each frame. */
  readonly meterEv: Float64Array;
}

/** A meter's readings under the same light differ by this much. Our choice: no measurement. */
export const READING_SPREAD_EV = 0.05;

export function simulateEvening(
  seed: number,
  frameCount: number,
  intervalS: number,
  clouds: boolean,
): SimulatedEvening {
  // Apart, so that an evening with and one without cloud are otherwise the same.
  const weather = seeded(seed * 4);
  const lasting = anyWeather(weather.unit());
  const slope = SLOPE_EV * normal(weather);
  const bend = BEND_EV * normal(weather);
  const cloud = clouds ? passingCloud(seeded(seed * 4 + 1), frameCount, intervalS / 60) : undefined;
  const meter = seeded(seed * 4 + 2);
  const offsetEv = new Float64Array(frameCount);
  for (let i = 0; i < frameCount; i++) {
    const t = frameCount === 1 ? 0.5 : i / (frameCount - 1);
    offsetEv[i] = lasting + slope * (t - 0.5) + bend * Math.sin(Math.PI * t) + (cloud?.[i] ?? 0);
  }
  return { offsetEv, meterEv: offsetEv.map(() => READING_SPREAD_EV * normal(meter)) };
}

/** Passing cloud alone, one value every `stepMin` minutes. */
export function passingCloud(random: Random, count: number, stepMin: number): Float64Array {
  const { spreadEv, memoryMin, eveningVigour, vigour, vigourMemoryMin, smoothMin } = CLOUD;
  const keep = Math.exp(-stepMin / memoryMin);
  const keepVigour = Math.exp(-stepMin / vigourMemoryMin);
  const keepSmooth = Math.exp(-stepMin / smoothMin);
  // exp(s n - s²) has the mean square 1, so that vigour leaves the spread as it is.
  const evening = Math.exp(eveningVigour * normal(random) - eveningVigour ** 2);
  let mood = normal(random);
  let cloud = spreadEv * evening * normal(random);
  let seen = cloud;
  return Float64Array.from({ length: count }, () => {
    const now = seen;
    mood = keepVigour * mood + Math.sqrt(1 - keepVigour ** 2) * normal(random);
    const kick = evening * Math.exp(vigour * mood - vigour ** 2);
    cloud = keep * cloud + spreadEv * kick * Math.sqrt(1 - keep ** 2) * normal(random);
    seen = keepSmooth * seen + (1 - keepSmooth) * cloud;
    return now;
  });
}

const PERCENTILES = [1, 2, 5, 10, 25, 50, 75, 90, 95, 98];
const ANY_WEATHER = readTable('light/dtu_allweather_stops_vs_clear.csv').find(
  (row) => row.sun_alt_from === '3',
)!;

/** Stops against clear sky at a share of evenings, linear between the measured percentiles, level beyond them. */
export function anyWeather(share: number): number {
  const stops = PERCENTILES.map((p) => Number(ANY_WEATHER[`p${String(p).padStart(2, '0')}`]));
  const above = PERCENTILES.findIndex((p) => p >= share * 100);
  if (above < 0) return stops[stops.length - 1]!;
  if (above === 0) return stops[0]!;
  const [from, to] = [PERCENTILES[above - 1]!, PERCENTILES[above]!];
  return stops[above - 1]! + ((stops[above]! - stops[above - 1]!) * (share * 100 - from)) / (to - from);
}

/** Box and Muller; the cosine alone, so that one value takes two draws and the order of draws is plain. */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.unit())) * Math.cos(2 * Math.PI * random.unit());
}
