import { readShoot, type Shoot, writeShoot } from '@evenfall/core';
import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import type { CheckedFile } from '../../../packages/core/src/files/shoot-schema.js';
import { shootArbitrary } from '../../../packages/tools/any-shoot.mjs';
import { casesOf, seedOf } from '../../reference/cases.js';
import { pathsOf, replaced } from './paths.js';
import { LEAST, shootOf } from './sample.js';

const SEED = 20260912;

describe('defaults', () => {
  // Source: the tables of docs/formats.md, written out by hand.
  test('the least file gets every default', () => {
    expect(shootOf(LEAST)).toEqual({
      format: 'evenfall-shoot/1',
      title: '',
      place: { latitudeDeg: 57.05, longitudeDeg: 9.92 },
      date: '2026-09-12',
      direction: 'dusk',
      span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
      intervalS: 6,
      clipFps: 24,
      camera: {
        stepsPerStop: 3,
        shutter: { shortest: '1/4000', longest: '4' },
        bulb: false,
        iso: { lowest: 100, highest: 3200 },
        aperture: '5.6',
        gapS: 1,
        darkFrame: false,
      },
      filters: [],
      stackFilters: false,
      scene: {
        facing: 'toward-sun',
        viewAltitudeDeg: 15,
        skyShare: 0.5,
        reflectance: 0.18,
        cloud: 'clear',
        night: 'rural',
        lamps: 'none',
      },
      look: { nightEv: -1.5 },
      readings: [],
      crew: 'hand',
      limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 60, framesLostPerFilterChange: 3 },
      moves: [],
    });
  });

  test('a dawn runs the other way', () => {
    expect(shootOf({ ...LEAST, direction: 'dawn' }).span).toEqual({
      fromSunAltitudeDeg: -12,
      toSunAltitudeDeg: 6,
    });
  });

  test('a rig turns one dial step at a time, as often as it likes', () => {
    expect(shootOf({ ...LEAST, crew: 'rig' }).limits).toEqual({
      toleranceEv: 1 / 3,
      largestStepEv: 1 / 3,
      secondsBetweenCues: 0,
      framesLostPerFilterChange: 3,
    });
    const halves = { ...LEAST.camera, stepsPerStop: 2, shutter: { shortest: '1/4000', longest: '4' } };
    expect(shootOf({ ...LEAST, crew: 'rig', camera: halves }).limits.toleranceEv).toBe(1 / 2);
  });

  // 15 s to unscrew a filter in the dark and turn two dials: our choice.
  test.each([
    [60, 2],
    [15, 2],
    [7.5, 2],
    [7.4, 3],
    [6, 3],
    [5, 3],
    [4.9, 4],
    [2, 8],
    [1.05, 15],
  ])('at an interval of %f s a filter change may spoil %i frames', (intervalS, lost) => {
    const camera = { ...LEAST.camera, gapS: 0.5 };
    expect(shootOf({ ...LEAST, camera, intervalS }).limits.framesLostPerFilterChange).toBe(lost);
  });

  test('what the file says stands against any default', () => {
    const { limits, scene } = shootOf({
      ...LEAST,
      crew: 'rig',
      limits: { secondsBetweenCues: 20 },
      scene: { surface: 'snow' },
    });
    expect(limits.secondsBetweenCues).toBe(20);
    expect(scene.surface).toBe('snow');
    expect(scene.reflectance).toBeUndefined();
  });
});

test('marks may be written as numbers where the number is the mark', () => {
  const { camera } = shootOf({
    ...LEAST,
    intervalS: 40,
    camera: { shutter: { shortest: 0.5, longest: 30 }, iso: { lowest: 100, highest: 200 }, aperture: 5.6 },
  });
  expect(camera.shutter).toEqual({ shortest: '0.5', longest: '30' });
  expect(camera.aperture).toBe('5.6');
});

// RFC 8259 leaves it open what a character is; JSON Schema (2020-12, validation, 6.3.1) counts those of Unicode.
test('an emoji is one character of a title', () => {
  expect(shootOf({ ...LEAST, title: '🌇'.repeat(120) }).title).toHaveLength(240);
  expect(() => shootOf({ ...LEAST, title: '🌇'.repeat(121) })).toThrow(/at most 120 characters/);
});

test('a longest shutter that does not fit inside the interval is no fault of the file', () => {
  const longest = { shortest: '1/4000', longest: '60' };
  expect(shootOf({ ...LEAST, camera: { ...LEAST.camera, shutter: longest } }).camera.shutter.longest).toBe(
    '60',
  );
});

test('a limit on filter changes makes no work where there are no filters', () => {
  const many = { ...LEAST, intervalS: 2, span: { fromSunAltitudeDeg: 30, toSunAltitudeDeg: -20 } };
  expect(shootOf({ ...many, limits: { maxFilterChanges: 100 } }).limits.maxFilterChanges).toBe(100);
  const filters = [{ name: 'A', stops: 6 }];
  expect(() =>
    shootOf({
      ...many,
      span: { fromSunAltitudeDeg: 20, toSunAltitudeDeg: -20 },
      filters,
      limits: { maxFilterChanges: 100 },
    }),
  ).toThrow(/too many to plan/);
});

test('an interval of exactly shutter plus gap is enough', () => {
  const camera = { ...LEAST.camera, shutter: { shortest: '4', longest: '4' } };
  expect(shootOf({ ...LEAST, intervalS: 5, camera }).intervalS).toBe(5);
});

test('the schema has every key of a shoot', () => {
  expectTypeOf<keyof Shoot>().toEqualTypeOf<keyof CheckedFile>();
  expectTypeOf<keyof Shoot['camera']>().toEqualTypeOf<keyof CheckedFile['camera']>();
  expectTypeOf<keyof Shoot['scene']>().toEqualTypeOf<keyof CheckedFile['scene']>();
  expectTypeOf<keyof Shoot['limits']>().toEqualTypeOf<keyof CheckedFile['limits']>();
  expectTypeOf<Shoot['scene']['surface']>().toEqualTypeOf<CheckedFile['scene']['surface']>();
});

describe('properties', () => {
  test('a valid shoot reads, holds what it said, and reads back the same from its own text', () => {
    fc.assert(
      fc.property(shootArbitrary, (file) => {
        const shoot = shootOf(file);
        expect(shoot).toMatchObject(file);
        const text = writeShoot(shoot);
        expect(text.endsWith('}\n')).toBe(true);
        const again = shootOf(JSON.parse(text));
        expect(again).toEqual(shoot);
        expect(writeShoot(again)).toBe(text);
      }),
      { seed: seedOf(SEED), numRuns: casesOf(500) },
    );
  });

  test('text does not depend on the order in which keys were read', () => {
    const reversed = (value: object): object =>
      Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, each]) => [
            key,
            typeof each === 'object' && !Array.isArray(each) ? reversed(each) : each,
          ]),
      );
    fc.assert(
      fc.property(shootArbitrary, (file) => {
        expect(writeShoot(shootOf(reversed(file)))).toBe(writeShoot(shootOf(file)));
      }),
      { seed: seedOf(SEED), numRuns: casesOf(200) },
    );
  });

  test('no garbage makes it throw, and every message is one line', () => {
    let wrong = 0;
    const garbage = fc.oneof(
      fc.anything({
        withBigInt: true,
        withDate: true,
        withMap: true,
        withNullPrototype: true,
        withTypedArray: true,
      }),
      // A valid shoot with one value anywhere replaced by anything.
      fc.tuple(shootArbitrary, fc.nat(), fc.anything({ withNullPrototype: true })).map(([file, at, what]) => {
        const paths = pathsOf(file);
        return replaced(file, paths[at % paths.length]!, what);
      }),
    );
    fc.assert(
      fc.property(garbage, (value) => {
        const read = readShoot(value, () => ({ line: 1 }), 'x.yaml');
        if (read.kind === 'ok') return;
        wrong++;
        expect(read.errors.length).toBeGreaterThan(0);
        for (const { message } of read.errors) {
          expect(message).toMatch(/^x\.yaml:1: /);
          expect(message).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
        }
      }),
      { seed: seedOf(SEED), numRuns: casesOf(2000) },
    );
    expect(wrong).toBeGreaterThan(1000);
  });
});
