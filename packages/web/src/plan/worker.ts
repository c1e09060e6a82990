// Plans away from the page, so that typing never waits.

import { plainPlan } from '#plain-plan';
import type { Ask } from './planner.js';

self.onmessage = ({ data: { id, shoot } }: MessageEvent<Ask>) => {
  const plain = plainPlan(shoot);
  if (plain !== undefined) {
    self.postMessage({ id, plan: plain });
    return;
  }
  // Why there is none, what would cure it, moves: loaded when it is first needed.
  void import('./here.js').then(({ planShoot }) => {
    self.postMessage({ id, plan: planShoot(shoot) });
  });
};
