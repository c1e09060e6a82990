// Faults of what can be typed on the page, told in German with every number they name.

import { englishWarnings, readShoot, sentenceOf } from '@evenfall/core';
import { expect, it } from 'vitest';
import { withValue } from '../../packages/web/src/state/path.js';
import { faultInGerman } from '../../packages/web/src/words/de-faults.js';
import { english } from '../../packages/web/src/words/en.js';
import { eveningWith } from './build.js';

const TYPED: readonly (readonly [path: readonly (string | number)[], values: readonly unknown[]])[] = [
  [
    ['place', 'latitudeDeg'],
    [95, 'north', '52,1', '52 °'],
  ],
  [['format'], ['evenfall-shoot/2']],
  [['place', 'longitudeDeg'], [-200.5]],
  [['place', 'elevationM'], [9001]],
  [['place', 'aboveHorizonM'], [-1]],
  [
    ['place', 'timeZone'],
    ['', 'Mars/Base'],
  ],
  [['date'], ['', '12.9.2026', '2026-02-30', '1700-01-01']],
  [['title'], ['a'.repeat(200)]],
  [['intervalS'], [0, -3, 'often', 0.5, 100_000]],
  [['clipFps'], [0, 2000]],
  [
    ['camera', 'gapS'],
    [-1, 10],
  ],
  [
    ['camera', 'frameMB'],
    [0, '30 MB'],
  ],
  [['camera', 'cardGB'], [-1]],
  [
    ['camera', 'batteryFrames'],
    [0.5, 0],
  ],
  [['camera', 'shutter', 'longest'], ['1/8000']],
  [['camera', 'iso', 'highest'], [50]],
  [['camera', 'bulb'], [true]],
  [
    ['span', 'fromSunAltitudeDeg'],
    [-12, 100],
  ],
  [['span', 'toSunAltitudeDeg'], [8]],
  [['span'], [{ startAt: '2026-09-12T21:00:00+02:00', endAt: '2026-09-12T20:00:00+02:00' }]],
  [['scene', 'viewAltitudeDeg'], [91]],
  [['scene', 'skyShare'], [1.4]],
  [['scene', 'uprightShare'], [1.4]],
  [['scene', 'facing'], [{ azimuthDeg: 400 }]],
  [['look', 'nightEv'], [-20]],
  [['limits', 'toleranceEv'], [0]],
  [['limits', 'largestStepEv'], [11]],
  [['limits', 'secondsBetweenCues'], [-1]],
  [['limits', 'maxFilterChanges'], [1.5]],
  [
    ['limits', 'framesLostPerFilterChange'],
    [2.5, 1001],
  ],
  [['filters', 0, 'stops'], [31]],
  [
    ['filters', 0, 'name'],
    ['', 'none', ' ND'],
  ],
  [
    ['filters', 0],
    [
      { name: 'ND', density: 10 },
      { name: 'ND', factor: 0.5 },
    ],
  ],
  [
    ['readings'],
    [[{ at: '2026-09-12T20:00:00+02:00', ev100: 40 }], [{ at: '2026-09-14T20:00:00+02:00', ev100: 4 }]],
  ],
];

it('tells every fault that typing can make in German, with its numbers', () => {
  const shoot = eveningWith();
  let count = 0;
  for (const [path, values] of TYPED) {
    for (const value of values) {
      const what = `${path.join('.')} ${JSON.stringify(value)}`;
      const read = readShoot(withValue(shoot, path, value));
      expect(read.kind, what).toBe('wrong');
      if (read.kind === 'ok') continue;
      for (const { text } of read.errors) {
        const told = faultInGerman(text);
        count++;
        expect(told, what).not.toBe(text);
        expect(told.replaceAll(/"[^"]*"/g, ''), what).not.toMatch(
          /\b(the|is|not|give|from|to|or|at|and|a|an)\b/,
        );
        const numbers = (s: string) =>
          s
            .replaceAll('−', '-')
            .replaceAll(/(\d),(\d)/g, '$1.$2')
            .match(/-?\d+(\.\d+)?/g) ?? [];
        for (const n of numbers(text)) expect(numbers(told), `${what}: ${told}`).toContain(n);
      }
    }
  }
  expect(count).toBeGreaterThan(45);
});

it('leaves a fault that it does not know as it is', () => {
  expect(faultInGerman('no such key; the nearest is "place"')).toBe('no such key; the nearest is "place"');
});

it('in English the times of what following warns of are said as a clock shows them', () => {
  const at = '2027-03-12T19:36:47+00:00';
  const said = { kind: 'out-of-reach', now: false, frame: 11, at, end: 'dark', worstEv: 0.8 } as const;
  const text = sentenceOf(englishWarnings, 'kind', said);
  expect(english.library.warning({ ...said, text })).toBe(
    'From frame 12 on (19:36) the light is too dark for this kit, by up to 0.8 stops beyond tolerance.',
  );
});
