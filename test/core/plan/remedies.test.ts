// What the remedies of an impossible shoot say. That they cure is held in plan.test.ts and test/core/move.

import { lightTable, planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { shootFrom } from '../shoots.js';

function remediesOf(keys: Record<string, unknown>) {
  const plan = planShoot(shootFrom(keys));
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
  return plan.infeasible.remedies;
}

const camera = (more: object) => ({
  shutter: { shortest: '1/4000', longest: '30' },
  iso: { lowest: 100, highest: 400 },
  aperture: '8',
  ...more,
});

describe('a shutter the interval cuts short', () => {
  // "30" is 32 s, and the gap 1 s: an interval of 20 s leaves it 19 s.
  test('asks for more interval, and not for a longer shutter', () => {
    const iso = { lowest: 100, highest: 200 };
    const [remedy] = remediesOf({ intervalS: 20, camera: camera({ aperture: '4', iso }) });
    expect(remedy).toMatchObject({ change: 'longer-shutter' });
    expect(remedy!.text).toBe('Raise the interval from 20 to 33 s.');
    expect(remedy!.apply.camera?.shutter.longest).toBe('30');
  });

  // "60" is 64 s.
  test('asks for both where its own longest is not enough', () => {
    const [remedy] = remediesOf({ intervalS: 20, camera: camera({}) });
    expect(remedy!.text).toBe('Allow a shutter of 60 s and raise the interval from 20 to 65 s.');
  });

  test('asks for a longer shutter alone where the interval has room', () => {
    const remedies = remediesOf({
      intervalS: 90,
      camera: camera({ shutter: { shortest: '1/4000', longest: '4' } }),
    });
    expect(remedies.find(({ change }) => change === 'longer-shutter')!.text).toMatch(
      /^Allow a shutter of \d+ s\.$/,
    );
  });
});

test('every remedy is one sentence, and says the change it stands for', () => {
  const texts = [
    { intervalS: 20, camera: camera({}) },
    {
      intervalS: 20,
      camera: camera({ iso: { lowest: 100, highest: 200 }, aperture: { widest: '5.6', narrowest: '8' } }),
    },
    {
      intervalS: 60,
      camera: camera({ shutter: { shortest: '1/15', longest: '30' } }),
      span: { fromSunAltitudeDeg: 20, toSunAltitudeDeg: 0 },
    },
    { intervalS: 60, camera: camera({}), limits: { toleranceEv: 0.1, secondsBetweenCues: 600 } },
  ].flatMap((keys) => remediesOf(keys).map(({ text }) => text));
  expect(texts.length).toBeGreaterThan(8);
  for (const text of texts) expect(text).toMatch(/^[A-Z][^.]*(\.\d[^.]*)*\.$/);
});

describe('a shorter span', () => {
  const span = { startAt: '2026-09-18T19:30:00+02:00', endAt: '2026-09-18T22:00:00+02:00' };
  const keys = { intervalS: 60, span, camera: camera({}) };
  const remedy = remediesOf(keys).find(({ change }) => change === 'shorter-span')!;

  test('ends as late as there is a plan: a frame more is one too many', () => {
    const { startAt, endAt } = remedy.apply.span as typeof span;
    expect(startAt).toBe(span.startAt);
    expect('frames' in planShoot(shootFrom({ ...keys, span: { startAt, endAt } }))).toBe(true);
    const later = new Date(Date.parse(endAt) + 60_000).toISOString();
    expect(planShoot(shootFrom({ ...keys, span: { startAt, endAt: later } })).kind === 'infeasible').toBe(
      true,
    );
    expect(remedy.text).toBe(`Shoot only from 19:30 to ${endAt.slice(11, 16)}.`);
  });

  test('begins as early as there is a plan, where it is the beginning that is too dark', () => {
    const morning = { startAt: '2026-09-18T06:00:00+02:00', endAt: '2026-09-18T09:00:00+02:00' };
    const dawn = { ...keys, direction: 'dawn', span: morning };
    const later = remediesOf(dawn).find(({ change }) => change === 'shorter-span')!;
    const { startAt, endAt } = later.apply.span as typeof span;
    expect(endAt).toBe(morning.endAt);
    expect(later.text).toBe(`Shoot only from ${startAt.slice(11, 16)} to 09:00.`);
    const from = (at: string) => planShoot(shootFrom({ ...dawn, span: { startAt: at, endAt } }));
    expect('frames' in from(startAt)).toBe(true);
    expect(from(new Date(Date.parse(startAt) - 60_000).toISOString()).kind === 'infeasible').toBe(true);
  });
});

test('a shorter rest is shorter than the one there is, to a tenth of a second', () => {
  const moves = [{ axis: 'pan', by: { deg: 20 }, gear: { settleS: 2.5, topSpeedDegPerS: 20 } }];
  const span = { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 2 };
  const remedies = remediesOf({ intervalS: 3, span, moves });
  const settle = remedies.find(({ change }) => change === 'shorter-settle');
  const [, given] =
    /^Let the camera settle for ([\d.]+) s after a move, not 2\.5 s\.$/.exec(settle?.text ?? '') ?? [];
  expect(Number(given)).toBeLessThan(2.5);
  expect(settle?.apply.moves?.[0]?.gear.settleS).toBe(Number(given));
  const longer = [{ ...moves[0], gear: { ...moves[0]!.gear, settleS: Number(given) + 0.1 } }];
  expect(planShoot(shootFrom({ intervalS: 3, span, moves: longer })).kind === 'infeasible').toBe(true);
});

test.each([
  [1, '0.333', 120],
  [2, '0.667', 200],
])('larger steps than %i are the least that do, in steps of the dial', (thirds, now, secondsBetweenCues) => {
  const limits = { toleranceEv: 0.6, largestStepEv: thirds / 3, secondsBetweenCues };
  const keys = { intervalS: 20, limits };
  const steps = remediesOf(keys).find(({ change }) => change === 'larger-steps');
  const [to, from] = steps!.text.match(/\d+(\.\d+)?/g)!;
  expect(steps!.text).toBe(`Allow steps of ${to} EV at one cue instead of ${from}.`);
  expect(from).toBe(now);
  const largestStepEv = steps?.apply.limits?.largestStepEv as number;
  expect(Number(to)).toBeCloseTo(largestStepEv, 3);
  expect(Math.round(largestStepEv * 3)).toBeGreaterThan(thirds);
  const withSteps = (ev: number) =>
    planShoot(shootFrom({ ...keys, limits: { ...limits, largestStepEv: ev } }));
  expect('frames' in withSteps(largestStepEv)).toBe(true);
  expect(withSteps(largestStepEv - 1 / 3).kind === 'infeasible').toBe(true);
});

test('a plan whose filters change says how many frames that may spoil', () => {
  const filters = [{ name: 'ND 64', factor: 64 }];
  const plan = planShoot(shootFrom({ intervalS: 20, filters }));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  const affected = plan.frames.filter((frame) => frame.affected).length;
  expect(affected).toBeGreaterThan(0);
  expect(plan.notes.map(({ text }) => text)).toContain(
    `Changing filters may spoil ${affected} frames; they are marked in the plan.`,
  );
});

test('the slope of the light is the EV of a row later less that of a row before, a minute', () => {
  const table = lightTable(shootFrom({ intervalS: 30 }));
  if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
  const { rows } = table;
  for (let i = 1; i < rows.length - 1; i++) {
    expect(rows[i]!.slopeEvPerMin).toBeCloseTo(rows[i + 1]!.sceneEv100 - rows[i - 1]!.sceneEv100, 9);
  }
  // At the ends one side is all there is: half a minute.
  expect(rows[0]!.slopeEvPerMin).toBeCloseTo(2 * (rows[1]!.sceneEv100 - rows[0]!.sceneEv100), 9);
});

test('no look darker than six stops is advised: it would be another picture', () => {
  const kit = (highest: number) =>
    camera({ shutter: { shortest: '1/8000', longest: '8' }, iso: { lowest: 100, highest } });
  const looks = (highest: number) =>
    remediesOf({ intervalS: 60, camera: kit(highest) })
      .filter(({ change }) => change === 'darker-look')
      .map(({ text }) => text);
  // A third of a stop less ISO would ask for a third more.
  expect(looks(125)).toEqual(['Let the night be darker: -6 stops against metered instead of -1.5.']);
  expect(looks(100)).toEqual([]);
});

// Source: sun_day_summary.csv P08, Swiss Ephemeris: at Edinburgh the sun goes from 57.4832° down to -10.6135°.
describe('a span the sun does not reach', () => {
  const answer = (fromSunAltitudeDeg: number, toSunAltitudeDeg: number, direction = 'dusk') => {
    const plan = planShoot(
      shootFrom({
        place: { latitudeDeg: 55.9533, longitudeDeg: -3.1883, timeZone: 'Europe/London' },
        date: '2025-06-21',
        intervalS: 60,
        direction,
        span: { fromSunAltitudeDeg, toSunAltitudeDeg },
      }),
    );
    if (plan.kind !== 'infeasible') throw new Error('a plan exists');
    expect(plan.format).toBe('evenfall-plan/1');
    return plan.infeasible;
  };

  test('is cut a tenth of a degree inside what it does', () => {
    const { reason, text, remedies } = answer(60, -12);
    expect(reason).toBe('no-span');
    expect(text).toMatch(/^On 2025-06-21 the sun .*\.$/);
    expect(remedies).toEqual([
      {
        change: 'shorter-span',
        span: { fromSunAltitudeDeg: 57.3, toSunAltitudeDeg: -10.5 },
        text: 'Shoot a shorter span: from 57.3° to -10.5° of sun altitude.',
        apply: { span: { fromSunAltitudeDeg: 57.3, toSunAltitudeDeg: -10.5 } },
        reserveEv: expect.any(Number),
        reserveText: expect.stringMatching(/^It leaves \d+\.\d stops of reserve\.$/),
      },
    ]);
    expect(answer(20, -12).remedies[0]!.apply.span).toEqual({
      fromSunAltitudeDeg: 20,
      toSunAltitudeDeg: -10.5,
    });
    expect(answer(-12, 60, 'dawn').remedies[0]!.apply.span).toEqual({
      fromSunAltitudeDeg: -10.5,
      toSunAltitudeDeg: 57.3,
    });
  });

  test('has no remedy where nothing of it is reached', () => {
    expect(answer(70, 60).remedies).toEqual([]);
  });
});
