// The choices that `plan --choices` prints, each taken as its line says and planned.

import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { EVENING, evenfall, eveningPlan } from './run.js';

test('each line holds for the plan that its weights give', async () => {
  const { status, out, err } = await evenfall(['plan', '-', '--choices'], EVENING);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  const rows = [...out.matchAll(/^ *(\d+) +\d+ +([\d.]+) +([\d.]+) +(\d+) +(error: \S+ iso: \S+)/gm)];
  expect(rows.length).toBeGreaterThan(2);
  for (const [, cues, rms, worst, iso, weights] of rows) {
    const plan = eveningPlan({ weights: parse(`{ ${weights} }`) });
    expect(plan.summary.cueCount).toBe(Number(cues));
    expect(plan.summary.rmsErrorEv.toFixed(2)).toBe(rms);
    expect(plan.summary.worstErrorEv.toFixed(2)).toBe(worst);
    expect(Math.max(...plan.frames.map((frame) => frame.iso))).toBe(Number(iso));
  }
  for (const name of ['fewest', 'smoothest', 'as asked', 'lowest ISO']) expect(out).toContain(name);
});

test('as JSON the same choices, and no file', async () => {
  const { status, out } = await evenfall(['plan', '-', '--choices', '--json'], EVENING);
  expect(status).toBe(0);
  expect(JSON.parse(out)[0]).toMatchObject({
    cueCount: expect.any(Number),
    apply: { weights: { error: expect.any(Number) } },
  });
  const refused = await evenfall(['plan', '-', '--choices', '-o', 'plan.json'], EVENING);
  expect(refused).toMatchObject({
    status: 1,
    err: 'evenfall: -o does not go with --choices; leave one out\n',
  });
});
