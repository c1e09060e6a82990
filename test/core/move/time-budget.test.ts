import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { timeOfStep } from '../../../packages/core/src/exposure/dial.js';
import { frameCountOf } from '../../../packages/core/src/footage/frames.js';
import { travelsOf } from '../../../packages/core/src/move/resolve.js';
import { stepAfter } from '../../../packages/core/src/move/steps.js';
import {
  budgetOf,
  fits,
  gapOf,
  leastIntervalS,
  lengthShareThatFits,
  shutterRoomS,
} from '../../../packages/core/src/move/time-budget.js';
import { anyMoves, OPTICS, slide, turn } from './moves.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('check values', () => {
  const still = { frame: 0, frameCount: 100 };
  const thirds = (step: number) => timeOfStep(step, 3);

  // Source: worked_examples.csv W051, W053: marked "30" is 32 s, "15" is 16 s; a dark frame takes as long again.
  test('true times, and a dark frame as long as the shutter', () => {
    const budget = (shutterS: number, intervalS: number, darkFrame: boolean) =>
      budgetOf([], { ...still, shutterS, intervalS }, { writeS: 0, darkFrame });
    expect(fits(budget(thirds(-15), 30, false))).toBe(false);
    expect(budget(thirds(-15), 30, false).slackS).toBe(-2);
    expect(fits(budget(thirds(-12), 40, true))).toBe(true);
    expect(budget(thirds(-12), 40, true)).toMatchObject({ shutterS: 16, darkS: 16, slackS: 8 });
    expect(budget(thirds(-15), 40, true).slackS).toBe(-24);
  });

  // Source: hand. A linear pan of 90° in 9 steps of 10° at 5°/s takes 2 s a step; a slide of 0.9 m in steps of
  // 0.1 m at 0.05 m/s takes 2 s too, and rests 1.5 s to the pan's 1.
  test('moves made at once take as long as the slowest, and rest as long as the shakiest', () => {
    const travels = travelsOf([turn('pan', 90, { ease: 'linear' }), slide(0.9, { ease: 'linear' })], OPTICS);
    const at = { frame: 3, frameCount: 10, shutterS: 4, intervalS: 10 };
    const budget = budgetOf(travels, at, { writeS: 0.5, darkFrame: false });
    expect(budget.moveS).toBeCloseTo(2, 9);
    expect(budget.settleS).toBe(1.5);
    expect(budget.slackS).toBeCloseTo(2, 9);
    expect(budgetOf(travels, { ...at, frame: 9 }, { writeS: 0.5, darkFrame: false })).toMatchObject({
      moveS: 0,
      settleS: 0,
      slackS: 5.5,
    });
    expect(gapOf(travels, 10, 0.5).gapS).toBeCloseTo(4, 9);
  });

  test('a continuous move takes none of the interval', () => {
    const travels = travelsOf([turn('pan', 90, { mode: 'continuous' })], OPTICS);
    expect(gapOf(travels, 10, 0.5)).toEqual({ writeS: 0.5, moveS: 0, settleS: 0, gapS: 0.5 });
  });
});

describe('properties', () => {
  const camera = fc.record({ writeS: between(0, 3), darkFrame: fc.boolean() });
  const count = fc.integer({ min: 2, max: 200 });

  test('the parts of every budget add up to the interval', () => {
    fc.assert(
      fc.property(
        anyMoves,
        camera,
        count,
        between(0.001, 60),
        between(1, 120),
        (moves, c, frameCount, shutterS, intervalS) => {
          const travels = travelsOf(moves, OPTICS);
          for (let frame = 0; frame < frameCount; frame++) {
            const b = budgetOf(travels, { frame, frameCount, shutterS, intervalS }, c);
            expect(b.shutterS + b.darkS + b.writeS + b.moveS + b.settleS + b.slackS).toBeCloseTo(
              intervalS,
              9,
            );
          }
        },
      ),
      { seed: 11 },
    );
  });

  test('a shutter that fits beside the gap fits in every frame, and one a little longer misses in one', () => {
    let missed = 0;
    fc.assert(
      fc.property(anyMoves, camera, count, between(0.05, 60), (moves, c, frameCount, roomS) => {
        const travels = travelsOf(moves, OPTICS);
        const { gapS } = gapOf(travels, frameCount, c.writeS);
        const intervalS = roomS * (c.darkFrame ? 2 : 1) + gapS;
        expect(shutterRoomS(intervalS, gapS, c)).toBeCloseTo(roomS, 9);
        const all = (shutterS: number) =>
          Array.from({ length: frameCount }, (_, frame) =>
            fits(budgetOf(travels, { frame, frameCount, shutterS, intervalS }, c)),
          );
        expect(all(roomS * (1 - 1e-9)).every(Boolean)).toBe(true);
        expect(all(roomS + 1e-3).every(Boolean)).toBe(false);
        missed++;
      }),
      { seed: 12 },
    );
    expect(missed).toBe(100);
  });

  test('the least interval is enough, and no whole second below it is', () => {
    let [found, none] = [0, 0];
    fc.assert(
      fc.property(
        anyMoves,
        camera,
        between(0.01, 30),
        between(60, 4000),
        (moves, c, shutterS, recordingS) => {
          const travels = travelsOf(moves, OPTICS);
          const fitsAll = (intervalS: number) => {
            const frameCount = frameCountOf(recordingS, intervalS);
            return Array.from({ length: frameCount }, (_, frame) =>
              fits(budgetOf(travels, { frame, frameCount, shutterS, intervalS }, c)),
            ).every(Boolean);
          };
          const least = leastIntervalS(travels, recordingS, shutterS, c);
          if (least === undefined) none++;
          else {
            found++;
            expect(fitsAll(least)).toBe(true);
            if (least > 1) expect(fitsAll(least - 1)).toBe(false);
          }
        },
      ),
      { seed: 13, numRuns: 200 },
    );
    expect(Math.min(found, none)).toBeGreaterThan(5);
  });

  test('moves cut to the share that fits leave no frame short, and a little more does', () => {
    let cut = 0;
    fc.assert(
      fc.property(anyMoves, fc.array(between(0.02, 3), { minLength: 2, maxLength: 60 }), (moves, roomS) => {
        const travels = travelsOf(moves, OPTICS);
        const share = lengthShareThatFits(travels, roomS);
        const over = (by: number) =>
          roomS.some((timeS, frame) =>
            travels.some(
              (t) =>
                t.mode === 'stopped' &&
                (by * Math.abs(stepAfter(t, frame, roomS.length))) / (t.motor.topSpeed as number) >
                  timeS + 1e-6,
            ),
          );
        expect(over(share)).toBe(false);
        if (share < 1) {
          cut++;
          expect(over(share * 1.001 + 1e-5)).toBe(true);
        }
      }),
      { seed: 14, numRuns: 300 },
    );
    expect(cut).toBeGreaterThan(30);
  });
});
