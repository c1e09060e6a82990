// What a plan says of the frame that the forecast does not follow: the sun in it, and a sky that is one direction.

import { describe, expect, test } from 'vitest';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import type { PlanMade } from '../../../packages/core/src/plan/types.js';
import { evenPan, shootFrom } from '../shoots.js';

const camera = {
  shutter: { shortest: '1/4000', longest: '8' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '5.6',
};
const sensor = { widthMm: 36, heightMm: 24 };
const span = { fromSunAltitudeDeg: 14, toSunAltitudeDeg: -6 };

function made(keys: Record<string, unknown>): PlanMade {
  const plan = planShoot(shootFrom({ intervalS: 20, camera, span, ...keys }));
  if (plan.kind === 'ok') return plan;
  throw new Error(plan.infeasible.text);
}
const lens = (focalMm: number) => ({ ...camera, lens: { focalMm }, sensor });
const note = (plan: PlanMade, kind: string) => plan.notes.find((one) => one.kind === kind);

describe('the sun in the frame', () => {
  test('is there from when it comes down into the upright field until it is gone below the horizon', () => {
    // The whole frame is sky and looks level: 50 mm take in 13.5° above the middle (24 mm of sensor, by the table of
    // lens coverage 27.0°), so the sun comes in there.
    const plan = made({ camera: lens(50), scene: { skyShare: 1, viewAltitudeDeg: 0 } });
    const found = note(plan, 'sun-in-frame') as unknown as { fromAt: string; toAt: string; pullEv: number };
    const sunAt = (at: string) => plan.frames.find((frame) => frame.at === at)!.sunAltitudeDeg;
    expect(sunAt(found.fromAt)).toBeCloseTo(13.4, 0);
    expect(sunAt(found.toAt)).toBeGreaterThan(-1);
    expect(sunAt(found.toAt)).toBeLessThan(0.2);
    expect(found.pullEv).toBeGreaterThan(2);
    expect(note(plan, 'sun-in-frame')!.text).toContain(`${found.pullEv.toFixed(1)} stops brighter`);
    expect(note(plan, 'sun-in-frame')!.text).toContain(`Between ${found.fromAt.slice(11, 16)} and`);
  });

  test('pulls less where it fills less of the frame', () => {
    const pull = (focalMm: number) =>
      (
        note(
          made({ camera: lens(focalMm), span: { ...span, fromSunAltitudeDeg: 6 } }),
          'sun-in-frame',
        ) as unknown as {
          pullEv: number;
        }
      ).pullEv;
    expect(pull(16)).toBeLessThan(pull(35));
  });

  test.each([
    ['away from it', { scene: { facing: 'away' } }],
    ['under closed cloud', { scene: { cloud: 'overcast' } }],
    ['behind a ridge', { scene: { skylineDeg: 20 } }],
    ['without a lens', { camera }],
  ])('is not told %s', (_, keys) => {
    expect(note(made({ camera: lens(24), ...keys }), 'sun-in-frame')).toBeUndefined();
  });

  test('goes with a pan that turns away', () => {
    const still = note(made({ camera: lens(24) }), 'sun-in-frame') as unknown as { toAt: string };
    const turning = note(made({ camera: lens(24), moves: [evenPan(90)] }), 'sun-in-frame') as unknown as {
      toAt: string;
    };
    expect(Date.parse(turning.toAt)).toBeLessThan(Date.parse(still.toAt) - 600_000);
  });
});

test('without lens and sensor the plan says that one direction stands for the sky', () => {
  const told = note(made({ scene: { viewAltitudeDeg: 25 } }), 'one-direction');
  expect(told).toMatchObject({ level: 'info', viewAltitudeDeg: 25 });
  expect(told!.text).toContain('25°');
  expect(note(made({ camera: lens(24) }), 'one-direction')).toBeUndefined();
  expect(note(made({ scene: { skyShare: 0 } }), 'one-direction')).toBeUndefined();
});
