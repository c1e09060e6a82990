// How far legal settings of a freely timed shutter reach: forward, with the fewest filter changes by which each can be
// stood at.

import { bulbDialMoves, bulbFilterMoves } from '../moves.js';
import { type BulbModel, choiceAt, isTooFar, standing } from './model.js';

/**
 * The first frame that no legal start of a ramp can meet, on a grid of every frame, and how far outside tolerance the
 * setting nearest to the target is there; see exact/reach.ts.
 */
export function firstUnmetByBulb(model: BulbModel, limit: number): { frame: number; excessEv: number } {
  const { kit, grid, choices } = model;
  const width = choices.length;
  const frameCount = grid.at.length - 1;
  const used = new Float64Array((frameCount + 1) * width).fill(Number.POSITIVE_INFINITY);
  const dials = choices.map((state) => [...bulbDialMoves(kit, state)]);
  const filters = choices.map((state) => [...bulbFilterMoves(kit, state)]);
  let reached = 0; // frames met
  const stand = (choice: number, from: number, free: number, changes: number) => {
    let frame = from;
    while (frame < free && standing(model, choice, frame, frame + 1) < Number.POSITIVE_INFINITY) frame++;
    if (frame > from) reached = Math.max(reached, frame);
    if (frame === free) used[free * width + choice] = Math.min(used[free * width + choice], changes);
  };
  choices.forEach(({ stack }, choice) => {
    if (kit.startStack === undefined || stack === kit.startStack) stand(choice, 0, 1, 0);
  });
  for (let frame = 1; frame < frameCount; frame++) {
    for (let choice = 0; choice < width; choice++) {
      const changes = used[frame * width + choice];
      if (changes === Number.POSITIVE_INFINITY) continue;
      stand(choice, frame, frame + 1, changes);
      for (const { to } of dials[choice]) stand(choiceAt(kit, to), frame, grid.freeAfterCue[frame], changes);
      if (changes + 1 > limit || grid.freeAfterFilter[frame] === 0) continue;
      for (const { to } of filters[choice]) {
        const other = choiceAt(kit, to);
        if (isTooFar(model, frame, choice, other)) continue;
        stand(other, frame + kit.affectedFrames, grid.freeAfterFilter[frame], changes + 1);
      }
    }
  }
  return { frame: reached, excessEv: reached < frameCount ? nearestMiss(model, reached) : 0 };
}

/** How far outside tolerance the choice nearest to the target is on a frame; 0 where one is within it. */
function nearestMiss({ kit, choices, first, target }: BulbModel, frame: number): number {
  const misses = choices.map((_, choice) => Math.abs(first[frame * choices.length + choice] - target[frame]));
  return Math.max(0, Math.min(...misses) - kit.toleranceEv);
}
