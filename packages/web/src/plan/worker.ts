// Plans away from the page, so that typing never waits.

import { type Plan, planExposures, type Shoot } from '@evenfall/core';
import type { Ask } from './planner.js';

/** Once it is here it is asked at once: what fails the smaller one would be planned twice at every touch. */
let planWhole: ((shoot: Shoot) => Plan) | undefined;

self.onmessage = ({ data: { id, shoot, choices, fromDate } }: MessageEvent<Ask>) => {
  if (choices) {
    void import('./choices-here.js')
      .then(({ planChoices }) => self.postMessage({ id, choices: planChoices(shoot) }))
      .catch(() => self.postMessage({ id }));
    return;
  }
  if (fromDate) {
    void import('./evenings-here.js')
      .then(({ planEvenings }) =>
        self.postMessage({ id, evening: planEvenings(shoot, { fromDate, days: 1 }).evenings[0] }),
      )
      .catch(() => self.postMessage({ id }));
    return;
  }
  const plan = planWhole?.(shoot) ?? planExposures(shoot);
  if (plan !== undefined) {
    self.postMessage({ id, plan });
    return;
  }
  // Why there is none, what would cure it, moves: loaded when it is first needed.
  void import('./plan-whole.js').then(({ planShoot }) => {
    planWhole = planShoot;
    self.postMessage({ id, plan: planShoot(shoot) });
  });
};
