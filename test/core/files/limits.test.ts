// The published limits of files (docs/formats.md), each at its edge.

import { readPlan, readShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
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

describe('of a value', () => {
  const saidOf = (read: (value: unknown) => { kind: string }, value: unknown) => {
    const answer = read(value) as { errors?: readonly { kind: string }[] };
    return answer.errors?.map(({ kind }) => kind);
  };

  test('a shoot has 20,000 values, six million a plan, twenty thousand more for its shoot', () => {
    const shootWith = (count: number) => saidOf(readShoot, { ...EVENING_SHOOT, more: Array(count).fill(0) });
    expect(shootWith(19_900)).not.toContain('too-large');
    expect(shootWith(20_100)).toEqual(['too-large']);
    const planWith = (count: number) => saidOf(readPlan, { ...PLAN, more: Array(count).fill(0) });
    expect(planWith(6_018_000)).not.toContain('too-large');
    expect(planWith(6_021_000)).toEqual(['too-large']);
  });

  test('nests 32 deep', () => {
    // The shoot itself is the first.
    const nested = (depth: number): unknown => (depth === 0 ? 0 : [nested(depth - 1)]);
    const deep = (depth: number) => saidOf(readShoot, { ...EVENING_SHOOT, more: nested(depth - 1) });
    expect(deep(32)).not.toContain('too-deep');
    expect(deep(33)).toEqual(['too-deep']);
  });

  test('a plan has a thousand notes, a shoot a thousand readings and twelve filters', () => {
    const [event] = PLAN.events;
    const events = (count: number) => readPlan({ ...PLAN, events: Array(count).fill(event) }).kind;
    expect([events(1000), events(1001)]).toEqual(['ok', 'wrong']);
    const reading = { at: '2026-09-22T19:00:00+02:00', ev100: 9 };
    const readings = (count: number) =>
      readShoot({ ...EVENING_SHOOT, readings: Array(count).fill(reading) }).kind;
    expect([readings(1000), readings(1001)]).toEqual(['ok', 'wrong']);
    const filters = (count: number) =>
      saidOf(readShoot, {
        ...EVENING_SHOOT,
        filters: Array.from({ length: count }, (_, i) => ({ name: `ND ${i + 1}`, stops: i + 1 })),
      }) ?? [];
    expect(filters(12)).toEqual([]);
    expect(filters(13)).not.toEqual([]);
  });

  test('is shown by forty characters', () => {
    const shown = (length: number) => {
      const read = readShoot({ ...EVENING_SHOOT, direction: 'x'.repeat(length) });
      return read.kind === 'wrong' ? read.errors[0]!.text : '';
    };
    expect(shown(40)).not.toContain('…');
    expect(shown(41)).toContain(`${'x'.repeat(40)}…`);
  });
});

test('a mark is looked for in forty characters', () => {
  const nearest = (length: number) => {
    const camera = {
      ...EVENING_SHOOT.camera,
      shutter: { shortest: '1/4000', longest: '6 s'.padEnd(length) },
    };
    const read = readShoot({ ...EVENING_SHOOT, camera });
    return read.kind === 'wrong' && 'nearest' in read.errors[0]! ? read.errors[0].nearest : undefined;
  };
  expect(nearest(38)).toEqual(['6']);
  expect(nearest(42)).toEqual([]);
});
