// The loop of docs/examples that speaks to gphoto2, against a stand-in on the PATH that notes what it is told and
// answers as the program does. Options: its man page, gphoto2(1), 2.5.28. The form of a listed value, "Choice: 0 30",
// stands in the program itself.

import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type PlanMade, writePlan } from '@evenfall/core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { choicesIn, gphoto2, numberOf, takeFrames } from '../../docs/examples/camera-program.mjs';
import { LAKE, planOf } from '../../docs/examples/rig-loop.mjs';
import { fastClock } from '../../docs/examples/simulated-camera.mjs';

const STAND_IN = `#!/bin/sh
here=$(dirname "$0")
printf '%s\\n' "$*" >> "$here/told"
if grep -qxF -e "$*" "$here/fails" 2>/dev/null; then
  echo '*** Error: no camera found' >&2
  echo 'For debugging messages, please use the --debug option.' >&2
  exit 1
fi
[ "$1" = --get-config ] && cat "$here/$2"
exit 0
`;

/** What a camera lists, in its own way of writing: seconds with a zero, f-numbers with an f, words among them. */
const LISTED = {
  shutterspeed: [
    'bulb',
    '30',
    '25',
    '20',
    '15',
    '13',
    '10',
    '8',
    '6',
    '5',
    '4',
    '3.2',
    '2.5',
    '2',
    '1.6',
    '1.3',
    '1',
    '0.8',
    '0.6',
    '0.5',
    '0.4',
    '0.3',
    '1/4',
    '1/5',
    '1/6',
    '1/8',
    '1/10',
    '1/13',
    '1/15',
    '1/20',
    '1/25',
    '1/30',
    '1/40',
    '1/50',
    '1/60',
    '1/80',
    '1/100',
    '1/125',
    '1/160',
    '1/200',
    '1/250',
    '1/320',
    '1/400',
    '1/500',
    '1/640',
    '1/800',
    '1/1000',
    '1/1250',
    '1/1600',
    '1/2000',
    '1/2500',
    '1/3200',
    '1/4000',
  ],
  iso: [
    'Auto',
    ...[
      100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400,
    ].map(String),
  ],
  aperture: ['f/2.8', 'f/3.2', 'f/3.5', 'f/4', 'f/4.5', 'f/5', 'f/5.6'],
};

/** A frame a minute: quick to go through. */
const plan: PlanMade = planOf({ ...LAKE, intervalS: 60, camera: { ...LAKE.camera, gapS: 3 } });
const { intervalS } = plan.shoot;

let folder = '';
const path = process.env.PATH;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenfall-camera-'));
  writeFileSync(join(folder, 'gphoto2'), STAND_IN);
  chmodSync(join(folder, 'gphoto2'), 0o755);
  for (const [name, values] of Object.entries(LISTED)) lists(name, values);
  process.env.PATH = `${folder}:${path}`;
});
afterEach(() => {
  process.env.PATH = path;
  rmSync(folder, { recursive: true, force: true });
});

function lists(name: string, values: readonly string[]): void {
  const choices = values.map((value, i) => `Choice: ${i} ${value}`).join('\n');
  writeFileSync(
    join(folder, name),
    `Label: ${name}\nReadonly: 0\nType: RADIO\nCurrent: ${values[1]}\n${choices}\nEND\n`,
  );
}

const told = () => readFileSync(join(folder, 'told'), 'utf8').trimEnd().split('\n');

/** Goes through the plan on a clock of its own; the camera takes the time that it takes. */
async function shoot(of: PlanMade, hesitate = (_frame: number): number => 0) {
  const clock = fastClock(Date.parse(of.summary.startAt) - 10_000, Number.POSITIVE_INFINITY);
  const said: string[] = [];
  const captures: {
    readonly startMs: number;
    readonly endMs: number;
    readonly stands: Record<string, string>;
  }[] = [];
  const stands: Record<string, string> = {};
  const run = async (args: string[], timeoutMs?: number): Promise<string> => {
    const startMs = clock.nowMs();
    const out = await gphoto2(args, timeoutMs);
    args.forEach((arg, i) => {
      if (arg !== '--set-config') return;
      const [name, value] = args[i + 1]!.split('=');
      stands[name!] = value!;
    });
    const capture = args[0] === '--capture-image';
    // An independent time: marks of this dial are within a tenth of exact ones, "13" is 12.7 s.
    const busyS = capture ? numberOf(stands.shutterspeed) + hesitate(captures.length) : 0.8;
    await clock.until(startMs + busyS * 1000);
    if (capture) {
      captures.push({ startMs, endMs: clock.nowMs(), stands: { ...stands } });
      await clock.until(clock.nowMs() + 1200);
    }
    return out;
  };
  const outcome = await takeFrames(of, { run, clock, say: (text: string) => said.push(text) }).catch(
    ({ message }: Error) => message,
  );
  return { outcome, said, captures };
}

test('every frame is taken at its time, at the setting of the plan, and ends before the next', async () => {
  const { outcome, said, captures } = await shoot(plan);
  expect({ outcome, said }).toEqual({ outcome: plan.summary.frameCount, said: [] });
  expect(captures).toHaveLength(plan.frames.length);
  captures.forEach(({ startMs, endMs, stands }, i) => {
    const { at, shutter, iso, aperture } = plan.frames[i]!;
    expect(startMs).toBe(Date.parse(at));
    expect(endMs).toBeLessThan(startMs + intervalS * 1000);
    expect(stands).toEqual({ shutterspeed: shutter, iso: String(iso), aperture: `f/${aperture}` });
  });
  const lines = told();
  expect(lines.slice(0, 3)).toEqual([
    '--get-config shutterspeed',
    '--get-config iso',
    '--get-config aperture',
  ]);
  for (const line of lines.slice(3)) expect(line).toMatch(/^(--capture-image|(--set-config \w+=\S+ ?)+)$/);
  // Set only where something changes: the first frame, and each cue.
  expect(lines.filter((line) => line.startsWith('--set-config'))).toHaveLength(1 + plan.cues.length);
});

test('marks that a camera writes in another way are found, and those it has not are told before anything is set', async () => {
  expect(choicesIn('Current: 1\nChoice: 0 Auto\nChoice: 1 1/60\nChoice: 12 0.3s\nEND\n')).toEqual([
    { value: '1/60', number: 1 / 60 },
    { value: '0.3s', number: 0.3 },
  ]);
  expect(['1/60', '0.3', '1.3 s', '5.6', 'f/5.6', '2560', '10/13'].map(numberOf)).toEqual([
    1 / 60,
    0.3,
    1.3,
    5.6,
    5.6,
    2560,
    10 / 13,
  ]);
  for (const word of ['Auto', 'bulb', '', 'implicit auto', '1/', '-1'])
    expect(numberOf(word), word).toBeNaN();

  lists(
    'shutterspeed',
    LISTED.shutterspeed.map((value) =>
      value.includes('/') ? `${(1 / Number(value.slice(2))).toFixed(5)}s` : value,
    ),
  );
  expect((await shoot(plan)).captures).toHaveLength(plan.frames.length);

  lists('iso', ['Auto', '100', '200', '400', '800', '1600', '3200', '6400']); // whole stops alone
  rmSync(join(folder, 'told'));
  expect((await shoot(plan)).outcome).toMatch(
    /^the camera lists no iso near (125|160); gphoto2 --get-config iso says which$/,
  );
  expect(told().filter((line) => !line.startsWith('--get-config'))).toEqual([]);
});

test('a lens with a ring lists no aperture: shutter and ISO are set all the same', async () => {
  writeFileSync(
    join(folder, 'aperture'),
    'Label: aperture\nReadonly: 1\nType: TEXT\nCurrent: implicit auto\nEND\n',
  );
  const { outcome } = await shoot(plan);
  expect(outcome).toBe(plan.summary.frameCount);
  expect(told().join('\n')).not.toContain('aperture=');
});

test('a setting that fails is told in a line and set again at the next frame', async () => {
  const [cue] = plan.cues;
  const { to } = cue!.changes[0]!;
  writeFileSync(join(folder, 'fails'), `--set-config shutterspeed=${to}\n`);
  const clock = fastClock(Date.parse(plan.summary.startAt), Number.POSITIVE_INFINITY);
  const said: string[] = [];
  const run = async (args: string[], timeoutMs?: number) => {
    try {
      return await gphoto2(args, timeoutMs);
    } finally {
      if (said.length === 0 && args[1] === `shutterspeed=${to}`) writeFileSync(join(folder, 'fails'), '');
    }
  };
  const taken = await takeFrames(plan, { run, clock, say: (text: string) => said.push(text) });
  expect(taken).toBe(plan.summary.frameCount);
  expect(said).toEqual([
    `Frame ${cue!.frame + 1}: gphoto2 --set-config shutterspeed=${to}: *** Error: no camera found`,
  ]);
  expect(told().filter((line) => line === `--set-config shutterspeed=${to}`)).toHaveLength(2);
});

test('after three frames in a row that failed it stops and says how things stand', async () => {
  writeFileSync(join(folder, 'fails'), '--capture-image\n');
  const { outcome, said } = await shoot(plan);
  expect(outcome).toBe('Stopped: 3 frames in a row failed. The camera stands as it was last set.');
  expect(said).toEqual(
    [1, 2, 3].map((n) => `Frame ${n}: gphoto2 --capture-image: *** Error: no camera found`),
  );
  expect(told().filter((line) => line === '--capture-image')).toHaveLength(3);
});

test('a camera that hesitates costs the frames it runs over; those after it are in time', async () => {
  const { outcome, said, captures } = await shoot(plan, (n) => (n === 5 ? 190 : 0));
  expect(outcome).toBe(plan.summary.frameCount - 2);
  // Over three minutes busy from the start of frame 6 on: 7 and 8 would have run into the next.
  expect(said.map((text) => text.replace(/\d+\.\d s/, 'so many s'))).toEqual(
    [7, 8].map((n) => `Frame ${n} left out, so many s late: gapS is too short.`),
  );
  captures.slice(6).forEach(({ startMs }) => {
    expect((startMs - Date.parse(plan.summary.startAt)) % (intervalS * 1000)).toBeLessThan(15_000);
  });
  captures.slice(7).forEach(({ startMs, endMs }, i) => {
    expect(startMs).toBe(Date.parse(plan.frames[i + 9]!.at));
    expect(endMs).toBeLessThan(startMs + intervalS * 1000);
  });
});

test('a plan it cannot perform is refused before the camera is asked anything', async () => {
  const first = { ...plan.frames[0]!, filters: ['ND 3'] };
  expect((await shoot({ ...plan, frames: [first, ...plan.frames.slice(1)] })).outcome).toMatch(
    /^the plan changes a filter/,
  );
  const bulb = { ...plan, shoot: { ...plan.shoot, camera: { ...plan.shoot.camera, bulb: true } } };
  expect((await shoot(bulb)).outcome).toMatch(/^the plan times the shutter freely/);
  expect(() => told()).toThrow('ENOENT');
});

test('run by itself: one line, and nothing done, where it cannot begin', () => {
  const example = fileURLToPath(new URL('../../docs/examples/camera-program.mjs', import.meta.url));
  const bin = join(folder, 'bin');
  mkdirSync(bin);
  const start = (...args: string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [example, ...args], {
      encoding: 'utf8',
      env: { ...process.env, PATH: bin },
    });
    return { status, stdout, stderr };
  };
  const write = (date: string) => {
    const file = join(folder, `${date}.json`);
    writeFileSync(file, writePlan(planOf({ ...LAKE, date, intervalS: 60 })));
    return file;
  };
  expect(start()).toEqual({
    status: 1,
    stdout: '',
    stderr: 'give one plan file: node camera-program.mjs plan.json\n',
  });
  expect(start(write('2001-09-12'))).toEqual({
    status: 1,
    stdout: '',
    stderr: 'the last frame of this plan is over\n',
  });
  expect(start(write('2190-09-12'))).toEqual({
    status: 1,
    stdout: '',
    stderr: 'gphoto2 --get-config shutterspeed: it is not installed\n',
  });
});
