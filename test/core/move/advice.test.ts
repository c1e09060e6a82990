// What is said of a move, to the letter and at the very edge, by hand: 18 mm in front of 36 mm takes in 90°.

import { describe, expect, test } from 'vitest';
import { type MoveRequest, planMoves } from '../../../packages/core/src/move/move.js';
import { slide, turn } from './moves.js';

const NINETY = { lens: { focalMm: 18 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };

describe('on the screen', () => {
  // 210 equal steps at 30 frames a second are 7 s of clip: a pan of L degrees passes the width in 630 / L seconds.
  const linear = (deg: number): MoveRequest => ({
    moves: [turn('pan', deg, { ease: 'linear' })],
    frames: Array.from({ length: 211 }, () => ({ shutterS: 1 })),
    intervalS: 10,
    clipFps: 30,
    writeS: 1,
    darkFrame: false,
    optics: NINETY,
  });
  const findings = (request: MoveRequest) => planMoves(request).findings;

  test('a width in 7 s is good, and so is one in 70 s', () => {
    expect(planMoves(linear(90)).fastest!.crossingS).toBeCloseTo(7, 9);
    expect(findings(linear(90))).toEqual([]);
    expect(findings(linear(90.2))).toMatchObject([{ kind: 'too-fast', level: 'caution' }]);
    expect(findings(linear(9))).toEqual([]);
    expect(findings(linear(8.9))).toMatchObject([{ kind: 'too-slow', level: 'info' }]);
  });

  // At 120° n steps take n / 40 s for a width: 280 of them 7 s. 2100 s / 280 = 7.5 s, 280 · 10 s = 46.7 min; 281
  // frames are 9.37 s.
  test('too fast: by how much, and what each cure comes to', () => {
    expect(findings(linear(120))).toEqual([
      {
        kind: 'too-fast',
        level: 'caution',
        frame: 104,
        crossingS: expect.closeTo(5.25, 9),
        limitS: 7,
        text: 'At its fastest, frame 105, the picture passes its own width in 5.25 s of clip; under 7 s a move is hard to watch.',
        remedies: [
          expect.objectContaining({
            text: 'Shoot 281 frames in the same time: an interval of 7.5 s, a clip of 9.37 s.',
          }),
          expect.objectContaining({
            text: 'Shoot 281 frames at the same interval: 46.7 min instead of 35 min, a clip of 9.37 s.',
          }),
          {
            change: 'shorter-move',
            text: 'Shorten the move: pan 90° instead of 120°.',
            lengths: [90],
            changed: [{ axis: 'pan', unit: 'deg', from: 120, to: 90 }],
          },
        ],
      },
    ]);
  });

  // At 6.2° n steps take 0.4839 n s: 144 of them 69.7 s, 145 70.2 s. 2100 s / 144 = 14.58 s; at 14.6 s there are 143.8
  // intervals.
  test('too slow: 9° would be seen, and so would fewer frames', () => {
    const [finding] = findings(linear(6.2));
    expect(finding!.text).toBe(
      'At its fastest, frame 105, the picture passes its own width in 102 s of clip: so slowly that it is hardly seen to move.',
    );
    const [longer, fewer] = finding!.remedies;
    expect(longer).toEqual({
      change: 'longer-move',
      text: 'Lengthen the move: pan 9° instead of 6.2°.',
      lengths: [9],
      changed: [{ axis: 'pan', unit: 'deg', from: 6.2, to: 9 }],
    });
    expect(fewer).toMatchObject({ change: 'fewer-frames', frameCount: 144, intervalS: 14.6 });
  });

  // Equal steps differ in their last bits: the middle one stands for all, whatever holds another back.
  test('the fastest of equal steps is the middle one', () => {
    const against = {
      ...linear(30),
      moves: [turn('pan', 30, { ease: 'linear' }), slide(-1, { ease: 'linear' })],
    };
    expect(planMoves(against).fastest!.frame).toBe(104);
  });
});

describe('smear', () => {
  // 6000 px, 90°: at the centre 3000 px a radian. A continuous tilt of 0.002 rad a frame, open half the time, smears 3 px
  // there and 1 + (12/18)² as much at the top edge; at the corner the sideways part comes to it, 1 · 2/3.
  const tilt = (radPerFrame: number): MoveRequest => ({
    moves: [
      turn('tilt', (radPerFrame * 100 * 180) / Math.PI, {
        mode: 'continuous',
        ease: 'linear',
        gear: { settleS: 0 },
      }),
    ],
    frames: Array.from({ length: 101 }, () => ({ shutterS: 5 })),
    intervalS: 10,
    clipFps: 1,
    writeS: 1,
    darkFrame: false,
    optics: NINETY,
  });
  const corner = Math.hypot(1 + (2 / 3) ** 2, 2 / 3);

  test('in pixels of two figures, the first frame of equals, a caution above a thousandth of the width', () => {
    const smear = (radPerFrame: number) =>
      planMoves(tilt(radPerFrame)).findings.filter(({ kind }) => kind === 'blur');
    expect(smear(0.002)).toEqual([
      {
        kind: 'blur',
        level: 'info',
        frame: expect.any(Number),
        blurPx: expect.closeTo(3 * corner, 3),
        text: expect.stringMatching(
          /^The move goes on while the shutter is open: at most 4\.8 pixels of smear, at frame \d+\. Stopped at every frame there is none\.$/,
        ),
        remedies: [],
      },
    ]);
    expect(3 * corner).toBeCloseTo(4.77, 2);
    // 6 px are a thousandth of 6000.
    const edge = 6 / (1500 * corner);
    expect(smear(edge * 0.999)).toMatchObject([{ level: 'info' }]);
    expect(smear(edge * 1.001)).toMatchObject([{ level: 'caution' }]);
  });

  test('is not spoken of where the lens is not known, or every move stops', () => {
    const { optics: _, ...unknown } = tilt(0.002);
    expect(planMoves(unknown).findings.map(({ kind }) => kind)).not.toContain('blur');
    const stopped = { ...tilt(0.002), moves: [turn('tilt', 10)] };
    expect(planMoves(stopped).findings.map(({ kind }) => kind)).not.toContain('blur');
  });
});

describe('time', () => {
  // 30° in 3 equal steps at 5°/s take 2 s each; 1 s of rest and 1 s to write: 4 s beside the shutter, 1 s after the last.
  const request = (shutters: readonly number[], darkFrame = false): MoveRequest => ({
    moves: [turn('pan', 30, { ease: 'linear' })],
    frames: shutters.map((shutterS) => ({ shutterS })),
    intervalS: 10,
    clipFps: 25,
    writeS: 1,
    darkFrame,
  });

  test('to the hair is enough', () => {
    const plan = planMoves(request([4, 6, 5, 4]));
    expect(plan.findings).toEqual([]);
    expect(plan.tightest).toEqual({ frame: 1, slackS: 0 });
    expect(plan.frames.map(({ slackS }) => slackS)).toEqual([2, 0, 1, 5]);
  });

  // 7 s are one too many. 12 s give three frames of 30 s, in steps of 15° and 3 s: 7 + 1 + 3 + 1 = 12.
  test('a second too few: where, how much, what for, and each cure', () => {
    const { findings } = planMoves(request([4, 6, 7, 4]));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      kind: 'no-time',
      level: 'warning',
      frame: 2,
      text: 'Frame 3 needs 1 s more than its interval of 10 s: shutter 7 s, writing 1 s, moving 2 s, settling 1 s. 1 of 4 frames do not fit.',
    });
    expect(findings[0]!.remedies).toEqual([
      {
        change: 'longer-interval',
        text: 'Raise the interval to 12 s: 3 frames in the same time, a clip of 0.12 s.',
        intervalS: 12,
        fromIntervalS: 10,
        frameCount: 3,
        recordingS: 30,
        fromRecordingS: 30,
        clipS: 0.12,
      },
      {
        change: 'shorter-shutter',
        text: 'Keep the shutter at 6 s or shorter in true time.',
        shutterS: 6,
      },
      {
        change: 'shorter-move',
        text: 'Shorten the move: pan 15° instead of 30°.',
        lengths: [15],
        changed: [{ axis: 'pan', unit: 'deg', from: 30, to: 15 }],
      },
      { change: 'shorter-settle', text: 'Let the camera settle for 0 s, no longer.', settleS: 0 },
      { change: 'shorter-write', text: 'Use a card or a format that writes in 0 s.', writeS: 0 },
    ]);
  });

  test('a dark frame is told beside its shutter, and half of what is missing is the shutter to give up', () => {
    const [finding] = planMoves(request([2, 3, 3.5, 2], true)).findings;
    expect(finding!.text).toContain(
      ': shutter 3.5 s, dark frame 3.5 s, writing 1 s, moving 2 s, settling 1 s.',
    );
    const [, shutter, dark] = finding!.remedies;
    expect(shutter).toMatchObject({ change: 'shorter-shutter', shutterS: 3 });
    expect(dark).toEqual({
      change: 'no-dark-frame',
      text: 'Turn long-exposure noise reduction off: its dark frame takes as long as the shutter.',
    });
    // 8 s alone are 2 s too many: without its dark frame it would not fit either.
    const worse = planMoves(request([2, 8, 3.5, 2], true)).findings[0]!.remedies;
    expect(worse.map(({ change }) => change)).not.toContain('no-dark-frame');
  });

  test('what nothing is left of is not offered', () => {
    // 11.5 s beside 4 s are 5.5 s too many: neither rest, writing nor the move has so much. 20 s give two frames of 30 s,
    // one step of 30° and 6 s: 11.5 + 1 + 6 + 1 = 19.5.
    const changes = planMoves(request([4, 6, 11.5, 4])).findings[0]!.remedies.map(({ change }) => change);
    expect(changes).toEqual(['longer-interval', 'shorter-shutter']);
  });

  test('a move of which less than a twentieth is left is another move', () => {
    // A step of 10° takes 2 s: 0.105 s beside shutter, rest and writing leave 0.0525 of the way, 0.095 s 0.0475.
    const changes = (shutterS: number) =>
      planMoves(request([4, 6, shutterS, 4])).findings[0]!.remedies.map(({ change }) => change);
    expect(changes(7.895)).toContain('shorter-move');
    expect(changes(7.905)).not.toContain('shorter-move');
  });

  test('a nanosecond is a rounding, a little more is none', () => {
    expect(planMoves(request([4, 6 + 0.95e-9, 5, 4])).findings).toEqual([]);
    expect(planMoves(request([4, 6 + 1.05e-9, 5, 4])).findings).toHaveLength(1);
  });
});

describe('a motor too slow for a move without a stop', () => {
  const base = {
    frames: Array.from({ length: 10 }, () => ({ shutterS: 1 })),
    intervalS: 10,
    clipFps: 25,
    writeS: 1,
    darkFrame: false,
  };

  // 90° in 90 s are 1°/s; at half of it they take 180 s: 19 frames at 10 s, or 10 at 20 s.
  test('what it would have to reach, and what lets it follow', () => {
    const gear = { settleS: 0, topSpeedDegPerS: 0.5 };
    const plan = planMoves({
      ...base,
      moves: [turn('pan', 90, { mode: 'continuous', ease: 'linear', gear })],
    });
    expect(plan.findings).toEqual([
      {
        kind: 'gear-too-slow',
        level: 'warning',
        axis: 'pan',
        unit: 'deg',
        speed: 1,
        topSpeed: 0.5,
        text: 'The pan would have to reach 1° a second; its motor goes 0.5° a second.',
        remedies: [
          {
            change: 'shorter-move',
            text: 'Shorten the move: pan 45° instead of 90°.',
            lengths: [45],
            changed: [{ axis: 'pan', unit: 'deg', from: 90, to: 45 }],
          },
          {
            change: 'longer-recording',
            text: 'Shoot 19 frames at the same interval: 3 min instead of 90 s, a clip of 0.76 s.',
            frameCount: 19,
            intervalS: 10,
            recordingS: 180,
            fromRecordingS: 90,
            clipS: 0.76,
          },
          {
            change: 'longer-interval',
            text: 'Raise the interval to 20 s for the same frames: 3 min in all.',
            intervalS: 20,
            fromIntervalS: 10,
            frameCount: 10,
            recordingS: 180,
            fromRecordingS: 90,
            clipS: 0.4,
          },
        ],
      },
    ]);
  });

  test('its top speed is enough, and a slide has metres a second', () => {
    const run = (m: number) =>
      planMoves({
        ...base,
        moves: [slide(m, { mode: 'continuous', ease: 'linear', gear: { settleS: 0, topSpeedMPerS: 0.02 } })],
      }).findings;
    expect(run(-1.8)).toEqual([]);
    expect(run(-3.6)[0]!.text).toBe(
      'The slide would have to reach 0.04 m a second; its motor goes 0.02 m a second.',
    );
  });

  test('a single frame goes nowhere, and needs no speed', () => {
    const gear = { settleS: 0, topSpeedDegPerS: 0.5 };
    const one = { ...base, frames: base.frames.slice(0, 1) };
    expect(
      planMoves({ ...one, moves: [turn('pan', 90, { mode: 'continuous', ease: 'linear', gear })] }).findings,
    ).toEqual([]);
  });
});

describe('steps too small for the motor', () => {
  const steps = (deg: number, smallestStepDeg: number) =>
    planMoves({
      moves: [turn('pan', deg, { gear: { settleS: 1, topSpeedDegPerS: 5, smallestStepDeg } })],
      frames: Array.from({ length: 11 }, () => ({ shutterS: 1 })),
      intervalS: 30,
      clipFps: 25,
      writeS: 1,
      darkFrame: false,
    }).findings;

  // Smoothstep in 10 steps: 0.028, 0.076, 0.112, 0.136, 0.148 of the way, and back.
  test('some are information, all are a caution with the way that would do', () => {
    expect(steps(1, 0.1)).toEqual([
      {
        kind: 'steps-too-small',
        level: 'info',
        axis: 'pan',
        unit: 'deg',
        smallestStep: 0.1,
        count: 4,
        steps: 10,
        all: false,
        text: "4 of 10 steps of the pan, where it starts and ends, are below the motor's smallest, 0.1°; frames repeat there.",
        remedies: [],
      },
    ]);
    // The largest is 0.148°: 0.2° want 1.3514 times the way, 1.4° as it is read.
    expect(steps(1, 0.2)).toEqual([
      {
        kind: 'steps-too-small',
        level: 'caution',
        axis: 'pan',
        unit: 'deg',
        smallestStep: 0.2,
        count: 10,
        steps: 10,
        all: true,
        text: "Every step of the pan is below the motor's smallest, 0.2°: the picture will stand and jump.",
        remedies: [
          {
            change: 'longer-move',
            text: 'Lengthen the move: pan 1.4° instead of 1°.',
            lengths: [1.4],
            changed: [{ axis: 'pan', unit: 'deg', from: 1, to: 1.4 }],
          },
        ],
      },
    ]);
    expect(steps(1, 0.148)).toMatchObject([{ level: 'info' }]);
    expect(steps(10, 0.2)).toEqual([]);
  });
});
