// Plans to follow in tests, and an evening's readings.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';

const { title: _, ...SHOOT } = EVENING_SHOOT;

/** 900 frames, 8 s apart, for hands; a filter of 6 stops. */
export const HAND: PlanMade = planOf(SHOOT);

/** The same evening for a rig that sets every frame, without filters. */
export const RIG: PlanMade = planOf({ ...SHOOT, crew: 'rig', filters: [], limits: {} });

/** A rig that times the shutter freely, two filters. */
export const BULB: PlanMade = planOf({
  ...SHOOT,
  crew: 'rig',
  limits: {},
  filters: [
    { name: 'ND 0.9', density: 0.9 },
    { name: 'ND 1.8', density: 1.8 },
  ],
  camera: { ...SHOOT.camera, bulb: true },
});

/** A morning, with a filter to be put on at most once. */
export const DAWN: PlanMade = planOf({
  ...SHOOT,
  direction: 'dawn',
  span: { startAt: '2026-09-22T05:50:00+02:00', endAt: '2026-09-22T07:49:52+02:00' },
  limits: { toleranceEv: 0.5, maxFilterChanges: 1 },
});

export function frameOf(plan: PlanMade, frame: number): PlanFrame {
  return plan.frames[frame]!;
}

export function startMsOf(plan: PlanMade, frame: number): number {
  return Date.parse(frameOf(plan, frame).at);
}

/** What a meter says at a frame's start when the scene is so many stops brighter than forecast. */
export function readingOf(plan: PlanMade, frame: number, offsetEv: number) {
  return { atMs: startMsOf(plan, frame), ev100: frameOf(plan, frame).sceneEv100 + offsetEv };
}
