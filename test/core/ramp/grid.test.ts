// Where cues may come and how long each is held, counted by hand from rules 4 and 5 of docs/ramp.md.

import { expect, test } from 'vitest';
import { everyFrame, gridAt } from '../../../packages/core/src/ramp/grid.js';

test('at every frame: a cue holds through the spacing, a filter change at least one frame past the affected ones', () => {
  const { at, freeAfterCue, freeAfterFilter, judgedAfterFilter } = everyFrame(6, {
    spacing: 2,
    affectedFrames: 2,
  });
  expect([...at]).toEqual([0, 1, 2, 3, 4, 5, 6]);
  expect([...freeAfterCue]).toEqual([2, 3, 4, 5, 6, 6]);
  // From frame 4 on the frame judged again would lie beyond the last one.
  expect([...freeAfterFilter]).toEqual([3, 4, 5, 6, 0, 0]);
  expect([...judgedAfterFilter].slice(0, 4)).toEqual([2, 3, 4, 5]);
});

test('at fewer places: the next one late enough, and the share of a segment that is affected', () => {
  const places = Int32Array.of(0, 0, 1, 5, 9);
  const grid = gridAt(places, 9, { spacing: 1, affectedFrames: 2 }, (k) => k !== 1);
  expect([...grid.freeAfterCue]).toEqual([2, 2, 3, 4]);
  expect([...grid.freeAfterFilter]).toEqual([3, 0, 3, 4]);
  // Frame 2 is a quarter into the frames 1 to 4, frame 3 half, frame 7 half into 5 to 8.
  expect([grid.judgedAfterFilter[0], grid.judgedAfterFilter[2], grid.judgedAfterFilter[3]]).toEqual([
    2.25, 2.5, 3.5,
  ]);
});
