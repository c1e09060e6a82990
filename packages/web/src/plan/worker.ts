// Plans away from the page, so that typing never waits.

import { plainPlan } from '#plain-plan';
import type { Ask } from './planner.js';

self.onmessage = ({ data: { id, shoot, choices } }: MessageEvent<Ask>) => {
  if (choices) {
    void import('./choices-here.js')
      .then(({ planChoices }) => self.postMessage({ id, choices: planChoices(shoot) }))
      .catch(() => self.postMessage({ id }));
    return;
  }
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
