// Whatever a shoot may say, all that comes of it is finite and reads back: plan, light table, evenings, tables, calendar.

import {
  lightTable,
  type Plan,
  planEvenings,
  planShoot,
  readPlan,
  readShoot,
  writeCalendar,
  writeCuesCsv,
  writeEvenings,
  writeEveningsCsv,
  writeFramesCsv,
  writeLight,
  writePlan,
} from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seedOf } from '../../reference/cases.js';
import { published, schemaReader } from '../../reference/json-schema.js';
import { sliceOf } from '../../reference/long.js';

const script = new URL('../../../packages/tools/any-shoot.mjs', import.meta.url).href;
const { shoots } = (await import(script)) as { shoots(options?: object): fc.Arbitrary<object> };

/** Where a value holds a number that is none. */
function endless(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => endless(each, `${path}.${key}`));
}

function whole(plan: Plan): void {
  expect(endless(plan)).toEqual([]);
  const read = readPlan(JSON.parse(writePlan(plan)));
  expect(read.kind === 'wrong' ? read.errors.map(({ message }) => message) : []).toEqual([]);
  expect(read.kind === 'ok' && writePlan(read.plan) === writePlan(plan)).toBe(true);
  if (plan.kind === 'infeasible') return;
  for (const text of [writeFramesCsv(plan), writeCuesCsv(plan), writeCalendar(plan)]) {
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  }
}

const isRight = { light: schemaReader(published('light')), evenings: schemaReader(published('evenings')) };

test('of any shoot that is read', () => {
  let made = 0;
  fc.assert(
    fc.property(shoots(), (file) => {
      const read = readShoot(file);
      if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
      const { shoot } = read;
      const plan = planShoot(shoot);
      whole(plan);
      made += plan.kind === 'ok' ? 1 : 0;
      const light = lightTable(shoot);
      if (light.kind !== 'infeasible') expect(isRight.light(JSON.parse(writeLight(light)))).toEqual([]);
      const evenings = planEvenings(shoot, { days: 2 });
      expect(endless(evenings)).toEqual([]);
      expect(isRight.evenings(JSON.parse(writeEvenings(evenings)))).toEqual([]);
      expect(writeEveningsCsv(evenings)).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { seed: seedOf(22), numRuns: sliceOf(2000, 60) },
  );
  expect(made).toBeGreaterThan(5);
});

// What a person reported: each was read, and gave an infinity, an error or no end.
const PAN = { axis: 'pan', by: { deg: 30 }, gear: { topSpeedDegPerS: 5 } };
const SLIDE = { axis: 'slide', by: { m: 1 }, gear: { topSpeedMPerS: 0.1 } };
const OPTICS = { lens: { focalMm: 24 }, sensor: { widthMm: 36, heightMm: 24 } };
const CAMERA = {
  shutter: { shortest: '1/4000', longest: '4' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '4',
};
const SHOOT = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 43.54, longitudeDeg: -5.66, timeZone: 'Europe/Madrid' },
  date: '2026-09-18',
  intervalS: 30,
  camera: CAMERA,
};

test.each([
  ['a frame of next to nothing', { camera: { ...CAMERA, frameMB: 1e-303, cardGB: 64 } }],
  ['a card of next to nothing', { camera: { ...CAMERA, frameMB: 30, cardGB: 1e-320 } }],
  ['a clip of next to no frames', { clipFps: 1e-320 }],
  ['next to no charge', { camera: { ...CAMERA, batteryFrames: 5, coldFactor: 5e-324 } }],
  ['next to no turn', { moves: [{ ...PAN, by: { deg: 5e-324 } }] }],
  [
    'a motor step of next to nothing',
    { moves: [{ ...PAN, gear: { ...PAN.gear, smallestStepDeg: 5e-324 } }] },
  ],
  ['a speed of next to nothing', { moves: [{ ...PAN, gear: { topSpeedDegPerS: 5e-324 } }] }],
  [
    'an acceleration of next to nothing',
    { moves: [{ ...PAN, gear: { ...PAN.gear, accelerationDegPerS2: 5e-324 } }] },
  ],
  ['a thing at the lens', { moves: [{ ...SLIDE, nearestM: 1e-9 }] }],
  ['a tolerance of next to nothing', { limits: { toleranceEv: 5e-324 } }],
])('%s is refused', (_name, keys) => {
  expect(readShoot({ ...SHOOT, ...keys }).kind).toBe('wrong');
});

// The same at the ends of the ranges. By the clock of the test: a second is far more than any of them takes.
test.each([
  ['a frame', { camera: { ...CAMERA, frameMB: 0.001, cardGB: 1_000_000 } }],
  ['a clip', { clipFps: 0.1 }],
  ['a charge', { camera: { ...CAMERA, batteryFrames: 1, coldFactor: 0.01 } }],
  ['a turn', { moves: [{ ...PAN, by: { deg: 1e-6 }, gear: { ...PAN.gear, smallestStepDeg: 90 } }] }],
  ['a motor step', { moves: [{ ...PAN, by: { deg: 3600 }, gear: { ...PAN.gear, smallestStepDeg: 1e-6 } }] }],
  ['speed', { moves: [{ ...PAN, gear: { topSpeedDegPerS: 0.0001, accelerationDegPerS2: 0.0001 } }] }],
  [
    'a slide of 10 km past a thing at the lens',
    {
      camera: { ...CAMERA, ...OPTICS },
      clipFps: 1000,
      moves: [{ ...SLIDE, by: { m: 10_000 }, nearestM: 0.01, mode: 'continuous' }],
    },
  ],
  [
    'a slide of 10 km against a pan',
    {
      camera: { ...CAMERA, ...OPTICS },
      clipFps: 240,
      moves: [
        { ...PAN, by: { deg: 3600 }, mode: 'continuous', ease: 'quintic' },
        { ...SLIDE, by: { m: -10_000 }, nearestM: 0.01, mode: 'continuous', ease: { trapezoid: 0.3 } },
      ],
    },
  ],
])('the least or most of %s is planned at once, whole', (_name, keys) => {
  const read = readShoot({ ...SHOOT, ...keys });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  const sinceMs = process.cpuUsage().user;
  whole(planShoot(read.shoot));
  expect((process.cpuUsage().user - sinceMs) / 1e6).toBeLessThan(8);
});
