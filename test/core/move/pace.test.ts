import { describe, expect, test } from 'vitest';
import type { Asked } from '../../../packages/core/src/move/asked.js';
import { moveRemedy } from '../../../packages/core/src/move/english.js';
import { fewerFrames, moreFrames, roundedInterval } from '../../../packages/core/src/move/pace.js';
import { travelsOf } from '../../../packages/core/src/move/resolve.js';
import { budgetOf } from '../../../packages/core/src/move/time-budget.js';
import { turn } from './moves.js';

// Tenths of a second from 1 s on, hundredths below, by hand; what is whole already stays.
test.each([
  [0.126, 'down', 0.12],
  [0.126, 'up', 0.13],
  [0.99, 'up', 0.99],
  [1, 'up', 1],
  [1.001, 'up', 1.1],
  [1.26, 'down', 1.2],
  [1.26, 'up', 1.3],
  [7.3, 'down', 7.3],
  [7.3, 'up', 7.3],
] as const)('an interval of %f s, rounded %s, is %f s', (intervalS, toward, rounded) => {
  expect(roundedInterval(intervalS, toward)).toBe(rounded);
});

/** 101 frames every 10 s: 1000 s. A pan of 60° in equal steps at 5°/s, with 1 s of rest and 1 s to write. */
function asked(shutterS: number, darkFrame = false): Asked {
  const travels = travelsOf([turn('pan', 60, { ease: 'linear' })]);
  const camera = { writeS: 1, darkFrame };
  const budgets = Array.from({ length: 101 }, (_, frame) =>
    budgetOf(travels, { frame, frameCount: 101, shutterS, intervalS: 10 }, camera),
  );
  return { travels, budgets, intervalS: 10, clipFps: 25, ...camera };
}

describe('more frames', () => {
  // 126 frames: 125 intervals are 1250 s at 10 s, and 8 s each in 1000 s; a clip of 126/25 = 5.04 s.
  const longer = {
    change: 'longer-recording',
    text: 'Shoot 126 frames at the same interval: 20.8 min instead of 16.7 min, a clip of 5.04 s.',
    frameCount: 126,
    intervalS: 10,
    recordingS: 1250,
    fromRecordingS: 1000,
    clipS: 5.04,
  };
  const closer = {
    change: 'more-frames',
    text: 'Shoot 126 frames in the same time: an interval of 8 s, a clip of 5.04 s.',
    frameCount: 126,
    intervalS: 8,
    recordingS: 1000,
    clipS: 5.04,
  };

  test('by a shorter interval, or at the same one for longer', () => {
    expect(moreFrames(asked(4), 126).map(moveRemedy)).toEqual([closer, longer]);
  });

  // Steps of 60/125 = 0.48° take 0.096 s: 8 - 0.096 - 1 - 1 = 5.904 s are left, or half of it beside a dark frame.
  test('the shutter that a shorter interval leaves is told where the plan opens for longer', () => {
    const [short] = moreFrames(asked(6), 126).map(moveRemedy);
    expect(short!.text).toBe(`${closer.text} It leaves 5.9 s for a shutter that the plan opens for 6 s.`);
    expect(short).toMatchObject({ shutterS: expect.closeTo(5.904, 9) });
    const [dark] = moreFrames(asked(3, true), 126).map(moveRemedy);
    expect(dark!.text).toBe(`${closer.text} It leaves 2.95 s for a shutter that the plan opens for 3 s.`);
    expect(dark).toMatchObject({ shutterS: expect.closeTo(2.952, 9) });
  });

  // 130 frames want 1000/129 = 7.752 s: at 7.7 s there are 129 whole intervals and 130 frames.
  test('an interval is one that can be set, and the frames are those it gives', () => {
    expect(moreFrames(asked(4), 130).map(moveRemedy)[0]).toMatchObject({
      intervalS: 7.7,
      frameCount: 130,
      clipS: 5.2,
    });
    // 137 frames want 7.353 s: at 7.3 s there are 136.99 intervals, so 137 frames; 138 want 7.299 and get 7.2, 139.
    expect(moreFrames(asked(4), 137).map(moveRemedy)[0]).toMatchObject({ intervalS: 7.3, frameCount: 137 });
    expect(moreFrames(asked(4), 138).map(moveRemedy)[0]).toMatchObject({ intervalS: 7.2, frameCount: 139 });
  });

  test('no shorter interval is offered that leaves no shutter at all', () => {
    // 2 s of writing and rest, and a step: 501 frames at 2 s leave nothing, 401 at 2.5 s leave 0.47 s.
    expect(
      moreFrames(asked(4), 501)
        .map(moveRemedy)
        .map(({ change }) => change),
    ).toEqual(['longer-recording']);
    expect(
      moreFrames(asked(4), 401)
        .map(moveRemedy)
        .map(({ change }) => change),
    ).toEqual(['more-frames', 'longer-recording']);
    // Below a hundredth of a second no interval can be set.
    expect(moreFrames(asked(4), 1_000_000).map(({ change }) => change)).toEqual(['longer-recording']);
  });
});

describe('fewer frames', () => {
  // 51 frames: 50 intervals of 20 s. 53 want 1000/52 = 19.23 s: at 19.3 s there are 51.8 intervals, 52 frames.
  test('in the same time, by an interval that can be set', () => {
    expect(fewerFrames(asked(4), 51).map(moveRemedy)).toEqual([
      {
        change: 'fewer-frames',
        text: 'Shoot 51 frames in the same time: an interval of 20 s, a clip of 2.04 s.',
        frameCount: 51,
        intervalS: 20,
        recordingS: 1000,
        clipS: 2.04,
      },
    ]);
    expect(fewerFrames(asked(4), 53).map(moveRemedy)[0]).toMatchObject({
      intervalS: 19.3,
      frameCount: 52,
      clipS: 2.08,
    });
  });

  test('two are the fewest that move', () => {
    expect(fewerFrames(asked(4), 2).map(moveRemedy)[0]).toMatchObject({ intervalS: 1000, frameCount: 2 });
    expect(fewerFrames(asked(4), 1).map(moveRemedy)).toEqual([]);
  });
});
