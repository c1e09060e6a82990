// An evening followed through the command: a stop darker than forecast, with a line nobody can read in between.

import { writePlan } from '@evenfall/core';
import { expect, test } from 'vitest';
import { EVENING, evenfall, eveningPlan, folder } from './run.js';

const plan = eveningPlan();

test('readings a stop darker bring the settings a stop down, line by line', async () => {
  const files = folder({ 'plan.json': writePlan(plan) });
  const lines = plan.frames.map(({ at, sceneEv100 }) => JSON.stringify({ at, ev100: sceneEv100 - 1 }));
  lines.splice(5, 0, 'no such thing');
  const { status, out, err } = await evenfall(['follow', files.at('plan.json')], `${lines.join('\n')}\n`);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  const answers = out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  // One answer a line, and one that sums up.
  expect(answers).toHaveLength(lines.length + 1);
  expect(answers[5].warnings[0].text).toMatch(/^Line 6: /);
  const last = answers.filter((answer) => answer.setting !== undefined).slice(-10);
  expect(last).toHaveLength(10);
  for (const answer of last) {
    expect(answer.offsetEv).toBeGreaterThan(-1.3);
    expect(answer.offsetEv).toBeLessThan(-0.7);
    // By hand: Av 5 of f/5.6, the exact shutter, marked ISOs within 0.03 stop of exact, no filter left at night.
    expect(answer.setting).toMatchObject({ aperture: '5.6', filters: [] });
    const settingEv100 = 5 - Math.log2(answer.setting.shutterS) - Math.log2(answer.setting.iso / 100);
    const wanted = plan.frames[answer.frame]!.targetEv100 - 1;
    expect(Math.abs(settingEv100 - wanted)).toBeLessThan(0.8);
  }
});

test('a file that holds no plan is one clear line', async () => {
  const files = folder({ 'shoot.yaml': EVENING, 'half.json': writePlan(plan).slice(0, 500) });
  for (const name of ['shoot.yaml', 'half.json']) {
    const { status, out, err } = await evenfall(['follow', files.at(name)]);
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toBe(
      `evenfall: ${name}: not readable as JSON; give a plan file, as "evenfall plan SHOOT -o plan.json" writes it\n`,
    );
  }
  const missing = await evenfall(['follow', files.at('none.json')]);
  expect(missing.status).toBe(1);
  expect(missing.err).toContain('cannot be read');
});

test('a plan that is impossible is followed as closely as the kit can, which is said', async () => {
  const shoot = EVENING.replace(/highest: \d+/, 'highest: 200');
  expect(shoot).not.toBe(EVENING);
  const made = await evenfall(['plan', '-', '--json'], shoot);
  expect(JSON.parse(made.out).infeasible.reason).toBe('too-dark');
  const files = folder({ 'none.json': made.out });
  const { status, out, err } = await evenfall(
    ['follow', files.at('none.json'), '--no-journal'],
    '{"frame":0}\n',
  );
  expect(status).toBe(0);
  expect(err).toMatch(
    /^evenfall: .*none\.json: From frame .* too dark .* It is followed as closely as the kit can\.\n$/,
  );
  const { warnings } = JSON.parse(out.split('\n')[0]!);
  expect(warnings).toMatchObject([{ kind: 'out-of-reach', now: false, end: 'dark' }]);
});

test('a stated meter reaches the evening: what a steady one doubts is then used', async () => {
  const files = folder({ 'plan.json': writePlan(plan) });
  const [first, second] = plan.frames;
  const input = [
    { at: first!.at, ev100: first!.sceneEv100 },
    { at: second!.at, ev100: second!.sceneEv100 - 1 },
  ];
  const lines = `${input.map((line) => JSON.stringify(line)).join('\n')}\n`;
  const kinds = async (...flags: string[]) => {
    const { out } = await evenfall(['follow', files.at('plan.json'), '--no-journal', ...flags], lines);
    return JSON.parse(out.split('\n')[1]!).warnings.map(({ kind }: { kind: string }) => kind);
  };
  expect(await kinds()).toEqual(['reading-doubted']);
  expect(await kinds('--meter', '0.4')).toEqual([]);
  for (const wrong of ['0', 'x', '4']) {
    const { status, err } = await evenfall(['follow', files.at('plan.json'), '--meter', wrong], lines);
    expect(status).not.toBe(0);
    expect(err).toContain('Give stops above 0, at most 3.');
  }
});
