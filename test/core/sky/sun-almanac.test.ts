// Sun and moon at random places and times, 1950 to 2050, against astronomy-engine 2.1.19 (MIT): VSOP87 and a longer
// lunar series, held by its author within one arcminute of NOVAS and JPL Horizons.

import {
  Body,
  Equator,
  GeoVector,
  Horizon,
  Illumination,
  KM_PER_AU,
  Observer,
  SearchAltitude,
  SearchRiseSet,
} from 'astronomy-engine';
import { expect, test } from 'vitest';
import { type SkyEvent, skyEvents, sunAndMoon } from '../../../packages/core/src/sky/sun.js';
import { type Random, seeded } from '../../reference/random.js';

const [from, to] = [Date.UTC(1950, 0, 1), Date.UTC(2050, 0, 1)];
const DAY_MS = 86_400_000;

/** Anywhere on the sphere with even chances. */
function somewhere(random: Random) {
  return {
    latitudeDeg: (Math.asin(random.between(-1, 1)) * 180) / Math.PI,
    longitudeDeg: random.between(-180, 180),
  };
}

function horizontal(body: Body, atMs: number, observer: Observer) {
  const date = new Date(atMs);
  const { ra, dec } = Equator(body, date, observer, true, true);
  return Horizon(date, observer, ra, dec);
}

/** Angle between two directions, degrees. */
function apart(a: { alt: number; az: number }, b: { altitude: number; azimuth: number }): number {
  const rad = Math.PI / 180;
  const half = (x: number) => Math.sin((x * rad) / 2) ** 2;
  const h =
    half(a.alt - b.altitude) + Math.cos(a.alt * rad) * Math.cos(b.altitude * rad) * half(a.az - b.azimuth);
  return (2 * Math.asin(Math.sqrt(h))) / rad;
}

test('positions: the sun within 0.011 degree, the moon within 0.005, anywhere from 1950 to 2050', () => {
  const random = seeded(20);
  const worst = { sunDeg: 0, moonDeg: 0, distanceKm: 0, phaseDeg: 0 };
  for (let i = 0; i < 4000; i++) {
    const atMs = Math.floor(random.between(from, to));
    const { latitudeDeg, longitudeDeg } = somewhere(random);
    const observer = new Observer(latitudeDeg, longitudeDeg, 0);
    const sky = sunAndMoon(atMs, { latitudeDeg, longitudeDeg });
    const sun = { alt: sky.sunAltitudeDeg, az: sky.sunAzimuthDeg };
    const moon = { alt: sky.moonAltitudeDeg, az: sky.moonAzimuthDeg };
    worst.sunDeg = Math.max(worst.sunDeg, apart(sun, horizontal(Body.Sun, atMs, observer)));
    worst.moonDeg = Math.max(worst.moonDeg, apart(moon, horizontal(Body.Moon, atMs, observer)));

    const centreKm = GeoVector(Body.Moon, new Date(atMs), true).Length() * KM_PER_AU;
    worst.distanceKm = Math.max(worst.distanceKm, Math.abs(sky.moonDistanceKm - centreKm));
    const { phase_angle } = Illumination(Body.Moon, new Date(atMs));
    worst.phaseDeg = Math.max(worst.phaseDeg, Math.abs(sky.moonPhaseAngleDeg - phase_angle));
  }
  expect(worst.sunDeg).toBeLessThan(0.011);
  expect(worst.moonDeg).toBeLessThan(0.005);
  expect(worst.distanceKm).toBeLessThan(30);
  // Theirs is seen from the Earth's centre; the moon's parallax is at most 1.03 degree.
  expect(worst.phaseDeg).toBeLessThan(1.04);
});

const SUN_LEVELS: readonly (readonly [dawn: SkyEvent, dusk: SkyEvent, altitudeDeg: number])[] = [
  ['sunrise', 'sunset', -50 / 60],
  ['civil-dawn', 'civil-dusk', -6],
  ['nautical-dawn', 'nautical-dusk', -12],
  ['astronomical-dawn', 'astronomical-dusk', -18],
];

/** All events of a stretch, found by the other engine's own search. */
function almanac(startMs: number, endMs: number, observer: Observer) {
  const found: { name: SkyEvent; atMs: number; body: Body }[] = [];
  const collect = (name: SkyEvent, body: Body, next: (afterMs: number) => { date: Date } | null) => {
    for (let afterMs = startMs; ; ) {
      const atMs = next(afterMs)?.date.valueOf();
      if (atMs === undefined || atMs >= endMs) return;
      found.push({ name, atMs, body });
      afterMs = atMs + 60_000;
    }
  };
  for (const [dawn, dusk, altitudeDeg] of SUN_LEVELS) {
    for (const direction of [1, -1]) {
      collect(direction === 1 ? dawn : dusk, Body.Sun, (afterMs) =>
        SearchAltitude(Body.Sun, observer, direction, new Date(afterMs), 2, altitudeDeg),
      );
    }
  }
  for (const direction of [1, -1]) {
    collect(direction === 1 ? 'moonrise' : 'moonset', Body.Moon, (afterMs) =>
      SearchRiseSet(Body.Moon, observer, direction, new Date(afterMs), 2),
    );
  }
  return found;
}

test('events: none missed, none invented, each within 5 s or the time the body takes for 0.02 degree', () => {
  const random = seeded(21);
  let matched = 0;
  let grazing = 0;
  for (let i = 0; i < 150; i++) {
    const startMs = Math.floor(random.between(from, to));
    const endMs = startMs + 2 * DAY_MS;
    const place = somewhere(random);
    const observer = new Observer(place.latitudeDeg, place.longitudeDeg, 0);
    const { events, missing } = skyEvents(startMs, endMs, place);
    const theirs = almanac(startMs, endMs, observer);
    const within = (name: SkyEvent, atMs: number, others: readonly { name: SkyEvent; atMs: number }[]) => {
      const body = name.startsWith('moon') ? Body.Moon : Body.Sun;
      const altitude = (t: number) => horizontal(body, t, observer).altitude;
      const degPerMs = Math.abs(altitude(atMs + 30_000) - altitude(atMs - 30_000)) / 60_000;
      const toleranceMs = Math.max(5000, 0.02 / degPerMs);
      const near = others.some((other) => other.name === name && Math.abs(other.atMs - atMs) <= toleranceMs);
      // A turn within 0.02 degree of the level, or an event at the very end of the stretch, may fall either way.
      const mayDiffer =
        degPerMs < 0.02 / 600_000 || atMs - startMs < toleranceMs || endMs - atMs < toleranceMs;
      if (near) matched++;
      else if (mayDiffer) grazing++;
      expect(near || mayDiffer, `${name} at ${new Date(atMs).toISOString()}, ${JSON.stringify(place)}`).toBe(
        true,
      );
    };
    for (const { name, atMs } of theirs) within(name, atMs, events);
    for (const { name, atMs } of events) within(name, atMs, theirs);
    for (const { name } of missing) expect(events.map((event) => event.name)).not.toContain(name);
    expect(new Set([...events, ...missing].map(({ name }) => name)).size).toBe(10);
    for (let j = 1; j < events.length; j++) {
      expect(events[j]!.atMs).toBeGreaterThanOrEqual(events[j - 1]!.atMs);
    }
  }
  expect(matched).toBeGreaterThan(4000);
  expect(grazing).toBeLessThan(20);
});
