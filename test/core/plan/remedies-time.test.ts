// What leaves a shutter its time, by hand: one shutter of 1 s, or of half to a whole one, beside a move of equal steps.

import { planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { isCutShort } from '../../../packages/core/src/plan/remedies/time.js';
import { shootFrom } from '../shoots.js';

// Twenty minutes: 301 frames at 4 s, 267 at 4.5 s, 241 at 5 s, 201 at 6 s. From EV 6 to EV 0.2 at f/8 and 1 s.
const BASE = {
  span: { startAt: '2026-09-18T20:52:00+02:00', endAt: '2026-09-18T21:12:00+02:00' },
  intervalS: 4,
  crew: 'rig',
  look: { nightEv: 0 },
  limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 0 },
};
const camera = (more: object = {}) => ({
  camera: {
    shutter: { shortest: '1', longest: '1' },
    iso: { lowest: 100, highest: 12_800 },
    aperture: '8',
    gapS: 1,
    ...more,
  },
});
// 30° in 300 steps are 0.1° a step, 1 s of its own; it rests 1.5 s.
const pan = (gear: object = { topSpeedDegPerS: 0.1 }) => ({
  axis: 'pan',
  by: { deg: 30 },
  ease: 'linear',
  gear: { settleS: 1.5, ...gear },
});

function answerOf(keys: Record<string, unknown>) {
  const shoot = shootFrom({ ...BASE, ...keys });
  const plan = planShoot(shoot);
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
  expect(plan).toMatchObject({ format: 'evenfall-plan/1', shoot });
  for (const { apply, text } of plan.infeasible.remedies) {
    expect('frames' in planShoot({ ...shoot, ...apply }), text).toBe(true);
  }
  return plan.infeasible;
}
const changesOf = (keys: Record<string, unknown>) => answerOf(keys).remedies.map(({ change }) => change);
const textsOf = (keys: Record<string, unknown>) => answerOf(keys).remedies.map(({ text }) => text);

describe('no time for any shutter', () => {
  // 1 s + 1 s to write + 1 s to move + 1.5 s of rest are 4.5 s: half a second too many.
  test('a motor that takes a second for every step, however short', () => {
    const answer = answerOf({ ...camera(), moves: [pan({ moveS: 1 })] });
    expect(answer).toMatchObject({ reason: 'no-time' });
    expect(answer.text).toBe(
      'Between frames the longest step of the move takes 1 s, its rest 1.5 s and writing 1 s. An interval of 4 s leaves no time for a shutter.',
    );
    expect(answer.remedies.map(({ text }) => text)).toEqual([
      'Raise the interval from 4 to 5 s.',
      'Let the camera settle for 1 s after a move, not 1.5 s.',
      'Use a card or a format that writes in 0.5 s instead of 1 s.',
    ]);
    expect(answer.remedies[2]!.apply.camera).toMatchObject({ gapS: 0.5 });
  });

  // At 5 s there are 240 steps of 0.125°: 1 + 1 + 1.25 + 1.5 = 4.75 s. Half the way takes half a second.
  test('a motor with a speed: half the way is half the time', () => {
    expect(textsOf({ ...camera(), moves: [pan()] })).toEqual([
      'Raise the interval from 4 to 5 s.',
      'Let the camera settle for 1 s after a move, not 1.5 s.',
      'Shorten the move: pan 15° instead of 30°.',
      'Use a card or a format that writes in 0.5 s instead of 1 s.',
    ]);
  });

  // 266 steps at 4.5 s take 1.128 s each, 0.128 s too many: a tenth less is not enough, two are. 88 % of the way is
  // 0.992 s, 89 % 1.004 s, and 1 s is left.
  test('tenths of a second and hundredths of a move, the least that do', () => {
    expect(textsOf({ intervalS: 4.5, ...camera(), moves: [pan()] })).toEqual([
      'Raise the interval from 4.5 to 5 s.',
      'Let the camera settle for 1.3 s after a move, not 1.5 s.',
      'Shorten the move: pan 26.4° instead of 30°.',
      'Use a card or a format that writes in 0.8 s instead of 1 s.',
    ]);
  });

  // A dark frame is a second more: 2 + 1 + 1.25 + 1.5 = 5.75 s at 5 s, and at 6 s, in steps of 1.5 s, 6 s to the hair.
  test('a dark frame counts as a second shutter, and may be turned off', () => {
    const answer = answerOf({ intervalS: 5, ...camera({ darkFrame: true }), moves: [pan()] });
    expect(answer.text).toMatch(/ An interval of 5 s leaves no time for a shutter and its dark frame\.$/);
    expect(answer.remedies.map(({ text }) => text)).toEqual([
      'Raise the interval from 5 to 6 s.',
      'Turn long-exposure noise reduction off: its dark frame takes as long as the shutter.',
      'Let the camera settle for 0.7 s after a move, not 1.5 s.',
      'Shorten the move: pan 12° instead of 30°.',
      'Use a card or a format that writes in 0.2 s instead of 1 s.',
    ]);
    expect(changesOf({ intervalS: 5, ...camera({ darkFrame: true }), moves: [pan()] })).toEqual([
      'longer-interval',
      'no-dark-frame',
      'shorter-settle',
      'shorter-move',
      'shorter-write',
    ]);
  });

  // One minute: 1° at 0.039°/s. 5 s give 12 steps of 2.14 s and 6 s ten of 2.56 s, too long beside 3.5 s; 7 s give eight
  // of 3.21 s. Beside "30", 32 s, one step of 25.6 s and 2.5 s come to more than the minute.
  test('an interval for the shortest shutter, where none is long enough for the longest', () => {
    const span = { ...BASE.span, endAt: '2026-09-18T20:53:00+02:00' };
    const slow = { ...pan({ topSpeedDegPerS: 0.039 }), by: { deg: 1 } };
    const shutter = { shortest: '1', longest: '30' };
    const { reason, remedies } = answerOf({ span, ...camera({ shutter }), moves: [slow] });
    expect(reason).toBe('no-time');
    expect(remedies[0]).toMatchObject({ text: 'Raise the interval from 4 to 7 s.', apply: { intervalS: 7 } });
  });

  // Twelve seconds: 7.75° at 1°/s, eased: of three steps the largest is 0.4815 of the way, 3.73 s, which 4 s have no room
  // for beside 0.3 s and a shutter. Of four it is 0.34375, 2.66 s: 3 s would do. Of two it is half, 3.88 s.
  test('a longer interval is longer, even where a shorter one would do', () => {
    const span = { ...BASE.span, endAt: '2026-09-18T20:52:12+02:00' };
    const shutter = { shortest: '1/250', longest: '1' };
    const moves = [{ axis: 'pan', by: { deg: 7.75 }, gear: { settleS: 0, topSpeedDegPerS: 1 } }];
    const keys = { span, ...camera({ shutter, gapS: 0.3 }), moves };
    expect('frames' in planShoot(shootFrom({ ...BASE, ...keys, intervalS: 3 }))).toBe(true);
    expect(answerOf(keys).remedies[0]).toMatchObject({
      text: 'Raise the interval from 4 to 5 s.',
      apply: { intervalS: 5 },
    });
  });

  test('what rests less and what never stops stay as they are', () => {
    const tilt = { axis: 'tilt', by: { deg: 3 }, ease: 'linear', gear: { settleS: 0.4, moveS: 0.2 } };
    const slide = { axis: 'slide', by: { m: 0.6 }, mode: 'continuous', ease: 'linear', gear: { settleS: 9 } };
    const { remedies } = answerOf({ intervalS: 4.5, ...camera(), moves: [pan(), tilt, slide] });
    const movesOf = (kind: string) => remedies.find(({ change }) => change === kind)?.apply.moves;
    expect(movesOf('shorter-settle')?.map(({ gear }) => gear.settleS)).toEqual([1.3, 0.4, 9]);
    expect(movesOf('shorter-move')?.map(({ by }) => by)).toEqual([{ deg: 26.4 }, { deg: 2.6 }, { m: 0.6 }]);
  });

  test('a slide is cut in centimetres', () => {
    const slide = {
      axis: 'slide',
      by: { m: 0.6 },
      ease: 'linear',
      gear: { settleS: 1.5, topSpeedMPerS: 0.002 },
    };
    const { remedies } = answerOf({ intervalS: 4.5, ...camera(), moves: [slide] });
    // 88 % of 0.6 m is 0.528 m, which a tape shows as 0.53: 0.53 m in 266 steps take 0.9962 s, and 1 s is left.
    expect(remedies.map(({ text }) => text)).toContain('Shorten the move: slide 0.53 m instead of 0.6 m.');
    expect(remedies.find(({ change }) => change === 'shorter-move')!.apply.moves![0]!.by).toEqual({
      m: 0.53,
    });
  });
});

describe('a shutter kept short', () => {
  // Half a second fits 4 s beside the 3.5 s above. f/8, ISO 6400 and "0.5" are EV 1, less 0.75: the last light at 0.21
  // asks for a third more, "0.6", 0.63 s, and so for 0.13 s. The pan ends where the sun went down, as the cameras of the
  // other tests look: at a declination of 1.65° that is asin(sin 1.65° / cos 43.54°), 2.3°, north of west.
  const scene = { facing: { azimuthDeg: 272.3 - 30 } };
  const kit = camera({ shutter: { shortest: '0.5', longest: '1' }, iso: { lowest: 100, highest: 6400 } });

  test('gets what it needs of the interval, of rest, way or writing, and no more', () => {
    const { reason, text, remedies } = answerOf({ ...kit, scene, moves: [pan()] });
    expect(reason).toBe('too-dark');
    expect(text).toContain('by less than 0.05 stops. Between frames the longest step of the move takes 1 s');
    expect(text).toMatch(/ writing 1 s\. That keeps the shutter short\.$/);
    expect(remedies.slice(0, 4).map((remedy) => remedy.text)).toEqual([
      'Raise the interval from 4 to 5 s.',
      'Let the camera settle for 1.3 s after a move, not 1.5 s.',
      'Shorten the move: pan 26.1° instead of 30°.',
      'Use a card or a format that writes in 0.8 s instead of 1 s.',
    ]);
    expect(remedies.slice(4).map(({ change }) => change)).not.toContain('shorter-settle');
  });

  test('is not blamed on a move that leaves it all its time', () => {
    const dark = { ...camera({ iso: { lowest: 100, highest: 3200 } }), intervalS: 6, moves: [pan()] };
    const { reason, text, remedies } = answerOf(dark);
    expect(reason).toBe('too-dark');
    expect(text).not.toContain('move');
    expect(remedies.map(({ change }) => change)).not.toContain('shorter-settle');
  });

  // "30" is 32 s, a dark frame as long again, and a gap of 1 s.
  test.each([
    [33, false, false],
    [32.9, false, true],
    [65, true, false],
    [64.9, true, true],
  ])('at an interval of %f s, dark frame %s: cut short %s', (intervalS, darkFrame, short) => {
    const shoot = shootFrom({
      intervalS,
      ...camera({ shutter: { shortest: '1', longest: '30' }, darkFrame }),
    });
    expect(isCutShort(shoot, 20)).toBe(short);
  });
});
