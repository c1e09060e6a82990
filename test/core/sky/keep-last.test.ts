// What was worked out last is not worked out again; anything else is.

import { expect, test, vi } from 'vitest';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { keepLast } from '../../../packages/core/src/sky/keep-last.js';
import { shootFrom } from '../shoots.js';

test('the last answer is kept, for the same arguments alone', () => {
  const asked: string[] = [];
  const joined = keepLast((a: number, b?: number) => {
    asked.push(`${a} ${b}`);
    return asked.length;
  });
  expect([joined(1), joined(1), joined(1, 2), joined(1, 2), joined(2, 2), joined(1)]).toEqual([
    1, 1, 2, 2, 3, 4,
  ]);
  expect(asked).toEqual(['1 undefined', '1 2', '2 2', '1 undefined']);
});

test('what throws is asked again', () => {
  let times = 0;
  const never = keepLast((_: number) => {
    times++;
    throw new Error('never');
  });
  expect(() => never(1)).toThrow('never');
  expect(() => never(1)).toThrow('never');
  expect(times).toBe(2);
});

test('a plan is the same after those of another place, day, lens and sky as it is at first', async () => {
  const camera = (focalMm: number) => ({
    shutter: { shortest: '1/4000', longest: '30' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '4',
    lens: { focalMm },
    sensor: { widthMm: 36, heightMm: 24 },
  });
  const { scene, place } = shootFrom({});
  const shoots = [
    {},
    { place: { ...place, latitudeDeg: place.latitudeDeg + 8 } },
    { place: { ...place, aboveHorizonM: 500 } },
    { date: '2026-03-01' },
    { direction: 'dawn' },
    { camera: camera(85) },
    { scene: { ...scene, viewAltitudeDeg: 30 } },
    { scene: { ...scene, skyShare: 0.7 } },
  ].map((keys) => shootFrom({ intervalS: 60, camera: camera(24), ...keys }));
  for (const shoot of shoots) {
    vi.resetModules();
    const fresh = await import('../../../packages/core/src/plan/plan.js');
    expect(planShoot(shoot)).toEqual(fresh.planShoot(shoot));
  }
});
