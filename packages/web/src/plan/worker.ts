// Plans away from the page, so that typing never waits.

import { planWith } from '../field/readings.js';
import type { Ask } from './planner.js';

self.onmessage = ({ data: { id, shoot, readings } }: MessageEvent<Ask>) => {
  self.postMessage({ id, plan: planWith(shoot, readings) });
};
