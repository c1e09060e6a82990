// When to go: each evening against its own plan, the moon against astronomy-engine, which computes it by other series.

import * as Astronomy from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { planEvenings } from '../../../packages/core/src/plan/evenings.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { shootOnDate } from '../../../packages/core/src/shoot/on-date.js';
import type { Shoot } from '../../../packages/core/src/shoot/shoot.js';
import { shootFrom } from '../shoots.js';

const shoot = shootFrom({ intervalS: 60, filters: [{ name: 'ND8', factor: 8 }] });

/** Every evening is what planShoot makes of it. */
function hold(shoot: Shoot, options: Parameters<typeof planEvenings>[1]): { can: number; cannot: number } {
  const found = { can: 0, cannot: 0 };
  const { evenings } = planEvenings(shoot, options);
  for (const evening of evenings) {
    const { date, horizonAt, light } = evening;
    const alone = planShoot(shootOnDate(shoot, date));
    if (alone.kind === 'infeasible') {
      const { remedies: _, ...why } = alone.infeasible;
      expect(evening, date).toMatchObject({ kind: 'infeasible', infeasible: why });
      expect(evening).not.toHaveProperty('plan');
      found.cannot++;
      continue;
    }
    const { summary, frames, events } = alone;
    if (evening.kind === 'infeasible') throw new Error(evening.infeasible.text);
    expect(evening).not.toHaveProperty('infeasible');
    expect(summary, date).toMatchObject(evening.plan);
    expect(Object.keys(evening.plan)).toHaveLength(8);
    expect(light!.rampStops).toBeCloseTo(summary.rampStops, 9);
    const name = shoot.direction === 'dusk' ? 'sunset' : 'sunrise';
    expect(events.filter((event) => event.name === name).map(({ at }) => at)).toContain(horizonAt);
    // Frame by frame, the long way round.
    const { at, evPerMin, sunAltitudeDeg } = light!.steepest!;
    const falls = frames.slice(1).map(({ sceneEv100 }, i) => sceneEv100 - frames[i]!.sceneEv100);
    const most = Math.max(...falls.map(Math.abs));
    const first = falls.findIndex((ev) => Math.abs(ev) === most);
    expect(Math.abs(evPerMin)).toBeCloseTo(most, 9);
    expect({ at, sunAltitudeDeg }).toEqual({
      at: frames[first]!.at,
      sunAltitudeDeg: frames[first]!.sunAltitudeDeg,
    });
    found.can++;
  }
  return found;
}

describe('each evening is as its own plan', () => {
  test('of those that can be done', () => {
    expect(hold(shoot, { days: 4 })).toEqual({ can: 4, cannot: 0 });
  });

  test('a dawn, across a change of clocks', () => {
    const dawn = shootFrom({ intervalS: 60, direction: 'dawn', date: '2026-10-24' });
    expect(hold(dawn, { days: 3 })).toEqual({ can: 3, cannot: 0 });
  });

  test('too dark for the kit but where the moon helps: some can be done, some not', () => {
    const camera = { ...shoot.camera, aperture: '4', shutter: { shortest: '1/4000', longest: '15' } };
    const iso = { lowest: 100, highest: 320 };
    const few = shootFrom({ intervalS: 60, date: '2026-09-12', camera: { ...camera, iso } });
    const { can, cannot } = hold(few, { days: 24 });
    expect(Math.min(can, cannot)).toBeGreaterThan(3);
  });

  // Sun and moon north of the polar circle in June.
  test('without a sunset', () => {
    const place = { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' };
    const { evenings } = planEvenings(shootFrom({ place, date: '2026-06-20' }), { days: 2 });
    expect(evenings).toEqual(
      ['2026-06-20', '2026-06-21'].map((date) => ({
        kind: 'infeasible',
        date,
        infeasible: expect.objectContaining({ reason: 'no-span' }),
      })),
    );
  });

  // Late in July the sun sets there after midnight, on the day after the evening's date (Norwegian almanac: 00:21 on the 24th).
  test('a sunset past midnight belongs to the evening before', () => {
    const place = { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' };
    const span = { fromSunAltitudeDeg: 3, toSunAltitudeDeg: -0.9 };
    const late = shootFrom({ place, date: '2026-07-26', span, intervalS: 60 });
    for (const evening of planEvenings(late, { days: 3 }).evenings) {
      if (evening.kind !== 'ok') continue;
      const { date, horizonAt, plan } = evening;
      const middle = (Date.parse(plan.startAt) + Date.parse(plan.endAt)) / 2;
      expect(Math.abs(Date.parse(horizonAt!) - middle), date).toBeLessThan(3 * 3_600_000);
    }
  });

  test('readings count on their own evening alone', () => {
    const [before] = planEvenings(shoot, { days: 1 }).evenings;
    const readings = [{ at: '2026-09-18T20:00:00+02:00', ev100: 12 }];
    const { evenings } = planEvenings({ ...shoot, readings }, { days: 2 });
    expect(evenings[0]).not.toEqual(before);
    expect(evenings[1]).toEqual(planEvenings(shoot, { fromDate: '2026-09-19', days: 1 }).evenings[0]);
  });
});

test('the moon at the end: its phase, which way it goes and where it stands, over a month and more', () => {
  const { latitudeDeg, longitudeDeg } = shoot.place;
  const observer = new Astronomy.Observer(latitudeDeg, longitudeDeg, 0);
  const sparse = shootFrom({
    intervalS: 300,
    crew: 'rig',
    limits: { largestStepEv: 2, toleranceEv: 1 },
  });
  const { evenings } = planEvenings(sparse, { days: 45 });
  const seen = new Set<boolean>();
  for (const evening of evenings) {
    if (evening.kind !== 'ok') throw new Error(evening.infeasible.text);
    const { date, light, plan } = evening;
    const at = new Date(plan.endAt);
    const elongationDeg = Astronomy.MoonPhase(at); // of the moon's longitude from the sun's, 0 to 360
    // Within an hour or two of new and full moon neither word is wrong.
    if (Math.abs(Math.sin(elongationDeg * (Math.PI / 180))) > 0.03) {
      expect(light!.moonWaxing, date).toBe(elongationDeg < 180);
      seen.add(light!.moonWaxing);
    }
    // Topocentric against geocentric: a degree of parallax at most.
    expect(light!.moonLitFraction).toBeCloseTo(
      Astronomy.Illumination(Astronomy.Body.Moon, at).phase_fraction,
      1.6,
    );
    const equator = Astronomy.Equator(Astronomy.Body.Moon, at, observer, true, true);
    const { altitude, azimuth } = Astronomy.Horizon(at, observer, equator.ra, equator.dec);
    expect(Math.abs(light!.moonAltitudeDeg - altitude), date).toBeLessThan(0.1);
    expect(Math.abs(((light!.moonAzimuthDeg - azimuth + 540) % 360) - 180), date).toBeLessThan(0.2);
  }
  expect(seen.size).toBe(2);
});

test('thirty from the date of the shoot, unless others are asked for', () => {
  const quick = { ...shoot, intervalS: 600 };
  const dates = (options?: Parameters<typeof planEvenings>[1]) =>
    planEvenings(quick, options).evenings.map(({ date }) => date);
  expect(dates()).toHaveLength(30);
  expect(dates()[0]).toBe('2026-09-18');
  expect(dates()[29]).toBe('2026-10-17');
  expect(dates({ fromDate: '2028-02-28', days: 3 })).toEqual(['2028-02-28', '2028-02-29', '2028-03-01']);
  expect(dates({ fromDate: '2026-12-31', days: 2 })).toEqual(['2026-12-31', '2027-01-01']);
});

// Samoa went over the date line at the end of 29 December 2011 (tz database).
test('a day that the calendar of the place skips is left out', () => {
  const place = { latitudeDeg: -13.83, longitudeDeg: -171.77, timeZone: 'Pacific/Apia' };
  const apia = shootFrom({ place, date: '2011-12-28', intervalS: 600 });
  const { evenings } = planEvenings(apia, { days: 3 });
  expect(evenings.map(({ date }) => date)).toEqual(['2011-12-28', '2011-12-29', '2011-12-31']);
});

test('what is out of range is named', () => {
  for (const days of [0, 367]) {
    expect(() => planEvenings(shoot, { days })).toThrow(
      new RangeError(`days must be from 1 to 366, got ${days}`),
    );
  }
  expect(() => planEvenings(shoot, { days: 1.5 })).toThrow('days must be a whole number, got 1.5');
  expect(() => planEvenings(shoot, { fromDate: 'soon' })).toThrow(
    'date must be a day of the calendar as YYYY-MM-DD, got "soon"',
  );
});
