import type { PlanFrame } from '@evenfall/core';

/** Where the light changes fastest. */
export interface Steepest {
  readonly at: string; // start of the minute
  readonly evPerMin: number; // negative where it falls
}

/** The steepest minute of a plan's scene; undefined for a single frame. A shorter plan counts whole. */
export function steepestMinute(frames: readonly PlanFrame[], intervalS: number): Steepest | undefined {
  const ahead = Math.min(frames.length - 1, Math.max(1, Math.round(60 / intervalS)));
  let steepest: Steepest | undefined;
  for (let i = 0; ahead > 0 && i + ahead < frames.length; i++) {
    const fall = frames[i + ahead]!.sceneEv100 - frames[i]!.sceneEv100;
    const evPerMin = (fall * 60) / (ahead * intervalS);
    if (steepest === undefined || Math.abs(evPerMin) > Math.abs(steepest.evPerMin)) {
      steepest = { at: frames[i]!.at, evPerMin };
    }
  }
  return steepest;
}
