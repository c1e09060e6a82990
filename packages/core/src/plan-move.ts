// The moves of a plan: where the camera stands at each frame, and what a person should know of it.

import { exactFps } from './footage.js';
import { type MovePlan, movePlan } from './move.js';
import type { PlanFrame, PlanMove } from './plan-format.js';
import { opticsOf } from './room.js';
import type { Shoot } from './shoot.js';

/** The moves over frames that are exposed; undefined where the shoot has none. */
export function planMoves(shoot: Shoot, frames: readonly PlanFrame[]): MovePlan | undefined {
  const { moves, intervalS, clipFps, camera } = shoot;
  if (moves.length === 0) return undefined;
  const optics = opticsOf(camera);
  return movePlan({
    moves,
    frames,
    intervalS,
    clipFps: exactFps(clipFps),
    writeS: camera.gapS,
    darkFrame: camera.darkFrame,
    ...(optics === undefined ? {} : { optics }),
  });
}

/** Frames with what the moves do in each, and the moves as the plan file holds them. */
export function withMoves(
  frames: readonly PlanFrame[],
  { frames: moved, travels, gap, tightest, fastest, findings, lines }: MovePlan,
): { readonly frames: readonly PlanFrame[]; readonly move: PlanMove } {
  return {
    frames: frames.map((frame, i) => ({ ...frame, ...moved[i] })),
    move: { travels, gap, tightest, ...(fastest === undefined ? {} : { fastest }), findings, lines },
  };
}
