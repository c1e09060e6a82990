// A zone that comes from coordinates near a border. Clocks by the IANA time zone database: Portugal keeps western European
// time, Spain central, Finland eastern; Belgium, Germany and the Netherlands keep the same one.

import { describe, expect, test } from 'vitest';
import { EVENING, evenfall } from './run.js';

const at = (latitudeDeg: number, longitudeDeg: number, zone = '') =>
  EVENING.replace(/place:.*/s, (rest) => {
    const after = rest.split('\n').findIndex((line, i) => i > 0 && /^\S/.test(line));
    const kept = rest.split('\n').slice(after).join('\n');
    return `place: { latitudeDeg: ${latitudeDeg}, longitudeDeg: ${longitudeDeg}${zone} }\n${kept}`;
  });

describe('coordinates near a border', () => {
  test.each([
    ['Elvas beside Badajoz', 38.88, -7.16, 'Europe/Lisbon (UTC+01:00)', 'Europe/Madrid (UTC+02:00)'],
    ['Tornio beside Haparanda', 65.85, 24.15, 'Europe/Helsinki (UTC+03:00)', 'Europe/Stockholm (UTC+02:00)'],
  ])('%s: both zones are named, with their clocks', async (_, latitudeDeg, longitudeDeg, here, across) => {
    const { status, out, err } = await evenfall(['light', '-'], at(latitudeDeg, longitudeDeg));
    expect({ status, lines: err.trim().split('\n').length }).toEqual({ status: 0, lines: 1 });
    expect(err).toContain(here);
    expect(err).toContain(across);
    // Which of the two the coarse table has is not the point; the page's heading has the one of the warning.
    const [, taken] = /the time zone (\S+) /.exec(err) ?? [];
    expect(out.split('\n')[2]).toContain(taken);
  });

  test.each([
    ['the file says the zone', 38.88, -7.16, ', timeZone: Europe/Lisbon'],
    ['the clocks across agree', 50.85, 5.69, ''],
    ['no border is near', 38.72, -9.14, ''],
    ['at the pole', 90, 0, ''],
  ])('nothing is said where %s', async (_, latitudeDeg, longitudeDeg, zone) => {
    expect((await evenfall(['light', '-'], at(latitudeDeg, longitudeDeg, zone))).err).not.toContain('within');
  });
});

test('the events of a skyline are named in plain words', async () => {
  const { out, err } = await evenfall(['light', '-'], `${at(38.72, -9.14)}scene: { skylineDeg: 8 }\n`);
  expect(err).toBe('');
  expect(out).toMatch(/^sun behind the skyline {2}/m);
  expect(out).not.toContain('-skyline');
});
