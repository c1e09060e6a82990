// A full moon in the plan: what it is worth against the new moon, and that its rising is told.

import { expect, test } from 'vitest';
import { lightTable, planShoot } from '../../../packages/core/src/plan/plan.js';
import type { LightRow } from '../../../packages/core/src/plan/types.js';
import { shootFrom } from '../shoots.js';

// Full moon on 2026-12-24, new moon on 2026-12-09 (almanac); in December the full moon stands high in the north.
const night = (date: string, keys: Record<string, unknown> = {}) =>
  shootFrom({
    date,
    intervalS: 60,
    place: { latitudeDeg: 40, longitudeDeg: -3.7, timeZone: 'Europe/Madrid' },
    span: { startAt: `${date}T17:30:00+01:00`, endAt: `${date}T22:30:00+01:00` },
    scene: { facing: 'away', skyShare: 0, night: 'remote' },
    camera: {
      shutter: { shortest: '1/4000', longest: '30' },
      iso: { lowest: 100, highest: 51200 },
      aperture: '1.4',
    },
    ...keys,
  });

function lastRow(date: string): LightRow {
  const table = lightTable(night(date));
  if (!('rows' in table)) throw new Error(table.infeasible.text);
  return table.rows[table.rows.length - 1];
}

test('under a high full moon a landscape is 7 to 9 stops brighter than under stars alone', () => {
  const [full, none] = [lastRow('2026-12-24'), lastRow('2026-12-09')];
  expect(full.moonAltitudeDeg).toBeGreaterThan(40);
  expect(full.moonLitFraction).toBeGreaterThan(0.98);
  expect(none.moonAltitudeDeg).toBeLessThan(-18);
  expect(full.sunAltitudeDeg).toBeLessThan(-18);
  // Handbooks: full moon high up 0.1 to 0.3 lx (MoonShine: never above 0.36), starlight and airglow 0.0005 to
  // 0.001 lx: log2 of the ratio is 6.6 to 9.2.
  expect(full.moonIlluminanceLx).toBeGreaterThan(0.1);
  expect(full.moonIlluminanceLx).toBeLessThan(0.36);
  expect(none.illuminanceLx).toBeGreaterThan(0.0004);
  expect(none.illuminanceLx).toBeLessThan(0.001);
  expect(full.sceneEv100 - none.sceneEv100).toBeGreaterThan(6.6);
  expect(full.sceneEv100 - none.sceneEv100).toBeLessThan(9.2);
});

test('the plan under the moon asks for less, and says when it rises', () => {
  const noteOf = (date: string) => {
    const plan = planShoot(night(date));
    if (plan.kind !== 'ok') throw new Error(plan.infeasible.text);
    const inside = plan.events.filter(
      ({ name, at }) => name.startsWith('moon') && at >= plan.summary.startAt && at <= plan.summary.endAt,
    );
    const text = plan.notes.map((note) => note.text).filter((t) => t.startsWith('The moon'));
    return { plan, inside, text };
  };
  const full = noteOf('2026-12-24');
  const none = noteOf('2026-12-09');
  expect(full.plan.summary.rampStops).toBeLessThan(none.plan.summary.rampStops - 3.5);
  expect(full.inside.map(({ name }) => name)).toEqual(['moonrise']);
  expect(full.text).toEqual([`The moon rises at ${full.inside[0]!.at.slice(11, 16)}, during the shoot.`]);
  // A moon this new sets with the sun.
  expect(none.inside.map(({ name }) => name)).toEqual(['moonset']);
  expect(none.text).toEqual([`The moon sets at ${none.inside[0]!.at.slice(11, 16)}, during the shoot.`]);
});
