// How many small faults put into core its tests find, room by room: a seeded sample, each tried in a copy of the
// checkout. Hours for all rooms; run it niced.
//
//   node .tasks/mutants.mjs COPY [ROOM …] [--count 50] [--seed 1] [--out FILE]
//
// COPY is a clone of the checkout with its node_modules, in which files may be changed and put back. FILE collects the
// outcomes, a JSON object a line; `node .tasks/mutants-table.mjs FILE` makes the table of DEVELOPERS.md from it.

import { spawn, spawnSync } from 'node:child_process';
import { appendFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { mutantsOf } from './mutate.mjs';

/** What a room's files are, and the tests that know it: the quick ones first, the slow ones for what is left. */
export const ROOMS = {
  exposure: {
    files: ['exposure.ts', 'dial.ts', 'filter.ts', 'kit.ts', 'look.ts', 'check.ts'],
    quick: [
      'core/exposure',
      'core/dial',
      'core/filter',
      'core/look',
      'core/shoot',
      'core/files/bad-shoot',
      'core/plan-plain',
    ],
    slow: ['core/plan.test', 'core/ramp/reference', 'core/ramp/plan-checker', 'cli/commands'],
  },
  sun: {
    files: [
      'sun.ts',
      'crossing.ts',
      'sky-events.ts',
      'sun-pass.ts',
      'sky-track.ts',
      'clock.ts',
      'span.ts',
      'set-up.ts',
    ],
    quick: ['core/sun', 'core/clock', 'core/sky-track', 'core/set-up'],
    slow: ['core/plan-plain', 'core/moonlit-plan', 'core/files/bad-shoot', 'cli/light-text'],
  },
  light: {
    files: ['light/*.ts', 'forecast.ts', 'targets.ts'],
    quick: ['core/light'],
    slow: ['core/plan-plain', 'core/moonlit-plan', 'core/follow/follow', 'core/plan.test'],
  },
  move: {
    files: ['move/*.ts', 'move.ts', 'plan-move.ts', 'room.ts', 'notes-move.ts'],
    quick: [
      'core/move/angle',
      'core/move/ease',
      'core/move/gear',
      'core/move/s',
      'core/move/time',
      'core/files/bad-shoot',
    ],
    slow: ['core/move/move.test', 'core/move/plan-move', 'chart/moves'],
  },
  footage: {
    files: ['footage.ts', 'footage/*.ts', 'shoot.ts', 'notes-supplies.ts'],
    quick: ['core/footage', 'core/shoot', 'cli/frames'],
    slow: ['core/plan.test', 'core/move/move.test'],
  },
  files: {
    files: ['files/*.ts'],
    quick: [
      'core/files/bad-shoot',
      'core/files/plan-file',
      'core/files/csv',
      'core/files/nearest',
      'core/files/docs',
    ],
    slow: ['core/files', 'cli/bad-input'],
  },
  plan: {
    files: [
      'plan.ts',
      'plan-made.ts',
      'plan-plain.ts',
      'cues.ts',
      'notes.ts',
      'impossible.ts',
      'remedies.ts',
      'remedies-time.ts',
      'choices.ts',
      'reserve.ts',
      'work.ts',
    ],
    quick: ['core/plan-plain', 'core/reserve', 'core/choices', 'core/files/bad-shoot'],
    slow: ['core/plan.test', 'core/plan-reserve', 'core/move/plan-move', 'cli/commands', 'chart/words'],
  },
  follow: {
    files: ['follow/*.ts'],
    quick: ['core/follow/offset-state', 'core/follow/lines'],
    slow: ['core/follow/follow', 'core/follow/live', 'core/follow/table'],
  },
  ramp: {
    files: ['ramp/*.ts'],
    quick: ['core/ramp/reference', 'core/follow/live'],
    slow: ['core/ramp', 'core/follow/follow', 'core/follow/table', 'core/plan.test'],
  },
};

/** Tests that know core as it is built. */
const BUILT = ['docs-exports', 'docs-snippets'];

const CORE = 'packages/core/src/';
/** A mutant that makes a test run for ever is found, too: by the clock. */
const PATIENCE = 4;

/** Numbers from 0 up to 1, by Mulberry32. */
function randomOf(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

function sample(list, count, random) {
  const left = [...list];
  const taken = [];
  while (taken.length < count && left.length > 0)
    taken.push(left.splice(Math.floor(random() * left.length), 1)[0]);
  return taken;
}

/** The path itself, or every file of the folder before "*.ts". */
function filesOf(copy, pattern) {
  if (!pattern.endsWith('*.ts')) return [pattern];
  const folder = pattern.slice(0, -'*.ts'.length);
  return readdirSync(join(copy, folder))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => folder + name);
}

/** Runs tests of the copy: whether they pass, and in how many seconds. */
function runTests(copy, tests, patienceS) {
  const startMs = performance.now();
  const argv = [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--config',
    'test/vitest.config.ts',
    '--bail',
    '1',
    '--reporter',
    'dot',
    ...tests.map((test) => `test/${test}`),
  ];
  return new Promise((resolve) => {
    const child = spawn(process.execPath, argv, {
      cwd: copy,
      stdio: 'ignore',
      detached: true,
      env: { ...process.env, TZ: 'Pacific/Chatham' },
    });
    const timer = setTimeout(() => process.kill(-child.pid, 'SIGKILL'), patienceS * 1000);
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      const end = signal === null ? (code === 0 ? 'pass' : 'fail') : 'timeout';
      resolve({ end, seconds: (performance.now() - startMs) / 1000 });
    });
  });
}

/** Whether the copy still compiles; what needs it built is then as its files are. */
function compiles(copy) {
  const argv = ['node_modules/typescript/bin/tsc', '-b', 'packages/core'];
  return spawnSync(process.execPath, argv, { cwd: copy, stdio: 'ignore' }).status === 0;
}

/** How a mutant ends that is in the copy: by the quick tests, the slow ones, the compiler, or those of what is built. */
async function endOf(copy, { quick, slow }, patience) {
  for (const [i, tests] of [quick, slow].entries()) {
    const { end } = await runTests(copy, tests, patience[i]);
    if (end !== 'pass') return end;
  }
  if (!compiles(copy)) return 'compiler';
  return (await runTests(copy, BUILT, patience[1])).end;
}

/** Tries every mutant of a room's sample. */
async function tryRoom(copy, room, { count, seed, say }) {
  const { files, quick, slow } = ROOMS[room];
  const paths = files.flatMap((pattern) => filesOf(copy, CORE + pattern)).sort();
  const texts = new Map(paths.map((path) => [path, readFileSync(join(copy, path), 'utf8')]));
  const all = paths.flatMap((path) => mutantsOf(texts.get(path)).map((mutant) => ({ path, ...mutant })));
  const base = [await runTests(copy, quick, 600), await runTests(copy, slow, 1800)];
  if (base.some(({ end }) => end !== 'pass')) throw new Error(`${room}: the tests fail without a mutant`);
  const patience = base.map(({ seconds }) => PATIENCE * seconds + 20);
  for (const { path, from, to, by, what, line } of sample(all, count, randomOf(seed))) {
    const text = texts.get(path);
    writeFileSync(join(copy, path), text.slice(0, from) + by + text.slice(to));
    try {
      const end = await endOf(copy, ROOMS[room], patience);
      say({ room, of: all.length, path, line, what, was: text.slice(from, to), by, end });
    } finally {
      writeFileSync(join(copy, path), text);
    }
  }
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { count: { type: 'string' }, seed: { type: 'string' }, out: { type: 'string' } },
});
const [copy, ...rooms] = positionals;
if (copy === undefined) {
  console.error('give a copy of the checkout whose files may be changed');
  process.exit(1);
}
for (const room of rooms.length > 0 ? rooms : Object.keys(ROOMS)) {
  await tryRoom(copy, room, {
    count: Number(values.count ?? 50),
    seed: Number(values.seed ?? 1),
    say: (outcome) => {
      const { end, path, line, what, was, by } = outcome;
      if (end === 'pass')
        console.log(
          `${path}:${line} ${what}: ${JSON.stringify(was.slice(0, 60))} → ${JSON.stringify(by.slice(0, 60))}`,
        );
      if (values.out !== undefined) appendFileSync(values.out, `${JSON.stringify(outcome)}\n`);
    },
  });
}
