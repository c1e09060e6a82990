// The plan was made with the default scene, and the evening turns out to be another one: lamps, a town, heavy cloud.
// Whoever follows it with a meter must come out about as well as somebody who only steps by the meter.

import { type Direction, forecastLight, type PlanMade, type SceneWords } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { planOf } from '../../reference/evening-shoot.js';
import { normal } from '../../reference/evening-simulator.js';
import { meterStepper } from '../../reference/meter-stepper.js';
import { seeded } from '../../reference/random.js';

const SHOOT = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 52, longitudeDeg: 5, timeZone: 'Europe/Amsterdam' },
  date: '2026-09-22',
  intervalS: 8,
  camera: {
    shutter: { shortest: '1/4000', longest: '6' },
    iso: { lowest: 100, highest: 25600 },
    aperture: '4',
  },
};
// By exact values: 1/4000 s and ISO 100, and 6.35 s and ISO 25,600, at f/4.
const ENDS = { darkEv100: 4 - 8 / 3 - 8, brightEv100: 4 + 12 };

const REALITIES: Readonly<Record<string, Partial<SceneWords>>> = {
  'street lamps': { lamps: 'street' },
  'a town': { night: 'town' },
  'floodlit walls': { lamps: 'floodlit' },
  'heavy cloud': { cloud: 'heavy' },
  overcast: { cloud: 'overcast' },
  snow: { surface: 'snow' },
  'a street in a city': { lamps: 'street', night: 'city' },
};

const METER_EV = 0.05;
const times = (plan: PlanMade) => Float64Array.from(plan.frames.map(({ at }) => Date.parse(at)));

/** What the frames of the plan would ask for in another scene. */
function targetsIn(plan: PlanMade, words: Partial<SceneWords>): number[] {
  const scene = { ...plan.shoot.scene, ...words };
  const { sceneEv100 } = forecastLight({ ...plan.shoot, scene }, times(plan));
  return plan.frames.map((frame, i) => frame.targetEv100 + sceneEv100[i]! - frame.sceneEv100);
}

function outcome(settings: readonly number[], targets: readonly number[], toleranceEv: number) {
  const errors = settings.map((ev, i) => Math.abs(ev - targets[i]!));
  const squares = errors.reduce((sum, ev) => sum + ev * ev, 0);
  return {
    rms: Math.sqrt(squares / errors.length),
    outside: errors.filter((ev) => ev > toleranceEv + 1e-9).length,
  };
}

for (const crew of ['hand', 'rig'] as const) {
  for (const direction of ['dusk', 'dawn'] satisfies Direction[]) {
    describe(`${crew}, ${direction}, planned with the default scene and read at every frame`, () => {
      const plan = planOf({ ...SHOOT, crew, direction });
      const { limits, intervalS } = plan.shoot;
      const spacing = Math.max(1, Math.ceil(limits.secondsBetweenCues / intervalS));
      const atMs = times(plan);

      test.each(Object.entries(REALITIES))('and found to be %s', (_, words) => {
        const targets = targetsIn(plan, words);
        const random = seeded(7);
        const metered = targets.map((ev) => ev + METER_EV * normal(random));
        // Each frame is decided on the one before it, as in following.
        const seen = metered.map((_, frame) => metered[Math.max(0, frame - 1)]);
        const stepper = meterStepper(seen, { stepsPerStop: 3, ...ENDS, spacing, thresholdEv: 1 / 3 });
        const stepped = outcome(stepper, targets, limits.toleranceEv);

        for (const sure of [false, true]) {
          let state = startFollow(plan);
          const kinds = new Set<string>();
          const settings = plan.frames.map((_, frame) => {
            const read = Math.max(0, frame - 1);
            const { sceneEv100, targetEv100 } = plan.frames[read]!;
            const ev100 = sceneEv100 + metered[read]! - targetEv100;
            const step = followFrame(state, { frame, reading: { atMs: atMs[read]!, ev100, sure } });
            state = step.state;
            for (const { kind } of step.warnings) kinds.add(kind);
            return step.setting.settingEv100;
          });
          const followed = outcome(settings, targets, limits.toleranceEv);
          expect(kinds).not.toContain('reading-impossible');
          expect(kinds).not.toContain('reading-doubted');
          expect(followed.rms).toBeLessThan(1.25 * stepped.rms);
          expect(followed.outside).toBeLessThanOrEqual(stepped.outside);
        }
      });
    });
  }
}
