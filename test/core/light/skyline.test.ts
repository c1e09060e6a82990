// A skyline before the sun, lamps that come on, bright ground under cloud, and the beam on walls near the horizon.

import { describe, expect, test } from 'vitest';
import { clearAir, refractionDeg } from '../../../packages/core/src/light/air.js';
import { toAndFro } from '../../../packages/core/src/light/cloud.js';
import { type Sky, sceneLight } from '../../../packages/core/src/light/scene.js';
import type { SceneWords } from '../../../packages/core/src/light/scene-words.js';
import { shownShare, skylineToward } from '../../../packages/core/src/light/skyline.js';
import { clearIlluminanceLx } from '../../../packages/core/src/light/sunlight.js';
import { beamOnUpright } from '../../../packages/core/src/light/upright.js';
import { LAMPS, LAMPS_ON, lampsByClock, sceneOf } from '../../../packages/core/src/light/words.js';
import { lightTable } from '../../../packages/core/src/plan/plan.js';
import { shootFrom } from '../shoots.js';
import { expectSmooth } from './smoothness.js';

const WORDS: SceneWords = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 0,
  cloud: 'clear',
  night: 'rural',
  lamps: 'none',
};
const skyAt = (sunAltitudeDeg: number, more: Partial<Sky> = {}): Sky => ({
  sunAltitudeDeg,
  sunAzimuthDeg: 270,
  moonAltitudeDeg: -40,
  moonAzimuthDeg: 90,
  moonPhaseAngleDeg: 180,
  moonDistanceKm: 384_400,
  ...more,
});
const ev = (words: Partial<SceneWords>, sky: Sky) =>
  sceneLight(sceneOf({ ...WORDS, ...words }, 270))(sky).ev100;

describe('a skyline', () => {
  test('is straight between its points and goes right round', () => {
    const at = skylineToward([
      { azimuthDeg: 270, altitudeDeg: 10 },
      { azimuthDeg: 90, altitudeDeg: 0 },
      { azimuthDeg: 300, altitudeDeg: 4 },
    ]);
    expect(at(270)).toBe(10);
    expect(at(285)).toBe(7);
    expect(at(180)).toBe(5);
    expect(at(15)).toBeCloseTo(2, 9); // half of the way from 300 over north to 90
    expect(at(360 + 285)).toBe(7);
    expect(skylineToward([{ azimuthDeg: 0, altitudeDeg: 8 }])(123)).toBe(8);
  });

  // From 1 - sky part of USNO Circular 171: at 7.5° the beam gives half of level ground's light, a stop.
  test('takes the beam from the ground while the sky keeps its light', () => {
    const lost = (h: number) => ev({ skylineDeg: 8 }, skyAt(h)) - ev({}, skyAt(h));
    expect(lost(8.5)).toBe(0);
    expect(lost(7.5)).toBeLessThan(-0.5);
    expect(lost(7.5)).toBeGreaterThan(-1.5);
    expect(Math.abs(lost(-2))).toBeLessThan(0.01);
    const sky = { skyShare: 1 };
    expect(ev({ ...sky, skylineDeg: 8 }, skyAt(7))).toBe(ev(sky, skyAt(7)));
    expect(ev({ cloud: 'overcast', skylineDeg: 8 }, skyAt(7))).toBe(ev({ cloud: 'overcast' }, skyAt(7)));
  });

  test('takes far more from a wall that faced the sun', () => {
    const wall = { uprightShare: 1, facing: 'away' } as const;
    const lost = ev({ ...wall, skylineDeg: 8 }, skyAt(7.5)) - ev(wall, skyAt(7.5));
    expect(lost).toBeLessThan(-2.5);
    expect(lost).toBeGreaterThan(-3.4);
  });

  // The disc is 32 minutes of arc across; at 8° the air lifts it by 0.11°.
  test('does so over the minutes that the disc needs, lifted by the air', () => {
    const centre = 8 - refractionDeg(7.9);
    expect(shownShare(centre, 8)).toBeCloseTo(0.5, 1);
    expect(shownShare(centre + 0.28, 8)).toBe(1);
    expect(shownShare(centre - 0.28, 8)).toBe(0);
    const light = sceneLight(sceneOf({ ...WORDS, uprightShare: 0.5, facing: 'away', skylineDeg: 8 }, 270));
    expectSmooth((h) => light(skyAt(h)).ev100, {
      from: -5,
      to: 12,
      step: 0.005,
      mostPerUnit: 9,
      mostTurn: 0.7,
    });
  });

  test('hides the moon too', () => {
    const moon = { moonAltitudeDeg: 10, moonAzimuthDeg: 120, moonPhaseAngleDeg: 0 };
    expect(ev({ skylineDeg: 15 }, skyAt(-20, moon))).toBeLessThan(ev({}, skyAt(-20, moon)) - 0.5);
  });

  test('names its moments in plan and table, most of an hour before sunset behind eight degrees', () => {
    const shoot = shootFrom({ intervalS: 60, scene: { skylineDeg: 8 } });
    const table = lightTable(shoot);
    if (!('rows' in table)) throw new Error(table.infeasible.text);
    const evening = table.events.filter(({ at }) => at.startsWith('2026-09-18'));
    const at = (name: string) => Date.parse(evening.find((event) => event.name === name)!.at);
    const minutes = (at('sunset') - at('sun-behind-skyline')) / 60_000;
    // At 43.5° north near the equinox the sun falls 0.18° a minute: 8.8° in 49 minutes.
    expect(minutes).toBeGreaterThan(44);
    expect(minutes).toBeLessThan(54);
    expect(at('sun-over-skyline')).toBeGreaterThan(at('sunrise'));
    const level = lightTable(shootFrom({ intervalS: 60 }));
    expect('rows' in level && level.events.filter(({ name }) => name.includes('skyline'))).toEqual([]);
  });
});

describe('lamps', () => {
  // ANSI PH2.7: night street and window displays EV 7 to 8, floodlit buildings 3 to 5, distant views of lighted buildings 2.
  test.each([
    ['street', 7, 8],
    ['floodlit', 3, 5],
    ['skyline', 1.9, 2.1],
  ] as const)('a frame of the word %s meters what the scene table has', (lamps, low, high) => {
    const metered = ev({ lamps, night: 'remote', skyShare: 0.3 }, skyAt(-30));
    expect(metered).toBeGreaterThan(low - 0.05);
    expect(metered).toBeLessThan(high + 0.05);
    expect(LAMPS[lamps].share).toBeLessThanOrEqual(0.5);
  });

  // Common practice: light sensors switch street lamps on between 70 and 20 lx, around 35.
  test('come on in civil twilight, where light sensors switch them', () => {
    const lit = (h: number) =>
      sceneLight(sceneOf({ ...WORDS, lamps: 'street' }, 270))(skyAt(h)).parts.lampsCdM2;
    const all = lit(-10);
    const half = [-3, -3.2, -3.4, -3.6, -3.8, -4, -4.2, -4.4].find((h) => lit(h) >= all / 2)!;
    expect(lit(0)).toBe(0);
    expect(lit(-2.9)).toBe(0);
    expect(lit(-4.7)).toBe(all);
    expect(clearIlluminanceLx(half)).toBeGreaterThan(20);
    expect(clearIlluminanceLx(half)).toBeLessThan(70);
    expect(LAMPS_ON.toSunAltitudeDeg).toBeGreaterThan(-6);
  });

  test('by the sun’s altitude, always, or by the clock', () => {
    const on = { fromSunAltitudeDeg: 2, toSunAltitudeDeg: 1 };
    const lit = (lamps: SceneWords['lamps'], h: number) =>
      sceneLight(sceneOf({ ...WORDS, lamps }, 270))(skyAt(h)).parts.lampsCdM2 > 0;
    expect(lit({ word: 'street', on }, 3)).toBe(false);
    expect(lit({ ev100: 4, share: 0.1, on }, 1)).toBe(true);
    expect(lit({ word: 'street', on: 'always' }, 20)).toBe(true);
    const clock = { word: 'street', on: { fromAt: 'x', overMin: 10 } } as const;
    const dusk = lampsByClock({ lamps: clock }, true, () => 0)!;
    const dawn = lampsByClock({ lamps: clock }, false, () => 0)!;
    expect([-60_000, 300_000, 600_000].map(dusk)).toEqual([0, 0.5, 1]);
    expect([-60_000, 300_000, 600_000].map(dawn)).toEqual([1, 0.5, 0]);
    expect(lampsByClock({ lamps: 'street' }, true, () => 0)).toBeUndefined();
  });

  test('a plan follows the clock', () => {
    const table = (fromAt: string) => {
      const scene = { lamps: { ev100: 12, share: 0.5, on: { fromAt, overMin: 5 } } };
      const made = lightTable(shootFrom({ intervalS: 60, scene }));
      if (!('rows' in made)) throw new Error(made.infeasible.text);
      return made.rows;
    };
    const rows = table('2026-09-18T20:50:00+02:00');
    const at = (clock: string) => rows.find((row) => row.at.slice(11, 16) === clock)!.sceneEv100;
    expect(at('20:49')).toBeLessThan(9);
    expect(at('20:56')).toBeGreaterThan(10.9);
  });
});

// Multiple reflection between ground and a deck that throws 0.6 to 0.7 back: 1 / (1 - 0.75 · 0.65) is 1.95, nearly a stop.
test('snow under cloud is about 0.9 stop brighter than its reflectance tells', () => {
  const fresh = Math.log2(toAndFro(0.75));
  expect(fresh).toBeGreaterThan(0.7);
  expect(fresh).toBeLessThan(1);
  expect(toAndFro(0.18)).toBe(1);
  const under = (reflectance: number, cloud: SceneWords['cloud']) => ev({ reflectance, cloud }, skyAt(5));
  const clear = under(0.75, 'clear') - under(0.18, 'clear');
  expect(under(0.75, 'overcast') - under(0.18, 'overcast') - clear).toBeCloseTo(fresh, 4);
});

// Tables of refraction (Meeus 16; from memory): 28.98' for a true altitude of 0°, 21.7' at 1°, 5.3' at 10°.
test('the air lifts sun and moon', () => {
  expect(refractionDeg(0) * 60).toBeCloseTo(29, 0);
  expect(refractionDeg(1) * 60).toBeCloseTo(21.7, 0);
  expect(refractionDeg(10) * 60).toBeCloseTo(5.3, 0);
});

// Without refraction it was 0.9 stop low at 1° and 1.8 at 0°.
test.each([
  [1, 0.9],
  [0, 1.8],
  [10, 0.02],
])(
  'the beam on a wall is that of the lifted sun: at %d° %d stops more than at the true altitude',
  (h, stops) => {
    const { facing, beam, scattered } = clearAir(h);
    const plain = (facing * Math.cos((h * Math.PI) / 180)) / (beam + scattered);
    expect(Math.abs(Math.log2(beamOnUpright(h, 0) / plain) - stops)).toBeLessThan(0.2);
  },
);
