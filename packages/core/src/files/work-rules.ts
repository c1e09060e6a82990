// A shoot must be small enough to plan in a moment: the same limit for a person at the page and a service.

import { frameCountOf } from '../footage/frames.js';
import type { Shoot } from '../shoot/shoot.js';
import { spanOf } from '../shoot/span.js';
import { extentOf, MOST_WORK, planWork } from '../shoot/work.js';
import type { Fault } from './file-error.js';

const DAY_S = 86_400;

/** More work than a plan may be; of a shoot that is right in all else. */
export function workFaults(shoot: Shoot): Fault[] {
  const { intervalS } = shoot;
  // Where even a day of frames would do, nobody need ask the sun.
  const most = 'startAt' in shoot.span ? undefined : frameCountOf(DAY_S, intervalS);
  if (most !== undefined && planWork(shoot, most) <= MOST_WORK) return [];
  const span = spanOf(shoot);
  if (span.kind === 'no-span') return [];
  const frames = span.times.length;
  const work = planWork(shoot, frames);
  if (work <= MOST_WORK) return [];
  const least = Math.ceil((intervalS * work) / MOST_WORK);
  const limit = shoot.limits.maxFilterChanges;
  const { stacks, apertures, isos } = extentOf(shoot);
  return [
    {
      path: ['intervalS'],
      kind: 'too-much-work',
      intervalS,
      frameCount: frames,
      stacks,
      apertures,
      isos,
      ...(least < frames * intervalS ? { leastS: least } : {}),
      byChanges: limit !== undefined && limit >= 2,
    },
  ];
}
