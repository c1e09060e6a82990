// What a plan and a light table hold beside the ramp, against clock and calendar and the frames themselves.

import { type LightTable, lightTable, type PlanMade, planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { shootFrom } from '../shoots.js';

const EVENING = { startAt: '2026-09-18T19:30:00+02:00', endAt: '2026-09-18T21:00:00+02:00' };
const CAMERA = {
  shutter: { shortest: '1/4000', longest: '15' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '2.8',
};

function made(keys: Record<string, unknown> = {}): PlanMade {
  const plan = planShoot(shootFrom({ intervalS: 30, span: EVENING, camera: CAMERA, ...keys }));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

function table(keys: Record<string, unknown> = {}): LightTable {
  const light = lightTable(shootFrom({ intervalS: 300, span: EVENING, ...keys }));
  if (light.kind === 'infeasible') throw new Error(light.infeasible.text);
  return light;
}

describe('events', () => {
  const { events } = made();

  test('are those of the local day and the one after, in order, to the second', () => {
    const times = events.map(({ at }) => Date.parse(at));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(Math.min(...times)).toBeGreaterThanOrEqual(Date.parse('2026-09-18T00:00:00+02:00'));
    expect(Math.max(...times)).toBeLessThan(Date.parse('2026-09-20T00:00:00+02:00'));
    for (const { at } of events) expect(at).toMatch(/^2026-09-(18|19)T\d\d:\d\d:\d\d\+02:00$/);
    for (const name of ['sunrise', 'sunset'] as const) {
      expect(events.filter((event) => event.name === name).map(({ at }) => at.slice(8, 10))).toEqual([
        '18',
        '19',
      ]);
    }
  });

  test('a span past midnight has the events of the day it starts on, and of the next', () => {
    const night = { startAt: '2026-09-19T00:30:00+02:00', endAt: '2026-09-19T01:00:00+02:00' };
    const days = table({ date: '2026-09-19', span: night }).events.map(({ at }) => at.slice(8, 10));
    expect(new Set(days)).toEqual(new Set(['19', '20']));
  });

  test('have the sun where their names say', () => {
    // Civil dusk is 6° below the horizon, nautical 12°: by definition.
    const altitude = (name: string) => events.find((event) => event.name === name)!.sunAltitudeDeg;
    expect(altitude('civil-dusk')).toBeCloseTo(-6, 2);
    expect(altitude('nautical-dusk')).toBeCloseTo(-12, 2);
  });
});

test('a single frame is a plan, without a cue', () => {
  const plan = made({ span: { ...EVENING, endAt: EVENING.startAt } });
  expect(plan.summary).toMatchObject({ frameCount: 1, startAt: EVENING.startAt, endAt: EVENING.startAt });
  expect(plan.summary.rampStops).toBe(0);
  expect(plan.cues).toEqual([]);
  expect(plan.events[0]!.at.slice(0, 10)).toBe('2026-09-18');
});

describe('the summary', () => {
  test('is of the frames', () => {
    const { summary, frames, cues } = made();
    // Ninety minutes at 30 s, both ends exposed.
    expect(summary).toMatchObject({
      frameCount: 181,
      setUpAt: '2026-09-18T19:10:00+02:00',
      startAt: EVENING.startAt,
      endAt: EVENING.endAt,
      clipS: 181 / 24,
      sceneFromEv100: frames[0]!.sceneEv100,
      sceneToEv100: frames.at(-1)!.sceneEv100,
      cueCount: cues.length,
    });
    const targets = frames.map(({ targetEv100 }) => targetEv100);
    expect(summary.rampStops).toBeCloseTo(Math.max(...targets) - Math.min(...targets), 12);
    const errors = frames.map(({ errorEv }) => Math.abs(errorEv));
    expect(summary.worstErrorEv).toBe(Math.max(...errors));
    expect(summary.rmsErrorEv).toBeCloseTo(Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / 181), 12);
  });

  test('a clip of 23.976 frames a second is 1001 / 1000 as long as one of 24', () => {
    expect(made({ clipFps: 23.976 }).summary.clipS).toBeCloseTo((181 / 24) * 1.001, 9);
  });

  test('errors of frames that a hand may spoil are not judged', () => {
    const { summary, frames } = made({
      camera: { ...CAMERA, iso: { lowest: 100, highest: 100 } },
      filters: [{ name: 'ND 64', stops: 6 }],
      startFilter: 'ND 64',
      look: { nightEv: 0 },
      limits: { framesLostPerFilterChange: 6 },
    });
    expect(frames.filter(({ affected }) => affected).length).toBeGreaterThan(0);
    const judged = frames.filter(({ affected }) => !affected).map(({ errorEv }) => Math.abs(errorEv));
    expect(summary.worstErrorEv).toBe(Math.max(...judged));
    expect(summary.rmsErrorEv).toBeCloseTo(
      Math.sqrt(judged.reduce((sum, e) => sum + e * e, 0) / judged.length),
      12,
    );
  });

  test('card and charge are judged only where all that they need is known', () => {
    expect(made({ camera: { ...CAMERA, cardGB: 0.1 } }).summary).not.toHaveProperty('cardFullAt');
    // A hundred frames of 30 MB are 3 GB: the 101st, at 50 minutes, finds no room.
    expect(made({ camera: { ...CAMERA, cardGB: 3, frameMB: 30 } }).summary.cardFullAt).toBe(
      '2026-09-18T20:20:00+02:00',
    );
    expect(made({ camera: { ...CAMERA, batteryFrames: 120 } }).summary.batteryOutAt).toBe(
      '2026-09-18T20:30:00+02:00',
    );
  });
});

test('a frame lies where the clock says, in the light that the table has for it, between its dark and bright evenings', () => {
  const { frames } = made();
  const rows = table({ intervalS: 30 }).rows;
  for (const [i, frame] of frames.entries()) {
    const row = rows[i]!;
    expect(Date.parse(frame.at)).toBe(Date.parse(EVENING.startAt) + i * 30_000);
    expect(frame).toMatchObject({
      frame: i,
      at: row.at,
      sunAltitudeDeg: row.sunAltitudeDeg,
      sceneEv100: row.sceneEv100,
      lowEv100: row.lowEv100,
      highEv100: row.highEv100,
    });
    expect(frame.lowEv100).toBeLessThan(frame.sceneEv100);
    expect(frame.highEv100).toBeGreaterThan(frame.sceneEv100);
  }
});

describe('a light table', () => {
  test('says which events do not happen, and why', () => {
    // North of the polar circle in June the sun does not set.
    const span = { startAt: '2026-06-20T12:00:00+02:00', endAt: '2026-06-20T13:00:00+02:00' };
    const place = { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' };
    const { missing, events } = table({ date: '2026-06-20', span, place });
    expect(missing.map(({ name }) => name)).toEqual(expect.arrayContaining(['sunrise', 'sunset']));
    for (const { name, why } of missing) {
      expect(why, name).not.toBe('');
      expect(events.map((event) => event.name)).not.toContain(name);
    }
  });

  test('has no slope where there is but one row, and falls at dusk', () => {
    const one = { startAt: EVENING.startAt, endAt: EVENING.startAt };
    expect(table({ span: one }).rows.map(({ slopeEvPerMin }) => slopeEvPerMin)).toEqual([0]);
    for (const { slopeEvPerMin } of table().rows) expect(slopeEvPerMin).toBeLessThan(0);
  });

  test('what a person would need to find sun and moon by stands in every row', () => {
    // Late on a September day the sun stands near due west; it sets at about 20:15 there. The moon of 18 September
    // 2026, at first quarter (almanac), is half lit and stands in the south in the evening.
    const rows = table().rows;
    for (const row of rows) {
      expect(row.sunAzimuthDeg).toBeGreaterThan(260);
      expect(row.sunAzimuthDeg).toBeLessThan(290);
      expect(Math.abs(row.moonLitFraction - 0.5)).toBeLessThan(0.1);
      expect(row.moonAltitudeDeg).toBeGreaterThan(5);
      expect(row.moonAzimuthDeg).toBeGreaterThan(140);
      expect(row.moonAzimuthDeg).toBeLessThan(230);
      expect(row.illuminanceLx).toBeGreaterThan(row.moonIlluminanceLx);
      expect(row.skyLuminanceCdM2).toBeGreaterThan(0);
    }
    expect(rows[0]!.sunAltitudeDeg).toBeGreaterThan(0);
    expect(rows.at(-1)!.sunAltitudeDeg).toBeLessThan(-6);
  });
});
