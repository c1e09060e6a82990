// Plans away from the page, so that typing never waits.

import { planShoot } from '@evenfall/core';
import type { Ask } from './planner.js';

self.onmessage = ({ data: { id, shoot } }: MessageEvent<Ask>) => {
  self.postMessage({ id, plan: planShoot(shoot) });
};
