// Weather in kinds, each evening from a seed: what is told of dusks rather than fitted to them, and nothing of the filter
// that follows them. Banks of one to three stops for one to twenty minutes, a drift, lamps that are switched on, and a meter
// of any spread. What evening-simulator.ts draws is measured; this is the harder weather that a photographer fears.

import { anyWeather, normal } from './evening-simulator.js';
import { type Random, seeded } from './random.js';

export const KINDS = ['calm', 'drift', 'one bank', 'three banks', 'lamps'] as const;
export type Kind = (typeof KINDS)[number];

/** What the light of one evening is against its forecast. */
export interface Weather {
  /** Stops brighter than forecast, one a frame. */
  readonly offsetEv: Float64Array;
  /** Errors of one meter, of spread 1, one a frame. */
  readonly meter: Float64Array;
}

// Brighter than the clear sky that was forecast no weather is by more (98 % of measured minutes: 0.9).
const BRIGHTEST_EV = 1;
const DRIFT_EV = 1.5; // up to so much either way from the first frame to the last
const BANK_EV = [1, 3] as const;
const BANK_MIN = [1, 20] as const;
const EDGE_S = [10, 90] as const; // in which a bank comes, and goes

/**
 * @param sceneEv100 the forecast, one a frame; lamps are added to its light
 */
export function weatherOf(
  kind: Kind,
  seed: number,
  sceneEv100: readonly number[],
  intervalS: number,
): Weather {
  const random = seeded(seed * 7919 + KINDS.indexOf(kind));
  const count = sceneEv100.length;
  const lasting = anyWeather(random.unit());
  const slope = kind === 'drift' ? random.between(-DRIFT_EV, DRIFT_EV) : 0.1 * normal(random);
  const banks = { calm: 0, drift: 0, 'one bank': 1, 'three banks': 3, lamps: 0 }[kind];
  const shade = new Float64Array(count);
  for (let k = 0; k < banks; k++) addBank(shade, random, intervalS);
  const lampEv100 = kind === 'lamps' ? random.between(1, 5) : undefined;
  const lampsFrom = random.between(0.35, 0.65) * count;
  const offsetEv = Float64Array.from(sceneEv100, (ev, i) => {
    const sky = ev + Math.min(BRIGHTEST_EV, lasting + slope * (i / count - 0.5)) - shade[i]!;
    if (lampEv100 === undefined) return sky - ev;
    const share = Math.min(1, Math.max(0, ((i - lampsFrom) * intervalS) / 120));
    return Math.log2(2 ** sky + share * 2 ** lampEv100) - ev;
  });
  return { offsetEv, meter: Float64Array.from({ length: count }, () => normal(random)) };
}

/** Banks that overlap add up, as cloud above cloud does. */
function addBank(shade: Float64Array, random: Random, intervalS: number): void {
  const depthEv = random.between(...BANK_EV);
  const lastS = 60 * BANK_MIN[0] * (BANK_MIN[1] / BANK_MIN[0]) ** random.unit();
  const edgeS = Math.min(lastS / 2, random.between(...EDGE_S));
  const fromS = random.between(0.05, 0.9) * shade.length * intervalS;
  for (let i = 0; i < shade.length; i++) {
    const inS = i * intervalS - fromS;
    const share = Math.min(1, Math.max(0, Math.min(inS, lastS - inS) / edgeS));
    shade[i] = shade[i]! + depthEv * share;
  }
}
