import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nightOfZenith } from '../../../packages/core/src/light/night.js';
import { type Scene, type Sky, sceneLight } from '../../../packages/core/src/light/scene.js';
import type { SceneWords } from '../../../packages/core/src/light/scene-words.js';
import { clearIlluminanceLx } from '../../../packages/core/src/light/sunlight.js';
import { CLOUDS, knownOf, LAMPS, NIGHTS, SURFACES, sceneOf } from '../../../packages/core/src/light/words.js';
import { expectSmooth } from './smoothness.js';

const WORDS: SceneWords = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 0.5,
  cloud: 'clear',
  night: 'rural',
  lamps: 'none',
};
const NO_MOON = { moonAltitudeDeg: -40, moonAzimuthDeg: 0, moonPhaseAngleDeg: 90, moonDistanceKm: 384_300 };
const MOON = { moonAltitudeDeg: 50, moonAzimuthDeg: 120, moonPhaseAngleDeg: 5, moonDistanceKm: 384_300 };
const WEST = 270;
const scene = (words: Partial<SceneWords> = {}) => sceneOf({ ...WORDS, ...words }, WEST);
const sunAt = (sunAltitudeDeg: number, rest: Partial<Sky> = {}): Sky => ({
  ...NO_MOON,
  sunAltitudeDeg,
  sunAzimuthDeg: WEST,
  ...rest,
});

describe('a scene beyond its ranges is refused by name', () => {
  const sound = scene();
  // The ends belong to the ranges: file-scenes.test.ts.
  test.each<[string, Partial<Scene>, string]>([
    ['a view below the horizon', { viewAltitudeDeg: -0.1 }, 'viewAltitudeDeg must be from 0 to 90, got -0.1'],
    ['a view past the zenith', { viewAltitudeDeg: 90.1 }, 'viewAltitudeDeg must be from 0 to 90, got 90.1'],
    ['more than all sky', { skyShare: 1.1 }, 'skyShare must be from 0 to 1, got 1.1'],
    ['a mirror and more', { reflectance: 1.1 }, 'reflectance must be from 0 to 1, got 1.1'],
    ['more than all upright', { uprightShare: 1.1 }, 'uprightShare must be from 0 to 1, got 1.1'],
    [
      'nine eighths',
      { cloud: { ...sound.cloud, cover: 9 / 8 } },
      'cloud.cover must be from 0 to 1, got 1.125',
    ],
    [
      'cloud that shines',
      { cloud: { ...sound.cloud, stops: 1 } },
      'cloud.stops must be from -20 to 0, got 1',
    ],
    [
      'lamps all over and more',
      { lamps: { luminanceCdM2: 1, share: 2 } },
      'lamps.share must be from 0 to 1, got 2',
    ],
    [
      'lamps that take light',
      { lamps: { luminanceCdM2: -1, share: 1 } },
      'lamps.luminanceCdM2 must be from 0 to',
    ],
    ['a night as bright as day', { night: { ...sound.night, skyCdM2: 101 } }, 'night.skyCdM2 must be from'],
    ['a night of no light', { night: { ...sound.night, groundLx: 0 } }, 'night.groundLx must be from'],
    ['no direction', { viewAzimuthDeg: Number.NaN }, 'viewAzimuthDeg must be finite, got NaN'],
  ])('%s', (_name, change, message) => {
    expect(() => sceneLight({ ...sound, ...change })).toThrow(message);
  });
});

describe('what a meter reads', () => {
  test('from 6° to -14° of sun a clear scene falls by 15 stops or more, whichever way it faces', () => {
    for (const facing of ['toward-sun', 'side', 'away'] as const) {
      const light = sceneLight(scene({ facing, night: 'remote' }));
      expect(light(sunAt(6)).ev100 - light(sunAt(-14)).ev100).toBeGreaterThan(15);
    }
  });

  test('ground alone is its light times reflectance over π, and a grey card at 45° of sun meters EV 15', () => {
    const light = sceneLight(scene({ skyShare: 0, reflectance: 0.18 }))(sunAt(45));
    expect(light.luminanceCdM2).toBeCloseTo((0.18 / Math.PI) * light.illuminanceLx, 9);
    // ANSI PH2.7: typical scene in full sun EV 15.
    expect(Math.abs(light.ev100 - 15)).toBeLessThan(0.3);
  });

  test('the sky alone is the piece of sky the lens points at', () => {
    const light = sceneLight(scene({ skyShare: 1 }))(sunAt(-4));
    expect(light.luminanceCdM2).toBe(light.skyLuminanceCdM2);
    expect(light.ev100).toBeCloseTo(Math.log2(light.skyLuminanceCdM2 * 8), 9);
  });

  test('street lamps of EV 7 on a fifth of the frame hold a night at EV 4.7', () => {
    // A fifth is 2.3 stops less.
    expect(sceneLight(scene({ lamps: { ev100: 7, share: 0.2 } }))(sunAt(-25)).ev100).toBeCloseTo(
      7 - Math.log2(5),
      2,
    );
  });

  test('the moon matters once the sun is below -8° (Palmer & Johnsen 2015), and then by stops', () => {
    const light = sceneLight(scene({ facing: 'away' }));
    const gain = (h: number) => light(sunAt(h, MOON)).ev100 - light(sunAt(h)).ev100;
    expect(gain(-6)).toBeLessThan(0.2);
    expect(gain(-10)).toBeGreaterThan(1);
    expect(gain(-18)).toBeGreaterThan(3);
  });

  test('moonlight is the moon part of the whole', () => {
    const light = sceneLight(scene());
    const [with_, without] = [light(sunAt(-20, MOON)), light(sunAt(-20))];
    expect(with_.illuminanceLx - without.illuminanceLx).toBeCloseTo(with_.moonIlluminanceLx, 9);
    expect(without.moonIlluminanceLx).toBe(0);
  });
});

describe('cloud', () => {
  test('takes its stops from level ground all through dusk', () => {
    for (const [word, stops] of Object.entries({ thin: -0.7, broken: -1.6, overcast: -2.2, heavy: -3.2 })) {
      const light = sceneLight(scene({ cloud: word as 'thin', night: 'remote' }));
      for (const h of [20, 2, -4, -8]) {
        const taken = Math.log2(light(sunAt(h)).illuminanceLx / clearIlluminanceLx(h));
        expect(Math.abs(taken - stops)).toBeLessThan(0.03);
      }
    }
  });

  test('closed, makes every azimuth alike, by sun and by moon', () => {
    const ev = (azimuthDeg: number, sky: Sky) =>
      sceneLight(scene({ cloud: 'overcast', facing: { azimuthDeg } }))(sky).ev100;
    for (const sky of [sunAt(15), sunAt(-3), sunAt(-25, MOON)]) {
      expect(ev(0, sky)).toBe(ev(270, sky));
      expect(ev(135, sky)).toBe(ev(270, sky));
    }
  });

  test('darkens a remote night and brightens a town, but no night that was metered in lux', () => {
    const stops = (night: SceneWords['night']) =>
      Math.log2(
        sceneLight(scene({ night, cloud: 'overcast' }))(sunAt(-30)).illuminanceLx /
          sceneLight(scene({ night }))(sunAt(-30)).illuminanceLx,
      );
    // Jechow et al. 2016: -1.6. Kyba et al. 2011: +1.5 to +3.3.
    expect(stops('remote')).toBeCloseTo(-1.6, 2);
    expect(stops('town')).toBeGreaterThan(1.5);
    expect(stops('town')).toBeLessThan(3.34);
    expect(stops({ groundLx: 0.05 })).toBe(0);
    // A word for a place is its clear sky, so that cloud brightens a city at least as much.
    expect(stops('city')).toBeGreaterThanOrEqual(stops('town'));
    expect(stops('city')).toBeLessThan(3.34);
  });
});

describe('value and slope are continuous', () => {
  const variants: Partial<SceneWords>[] = [
    {},
    { facing: 'side', cloud: 'thin', night: 'town' },
    { facing: 'away', cloud: 'overcast', night: 'suburb', lamps: 'skyline' },
    { skyShare: 1, viewAltitudeDeg: 0, night: 'remote' },
    { skyShare: 1, viewAltitudeDeg: 50, cloud: { eighths: 5 } },
    { skyShare: 0, night: 'city', cloud: 'heavy' },
    { skyShare: 0, uprightShare: 1, facing: 'away' },
    { uprightShare: 0.6, facing: 'side', cloud: 'thin' },
  ];
  test.each(variants)('in sun altitude: %o', (words) => {
    const light = sceneLight(scene(words));
    for (const moon of [NO_MOON, MOON]) {
      const ev = (h: number) => light(sunAt(h, moon)).ev100;
      expectSmooth(ev, { from: -30, to: 89, step: 0.01, mostPerUnit: 2.3, mostTurn: 0.03 });
    }
  });

  test.each(variants)('in the azimuth of the sun and in both of the moon: %o', (words) => {
    const light = sceneLight(scene(words));
    const round = { from: 0, to: 400, step: 0.05, mostPerUnit: 0.12, mostTurn: 0.01 };
    for (const h of [15, 3, -7]) expectSmooth((a) => light(sunAt(h, { sunAzimuthDeg: a })).ev100, round);
    expectSmooth((a) => light(sunAt(-20, { ...MOON, moonAltitudeDeg: 15, moonAzimuthDeg: a })).ev100, round);
    const rise = (a: number) =>
      light(sunAt(-20, { ...MOON, moonAltitudeDeg: a, moonAzimuthDeg: WEST })).ev100;
    expectSmooth(rise, { from: -30, to: 89, step: 0.01, mostPerUnit: 1.4, mostTurn: 0.01 });
  });

  test.each(variants)('in time, from afternoon to a moonlit night at 50° north: %o', (words) => {
    const light = sceneLight(scene(words));
    // Sun and moon on circles of the sky, the moon nine hours behind: altitude and azimuth by spherical trigonometry.
    const at = (hourAngleDeg: number, declinationDeg: number) => {
      const [H, d, p] = [hourAngleDeg, declinationDeg, 50].map((x) => (x * Math.PI) / 180) as [
        number,
        number,
        number,
      ];
      const sin = Math.sin(p) * Math.sin(d) + Math.cos(p) * Math.cos(d) * Math.cos(H);
      const azimuth = Math.atan2(Math.sin(H), Math.cos(H) * Math.sin(p) - Math.tan(d) * Math.cos(p));
      return { altitudeDeg: Math.asin(sin) * (180 / Math.PI), azimuthDeg: azimuth * (180 / Math.PI) + 180 };
    };
    const ev = (minute: number) => {
      const sun = at(30 + minute / 4, -5);
      const moon = at(30 + minute / 4.14 - 135, 8);
      return light({
        sunAltitudeDeg: sun.altitudeDeg,
        sunAzimuthDeg: sun.azimuthDeg,
        moonAltitudeDeg: moon.altitudeDeg,
        moonAzimuthDeg: moon.azimuthDeg,
        moonPhaseAngleDeg: 45 - minute / 120,
        moonDistanceKm: 384_300 + minute,
      }).ev100;
    };
    expectSmooth(ev, { from: 0, to: 600, step: 0.05, mostPerUnit: 0.45, mostTurn: 0.003 });
  });
});

test('more light anywhere never meters darker', () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      number(-25, 40),
      number(0, 1),
      number(0, 0.9),
      number(16, 21.9),
      (h, skyShare, reflectance, mag) => {
        const base: Scene = {
          ...scene({ facing: 'side' }),
          skyShare,
          reflectance,
          night: nightOfZenith(mag),
        };
        const ev = (change: Partial<Scene>, sky: Sky = sunAt(h)) =>
          sceneLight({ ...base, ...change })(sky).ev100;
        expect(ev({ reflectance: reflectance + 0.1 })).toBeGreaterThanOrEqual(ev({}));
        expect(ev({ night: nightOfZenith(mag - 0.5) })).toBeGreaterThanOrEqual(ev({}));
        expect(ev({ lamps: { luminanceCdM2: 10, share: 0.1 } })).toBeGreaterThan(ev({}));
        expect(ev({}, sunAt(h, MOON))).toBeGreaterThan(ev({}) - 1e-12);
      },
    ),
    { seed: 6, numRuns: 40 },
  );
});

describe('words', () => {
  test('facing counts from the sun on the horizon', () => {
    const azimuth = (facing: SceneWords['facing'], horizon = WEST) =>
      sceneOf({ ...WORDS, facing }, horizon).viewAzimuthDeg;
    expect(azimuth('toward-sun')).toBe(270);
    expect(azimuth('side')).toBe(0);
    expect(azimuth('away', 300)).toBe(120);
    expect(azimuth({ azimuthDeg: 33 })).toBe(33);
  });

  test('nothing said about the ground is a grey card; a number stands before a word', () => {
    expect(scene().reflectance).toBe(0.18);
    expect(scene({ surface: 'snow' }).reflectance).toBe(SURFACES.snow);
    expect(scene({ surface: 'snow', reflectance: 0.5 }).reflectance).toBe(0.5);
  });

  test('the tables keep their order: brighter words are brighter', () => {
    const { remote, rural, suburb, town, city } = NIGHTS;
    const skies = [remote, rural, suburb, town, city].map((night) => night.skyCdM2);
    expect([...skies].sort((a, b) => a - b)).toEqual(skies);
    expect(CLOUDS.clear.stops).toBe(0);
    expect(LAMPS.street.ev100).toBeGreaterThan(LAMPS.floodlit.ev100);
    expect(scene({ lamps: { ev100: 3, share: 0.4 } }).lamps).toMatchObject({ luminanceCdM2: 1, share: 0.4 });
    expect(scene({ cloud: { eighths: 8 } }).cloud).toEqual({ stops: -2, cover: 1 });
    expect(scene({ night: { zenithMagArcsec2: 20 } }).night.skyCdM2).toBeCloseTo(0.00108, 5);
  });

  test('what is known follows from the words and from whether anyone looked', () => {
    expect(knownOf(WORDS, false)).toEqual({ cloud: 'unknown', base: CLOUDS.clear });
    expect(knownOf(WORDS, true)).toEqual({ cloud: 'clear', base: CLOUDS.clear });
    expect(knownOf({ cloud: 'heavy' }, true)).toEqual({ cloud: 'cloudy', base: CLOUDS.heavy });
    expect(knownOf({ cloud: { eighths: 8 } }, true).base).toEqual({ stops: -2, cover: 1 });
  });
});

test.each([
  [{ skyShare: 1.2 }, 'skyShare must be from 0 to 1, got 1.2'],
  [{ reflectance: -0.1 }, 'reflectance must be from 0 to 1, got -0.1'],
  [{ uprightShare: 1.1 }, 'uprightShare must be from 0 to 1, got 1.1'],
  [{ viewAltitudeDeg: 95 }, 'viewAltitudeDeg must be from 0 to 90, got 95'],
  [{ lamps: { ev100: 3, share: 2 } }, 'lamps.share must be from 0 to 1, got 2'],
] as const)('%o is refused by name', (words, message) => {
  expect(() => sceneLight(scene(words))).toThrow(message);
});
