// The plan's light at any time: linear between its frames, level beyond them.

import type { EvBand } from '../light/band.js';
import type { PlanMade } from '../plan/types.js';

/** What the plan says of one time. */
export interface PlanLight extends EvBand {
  readonly sceneEv100: number;
  readonly targetEv100: number;
  readonly sunAltitudeDeg: number;
}

const KEYS = ['sceneEv100', 'targetEv100', 'lowEv100', 'highEv100', 'sunAltitudeDeg'] as const;

export function planLight({ frames, shoot }: PlanMade, startMs: number): (ms: number) => PlanLight {
  return (ms) => {
    const place = Math.min(frames.length - 1, Math.max(0, (ms - startMs) / (1000 * shoot.intervalS)));
    const index = Math.floor(place);
    const [here, next] = [frames[index]!, frames[Math.min(frames.length - 1, index + 1)]!];
    const share = place - index;
    const at = (key: (typeof KEYS)[number]) =>
      share === 0 ? here[key] : here[key] + share * (next[key] - here[key]);
    return Object.fromEntries(KEYS.map((key) => [key, at(key)])) as unknown as PlanLight;
  };
}
