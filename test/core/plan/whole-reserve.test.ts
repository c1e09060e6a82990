// The reserve in a plan: what it says of the kit, of the evening, and in a note.

import { describe, expect, test } from 'vitest';
import { writePlan } from '../../../packages/core/src/files/plan-file.js';
import { wholeEveningsShare } from '../../../packages/core/src/light/weather.js';
import { forecastLight } from '../../../packages/core/src/plan/forecast.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { eveningsHeldShare } from '../../../packages/core/src/plan/reserve.js';
import type { PlanMade } from '../../../packages/core/src/plan/types.js';
import { shootSpan } from '../../../packages/core/src/shoot/span.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { shootFrom } from '../shoots.js';

function made(keys: Record<string, unknown>): PlanMade {
  const plan = planShoot(shootFrom({ intervalS: 20, ...keys }));
  if (plan.kind === 'ok') return plan;
  throw new Error(plan.infeasible.text);
}

const kit = (highest: number, shortest = '1/4000') => ({
  shutter: { shortest, longest: '15' },
  iso: { lowest: 100, highest },
  aperture: '4',
});
const cautions = (plan: PlanMade) => plan.notes.filter(({ text }) => text.includes('this kit runs out of'));

describe('the summary', () => {
  test('one more stop of ISO is one more stop in reserve at the dark end, and nothing at the bright one', () => {
    const [less, more] = [made({ camera: kit(3200) }), made({ camera: kit(6400) })];
    expect(more.summary.reserveDarkEv - less.summary.reserveDarkEv).toBeCloseTo(1, 9);
    expect(more.summary.reserveBrightEv).toBeCloseTo(less.summary.reserveBrightEv, 9);
    expect(more.summary.eveningsHeldShare).toBeGreaterThan(less.summary.eveningsHeldShare);
  });

  // DTU solar station, Lyngby: the share of 1,943 measured evenings that kept within such a pair of reserves.
  test.each([100, 200, 400, 800])(
    'on level ground in daylight it is the share of measured evenings, ISO %d at most',
    (highest) => {
      const plan = made({
        camera: {
          shutter: { shortest: '1/60', longest: '1/4' },
          iso: { lowest: 100, highest },
          aperture: '8',
        },
        span: { fromSunAltitudeDeg: 10, toSunAltitudeDeg: 1 },
        scene: { skyShare: 0 },
      });
      expect(checkPlan(JSON.parse(writePlan(plan)))).toEqual([]);
      const { reserveDarkEv, reserveBrightEv, eveningsHeldShare } = plan.summary;
      expect(reserveBrightEv).toBeLessThan(3);
      expect(eveningsHeldShare).toBeGreaterThan(0.1);
      expect(eveningsHeldShare).toBeLessThan(0.999);
      if (highest === 100) expect(reserveDarkEv).toBeLessThan(3);
    },
  );

  test('in the glow a kit must reach further for as many evenings than on the ground', () => {
    const span = { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 0 };
    const reserve = { darkEv: 3, brightEv: 3 };
    const share = (scene: Record<string, unknown>) => {
      const shoot = shootFrom({ intervalS: 20, span, scene });
      const times = shootSpan(shoot);
      if (times.kind === 'no-span') throw new Error(times.why);
      return eveningsHeldShare(reserve, forecastLight(shoot, times.times));
    };
    // On the ground 79 to 83 of 100 measured evenings; under our own overcast the glow frame stands 5 stops below.
    expect(share({ skyShare: 0 })).toBeCloseTo(0.81, 1);
    expect(share({})).toBeLessThan(0.55);
    // At the zenith cloud takes less than from the ground.
    expect(share({ skyShare: 1, viewAltitudeDeg: 90 })).toBeGreaterThan(share({ skyShare: 0 }));
  });

  test('what binds at night alone is judged by the night: cloud takes less from it than from the day', () => {
    const dark = made({ camera: { ...kit(3200), aperture: '2.8' }, scene: { skyShare: 0, night: 'suburb' } });
    const { reserveDarkEv, eveningsHeldShare } = dark.summary;
    expect(reserveDarkEv).toBeLessThan(3.5);
    expect(dark.frames[dark.frames.length - 1]!.sunAltitudeDeg).toBeLessThan(-11);
    // Cloud brightens a town's night, so hardly an evening lacks light at its end.
    expect(eveningsHeldShare).toBeGreaterThan(wholeEveningsShare(reserveDarkEv, 99, 'unknown'));
  });

  test('a sky that was seen holds more evenings than one that nobody saw, at the same reserve', () => {
    const span = { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 0 };
    const level = (cloud: string) => {
      const shoot = shootFrom({ intervalS: 20, span, scene: { cloud, skyShare: 0 } });
      const times = shootSpan(shoot);
      if (times.kind === 'no-span') throw new Error(times.why);
      return eveningsHeldShare({ darkEv: 2, brightEv: 2 }, forecastLight(shoot, times.times));
    };
    expect(level('thin')).toBeCloseTo(wholeEveningsShare(2, 2, 'cloudy'), 2);
    expect(level('thin')).toBeGreaterThan(level('clear') + 0.1);
  });

  test('after a reading the range of each frame is held against its reserve', () => {
    const town = { camera: kit(1600), scene: { night: 'town' } };
    const before = made(town);
    const { at, sceneEv100 } = before.frames[40]!;
    const readings = [{ at, ev100: sceneEv100 - 0.5 }];
    const after = made({ ...town, readings });
    const better = made({ ...town, camera: kit(6400), readings });
    expect(after.summary.reserveDarkEv).toBeLessThan(before.summary.reserveDarkEv);
    expect(better.summary.eveningsHeldShare).toBeGreaterThan(after.summary.eveningsHeldShare);
    expect(better.summary.eveningsHeldShare).toBeGreaterThan(0.5);
  });

  test('a night alone is judged by its own range', () => {
    const plan = made({
      camera: { ...kit(25600), aperture: '1.4' },
      span: { fromSunAltitudeDeg: -13, toSunAltitudeDeg: -17 },
      readings: [{ at: '2026-09-18T21:30:00+02:00', ev100: -5 }],
    });
    expect(plan.summary.eveningsHeldShare).toBeGreaterThan(0);
    expect(plan.summary.eveningsHeldShare).toBeLessThanOrEqual(1);
    expect(plan.frames.every(({ sunAltitudeDeg }) => sunAltitudeDeg < -12)).toBe(true);
  });
});

describe('the note', () => {
  // The planner itself says what a change is worth: the whole shoot planned again with the kit that the note names.
  const noteOf = (plan: PlanMade) => plan.notes.find(({ kind }) => kind === 'little-reserve');
  const heldWith = (plan: PlanMade, part: Record<string, unknown>) => {
    const again = planShoot({ ...plan.shoot, ...part } as typeof plan.shoot);
    if (again.kind === 'infeasible') throw new Error(again.infeasible.text);
    return again.summary.eveningsHeldShare;
  };

  test('a kit at its limit in the dark says on how many evenings it fails, and which one thing would hold most', () => {
    const plan = made({ camera: kit(800) });
    const { camera } = plan.shoot;
    const note = noteOf(plan);
    expect(note).toMatchObject({ level: 'caution', end: 'dark', direction: 'dusk' });
    const { share, change, moreShare, reserveEv } = note as unknown as Record<string, number>;
    expect(share).toBeCloseTo(1 - plan.summary.eveningsHeldShare, 9);
    expect(reserveEv).toBe(plan.summary.reserveDarkEv);
    // 20 s leave 19 for the shutter: a third of a stop; ISO gives a whole one.
    expect(change).toEqual({ change: 'higher-iso', iso: 1600, fromIso: 800 });
    const withIso = heldWith(plan, { camera: { ...camera, iso: { lowest: 100, highest: 1600 } } });
    expect(moreShare).toBeCloseTo(withIso, 9);
    const others = [
      { camera: { ...camera, shutter: { ...camera.shutter, longest: '20' } } },
      { camera: { ...camera, aperture: '5.6' } },
      ...[3, 6, 10].map((stops) => ({ filters: [{ name: 'ND', stops }] })),
    ];
    for (const other of others) expect(heldWith(plan, other)).toBeLessThanOrEqual(withIso);
    expect(note!.text).toMatch(
      /^On about \d evenings in 10 .* too dark: \d\.\d stops .* Raise the ISO limit from 800 to 1600\. It holds \d+ in 10\.$/,
    );
  });

  test('where the interval has room the longer shutter comes first, for it costs no noise', () => {
    const plan = made({ intervalS: 60, camera: kit(800) });
    const { change, moreShare } = noteOf(plan) as unknown as { change: object; moreShare: number };
    expect(change).toMatchObject({ change: 'longer-shutter', shutter: '30', fromShutter: '15' });
    const { camera } = plan.shoot;
    const longer = { camera: { ...camera, shutter: { ...camera.shutter, longest: '30' } } };
    expect(moreShare).toBeCloseTo(heldWith(plan, longer), 9);
  });

  test('one at its limit in daylight asks for a filter, and speaks of mornings at dawn', () => {
    const plan = made({ camera: kit(3200, '1/1250'), direction: 'dawn' });
    expect(plan.summary.reserveBrightEv).toBeLessThan(plan.summary.reserveDarkEv);
    const { change, moreShare, text } = noteOf(plan) as unknown as {
      change: { change: string; stops: number };
      moreShare: number;
      text: string;
    };
    expect(change.change).toBe('another-filter');
    const held = (stops: number) => heldWith(plan, { filters: [{ name: 'ND', stops }] });
    expect(moreShare).toBeCloseTo(Math.max(held(3), held(6), held(10)), 2);
    // Of those sold, 3, 6 and 10 stops, the first that holds the most, to a thousandth.
    const shares = [3, 6, 10].map((stops) => Math.round(1000 * held(stops)));
    expect(change.stops).toBe([3, 6, 10][shares.indexOf(Math.max(...shares))]);
    expect(text).toMatch(
      /^On about \d mornings in 10 this kit runs out of room at the bright end, .* Bring an ND filter of \d+ stops\. It holds \d+ in 10\.$/,
    );
  });

  test('a kit that holds four evenings in five says nothing', () => {
    const plan = made({ camera: kit(6400) });
    expect(plan.summary.eveningsHeldShare).toBeGreaterThan(0.8);
    expect(plan.summary.eveningsHeldShare).toBeLessThan(0.95);
    expect(cautions(plan)).toEqual([]);
  });
});
