// No reading that some words for a scene give is impossible, whatever scene the plan was made with. The words and the
// model are our own; the question is whether the limits hold all of them.

import { type SceneWords, type Sky, sceneLight, sceneOf } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { NOTHING_KNOWN } from '../../../packages/core/src/light/band.js';
import { possibleEv100, wordsDriftEv } from '../../../packages/core/src/light/possible.js';
import { addReading, startCorrection } from '../../../packages/core/src/light/reading.js';
import { CLOUDS, LAMPS, NIGHTS, SURFACES } from '../../../packages/core/src/light/words.js';

const AZIMUTH_DEG = 280;
const SUNS_DEG = Array.from({ length: 57 }, (_, i) => -18 + i / 2);
const MOONS = [
  { moonAltitudeDeg: -40, moonAzimuthDeg: 0, moonPhaseAngleDeg: 180, moonDistanceKm: 384_400 },
  // Full and near, in front of the lens.
  { moonAltitudeDeg: 15, moonAzimuthDeg: AZIMUTH_DEG, moonPhaseAngleDeg: 0, moonDistanceKm: 356_500 },
];

const keys = <K extends string>(table: Readonly<Record<K, unknown>>) => Object.keys(table) as K[];

const start = (sunAltitudeDeg: number, forecastEv100: number) =>
  startCorrection({
    forecastEv100At: () => forecastEv100,
    sunAltitudeAt: () => sunAltitudeDeg,
    known: NOTHING_KNOWN,
  });

function everyScene(): SceneWords[] {
  const frame = { viewAltitudeDeg: 15, skyShare: 0.5 };
  return keys(CLOUDS).flatMap((cloud) =>
    (['toward-sun', 'side', 'away'] as const).flatMap((facing) =>
      keys(NIGHTS).flatMap((night) =>
        keys(LAMPS).flatMap((lamps) =>
          keys(SURFACES).map((surface) => ({ ...frame, cloud, facing, night, lamps, surface })),
        ),
      ),
    ),
  );
}

describe('every combination of the words, the sun from +10° to -18°, without a moon and under a full one', () => {
  const scenes = everyScene();
  // By sun and moon, the readings of all scenes.
  const readings = new Map<Sky, number[]>();
  for (const moon of MOONS) {
    for (const sunAltitudeDeg of SUNS_DEG) {
      readings.set({ sunAltitudeDeg, sunAzimuthDeg: AZIMUTH_DEG, ...moon }, []);
    }
  }
  for (const words of scenes) {
    const lightOf = sceneLight(sceneOf(words, AZIMUTH_DEG));
    for (const [sky, list] of readings) list.push(lightOf(sky).ev100);
  }

  test('there are 1,800 of them', () => {
    expect(scenes.length).toBe(5 * 3 * 5 * 4 * 6);
  });

  test('none is impossible under a plan made with any other', () => {
    for (const [{ sunAltitudeDeg }, list] of readings) {
      const [least, most] = [Math.min(...list), Math.max(...list)];
      const planned = [least, list[0]!, list[list.length - 1]!, most];
      for (const forecastEv100 of planned) {
        for (const ev100 of [least, most]) {
          const { refused } = addReading(start(sunAltitudeDeg, forecastEv100), { atMs: 0, ev100 });
          expect(refused, `EV ${ev100}, sun ${sunAltitudeDeg}°`).toEqual([]);
        }
      }
    }
  });

  test('each keeps a stop and more from the limits, for weather beyond the words', () => {
    for (const [{ sunAltitudeDeg }, list] of readings) {
      const { darkEv100, brightEv100 } = possibleEv100(sunAltitudeDeg);
      expect(Math.min(...list) - darkEv100, `sun ${sunAltitudeDeg}°`).toBeGreaterThan(1);
      expect(brightEv100 - Math.max(...list), `sun ${sunAltitudeDeg}°`).toBeGreaterThan(1);
    }
  });

  test('no two of them move apart faster than wrong words are given room for', () => {
    for (const moon of MOONS) {
      const rows = [...readings].filter(([sky]) => sky.moonAltitudeDeg === moon.moonAltitudeDeg);
      for (let i = 1; i < rows.length; i++) {
        const [[a, before], [b, after]] = [rows[i - 1]!, rows[i]!];
        if (b.sunAltitudeDeg > 3) continue;
        const moved = after.map((ev, scene) => ev - before[scene]!);
        const apartEv = Math.max(...moved) - Math.min(...moved);
        expect(apartEv, `sun ${b.sunAltitudeDeg}°`).toBeLessThanOrEqual(
          wordsDriftEv(a.sunAltitudeDeg, b.sunAltitudeDeg),
        );
      }
    }
  });
});

test('the limits lie a stop and a half beyond the darkest and the brightest frame', () => {
  const ev = (words: Partial<SceneWords>, sunAltitudeDeg: number) =>
    sceneLight(
      sceneOf(
        {
          ...{ facing: 'toward-sun', viewAltitudeDeg: 5, skyShare: 0, surface: 'snow' },
          ...{ cloud: 'clear', night: 'city', lamps: 'none', ...words },
        },
        AZIMUTH_DEG,
      ),
    )({ sunAltitudeDeg, sunAzimuthDeg: AZIMUTH_DEG, ...MOONS[0]! }).ev100;
  // A wall over dark water under heavy cloud; below -12° the sun is no part of it.
  for (const sunDeg of [-12, -8, -6, -4, -2, 0, 2, 5, 10, 20, 45, 90]) {
    const least = ev({ cloud: 'heavy', night: 'remote', surface: 'water', uprightShare: 1 }, sunDeg);
    const belowEv = least - possibleEv100(sunDeg).darkEv100;
    expect(Math.abs(belowEv - 1.515), `sun ${sunDeg}°`).toBeLessThan(0.065);
  }
  // The glow of a low sky, snowy walls in the sun, or snow under a sun overhead; where it is darker a lit street is brighter.
  for (const sunDeg of [-4, -2, 0, 2, 5, 20, 45, 90]) {
    const most = Math.max(
      ev({ skyShare: 1 }, sunDeg),
      ev({ facing: 'away', uprightShare: 1 }, sunDeg),
      ev({}, sunDeg),
    );
    expect(Math.abs(possibleEv100(sunDeg).brightEv100 - most - 1.5), `sun ${sunDeg}°`).toBeLessThan(0.2);
  }
});

test('a meter with the ISO of another evening is found out: full daylight at night, night at noon', () => {
  expect(addReading(start(-14, -5), { atMs: 0, ev100: 12 }).refused[0]).toMatchObject({
    reason: 'impossible',
    text: 'EV 12.0 is brighter than any scene with the sun at -14°: 9.0 at most. Check ISO, filter and time.',
  });
  expect(addReading(start(6, 14), { atMs: 0, ev100: 2 }).refused[0]).toMatchObject({ reason: 'impossible' });
});

test('wrong words drift by three stops a degree from 3° to -18° of sun, by eight while lamps come on', () => {
  // The fastest of our scenes move apart by 2.9 a degree in twilight, and by 7.7 between -3° and -4.6°.
  expect(wordsDriftEv(-6, -8)).toBeCloseTo(2 * 3, 12);
  expect(wordsDriftEv(-3, -4.6)).toBeCloseTo(1.6 * 8, 12);
  expect(wordsDriftEv(5, 0)).toBeCloseTo(3 * 3, 12);
  expect(wordsDriftEv(-17, -21)).toBeCloseTo(1 * 3, 12);
});
