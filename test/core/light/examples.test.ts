// What docs/light.md says of its four evenings is what they give.

import { describe, expect, test } from 'vitest';
import * as core from '../../../packages/core/src/index.js';
import { overcastNightFactor } from '../../../packages/core/src/light/night.js';
import { NIGHTS } from '../../../packages/core/src/light/words.js';
import { exampleFacts, examplesTable, writtenExamples } from '../../../packages/tools/light-examples.mjs';
import { checkPlan } from '../../reference/plan-checker.js';

type ExampleFacts = ReturnType<typeof exampleFacts>;

const [beach, city, snowfield, harbour] = (['beach', 'city', 'snowfield', 'harbour'] as const).map((name) =>
  exampleFacts(core, name),
) as [ExampleFacts, ExampleFacts, ExampleFacts, ExampleFacts];

const evs = ({ rows, sunset }: ExampleFacts) => ({
  start: rows[0]!.sceneEv100,
  sunset: sunset.sceneEv100,
  end: rows[rows.length - 1]!.sceneEv100,
});
const at = ({ rows }: ExampleFacts, sunDeg: number) => rows.find((row) => row.sunAltitudeDeg <= sunDeg)!;
const speed = ({ steepest }: ExampleFacts) => Math.abs(steepest.slopeEvPerMin);
const minutes = ({ rows }: ExampleFacts) =>
  (Date.parse(rows[rows.length - 1]!.at) - Date.parse(rows[0]!.at)) / 60_000;

test('the table in docs/light.md is what the code gives', () => {
  expect(writtenExamples()).toBe(examplesTable(core));
});

test.each([beach, city, snowfield, harbour])('$name: the plan is sound', ({ plan }) => {
  expect(checkPlan(JSON.parse(core.writePlan(plan)))).toEqual([]);
});

describe('beach', () => {
  test('begins a stop and a half above the city and has eighteen to follow from sunset', () => {
    expect(evs(beach).start - evs(city).start).toBeGreaterThan(1.25);
    expect(evs(beach).start - evs(city).start).toBeLessThan(1.75);
    expect(evs(beach).sunset - evs(beach).end).toBeCloseTo(18, 0);
  });

  test('still falls at half of its greatest speed at the end', () => {
    const { rows, steepest } = beach;
    expect(rows[rows.length - 1]!.slopeEvPerMin / steepest.slopeEvPerMin).toBeCloseTo(0.5, 1);
  });

  test('its dark end decides: a little over two stops, hardly one evening in twenty', () => {
    const { reserveDarkEv, reserveBrightEv, eveningsHeldShare } = beach.plan.summary;
    expect(reserveDarkEv).toBeGreaterThan(2);
    expect(reserveDarkEv).toBeLessThan(2.5);
    expect(reserveBrightEv).toBeGreaterThan(4);
    expect(eveningsHeldShare).toBeGreaterThan(0.95);
    expect(eveningsHeldShare).toBeLessThan(0.98);
  });
});

describe('city', () => {
  test('its fall is over half an hour after sunset, with no cue left', () => {
    const { settled, sunset, plan } = city;
    const apart = (Date.parse(settled!.at) - Date.parse(sunset.at)) / 60_000;
    expect(apart).toBeGreaterThan(25);
    expect(apart).toBeLessThan(35);
    expect(plan.cues.length).toBeGreaterThan(5);
    expect(Date.parse(plan.cues[plan.cues.length - 1]!.at)).toBeLessThan(Date.parse(settled!.at));
  });

  // A fifth of EV 7: 7 - log2 5 = 4.68.
  test('the lamps hold it, and close the range', () => {
    const last = city.rows[city.rows.length - 1]!;
    expect(last.sceneEv100).toBeCloseTo(7 - Math.log2(5), 1);
    expect(last.sceneEv100 - last.lowEv100).toBeLessThan(0.35);
    expect(at(city, -7).sceneEv100 - at(city, -7).lowEv100).toBeLessThan(0.6);
    const early = at(city, -2);
    expect(early.sceneEv100 - early.lowEv100).toBeGreaterThan(2);
  });
});

describe('snowfield', () => {
  test('takes nearly four hours, its steepest minute a third less than the beach’s', () => {
    expect(minutes(snowfield)).toBeGreaterThan(215);
    expect(minutes(snowfield)).toBeLessThan(240);
    expect(speed(snowfield) / speed(beach)).toBeLessThan(0.67);
  });

  test('comes to rest two stops above the beach, held by the moon, whose rising the plan names', () => {
    expect(evs(snowfield).end - evs(beach).end).toBeGreaterThan(1.8);
    const last = snowfield.rows[snowfield.rows.length - 1]!;
    expect(last.moonIlluminanceLx / last.illuminanceLx).toBeGreaterThan(0.85);
    expect(at(snowfield, -8).moonIlluminanceLx / at(snowfield, -8).illuminanceLx).toBeLessThan(0.1);
    expect(snowfield.plan.notes.map(({ text }) => text).join()).toContain('The moon rises at 15:49');
  });

  test('cloud would take two stops at the end, nothing gives as much', () => {
    const last = snowfield.rows[snowfield.rows.length - 1]!;
    expect(last.sceneEv100 - last.lowEv100).toBeGreaterThan(1.7);
    expect(last.highEv100 - last.sceneEv100).toBeLessThan(0.5);
  });
});

describe('harbour', () => {
  test('starts between three and six stops below the others and is gentler than the beach', () => {
    for (const other of [beach, city, snowfield]) {
      expect(evs(other).start - evs(harbour).start).toBeGreaterThan(3);
      expect(evs(other).start - evs(harbour).start).toBeLessThan(6);
    }
    expect(speed(harbour)).toBeLessThan(0.75 * speed(beach));
  });

  test('does not care which way it faces', () => {
    const shoot = harbour.plan.shoot;
    const turned = core.lightTable({ ...shoot, scene: { ...shoot.scene, facing: 'away' } });
    if (!('rows' in turned)) throw new Error(turned.infeasible.text);
    turned.rows.forEach((row, i) => {
      expect(row.sceneEv100).toBeCloseTo(harbour.rows[i]!.sceneEv100, 9);
    });
  });

  test('dips around -9° and grows brighter, the town’s light eight times back from the cloud', () => {
    const darkest = harbour.rows.reduce((a, b) => (b.sceneEv100 < a.sceneEv100 ? b : a));
    expect(darkest.sunAltitudeDeg).toBeGreaterThan(-10);
    expect(darkest.sunAltitudeDeg).toBeLessThan(-8);
    expect(evs(harbour).end).toBeGreaterThan(darkest.sceneEv100 + 0.1);
    expect(overcastNightFactor(NIGHTS.town)).toBeCloseTo(8, 0);
  });
});
