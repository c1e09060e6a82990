// An evening followed by a person: what is typed, what is read in the dark.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { writePlan } from '@evenfall/core';
import { beforeAll, expect, test } from 'vitest';
import { build } from './build.js';
import { evenfall, eveningPlan, folder, typing } from './run.js';

const plan = eveningPlan();
const { frames, cues } = plan;
const planFolder = () => folder({ 'plan.json': writePlan(plan) });
const clock = (at: string) => at.slice(11, 16);

/** What is said after each line typed, without the greeting. */
async function said(lines: readonly string[], argv: readonly string[] = [], files = planFolder()) {
  const { out, status, err } = await typing(['follow', files.at('plan.json'), ...argv], lines);
  expect(status).toBe(0);
  return { answers: out.slice(2), err, files };
}

test('a reading is answered in two lines: what to set now, whole, and how sure; the next cue and when', async () => {
  const { at, sceneEv100 } = frames[0]!;
  const { answers } = await said([`${clock(at)} ${(sceneEv100 - 1).toFixed(1)}`]);
  const lines = answers[0]!.split('\n');
  expect(lines).toHaveLength(3); // and the last line break
  expect(lines[0]).toMatch(
    /^(NOW|SET) +1\/\d+ · ISO \d+ · f\/5\.6 · (no filter|ND 1\.8) {2}EV \d+\.\d \(.*\), 1\.0 darker$/,
  );
  expect(lines[1]).toMatch(/^NEXT +\d\d:\d\d:\d\d {2}.* → .* \(\d clicks?\), in \d+ (min|s)$/);
});

test('by the plan alone the next cue is the plan’s own', async () => {
  const { answers } = await said([clock(frames[cues[0]!.frame - 2]!.at)]);
  const { from, to } = cues[0]!.changes[0]!;
  expect(answers[0]).toContain(`NEXT  ${cues[0]!.at.slice(11, 19)}  shutter ${from} → ${to}`);
});

test('what a person has just said of a cue is not asked of them again', async () => {
  const start = clock(frames[0]!.at);
  const after = (cue: number) => clock(frames[cues[cue - 1]!.frame + 2]!.at);
  const answered = async (line: string) => (await said([start, line])).answers[1]!;
  // By the clock alone it is asked; told, it is not.
  expect(await answered(after(1))).toContain('taken as done: cue 1;');
  for (const report of ['done 1', 'missed 1', 'd', 'm']) {
    const answer = await answered(`${after(1)} ${report}`);
    expect(answer, report).toMatch(/^(NOW|SET) /);
    expect(answer, report).not.toContain('taken as done');
  }
  // Those before it are.
  expect((await said([start, after(1), `${after(3)} done 3`])).answers[2]).toContain('taken as done: cue 2;');
});

test('on a narrow screen a number stays with its unit', async () => {
  const files = planFolder();
  const asked = ['next', ...cues.slice(0, 8).map(({ at }) => clock(at))];
  const { out } = await typing(['follow', files.at('plan.json')], [clock(frames[0]!.at), ...asked], '', 50);
  const lines = out.join('').split('\n');
  expect(lines.filter((line) => /\(\d+ clicks?\)/.test(line)).length).toBeGreaterThan(8);
  for (const line of lines) {
    expect(line.length, line).toBeLessThanOrEqual(50);
    expect(line).not.toMatch(/(?: in|\(\d+|[\d.]+ to)$|^ *(?:min|s|clicks?\)|to) /);
    expect(line).not.toContain('\u00a0');
  }
  expect(out.join('')).toMatch(/ {2}1\. \d\d:\d\d:\d\d .*\n {5}in \d+ min\n/);
});

test('a report is taken back, and what only asked is passed over', async () => {
  const [a, b] = [frames[4]!, frames[5]!];
  const { answers, files } = await said([
    `${clock(a.at)} ${(a.sceneEv100 - 2).toFixed(1)}`,
    '',
    'undo',
    `${clock(b.at)} ${b.sceneEv100.toFixed(1)}`,
    'undo',
    'undo',
  ]);
  expect(answers[0]).toContain('2.0 darker');
  expect(answers[2]).toMatch(/^taken back: EV .*\n/);
  expect(answers[2]).toContain('as planned');
  expect(answers[5]).toBe('! nothing to take back\n');
  // Started again it stands where it stood.
  const again = await said([''], [], files);
  expect(again.err).toContain('taken up after');
  expect(again.answers[0]).toContain('as planned');
  const journal = readFileSync(files.at('plan.json.journal'), 'utf8');
  expect(journal.match(/\{"undo":true\}/g)).toHaveLength(2);
});

test('what a program sent is gone on with by a person, and the other way round', async () => {
  const { at, sceneEv100 } = frames[3]!;
  const files = planFolder();
  await said([`${clock(at)} ${(sceneEv100 - 1).toFixed(1)}`], [], files);
  const { out } = await typing(['follow', files.at('plan.json'), '--json'], [], '{"frame":4}\n');
  expect(JSON.parse(out[0]!.split('\n')[0]!).offsetEv).toBeCloseTo(-1, 1);
});

test('a jump of the light asks for another look, and "sure" has it used', async () => {
  const reading = (frame: number, ev: number) =>
    `${clock(frames[frame]!.at)} ${(frames[frame]!.sceneEv100 + ev).toFixed(1)}`;
  const { answers } = await said([reading(3, 0), reading(4, 2), 'sure', 'sure']);
  expect(answers[1]).toContain('meter again; if it is right, type sure');
  expect(answers[2]).toContain('2.0 brighter');
  expect(answers[3]).toBe('! no reading is in doubt\n');
});

test('help and faults are in the language asked for; a narrow terminal is enough', async () => {
  const { answers } = await said(['?', 'was'], ['--language', 'de']);
  expect(answers[0]).toContain('eine Messung: EV bei ISO 100');
  expect(answers[1]).toBe('! "was" ist nicht verstanden; ? zeigt, was geht\n');
  const { out } = await typing(['follow', planFolder().at('plan.json')], ['?', clock(frames[5]!.at)], '', 50);
  const widest = Math.max(
    ...out
      .join('')
      .split('\n')
      .map((line) => line.length),
  );
  expect(widest).toBeGreaterThan(30);
  expect(widest).toBeLessThanOrEqual(50);
});

test('rings before a cue and at it, which is then taken as done', async () => {
  const cue = cues[0]!;
  const dueMs = Date.parse(cue.at);
  const { out } = await typing(
    ['follow', planFolder().at('plan.json'), '--ring', '1'],
    [clock(frames[0]!.at), async () => pause(2500), 'q'],
    '',
    80,
    dueMs - 2000,
  );
  const all = out.join('');
  expect(all).toMatch(new RegExp(`\\u0007SOON {2}${cue.at.slice(11, 19)}`));
  expect(all).toContain('\u0007\nSET ');
});

test('docs/follow.md shows what is typed and answered', async () => {
  const page = readFileSync(new URL('../../docs/follow.md', import.meta.url), 'utf8');
  const [, shown = ''] = /```text typed\n([\s\S]*?)```/.exec(page) ?? [];
  const files = folder();
  const dusk = fileURLToPath(new URL('../../docs/examples/dusk.yaml', import.meta.url));
  await evenfall(['plan', dusk, '-o', files.at('plan.json')]);
  const typed = [...shown.matchAll(/^> (.*)$/gm)].map(([, line]) => line!);
  expect(typed.length).toBeGreaterThan(1);
  const { answers } = await said(typed, [], files);
  expect(typed.map((line, i) => `> ${line}\n${answers[i]!}`).join('')).toBe(shown);
});

test('options for a person are refused where a program speaks', async () => {
  const { status, err } = await typing(['follow', planFolder().at('plan.json'), '--json', '--ring', '5'], []);
  expect(status).toBe(1);
  expect(err).toContain('--ring would change nothing');
});

// A terminal of its own, as `script` of util-linux makes it.
let bin = '';
beforeAll(() => {
  bin = build();
});

test('at a terminal it prompts, answers each line and ends with control and D', async () => {
  const files = planFolder();
  const command = `stty cols 80; ${process.execPath} ${bin} follow ${files.at('plan.json')}`;
  const child = spawn('script', ['-qec', command, '/dev/null'], { env: { ...process.env, NO_COLOR: '1' } });
  let screen = '';
  child.stdout.on('data', (chunk) => {
    screen += chunk;
  });
  const shows = async (text: string | RegExp) => {
    while (!screen.match(text)) await pause(50);
    screen = screen.slice(screen.search(text) + 1);
  };
  const ended = new Promise((resolve) => child.on('close', resolve));
  await shows('Type what the meter says');
  await shows('> ');
  child.stdin.write(`${clock(frames[3]!.at)} ${frames[3]!.sceneEv100.toFixed(1)}\r`);
  await shows(/NOW|SET/);
  await shows('NEXT');
  child.stdin.write('undo\r');
  await shows('taken back');
  child.stdin.write('\u0004');
  expect(await ended).toBe(0);
  expect(screen).toContain('Started again, it goes on from here.');
}, 60_000);
