import { describe, expect, test } from 'vitest';
import { dialLabel, dialStep } from '../../../packages/core/src/exposure/dial.js';
import { writePlan } from '../../../packages/core/src/files/plan-file.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import type { PlanFrame, PlanMade } from '../../../packages/core/src/plan/types.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { seeded } from '../../reference/random.js';
import { randomShoot, shootFrom } from '../shoots.js';

function made(keys: Record<string, unknown> = {}): PlanMade {
  const plan = planShoot(shootFrom(keys));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

test('60 random shoots, anywhere and with any kit: the plain checker finds nothing wrong', () => {
  const seen = { made: 0, infeasible: 0, 'no-span': 0, dawn: 0, bulb: 0, rig: 0, filters: 0 };
  for (let seed = 1; seed <= 60; seed++) {
    const shoot = randomShoot(seeded(seed));
    const plan = planShoot(shoot);
    // Through the text of a plan file and back: the checker knows nothing but that.
    expect(checkPlan(JSON.parse(writePlan(plan))), `seed ${seed}`).toEqual([]);
    if (plan.kind === 'infeasible') {
      seen[plan.infeasible.reason === 'no-span' ? 'no-span' : 'infeasible']++;
      continue;
    }
    seen.made++;
    if (shoot.direction === 'dawn') seen.dawn++;
    if (shoot.camera.bulb) seen.bulb++;
    if (shoot.crew === 'rig') seen.rig++;
    if (plan.cues.some(({ changes }) => changes.some(({ control }) => control === 'filter'))) seen.filters++;
  }
  expect(
    Object.values(seen).every((count) => count > 0),
    JSON.stringify(seen),
  ).toBe(true);
  expect(seen.made).toBeGreaterThan(20);
});

describe('facts of the trade', () => {
  // Common practice: a shutter alone from 1/10 s to 30 s (0.0992 s to 32 s) covers about eight stops.
  test('a shutter alone covers about eight stops, not nearly a whole dusk', () => {
    const stops = Math.log2(32 / 2 ** (-10 / 3));
    expect(stops).toBeGreaterThan(8);
    expect(stops).toBeLessThan(8.5);
    const plan = planShoot(
      shootFrom({
        intervalS: 34,
        camera: {
          shutter: { shortest: '1/10', longest: '30' },
          iso: { lowest: 100, highest: 100 },
          aperture: '8',
        },
      }),
    );
    expect(plan.kind === 'infeasible').toBe(true);
    expect(made().summary.rampStops).toBeGreaterThan(stops + 6);
  });

  // Common practice: it falls slowly, then fast, then slowly. A straight ramp between the ends misses by stops.
  test('a straight ramp misses a dusk, and a dawn, by more than two stops', () => {
    for (const keys of [
      { span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -18 } },
      { direction: 'dawn', span: { fromSunAltitudeDeg: -18, toSunAltitudeDeg: 6 } },
    ]) {
      const camera = {
        shutter: { shortest: '1/4000', longest: '30' },
        iso: { lowest: 100, highest: 51200 },
        aperture: '2.8',
      };
      const { frames } = made({ ...keys, camera, intervalS: 15, look: { nightEv: 0 } });
      const ev = frames.map(({ sceneEv100 }) => sceneEv100);
      const last = ev.length - 1;
      const straight = (i: number) => ev[0] + ((ev[last] - ev[0]) * i) / last;
      const misses = ev.map((value, i) => Math.abs(value - straight(i)));
      expect(Math.max(...misses)).toBeGreaterThan(2);
      // Slow at both ends, fast in the middle third.
      const fall = (from: number, to: number) =>
        Math.abs(ev[Math.floor(to * last)] - ev[Math.floor(from * last)]);
      expect(fall(0.4, 0.6)).toBeGreaterThan(2 * fall(0, 0.2));
      expect(fall(0.4, 0.6)).toBeGreaterThan(2 * fall(0.8, 1));
    }
  });
});

// f/4 is Av 4, ISO 100 counts 0; times are powers of two of the dial: "1/25" is 2^(-14/3) s. Source: docs/sources.md#apex.
test('three frames of one plan by hand arithmetic', () => {
  const { frames } = made({ filters: [{ name: 'ND64', factor: 64 }] });
  const picked = [frames[0], frames[Math.floor(frames.length / 2)], frames[frames.length - 1]] as PlanFrame[];
  for (const frame of picked) {
    const [n, d] = frame.shutter.split('/').map(Number);
    const markedS = d === undefined ? n : n / d;
    // The marked time lies within a fifth of a stop of the exact one.
    expect(Math.abs(Math.log2(markedS / frame.shutterS))).toBeLessThan(0.1);
    const filterStops = frame.filters.length * 6;
    const setting = 4 - Math.log2(frame.shutterS) - Math.log2(frame.isoExact / 100) + filterStops;
    expect(frame.settingEv100).toBeCloseTo(setting, 9);
    expect(frame.errorEv).toBeCloseTo(setting - frame.targetEv100, 9);
    expect(Math.abs(frame.errorEv)).toBeLessThanOrEqual(0.75);
  }
});

describe('impossible requests are answers', () => {
  const dim = {
    camera: {
      shutter: { shortest: '1/4000', longest: '30' },
      iso: { lowest: 100, highest: 1000 },
      aperture: '8',
    },
  };

  test('a filter that must stay on makes it too dark, not too fast', () => {
    const plan = planShoot(
      shootFrom({
        span: { fromSunAltitudeDeg: 5, toSunAltitudeDeg: -9 },
        filters: [{ name: 'ND1000', stops: 10 }],
        startFilter: 'ND1000',
        limits: { maxFilterChanges: 0 },
      }),
    );
    expect(plan.kind === 'infeasible' && plan.infeasible.reason).toBe('too-dark');
  });

  test('every remedy cures, and says what it changes', () => {
    const plan = planShoot(shootFrom(dim));
    if (plan.kind !== 'infeasible') throw new Error('f/8 and ISO 1000 followed the light into the night');
    expect(plan.infeasible.reason).toBe('too-dark');
    expect('shortfallEv' in plan.infeasible && plan.infeasible.shortfallEv).toBeGreaterThan(0);
    const changes = plan.infeasible.remedies.map(({ change }) => change);
    expect(changes).toEqual([
      'longer-shutter',
      'higher-iso',
      'wider-aperture',
      'darker-look',
      'shorter-span',
    ]);
    for (const { apply, change } of plan.infeasible.remedies) {
      expect('summary' in planShoot({ ...plan.shoot, ...apply }), change).toBe(true);
    }
  });

  test('one step less of a remedy does not cure', () => {
    const plan = planShoot(shootFrom(dim));
    if (plan.kind !== 'infeasible') throw new Error('feasible');
    const cure = plan.infeasible.remedies.find(({ change }) => change === 'higher-iso');
    const highest = dialStep('iso', String(cure?.apply.camera?.iso.highest), 3) as number;
    expect(highest).toBeGreaterThan(dialStep('iso', '1000', 3) as number);
    const iso = { lowest: 100, highest: Number(dialLabel('iso', highest - 1, 3)) };
    expect(planShoot({ ...plan.shoot, camera: { ...plan.shoot.camera, iso } }).kind === 'infeasible').toBe(
      true,
    );
  });

  test('a span the sun never reaches names what it does reach, and a span that works', () => {
    const plan = planShoot(
      shootFrom({
        place: { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' },
        date: '2026-05-10',
      }),
    );
    if (plan.kind !== 'infeasible') throw new Error('feasible');
    expect(plan.infeasible.reason).toBe('no-span');
    expect(plan.infeasible).not.toHaveProperty('frame');
    expect(plan.infeasible.text).toContain('only from');
    const { apply } = plan.infeasible.remedies[0];
    expect('summary' in planShoot({ ...plan.shoot, ...apply })).toBe(true);
  });
});

test('a reading moves the rest of the plan, and a full card and battery are warned of', () => {
  const before = made();
  const at = before.frames[100].at;
  const ev100 = before.frames[100].sceneEv100 - 1;
  const after = made({
    readings: [{ at, ev100 }],
    camera: { ...before.shoot.camera, frameMB: 30, cardGB: 8, batteryFrames: 300 },
  });
  const shift = after.frames[110].sceneEv100 - before.frames[110].sceneEv100;
  expect(shift).toBeLessThan(-0.7);
  expect(shift).toBeGreaterThan(-1.1);
  expect(after.summary.cardFits).toBe(false);
  const warnings = after.notes.filter(({ level }) => level === 'warning').map(({ text }) => text);
  // The reading was taken after the start: that comes first.
  expect(warnings).toHaveLength(3);
  expect(warnings[0]).toContain('plans the shoot from its start');
  expect(warnings[1]).toContain('The card holds 266 of the');
});

test('the same shoot gives the same plan, to the letter', () => {
  const keys = { filters: [{ name: 'ND8', factor: 8 }] };
  expect(writePlan(made(keys))).toBe(writePlan(made(keys)));
});
