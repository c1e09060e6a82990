// The published limits of files (docs/formats.md), each at its edge.

import { readPlan, readShoot } from '@evenfall/core';
import { expect, test } from 'vitest';
import { kitOf } from '../../../packages/core/src/shoot/kit.js';
import { EVENING_SHOOT } from '../../reference/evening-shoot.js';
import { PLAN } from './sample.js';

test('24 million settings to weigh, and no more', () => {
  // By hand: four stacks, four levels within half a stop either way in thirds, 34 ISOs from 50 to 102,400 and three steps at a
  // cue: 4 × 4 × (34 + 3) = 592 a frame, so 40,540 frames of two seconds.
  const lasting = (endAt: string) =>
    readShoot({
      format: 'evenfall-shoot/1',
      place: { latitudeDeg: 47, longitudeDeg: 8, timeZone: 'Europe/Zurich' },
      date: '2027-05-11',
      span: { startAt: '2027-05-11T00:00:00+02:00', endAt },
      intervalS: 2,
      camera: {
        shutter: { shortest: '1/4000', longest: '0.5' },
        iso: { lowest: 50, highest: 102400 },
        aperture: '4',
      },
      filters: [3, 6, 10].map((stops) => ({ name: `ND ${stops}`, stops })),
      limits: { toleranceEv: 0.5, largestStepEv: 1 },
    });
  const taken = lasting('2027-05-11T22:31:18+02:00');
  expect(taken.kind === 'wrong' ? taken.errors[0]!.text : 'ok').toBe('ok');
  const refused = lasting('2027-05-11T22:31:20+02:00');
  expect(refused.kind === 'wrong' && refused.errors[0]!.text).toMatch(
    /^2 makes 40541 frames, too many to plan with 4 filter stacks/,
  );
});

test('of many faults fifty are told', () => {
  const strange = Object.fromEntries(Array.from({ length: 80 }, (_, i) => [`strange${i}`, 1]));
  const read = readShoot({ ...EVENING_SHOOT, ...strange });
  expect(read.kind === 'wrong' && read.errors.length).toBe(50);
});

test('a frame’s time is its own to less than a second', () => {
  const movedBy = (ms: number) => {
    const moved = (at: string, i: number) => {
      if (i !== 2) return at;
      const [time, offset] = [at.slice(0, 19), at.slice(19)];
      const shifted = new Date(Date.parse(`${time}Z`) + ms).toISOString().slice(0, 23);
      return `${shifted}${offset}`;
    };
    return readPlan({
      ...PLAN,
      frames: PLAN.frames.map((frame, i) => ({ ...frame, at: moved(frame.at, i) })),
    }).kind;
  };
  expect([movedBy(0), movedBy(990), movedBy(-990)]).toEqual(['ok', 'ok', 'ok']);
  expect([movedBy(1010), movedBy(-1010)]).toEqual(['wrong', 'wrong']);
});

test('filters less than a twentieth of a stop apart are one', () => {
  const stacks = (stops: number) => {
    const filters = [
      { name: 'A', stops: 3 },
      { name: 'B', stops },
    ];
    const read = readShoot({ ...EVENING_SHOOT, filters });
    return read.kind === 'ok' && kitOf(read.shoot).stacks.length;
  };
  expect([stacks(3.049), stacks(2.951)]).toEqual([2, 2]);
  expect([stacks(3.051), stacks(2.949)]).toEqual([3, 3]);
});
