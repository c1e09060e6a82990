import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  apertureAv,
  ev100Of,
  ev100ToLuminance,
  fitTime,
  INCIDENT_C,
  illuminanceToEv100,
  isoSv,
  luminanceToEv100,
  REFLECTED_K,
  timeTv,
} from '../../../packages/core/src/exposure/exposure.js';
import { readTable } from '../../reference/csv.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const time = between(1 / 8000, 60);
const held = fc.record({ fNumber: between(1, 32), iso: between(25, 102400) });
const limits = fc.tuple(time, time).map(([a, b]) => ({ minS: Math.min(a, b), maxS: Math.max(a, b) }));

describe('check values', () => {
  // Source: worked_examples.csv W001–W017: ASA PH2.5-1960 (APEX), arithmetic.
  test('APEX values of marked numbers', () => {
    expect(ev100Of({ timeS: 1 / 125, fNumber: 16, iso: 100 })).toBeCloseTo(14.965784, 6);
    expect(apertureAv(5.6)).toBeCloseTo(4.970854, 6);
    expect(isoSv(3.125)).toBe(0);
    expect(isoSv(125)).toBeCloseTo(5.321928, 6);
    expect(ev100Of({ timeS: 20, fNumber: 2.8, iso: 3200 })).toBeCloseTo(-6.351074, 6);
    expect(timeTv(1 / 125)).toBeCloseTo(6.965784, 6); // W027, Exif ShutterSpeedValue
  });

  // Source: worked_examples.csv W017.
  test('a day at f/8, 1/500, ISO 100 and a night at f/2.8, 15 s, ISO 1600 are exactly 20 stops apart', () => {
    const day = ev100Of({ timeS: 1 / 512, fNumber: 8, iso: 100 });
    const night = ev100Of({ timeS: 16, fNumber: Math.sqrt(8), iso: 1600 });
    expect(day - night).toBeCloseTo(20, 9);
  });

  // Source: ev_luminance.csv: K = 12.5, C = 250.
  const rows = readTable('exposure/ev_luminance.csv');
  test.each(rows)('EV $EV_at_ISO100 is $exact_cd_m2_K12.5 cd/m² and $exact_lux_C250 lx', (row) => {
    const ev = Number(row.EV_at_ISO100);
    expect(luminanceToEv100(Number(row['exact_cd_m2_K12.5']))).toBeCloseTo(ev, 9);
    expect(ev100ToLuminance(ev)).toBeCloseTo(Number(row['exact_cd_m2_K12.5']), 9);
    expect(illuminanceToEv100(Number(row.exact_lux_C250))).toBeCloseTo(ev, 9);
  });

  // Source: worked_examples.csv W019, W021, W023: ISO 2720 as quoted there.
  test('the reflected-light equation', () => {
    expect(ev100ToLuminance(15)).toBe(4096);
    const fit = fitTime(luminanceToEv100(4000), { fNumber: 16, iso: 100 }, { minS: 1e-4, maxS: 1 });
    expect(fit).toMatchObject({ kind: 'ok', timeS: expect.closeTo(0.008, 9) });
    expect((Math.PI * REFLECTED_K) / INCIDENT_C).toBeCloseTo(0.15708, 5);
  });
});

describe('properties', () => {
  test('doubling the time lowers ev100 by one', () => {
    fc.assert(
      fc.property(time, held, (timeS, h) => {
        expect(ev100Of({ ...h, timeS }) - ev100Of({ ...h, timeS: 2 * timeS })).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a scene exactly on the short limit does not fall below it', () => {
    fc.assert(
      fc.property(held, limits, (h, l) => {
        const fit = fitTime(ev100Of({ ...h, timeS: l.minS }), h, l);
        expect(fit.kind).toBe('ok');
        if (fit.kind === 'ok') expect(fit.timeS).toBeGreaterThanOrEqual(l.minS);
      }),
    );
  });

  test('moving the limit by shortfallEv is enough, and by less is not', () => {
    const kind = fc.constantFrom('too-dark' as const, 'too-bright' as const);
    fc.assert(
      fc.property(held, limits, between(0.01, 10), kind, (h, l, ev, k) => {
        const dark = k === 'too-dark';
        const scene = dark ? ev100Of({ ...h, timeS: l.maxS }) - ev : ev100Of({ ...h, timeS: l.minS }) + ev;
        const fit = fitTime(scene, h, l);
        if (fit.kind === 'ok') throw new Error('a scene out of reach was met');
        expect(fit.kind).toBe(k);
        expect(fit.shortfallEv).toBeCloseTo(ev, 9);
        const moved = (by: number) =>
          dark ? { ...l, maxS: l.maxS * 2 ** by } : { ...l, minS: l.minS * 2 ** -by };
        expect(fitTime(scene, h, moved(fit.shortfallEv + 1e-9)).kind).toBe('ok');
        expect(fitTime(scene, h, moved(fit.shortfallEv - 1e-3)).kind).toBe(k);
      }),
    );
  });
});

test('errors name the argument and the value', () => {
  const h = { fNumber: 8, iso: 100 };
  expect(() => apertureAv(0)).toThrow(new RangeError('fNumber must be positive and finite, got 0'));
  expect(() => timeTv(Number.NaN)).toThrow(new RangeError('timeS must be positive and finite, got NaN'));
  expect(() => isoSv(0)).toThrow(new RangeError('iso must be positive and finite, got 0'));
  expect(() => ev100ToLuminance(Number.NaN)).toThrow(new RangeError('ev100 must be finite, got NaN'));
  expect(() => fitTime(Number.NaN, h, { minS: 1, maxS: 2 })).toThrow('sceneEv100 must be finite, got NaN');
  expect(() => fitTime(0, h, { minS: 2, maxS: 1 })).toThrow('minS must not exceed maxS, got 2 > 1');
  // Checked at the door, so also when the scene is too dark for minS to matter.
  expect(() => fitTime(-30, h, { minS: 0, maxS: 1 })).toThrow('minS must be positive and finite, got 0');
});
