// Eclipses in a plan, against astronomy-engine, which predicts them by other series.

import * as Astronomy from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { eclipseAt } from '../../../packages/core/src/sky/eclipse.js';
import { sunAndMoon } from '../../../packages/core/src/sky/sun.js';
import { shootFrom } from '../shoots.js';

const PLACE = { latitudeDeg: 43.37, longitudeDeg: -8.4 };
const observer = new Astronomy.Observer(PLACE.latitudeDeg, PLACE.longitudeDeg, 0);
const magnitudeAt = (atMs: number, body: 'sun' | 'moon') => {
  const found = eclipseAt(sunAndMoon(atMs, PLACE), atMs);
  return found?.body === body ? found.magnitude : 0;
};

test('of the sun: seen at the place from 2020 to 2035, at its height and not an hour outside', () => {
  let search = new Date('2020-01-01T00:00:00Z');
  let seen = 0;
  for (let k = 0; k < 12; k++) {
    const eclipse = Astronomy.SearchLocalSolarEclipse(search, observer);
    search = new Date(eclipse.peak.time.date.getTime() + 10 * 86_400_000);
    if (eclipse.peak.altitude < 1 || eclipse.obscuration < 0.05 || search.getUTCFullYear() > 2035) continue;
    const peakMs = eclipse.peak.time.date.getTime();
    expect(magnitudeAt(peakMs, 'sun'), eclipse.peak.time.toString()).toBeGreaterThan(0.1);
    expect(magnitudeAt(peakMs, 'sun') >= 1).toBe(eclipse.kind === 'total');
    expect(magnitudeAt(eclipse.partial_begin.time.date.getTime() - 300_000, 'sun')).toBe(0);
    expect(magnitudeAt(eclipse.partial_end.time.date.getTime() + 300_000, 'sun')).toBe(0);
    seen++;
  }
  expect(seen).toBeGreaterThan(3);
});

test('of the moon: the umbra on it, total and partial, its ends within eight minutes', () => {
  let eclipse = Astronomy.SearchLunarEclipse(new Date('2020-01-01T00:00:00Z'));
  let seen = 0;
  for (let k = 0; k < 30; k++) {
    const peakMs = eclipse.peak.date.getTime();
    const sky = sunAndMoon(peakMs, PLACE);
    const later = sunAndMoon(peakMs + 3 * 3_600_000, PLACE);
    if (sky.moonAltitudeDeg > 2 && later.moonAltitudeDeg > 2 && eclipse.kind !== 'penumbral') {
      expect(magnitudeAt(peakMs, 'moon') >= 1, eclipse.peak.toString()).toBe(eclipse.kind === 'total');
      const outsideMs = (eclipse.sd_partial + 8) * 60_000;
      expect(magnitudeAt(peakMs + outsideMs, 'moon')).toBe(0);
      expect(magnitudeAt(peakMs + outsideMs - 16 * 60_000, 'moon')).toBeGreaterThan(0);
      seen++;
    }
    eclipse = Astronomy.NextLunarEclipse(eclipse.peak);
  }
  expect(seen).toBeGreaterThan(2);
});

describe('in a plan', () => {
  const notes = (keys: Record<string, unknown>) => {
    const plan = planShoot(shootFrom({ intervalS: 30, ...keys }));
    if (!('notes' in plan)) throw new Error(plan.infeasible.text);
    return plan.notes.filter(({ text }) => text.includes('eclipse') || text.includes('clocks'));
  };

  // NASA and others: totality near A Coruña at 20:28 CEST on 12 August 2026, the partial phases from 19:31 to 21:22.
  test('one that falls into the shoot is a warning with its times', () => {
    const found = notes({
      place: { ...PLACE, timeZone: 'Europe/Madrid' },
      date: '2026-08-12',
      span: { startAt: '2026-08-12T20:00:00+02:00', endAt: '2026-08-12T21:40:00+02:00' },
    });
    expect(found).toMatchObject([{ level: 'warning', kind: 'eclipse', body: 'sun' }]);
    expect(found[0]!.text).toMatch(
      /^A total eclipse of the sun, 20:00 to 21:2[0-3]: daylight falls by 8 to 10 stops while it is total\. The plan does not follow it\.$/,
    );
    expect(notes({})).toEqual([]);
  });

  // IANA: Europe/Madrid goes back at 03:00 on 25 October 2026, to 02:00.
  test('a span over a change of the clocks says so', () => {
    const night = {
      place: { ...PLACE, timeZone: 'Europe/Madrid' },
      date: '2026-10-25',
      span: { startAt: '2026-10-25T02:30:00+02:00', endAt: '2026-10-25T02:30:00+01:00' },
      camera: {
        shutter: { shortest: '1/4000', longest: '25' },
        iso: { lowest: 100, highest: 25600 },
        aperture: '2',
      },
    };
    const found = notes(night);
    expect(found).toMatchObject([{ level: 'caution', kind: 'clocks-change', byMin: -60, frame: 61 }]);
    expect(found[0]!.text).toBe(
      'The clocks go back by 60 minutes during the shoot: from frame 61, 02:00 +01:00, on times are the new ones.',
    );
  });
});
