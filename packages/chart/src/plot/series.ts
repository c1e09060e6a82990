// The curves of a plan, thinned to what a picture can show.

import type { PlanFrame } from '@evenfall/core';
import { instantMs } from '../text/local-time.js';
import type { BandPoint, EvPoint } from './ev-spec.js';

const MOST_POINTS = 300;

/** Every k-th entry and the last, at most about 300. */
export function thinned<T>(entries: readonly T[]): T[] {
  const every = Math.max(1, Math.ceil(entries.length / MOST_POINTS));
  return entries.filter((_, i) => i % every === 0 || i === entries.length - 1);
}

export function scenePoints(frames: readonly PlanFrame[]): EvPoint[] {
  return thinned(frames).map((f) => ({ ms: instantMs(f.at), ev: f.sceneEv100 }));
}

export function targetPoints(frames: readonly PlanFrame[]): EvPoint[] {
  return thinned(frames).map((f) => ({ ms: instantMs(f.at), ev: f.targetEv100 }));
}

/** Where the settings' EV changes, and the last frame. */
export function settingPoints(frames: readonly PlanFrame[]): EvPoint[] {
  return frames
    .filter((f, i) => i === frames.length - 1 || f.settingEv100 !== frames[i - 1]?.settingEv100)
    .map((f) => ({ ms: instantMs(f.at), ev: f.settingEv100 }));
}

/** The likely range of the scene. */
export function bandOf(frames: readonly PlanFrame[]): BandPoint[] {
  return thinned(frames).map(({ at, lowEv100, highEv100 }) => ({ ms: instantMs(at), lowEv100, highEv100 }));
}
