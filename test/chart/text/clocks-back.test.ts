// A night on which the clocks go back: whatever a person reads of an hour that comes twice has its offset.
//
// Source: dst_transitions_2025.csv, IANA tz database 2026f: at 2025-04-05T16:00Z Sydney's clocks go from +11:00 to
// +10:00, and 02:00 to 03:00 comes twice, from 15:00Z to 17:00Z. By hand, every time from then to then has its offset and
// no other has. The place is one at which day breaks then, so that there are cues before, in and after those hours.

import { expect, test } from 'vitest';
import { cardPages } from '../../../packages/chart/src/card/pages.js';
import { cardText } from '../../../packages/chart/src/card/text.js';
import { lightChart } from '../../../packages/chart/src/plot/light.js';
import { planChart } from '../../../packages/chart/src/plot/plan.js';
import { calendarTexts } from '../../../packages/chart/src/text/calendar.js';
import { noteText } from '../../../packages/chart/src/text/sentences.js';
import { wordsFor } from '../../../packages/chart/src/text/words.js';
import { lightText } from '../../../packages/cli/src/light-text.js';
import { planText } from '../../../packages/cli/src/plan-text.js';
import { speech } from '../../../packages/cli/src/words/words.js';
import { changesByClock } from '../../../packages/core/src/plan/cues.js';
import { lightTable, planShoot } from '../../../packages/core/src/plan/plan.js';
import type { PlanMade } from '../../../packages/core/src/plan/types.js';
import { shootFrom } from '../../core/shoots.js';
import { readTable } from '../../reference/csv.js';

const PLACE = { latitudeDeg: 40, longitudeDeg: -150, timeZone: 'Australia/Sydney' };
const FROM_MS = Date.parse('2025-04-05T15:00:00Z');
const TO_MS = Date.parse('2025-04-05T17:00:00Z');

const shoot = shootFrom({
  place: PLACE,
  date: '2025-04-06',
  direction: 'dawn',
  camera: {
    shutter: { shortest: '1/8000', longest: '4' },
    iso: { lowest: 100, highest: 25600 },
    aperture: '2',
  },
  span: { startAt: '2025-04-06T01:45:00+11:00', endAt: '2025-04-06T03:10:00+10:00' },
});
const made = (of = shoot): PlanMade => {
  const plan = planShoot(of);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
};
const plan = made();
const changes = changesByClock(plan);
const read = (at: string, length = 19) => {
  const ms = Date.parse(at);
  const twice = ms >= FROM_MS && ms < TO_MS;
  return twice
    ? `${at.slice(11, length)} ${ms < Date.parse('2025-04-05T16:00:00Z') ? '+11:00' : '+10:00'}`
    : at.slice(11, length);
};
const plain = { bold: String, dim: String, red: String, yellow: String, columns: 80 };

test('the table holds the change, and the shoot has cues before, in and after the hours that come twice', () => {
  const row = readTable('sun/dst_transitions_2025.csv').find(({ zone }) => zone === PLACE.timeZone);
  expect(row).toMatchObject({
    utc_instant: '2025-04-05T16:00:00Z',
    offset_before: '+11:00',
    offset_after: '+10:00',
  });
  expect(plan.clocksBack).toEqual({ at: '2025-04-06T02:00:00+10:00', byMin: 60 });
  const kinds = new Set(changes.map(({ at }) => read(at).slice(8)));
  expect(kinds).toEqual(new Set(['', ' +11:00', ' +10:00']));
});

test('on the plan as text, and of its light', () => {
  const text = planText(plan, [], speech(), plain);
  expect(text).toContain(`${read(plan.summary.startAt)} to ${read(plan.summary.endAt)}, ${PLACE.timeZone}\n`);
  const table = text
    .slice(text.indexOf('clock    '))
    .split('\n')
    .slice(1, 1 + changes.length);
  expect(table.map((line) => line.slice(0, 15).trim())).toEqual(changes.map(({ at }) => read(at)));
  expect(text).toMatch(/civil dawn\s+02:\d\d\s+\+11:00, sunrise\s+02:\d\d\s+\+11:00/);
  const light = lightTable(shoot);
  if (light.kind === 'infeasible') throw new Error(light.infeasible.text);
  const lines = lightText(light, shoot, speech(), plain);
  expect(lines).toMatch(/^02:\d\d:\d\d \+11:00 /m);
  expect(lines).toMatch(/^02:\d\d:\d\d \+10:00 /m);
  expect(lightChart(light)).toContain('>clocks back 02:00 +10:00<');
});

test('on the card, on paper and in plain text', () => {
  const text = cardText(plan);
  for (const { at } of changes) expect(text).toContain(`[ ] ${read(at)}  cue `);
  expect(text).toContain('    02:00:00 +10:00  clocks back\n');
  const drawn = cardPages(plan).join('');
  // The digits are big and the offset beside them small: two texts.
  expect(drawn.match(/>\+11:00</g)?.length).toBe(
    changes.filter(({ at }) => read(at).endsWith('+11:00')).length,
  );
  // And the change itself has a row.
  expect(drawn.match(/>\+10:00</g)?.length).toBe(
    changes.filter(({ at }) => read(at).endsWith('+10:00')).length + 1,
  );
});

test('on the chart, which names the change too', () => {
  const svg = planChart(plan);
  expect(svg).toContain('>clocks back 02:00 +10:00<');
  const ticks = [...svg.matchAll(/>(0\d:\d\d(?: \+1[01]:00)?)</g)].map(([, label]) => label);
  expect(ticks.filter((label) => label!.startsWith('02:') && label!.length === 5)).toEqual([]);
  expect(ticks).toContain('02:30 +11:00');
  expect(ticks).toContain('02:30 +10:00');
  expect(ticks).toContain('03:00');
});

test('in the notes, in both languages and on a clock of twelve hours', () => {
  const note = plan.notes.find(({ kind }) => kind === 'clocks-change')!;
  const frame = 75 * 10 + 1; // 75 minutes of ten frames
  expect(note.text).toBe(
    `The clocks go back by 60 minutes during the shoot: from frame ${frame}, 02:00 +10:00, on times are the new ones.`,
  );
  const german = cardText(plan, { words: wordsFor({ language: 'de', clock: 12 }) });
  expect(german.replaceAll(/\s+/g, ' ')).toContain(`Ab Bild ${frame}, 2:00 AM +10:00, gilt die neue Zeit.`);
  expect(noteText(note, wordsFor())).toContain('02:00,');
});

test('in a calendar, whose set-up tells the start', () => {
  const late = made(
    shootFrom({
      ...shoot,
      span: { startAt: '2025-04-06T02:10:00+11:00', endAt: '2025-04-06T03:10:00+10:00' },
    }),
  );
  expect(calendarTexts(late, wordsFor()).setUp.description).toContain('02:10:00 +11:00');
});

test('no time has an offset where no hour comes twice: the night after, and the spring', () => {
  const after = made(
    shootFrom({
      ...shoot,
      date: '2025-04-07',
      span: { startAt: '2025-04-07T00:45:00+10:00', endAt: '2025-04-07T03:10:00+10:00' },
    }),
  );
  expect(after.clocksBack).toBeUndefined();
  expect(cardText(after)).not.toMatch(/\+1[01]:00/);
});
