// When the camera may be changed again: by hand from the rules, without the solver.

import { expect, test } from 'vitest';
import {
  type CameraState,
  shifted,
  withCue,
  withoutLastCue,
} from '../../../packages/core/src/follow/camera.js';
import { eveningOf, plannedLightAt } from '../../../packages/core/src/follow/evening.js';
import { startFollow } from '../../../packages/core/src/follow/follow.js';
import { HAND, startMsOf } from './evenings.js';

const { camera } = startFollow(HAND);
const to = eveningOf(HAND, {}).planned[0]!;

// 60 s between cues are 8 frames of 8 s; a filter change spoils 2 frames, and the one after must stand at least.
test.each([
  ['a dial, a minute apart', 60, 2, false, 108],
  ['a filter, a minute apart', 60, 2, true, 108],
  ['a dial at any frame', 0, 2, false, 101],
  ['a filter at any frame', 0, 2, true, 103],
  ['a filter that spoils nothing', 0, 0, true, 101],
  ['a filter that spoils more than a minute', 60, 9, true, 110],
] as const)('%s', (_name, secondsBetweenCues, framesLostPerFilterChange, filter, freeFrom) => {
  const limits = { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues, framesLostPerFilterChange };
  const evening = eveningOf({ ...HAND, shoot: { ...HAND.shoot, limits } }, {});
  const after = withCue(evening, camera, { frame: 100, to, filter } as never);
  expect(after.freeFrom).toBe(freeFrom);
  expect(after.cueCount).toBe(1);
  expect(after.filterChanges).toBe(filter ? 1 : 0);
});

const limits = { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 60, framesLostPerFilterChange: 2 };

test('a filter cue that was missed has spoilt nothing', () => {
  const evening = eveningOf({ ...HAND, shoot: { ...HAND.shoot, limits } }, {});
  const after = withCue(evening, { ...camera, present: to }, { frame: 100, to, filter: true } as never);
  expect(after.affectedUntil).toBe(102);
  expect(withoutLastCue(after, after.done.at(-1)!).affectedUntil).toBe(0);
});

test('with the clock set back by fifty frames, cues done and waits are as many frames earlier', () => {
  const evening = eveningOf({ ...HAND, shoot: { ...HAND.shoot, limits } }, {});
  const done = [20, 100].reduce<CameraState>(
    (each, frame) => withCue(evening, each, { frame, to, filter: false } as never),
    { ...camera, present: to },
  );
  const back = shifted(done, 50);
  expect(back.done.map(({ frame }) => frame)).toEqual([0, 50]);
  expect(back.freeFrom).toBe(done.freeFrom - 50);
});

// f/4 is 4, "1/4000" is 1/4096 s, "6" is 2^(8/3) s, ISO 6400 is 6 stops above 100, and so is the filter.
test('what the kit can follow is the EV of its darkest and of its brightest setting', () => {
  const { reach } = eveningOf(HAND, {});
  expect(reach.brightEv100).toBeCloseTo(4 + 12 + 6, 9);
  expect(reach.darkEv100).toBeCloseTo(4 - 8 / 3 - 6, 9);
});

test('the light between two frames lies between theirs; before the first and after the last it is worked out again', () => {
  const frames = HAND.frames.map((frame, i) => ({ ...frame, sceneEv100: 1000 + i, sunAltitudeDeg: i / 100 }));
  const evening = eveningOf({ ...HAND, frames }, {});
  const at = (frame: number) => plannedLightAt(evening, startMsOf(HAND, 0) + 8000 * frame);
  expect(at(0)).toEqual({ sceneEv100: 1000, sunAltitudeDeg: 0 });
  expect(at(10)).toEqual({ sceneEv100: 1010, sunAltitudeDeg: 0.1 });
  expect(at(10.25).sceneEv100).toBeCloseTo(1010.25, 9);
  expect(at(10.25).sunAltitudeDeg).toBeCloseTo(0.1025, 9);
  expect(at(899)).toEqual({ sceneEv100: 1899, sunAltitudeDeg: 8.99 });
  // A clear sky before and after sunset, not the thousand stops made up above.
  for (const beyond of [-1, 900]) expect(Math.abs(at(beyond).sceneEv100)).toBeLessThan(20);
});
