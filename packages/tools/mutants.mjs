// How many small faults put into core its tests find, room by room: a seeded sample, each tried in a copy of the
// checkout. Hours for all rooms; run it niced.
//
//   node packages/tools/mutants.mjs COPY [ROOM …] [--count 50] [--seed 1] [--what KIND] [--out FILE]
//
// KIND is a kind of fault, `number` say; all of them unless given.
// COPY is a clone of the checkout with its node_modules, in which files may be changed and put back. FILE collects the
// outcomes, a JSON object a line, and what it holds is not tried again; `node packages/tools/mutants-table.mjs FILE` makes the table of DEVELOPERS.md from it.

import { fork, spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { filesOf, ROOMS } from './mutant-rooms.mjs';
import { mutantsOf } from './mutate.mjs';

/** Tests that know core as it is built. */
const BUILT = ['docs-exports', 'docs-snippets'];

const CORE = 'packages/core/src/';
/** A mutant that makes a test run for ever is found, too: by the processor's time, so that a busy machine finds nothing. */
const PATIENCE = 4;
const LOOK_MS = 500;

/** Seconds of the processor that a process, which leads its group, and its own have used; Linux. */
function processorS(leader) {
  let ticks = 0;
  for (const name of readdirSync('/proc').filter((each) => /^\d+$/.test(each))) {
    try {
      // After the name, which may hold anything: state, parent, group, …, time of its own and of its children that ended.
      const fields = readFileSync(`/proc/${name}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ');
      if (Number(fields[2]) === leader)
        ticks += fields.slice(11, 15).reduce((sum, each) => sum + Number(each), 0);
    } catch {
      // It has just ended.
    }
  }
  return ticks / 100;
}

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

/** A test runner that stays warm over the copy, and is started again when a test runs for ever. */
class Runner {
  constructor(copy) {
    this.copy = copy;
    this.changed = new Set(); // files since the last run
  }

  write(path, text) {
    const full = join(this.copy, path);
    writeFileSync(full, text);
    this.changed.add(full);
  }

  /** How the tests end, and in how many seconds of the processor. */
  async run(tests, patienceS) {
    this.child ??= await this.start();
    const { child } = this;
    const startS = processorS(child.pid);
    let seconds = 0;
    const end = await new Promise((resolve) => {
      const watch = setInterval(() => {
        seconds = Math.max(seconds, processorS(child.pid) - startS);
        if (seconds > patienceS) done('timeout');
      }, LOOK_MS);
      const done = (end) => {
        clearInterval(watch);
        resolve(end);
      };
      child.once('message', done);
      child.once('exit', () => done('fail')); // out of memory, say
      child.send({ changed: [...this.changed], tests });
    });
    this.changed.clear();
    if (end === 'timeout' || child.exitCode !== null) this.end();
    child.removeAllListeners();
    return { end, seconds };
  }

  async start() {
    const child = fork(join(this.copy, 'packages/tools/mutants-child.mjs'), {
      cwd: this.copy,
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      detached: true, // so that its own processes end with it
      env: { ...process.env, TZ: 'Pacific/Chatham' },
    });
    await new Promise((resolve) => child.once('message', resolve));
    return child;
  }

  end() {
    try {
      if (this.child !== undefined) process.kill(-this.child.pid, 'SIGKILL');
    } catch {
      // It has ended by itself.
    }
    this.child = undefined;
  }
}

/** Runs tests in a process of their own: what is built is loaded once a process. */
function passAlone(copy, tests) {
  const config = ['--config', 'test/vitest.config.ts', '--bail', '1', '--reporter', 'dot'];
  const argv = ['node_modules/vitest/vitest.mjs', 'run', ...config, ...tests.map((test) => `test/${test}`)];
  return spawnSync(process.execPath, argv, { cwd: copy, stdio: 'ignore', timeout: 600_000 }).status === 0;
}

/** Whether the copy still compiles; what needs it built is then as its files are. */
function compiles(copy) {
  const argv = ['node_modules/typescript/bin/tsc', '-b', 'packages/core'];
  return spawnSync(process.execPath, argv, { cwd: copy, stdio: 'ignore' }).status === 0;
}

/** How a mutant ends that is in the copy: by the quick tests, the slow ones, the compiler, or those of what is built. */
async function endOf(runner, { quick, slow }, patience) {
  for (const [i, tests] of [quick, slow].entries()) {
    const { end } = await runner.run(tests, patience[i]);
    if (end !== 'pass') return end;
  }
  if (!compiles(runner.copy)) return 'compiler';
  return passAlone(runner.copy, BUILT) ? 'pass' : 'fail';
}

/** What tells one mutant from another. */
const keyOf = ({ path, line, what, was, by }) => [path, line, what, was, by].join(' ');

/** Tries every mutant of a room's sample that has not been tried yet. */
async function tryRoom(copy, room, { count, seed, kind, tried, say }) {
  const knownBy = ROOMS[room];
  if (knownBy === undefined)
    throw new Error(`${room} is no room; these are: ${Object.keys(ROOMS).join(', ')}`);
  const { quick, slow } = knownBy;
  const all = filesOf(join(copy, CORE), room).flatMap((name) => {
    const path = CORE + name;
    const text = readFileSync(join(copy, path), 'utf8');
    return mutantsOf(text)
      .filter(({ what }) => kind === undefined || what === kind)
      .map((mutant) => ({ path, text, ...mutant }));
  });
  const mutants = sample(all, count, randomOf(seed))
    .map((mutant) => ({ ...mutant, was: mutant.text.slice(mutant.from, mutant.to) }))
    .filter((mutant) => !tried.has(keyOf(mutant)));
  if (mutants.length === 0) return;
  const runner = new Runner(copy);
  const patience = [];
  for (const tests of [quick, slow]) {
    const { end, seconds } = await runner.run(tests, 1800);
    if (end !== 'pass') throw new Error(`${room}: the tests ${tests.join(', ')} fail without a mutant`);
    patience.push(PATIENCE * seconds + 10);
  }
  for (const { path, text, from, to, by, what, line, was } of mutants) {
    runner.write(path, text.slice(0, from) + by + text.slice(to));
    try {
      const end = await endOf(runner, knownBy, patience);
      say({ room, of: all.length, path, line, what, was, by, end });
    } finally {
      runner.write(path, text);
    }
  }
  runner.end();
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string' },
    seed: { type: 'string' },
    what: { type: 'string' },
    out: { type: 'string' },
  },
});
const [copy, ...rooms] = positionals;
if (copy === undefined) {
  console.error('give a copy of the checkout whose files may be changed');
  process.exit(1);
}
const { out } = values;
if (out !== undefined) mkdirSync(dirname(out), { recursive: true });
const tried = new Set(
  out !== undefined && existsSync(out)
    ? readFileSync(out, 'utf8')
        .trim()
        .split('\n')
        .map((line) => keyOf(JSON.parse(line)))
    : [],
);
for (const room of rooms.length > 0 ? rooms : Object.keys(ROOMS)) {
  await tryRoom(copy, room, {
    count: Number(values.count ?? 50),
    seed: Number(values.seed ?? 1),
    kind: values.what,
    tried,
    say: (outcome) => {
      const { end, path, line, what, was, by } = outcome;
      if (end === 'pass')
        console.log(
          `${path}:${line} ${what}: ${JSON.stringify(was.slice(0, 60))} → ${JSON.stringify(by.slice(0, 60))}`,
        );
      if (out !== undefined) appendFileSync(out, `${JSON.stringify(outcome)}\n`);
    },
  });
}
