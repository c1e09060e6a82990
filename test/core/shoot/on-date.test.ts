import { expect, test } from 'vitest';
import { shootOnDate } from '../../../packages/core/src/shoot/on-date.js';
import { shootFrom } from '../shoots.js';

// Spain: clocks go back on 25 October 2026 and forward on 28 March 2027, at 02:00 (Directive 2000/84/EC).
const place = { latitudeDeg: 43.54, longitudeDeg: -5.66, timeZone: 'Europe/Madrid' };
const shoot = shootFrom({
  place,
  date: '2026-10-20',
  span: { startAt: '2026-10-20T18:30:00+02:00', endAt: '2026-10-21T02:30:00+02:00' },
  intervalS: 60,
  scene: { lamps: { word: 'street', on: { fromAt: '2026-10-20T17:15:00Z', overMin: 5 } } },
  readings: [{ at: '2026-10-20T18:20:00+02:00', ev100: 12 }],
});

test('what a shoot says by the clock is at the same time of another day, over a change of clocks too', () => {
  expect(shootOnDate(shoot, '2026-11-02')).toEqual({
    ...shoot,
    date: '2026-11-02',
    span: { startAt: '2026-11-02T18:30:00+01:00', endAt: '2026-11-03T02:30:00+01:00' },
    scene: {
      ...shoot.scene,
      lamps: { word: 'street', on: { fromAt: '2026-11-02T19:15:00+01:00', overMin: 5 } },
    },
    readings: [],
  });
  // Earlier days too.
  expect(shootOnDate(shoot, '2026-10-19').span).toEqual({
    startAt: '2026-10-19T18:30:00+02:00',
    endAt: '2026-10-20T02:30:00+02:00',
  });
});

test('a time that the clocks jump over is the first after it', () => {
  expect(shootOnDate(shoot, '2027-03-27').span).toEqual({
    startAt: '2027-03-27T18:30:00+01:00',
    endAt: '2027-03-28T03:00:00+02:00',
  });
});

test('on its own date it stays as it is, readings and all', () => {
  expect(shootOnDate(shoot, shoot.date)).toBe(shoot);
});

test('a span by the sun has no clock to move', () => {
  const bySun = shootFrom({ place, scene: { lamps: 'street' } });
  expect(shootOnDate(bySun, '2026-12-01')).toEqual({ ...bySun, date: '2026-12-01' });
});

test('a day that is none is refused', () => {
  expect(() => shootOnDate(shoot, '2027-02-29')).toThrow(
    new RangeError('date must be a day of the calendar as YYYY-MM-DD, got "2027-02-29"'),
  );
  const apia = shootFrom({
    place: { latitudeDeg: -13.83, longitudeDeg: -171.77, timeZone: 'Pacific/Apia' },
    date: '2011-12-29',
  });
  // Samoa went over the date line at the end of 29 December 2011: the 30th was left out (tz database).
  expect(() => shootOnDate(apia, '2011-12-30')).toThrow('date must be a day that Pacific/Apia has');
});
