// The journal of a followed evening: a process that is killed at any moment loses at most the line it was reading.

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { appendFileSync, chmodSync, mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { type PlanMade, writePlan } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { seeded } from '../reference/random.js';
import { build } from './build.js';
import { evenfall, eveningPlan, folder } from './run.js';

const plan = eveningPlan();
const BESIDE = 'plan.json.journal';

/** A reading a stop darker than forecast, and something else now and then. */
function lineOf({ frames }: PlanMade, frame: number): string {
  const { at, sceneEv100 } = frames[frame]!;
  if (frame % 7 === 3) return JSON.stringify({ frame });
  if (frame % 11 === 5) return 'what is this';
  return JSON.stringify({ at, ev100: sceneEv100 - 1 + 0.1 * Math.sin(frame) });
}

const LINES = plan.frames.map((_, frame) => lineOf(plan, frame));
const follow = (files: ReturnType<typeof folder>, lines: readonly string[], ...more: string[]) =>
  evenfall(['follow', files.at('plan.json'), ...more], lines.length === 0 ? '' : `${lines.join('\n')}\n`);
const answersOf = (out: string) => out.trimEnd().split('\n').slice(0, -1);
const planFolder = () => folder({ 'plan.json': writePlan(plan) });

/** Without what belongs to one input: the number of a line in it. */
const same = (answers: readonly string[]) => answers.map((each) => each.replaceAll(/ine"?:? ?\d+/g, 'ine'));

test('ended in order or not, the evening goes on where it was', async () => {
  const whole = await follow(planFolder(), LINES);
  const files = planFolder();
  const first = await follow(files, LINES.slice(0, 40));
  expect(first.err).toBe('');
  const second = await follow(files, LINES.slice(40));
  const kept = LINES.slice(0, 40).filter((line) => line.startsWith('{')).length;
  expect(second.err).toBe(
    `evenfall: ${files.at(BESIDE)}: taken up after ${kept} lines, at frame 40; to start over, say --start-over\n`,
  );
  expect(same([...answersOf(first.out), ...answersOf(second.out)])).toEqual(same(answersOf(whole.out)));
  // The sums are those of the evening, the lines those of this input.
  const [end, wholeEnd] = [second, whole].map(({ out }) => JSON.parse(out.trimEnd().split('\n').at(-1)!));
  expect(end).toEqual({ ...wholeEnd, lines: LINES.length - 40, linesNotUnderstood: end.linesNotUnderstood });
  expect(end.linesNotUnderstood).toBe(LINES.slice(40).filter((line) => !line.startsWith('{')).length);
});

test('it is text: the plan it belongs to, then the lines that were understood, as they came', async () => {
  const files = planFolder();
  await follow(files, ['\uFEFF {"frame":3}  ', 'no', '', '{"frame":4}']);
  const [header, ...lines] = readFileSync(files.at(BESIDE), 'utf8').split('\n');
  expect(JSON.parse(header!)).toMatchObject({ format: 'evenfall-journal/1' });
  expect(lines).toEqual(['{"frame":3}', '{"frame":4}', '']);
});

/** The command as a process, asked line by line. */
function start(files: ReturnType<typeof folder>) {
  const child = spawn(process.execPath, [build(), 'follow', files.at('plan.json')], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  child.stdin.on('error', () => {}); // it may be gone
  let err = '';
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    child,
    err: () => err,
    /** The answer; undefined where the process ended first. */
    ask: async (line: string): Promise<string | undefined> => {
      child.stdin.write(`${line}\n`);
      const { value, done } = await answers.next();
      return done ? undefined : value;
    },
  };
}

const gone = async (child: ChildProcess) =>
  child.exitCode === null && child.signalCode === null ? once(child, 'close') : undefined;

test('killed at random moments, each time the unanswered line is sent again: the answers of an undisturbed evening', async () => {
  build();
  const whole = answersOf((await follow(planFolder(), LINES)).out);
  const files = planFolder();
  const random = seeded(20261129);
  const answers: string[] = [];
  let kills = 0;
  while (answers.length < LINES.length) {
    const { child, ask } = start(files);
    const first = await ask(LINES[answers.length]!);
    if (first === undefined) throw new Error('it did not start');
    answers.push(first);
    // Somewhere in the next lines, whatever it is doing.
    const timer = kills < 12 ? setTimeout(() => child.kill('SIGKILL'), random.between(0, 60)) : undefined;
    while (answers.length < LINES.length) {
      const answer = await ask(LINES[answers.length]!);
      if (answer === undefined) break;
      answers.push(answer);
    }
    if (answers.length < LINES.length) kills++;
    clearTimeout(timer);
    child.kill('SIGKILL');
    await gone(child);
  }
  expect(kills).toBeGreaterThan(3);
  expect(same(answers)).toEqual(same(whole));
}, 120_000);

test('a last line that was cut short is left out, wherever it was cut', async () => {
  const files = planFolder();
  const whole = answersOf((await follow(files, LINES.slice(0, 8))).out);
  const text = readFileSync(files.at(BESIDE));
  const ends = [...text.entries()].filter(([, byte]) => byte === 10).map(([at]) => at);
  // From the end of the header on.
  for (let cut = ends[0]! + 1; cut < text.length; cut += 13) {
    writeFileSync(files.at(BESIDE), text.subarray(0, cut));
    const lost = cut - 1 - Math.max(...ends.filter((at) => at < cut)) > 0;
    const { out, err, status } = await follow(files, [LINES[7]!]);
    expect(status).toBe(0);
    expect(err.includes('its last line was cut short and is left out'), `cut at ${cut}`).toBe(lost);
    expect(JSON.parse(answersOf(out)[0]!).frame).toBe(JSON.parse(whole[7]!).frame);
    // What is written after it stands on a line of its own.
    const lines = readFileSync(files.at(BESIDE), 'utf8').trimEnd().split('\n');
    expect(lines.every((line) => JSON.parse(line) !== undefined)).toBe(true);
    expect(lines.at(-1)).toBe(LINES[7]);
  }
  // Not even the header: nothing had been answered.
  truncateSync(files.at(BESIDE), 5);
  const { err, out } = await follow(files, LINES.slice(0, 1));
  expect(err).toBe('');
  expect(answersOf(out)).toEqual(whole.slice(0, 1));
});

test('lines that nobody can read are passed over, and counted', async () => {
  const files = planFolder();
  await follow(files, LINES.slice(0, 2));
  appendFileSync(files.at(BESIDE), `${'\0'.repeat(400)}\n{"frame":\n`);
  const { err, out } = await follow(files, LINES.slice(2, 3));
  expect(err).toContain('taken up after 4 lines (2 of them not readable), at frame 2;');
  expect(JSON.parse(answersOf(out)[0]!).frame).toBe(2);
});

test('the journal of another plan is kept under another name, and a new one is begun', async () => {
  const files = planFolder();
  await follow(files, LINES.slice(0, 5));
  const old = readFileSync(files.at(BESIDE), 'utf8');
  writeFileSync(files.at('plan.json'), writePlan(eveningPlan({ date: '2026-09-13' })));
  const { err, out } = await follow(files, ['{"frame":0}']);
  expect(err).toBe(
    `evenfall: ${files.at(BESIDE)}: it belongs to another plan: kept as ${files.at(BESIDE)}.1, and a new one is begun\n`,
  );
  expect(JSON.parse(answersOf(out)[0]!).offsetEv).toBe(0);
  expect(readFileSync(files.at(`${BESIDE}.1`), 'utf8')).toBe(old);
  writeFileSync(files.at(BESIDE), 'shopping list\n');
  expect((await follow(files, ['{"frame":0}'])).err).toContain(
    `it is no journal: kept as ${files.at(BESIDE)}.2`,
  );
  writeFileSync(files.at(BESIDE), 'half a list');
  expect((await follow(files, ['{"frame":0}'])).err).toContain(`kept as ${files.at(BESIDE)}.3`);
  writeFileSync(files.at(BESIDE), '{"format":"evenfall-journal/2"}\n');
  expect((await follow(files, ['{"frame":0}'])).err).toContain('it is no journal of this version');
});

test('--start-over starts a new journal and keeps the old one; --no-journal reads and writes none', async () => {
  const files = planFolder();
  const [first] = answersOf((await follow(files, LINES.slice(0, 9))).out);
  const aside = await follow(files, LINES.slice(0, 1), '--no-journal');
  expect([aside.err, answersOf(aside.out)[0]]).toEqual(['', first]);
  const startedOver = await follow(files, LINES.slice(0, 1), '--start-over');
  expect(startedOver.err).toContain(`set aside as asked: kept as ${files.at(BESIDE)}.1`);
  expect(answersOf(startedOver.out)[0]).toBe(first);
  expect(files.names()).toEqual(['plan.json', BESIDE, `${BESIDE}.1`]);
  // Where nothing has been said yet there is nothing to set aside.
  const blank = planFolder();
  for (let i = 0; i < 2; i++) expect((await follow(blank, [], '--start-over')).err).toBe('');
  expect(blank.names()).toEqual(['plan.json', BESIDE]);
});

describe('where it cannot be kept the evening goes on without', () => {
  const IN_THE_WAY =
    /journal: cannot be kept: something is in the way that is no file; this evening is not kept\n$/;

  test('a folder is in its place', async () => {
    const files = planFolder();
    mkdirSync(files.at(BESIDE));
    const { status, out, err } = await follow(files, LINES.slice(0, 3));
    expect([status, answersOf(out).length]).toEqual([0, 3]);
    expect(err).toMatch(IN_THE_WAY);
  });

  // Who may do everything is not kept from writing.
  test.skipIf(process.getuid?.() === 0)('a folder that takes no writing', async () => {
    const files = planFolder();
    chmodSync(files.at(''), 0o500);
    const { status, out, err } = await follow(files, LINES.slice(0, 3));
    chmodSync(files.at(''), 0o700);
    expect([status, answersOf(out).length]).toEqual([0, 3]);
    expect(err).toMatch(/journal: cannot be written: permission is missing.*; this evening is not kept\n$/);
  });

  test.skipIf(process.getuid?.() === 0)('a journal that may only be read is taken up', async () => {
    const files = planFolder();
    await follow(files, LINES.slice(0, 3));
    chmodSync(files.at(BESIDE), 0o400);
    const { out, err } = await follow(files, LINES.slice(3, 4));
    expect(err.split('\n')).toHaveLength(3);
    expect(err).toContain('taken up after 3 lines');
    expect(JSON.parse(answersOf(out)[0]!).frame).toBe(3);
  });
});

test('a second process on the same plan is refused in one line, until the first is gone, however it went', async () => {
  const files = planFolder();
  const first = start(files);
  expect(await first.ask(LINES[0]!)).toBeDefined();
  const second = await follow(files, LINES.slice(1, 2));
  expect([second.status, second.out]).toEqual([1, '']);
  expect(second.err).toBe(
    `evenfall: ${files.at('plan.json')}: another process is following it; end that first, or follow beside it with --no-journal\n`,
  );
  expect((await follow(files, LINES.slice(1, 2), '--no-journal')).status).toBe(0);
  first.child.kill('SIGKILL');
  await gone(first.child);
  const third = await follow(files, LINES.slice(1, 2));
  expect([third.status, third.err.includes('taken up after 1 lines')]).toEqual([0, true]);
  expect((await follow(files, [])).status).toBe(0);
});
