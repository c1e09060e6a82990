// Calendar and tables of real evenings, read by libraries that others will read them with.

import { readFileSync } from 'node:fs';
import { type PlanMade, planShoot, writeCalendar, writeCuesCsv, writeFramesCsv } from '@evenfall/core';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { calendarTexts, wordsFor } from '../../../packages/chart/src/index.js';
import { PLAN, shootOf } from './sample.js';

const NAMES = 'ND "three", 1.8; round\\square';

function planned(name: string): PlanMade {
  const path = new URL(`../../../docs/examples/${name}.yaml`, import.meta.url);
  const value = parse(readFileSync(path, 'utf8'));
  const zoned = {
    ...value,
    title: `Fähre; "Ost", \\ مساء`,
    place: { ...value.place, timeZone: 'Europe/London' },
  };
  if (zoned.filters?.[0] !== undefined) zoned.filters[0].name = NAMES;
  const answer = planShoot(shootOf(zoned));
  if (answer.kind === 'infeasible') throw new Error(answer.infeasible.text);
  return answer;
}

const PLANS = [PLAN, planned('dusk'), planned('dawn')] as const;

test.each([
  { aheadS: 0, travelS: 1800, language: 'en' },
  { aheadS: [300, 45], travelS: 5400, language: 'en' },
  { aheadS: [], travelS: 0, language: 'de' },
  { aheadS: 600, travelS: 60, language: 'de' },
] as const)(
  'a calendar reads strictly, every cue and set-up with its alarm: %o',
  ({ aheadS, travelS, language }) => {
    expect(ICAL.design.strict).toBe(true);
    for (const plan of PLANS) {
      const texts = calendarTexts(plan, wordsFor({ language }));
      const calendar = new ICAL.Component(ICAL.parse(writeCalendar(plan, { aheadS, travelS, texts })));
      const events = calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
      const due = [plan.summary.setUpAt, ...plan.cues.map(({ at }) => at), plan.summary.endAt];
      // The library counts a time of UTC in seconds of the Unix epoch.
      expect(events.map(({ startDate }) => startDate.toUnixTime())).toEqual(
        due.map((at) => Math.floor(Date.parse(at) / 1000)),
      );
      const told = [texts.setUp, ...texts.cues, texts.end];
      expect(events.map(({ summary }) => summary)).toEqual(told.map(({ summary }) => summary));
      expect(events.map(({ description }) => description)).toEqual(
        told.map(({ description }) => description),
      );
      expect(new Set(events.map(({ uid }) => uid)).size).toBe(due.length);
      const leads = [[travelS], ...plan.cues.map(() => [aheadS].flat()), [0]];
      for (const [i, event] of events.entries()) {
        expect(event.endDate.compare(event.startDate)).toBe(1);
        const alarms = event.component.getAllSubcomponents('valarm');
        expect(alarms.map((alarm) => alarm.getFirstPropertyValue('action'))).toEqual(
          leads[i]!.map(() => 'DISPLAY'),
        );
        for (const [k, alarm] of alarms.entries()) {
          const trigger = alarm.getFirstPropertyValue('trigger');
          expect(trigger instanceof ICAL.Duration && trigger.toSeconds() + leads[i]![k]!).toBe(0);
          expect(alarm.getFirstPropertyValue('description')).toBe(event.summary);
        }
        // RFC 5545, 3.6.1: all that an event must have, and what only a published one may leave out.
        for (const name of ['uid', 'dtstamp']) expect(event.component.getAllProperties(name)).toHaveLength(1);
      }
    }
  },
);

test('a locked telephone shows what to do, filter first', () => {
  const plan = PLANS[1];
  const { cues } = calendarTexts(plan, wordsFor());
  const changes = plan.cues.flatMap((cue, i) =>
    cue.changes.some(({ control }) => control === 'filter') ? [cues[i]!.summary] : [],
  );
  expect(changes.length).toBeGreaterThan(0);
  expect(changes[0]).toMatch(/^Filter: Take off ND "three", 1\.8; round\\square, Shutter .* → /);
  const [first] = plan.cues;
  expect(cues[0]!.summary).toBe(`Shutter ${first!.changes[0]!.from} → ${first!.changes[0]!.to}`);
});

test('tables read without a fault, a row a frame and a row a cue', () => {
  for (const plan of PLANS) {
    const frames = Papa.parse(writeFramesCsv(plan), { header: true, skipEmptyLines: true });
    expect(frames.errors).toEqual([]);
    expect(frames.meta).toMatchObject({ delimiter: ',', linebreak: '\r\n' });
    expect(frames.data).toHaveLength(plan.frames.length);
    plan.frames.forEach((frame, i) => {
      const row = frames.data[i]!;
      expect(row.filters).toBe(frame.filters.join(' + '));
      expect(row.shutter).toBe(frame.shutter);
      expect(Number(row.shutterS)).toBe(frame.shutterS);
      expect(Number(row.settingEv100)).toBe(frame.settingEv100);
      expect(row.at).toBe(frame.at);
    });
    const cues = Papa.parse(writeCuesCsv(plan), { header: true, skipEmptyLines: true });
    expect(cues.errors).toEqual([]);
    expect(cues.data).toHaveLength(plan.cues.length);
    plan.cues.forEach((cue, i) => {
      const row = cues.data[i]!;
      for (const control of ['shutter', 'iso', 'aperture', 'filter']) {
        const change = cue.changes.find((each) => each.control === control);
        expect([row[`${control}From`], row[`${control}To`]]).toEqual([change?.from ?? '', change?.to ?? '']);
      }
      expect(Number(row.frame)).toBe(cue.frame);
      expect(row.shutter).toBe(plan.frames[cue.frame]!.shutter);
    });
  }
});
