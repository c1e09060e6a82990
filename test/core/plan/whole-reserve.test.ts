// The reserve in a plan: what it says of the kit, of the evening, and in a note.

import { describe, expect, test } from 'vitest';
import { shareOfEvenings } from '../../../packages/core/src/light/evenings.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import type { PlanMade } from '../../../packages/core/src/plan/types.js';
import { shootFrom } from '../shoots.js';

function made(keys: Record<string, unknown>): PlanMade {
  const plan = planShoot(shootFrom({ intervalS: 20, ...keys }));
  if ('summary' in plan) return plan;
  throw new Error(plan.infeasible.text);
}

const kit = (highest: number, shortest = '1/4000') => ({
  shutter: { shortest, longest: '15' },
  iso: { lowest: 100, highest },
  aperture: '4',
});
const cautions = (plan: PlanMade) => plan.notes.filter(({ text }) => text.includes('this kit runs out of'));

describe('the summary', () => {
  test('one more stop of ISO is one more stop in reserve at the dark end, and nothing at the bright one', () => {
    const [less, more] = [made({ camera: kit(3200) }), made({ camera: kit(6400) })];
    expect(more.summary.reserveDarkEv - less.summary.reserveDarkEv).toBeCloseTo(1, 9);
    expect(more.summary.reserveBrightEv).toBeCloseTo(less.summary.reserveBrightEv, 9);
    expect(more.summary.eveningsHeldShare).toBeGreaterThan(less.summary.eveningsHeldShare);
  });

  test('a sky that was seen holds more evenings than one that nobody saw, at the same reserve', () => {
    const unknown = made({ camera: kit(800) });
    const stated = made({ camera: kit(1250), scene: { cloud: 'thin' } });
    const { reserveDarkEv: darkEv, reserveBrightEv: brightEv } = stated.summary;
    // ±1.1 around stated cloud, nine evenings in ten.
    const share = shareOfEvenings({ darkEv, brightEv }, { lowEv: -1.1, highEv: 1.1 }, 'bell');
    expect(stated.summary.eveningsHeldShare).toBeCloseTo(share, 9);
    expect(darkEv).toBeLessThan(unknown.summary.reserveDarkEv);
    expect(share).toBeGreaterThan(unknown.summary.eveningsHeldShare);
  });

  test('after a reading the evening is the range around the corrected forecast, at its widest before -8°', () => {
    // A town's night may be far brighter under cloud, which is not the evening's band.
    const town = { camera: kit(1600), scene: { night: 'town' } };
    const before = made(town);
    const { at, sceneEv100 } = before.frames[40]!;
    const after = made({ ...town, readings: [{ at, ev100: sceneEv100 - 0.5 }] });
    const lit = after.frames.filter(({ sunAltitudeDeg }) => sunAltitudeDeg > -8);
    const lowEv = Math.min(...lit.map((frame) => frame.lowEv100 - frame.sceneEv100));
    const highEv = Math.max(...lit.map((frame) => frame.highEv100 - frame.sceneEv100));
    const { reserveDarkEv: darkEv, reserveBrightEv: brightEv } = after.summary;
    expect(after.summary.eveningsHeldShare).toBeCloseTo(
      shareOfEvenings({ darkEv, brightEv }, { lowEv, highEv }, 'bell'),
      9,
    );
    expect(darkEv).toBeLessThan(before.summary.reserveDarkEv);
    const anyHighEv = Math.max(...after.frames.map((frame) => frame.highEv100 - frame.sceneEv100));
    expect(anyHighEv).toBeGreaterThan(highEv + 0.5);
  });

  test('a night alone is judged by its own range', () => {
    const plan = made({
      camera: { ...kit(25600), aperture: '1.4' },
      span: { fromSunAltitudeDeg: -13, toSunAltitudeDeg: -17 },
      readings: [{ at: '2026-09-18T21:30:00+02:00', ev100: -5 }],
    });
    expect(plan.summary.eveningsHeldShare).toBeGreaterThan(0);
    expect(plan.summary.eveningsHeldShare).toBeLessThanOrEqual(1);
    expect(plan.frames.every(({ sunAltitudeDeg }) => sunAltitudeDeg < -12)).toBe(true);
  });
});

describe('the note', () => {
  test('a kit at its limit in the dark says so, and what helps', () => {
    const plan = made({ camera: kit(800) });
    const share = Math.round(100 * (1 - plan.summary.eveningsHeldShare));
    expect(share).toBeGreaterThan(20);
    expect(cautions(plan)).toEqual([
      {
        level: 'caution',
        text: `On about ${share} evenings in 100 this kit runs out of light at the dark end: ${plan.summary.reserveDarkEv.toFixed(1)} stops are in reserve there. A higher ISO, a wider aperture or a longer shutter gives more.`,
      },
    ]);
  });

  test('one at its limit in daylight speaks of the bright end, and of mornings at dawn', () => {
    const plan = made({ camera: kit(3200, '1/1250'), direction: 'dawn' });
    expect(plan.summary.reserveBrightEv).toBeLessThan(plan.summary.reserveDarkEv);
    expect(cautions(plan).map(({ text }) => text)).toEqual([
      expect.stringMatching(
        /^On about \d+ mornings in 100 this kit runs out of room at the bright end: .* A stronger filter/,
      ),
    ]);
  });

  test('a kit that holds four evenings in five says nothing', () => {
    const plan = made({ camera: kit(1600) });
    expect(plan.summary.eveningsHeldShare).toBeLessThan(0.9);
    expect(cautions(plan)).toEqual([]);
  });
});
