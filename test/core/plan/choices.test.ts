import { describe, expect, test } from 'vitest';
import { writePlan } from '../../../packages/core/src/files/plan-file.js';
import { planChoices } from '../../../packages/core/src/plan/choices.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { rampWeights } from '../../../packages/core/src/ramp/weights.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { shootFrom } from '../shoots.js';

const shoot = shootFrom({ intervalS: 10, filters: [{ name: 'ND8', factor: 8 }] });

function choicesOf(of: typeof shoot) {
  const found = planChoices(of);
  if (found.kind === 'infeasible') throw new Error(found.infeasible.text);
  return found.choices;
}

test('choices run from fewest cues to least error, and planning one gives what it promises', () => {
  const choices = choicesOf(shoot);
  expect(choices.length).toBeGreaterThan(3);
  const curve = choices.filter(({ names }) => !names.includes('cleanest-iso'));
  for (const [i, choice] of curve.entries()) {
    if (i > 0) {
      expect(choice.cueCount).toBeGreaterThan(curve[i - 1]!.cueCount);
      expect(choice.rmsErrorEv).toBeLessThan(curve[i - 1]!.rmsErrorEv);
    }
  }
  for (const choice of choices) {
    const plan = planShoot({ ...shoot, ...choice.apply });
    if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
    expect(checkPlan(JSON.parse(writePlan(plan)))).toEqual([]);
    expect(plan.summary.cueCount).toBe(choice.cueCount);
    expect(plan.summary.rmsErrorEv).toBeCloseTo(choice.rmsErrorEv, 9);
    expect(plan.summary.worstErrorEv).toBeCloseTo(choice.worstErrorEv, 9);
    expect(Math.max(...plan.frames.map(({ iso }) => iso))).toBe(choice.highestIso);
  }
  for (const name of ['fewest-cues', 'smoothest', 'cleanest-iso', 'as-asked'] as const) {
    expect(
      choices.filter(({ names }) => names.includes(name)),
      name,
    ).toHaveLength(1);
  }
});

test('as asked is the plan of the shoot itself', () => {
  const weights = { iso: 0.5, shutterCue: 0 };
  const asked = { ...shoot, weights };
  const choices = choicesOf(asked);
  const choice = choices.find(({ names }) => names.includes('as-asked'));
  expect(choice?.apply.weights).toEqual({ ...rampWeights('hand'), ...weights });
  const plan = planShoot(asked);
  expect(plan.kind === 'ok' && plan.summary.cueCount).toBe(choice?.cueCount);
});

test('a dearer ISO never raises the ISO of the whole more', () => {
  const isoStops = (iso: number) => {
    const plan = planShoot({ ...shoot, weights: { iso } });
    if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
    return plan.frames.reduce((sum, frame) => sum + Math.log2(frame.isoExact / 100), 0);
  };
  // The price of one term against all the others: dearer can only mean less of it.
  const sums = [0, 0.07, 0.5, 3].map(isoStops);
  for (let i = 1; i < sums.length; i++) expect(sums[i]).toBeLessThanOrEqual(sums[i - 1]! + 1e-9);
  expect(sums[3]).toBeLessThan(sums[0]!);
});

test('an impossible shoot has no choices but its remedies', () => {
  const camera = { ...shoot.camera, iso: { lowest: 100, highest: 200 }, aperture: '16' };
  const answer = planChoices({ ...shoot, camera });
  expect(answer.kind === 'infeasible' && answer.infeasible.reason).toBe('too-dark');
});

describe('what is among the choices', () => {
  const few = { ...shoot, intervalS: 60 };
  const asked = rampWeights('hand');

  // The contract of the curve: an error price from a 64th of the shoot's to 64 times it gives nothing better.
  test.each([
    ['hand', 60],
    ['rig', 30], // as many cues as asked for, with less error
  ] as const)('no price of error gives fewer cues and less error than all of them: %s', (crew, intervalS) => {
    const of = { ...shoot, filters: crew === 'rig' ? [] : shoot.filters, crew, intervalS };
    const choices = choicesOf(of);
    for (let stops = -6; stops <= 6; stops++) {
      const plan = planShoot({ ...of, weights: { error: rampWeights(crew).error * 2 ** stops } });
      if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
      const { cueCount, rmsErrorEv } = plan.summary;
      expect(
        choices.some((choice) => choice.cueCount <= cueCount && choice.rmsErrorEv <= rmsErrorEv + 1e-9),
        `2^${stops} times the price`,
      ).toBe(true);
    }
    const pairs = choices.map((choice) => `${choice.cueCount} cues, ${choice.rmsErrorEv.toFixed(9)}`);
    expect(new Set(pairs).size).toBe(choices.length);
  });

  test('filter changes are those of the plan', () => {
    for (const choice of choicesOf(few)) {
      const plan = planShoot({ ...few, ...choice.apply });
      if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
      const changes = plan.cues.filter((cue) => cue.changes.some(({ control }) => control === 'filter'));
      expect(choice.filterChanges).toBe(changes.length);
    }
    expect(Math.max(...choicesOf(few).map(({ filterChanges }) => filterChanges))).toBeGreaterThan(0);
  });

  // Dearer by eight times, an ISO that may not move goes no lower: a line of its own would say nothing.
  test('where there is one ISO, none is cleaner for its own sake', () => {
    const camera = { ...shoot.camera, iso: { lowest: 3200, highest: 3200 } };
    const filters = [{ name: 'ND1000', factor: 1000 }];
    const choices = choicesOf({ ...few, camera, filters });
    expect(choices.every(({ highestIso }) => highestIso === 3200)).toBe(true);
    expect(choices.map(({ apply }) => apply.weights.iso)).toEqual(choices.map(() => asked.iso));
    // Of equals the name goes to the one of fewest cues.
    expect(choices[0]!.names).toEqual(expect.arrayContaining(['fewest-cues', 'cleanest-iso']));
    expect(choices.at(-1)!.names).toContain('smoothest');
  });

  // Cues of a shutter that is timed freely are none: ISO, aperture and filter alone count.
  test('a free shutter makes no cues', () => {
    const rig = { ...few, camera: { ...shoot.camera, bulb: true } };
    for (const choice of choicesOf(rig)) {
      const plan = planShoot({ ...rig, ...choice.apply });
      if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
      expect(choice.cueCount).toBe(plan.cues.length);
    }
  });
});
