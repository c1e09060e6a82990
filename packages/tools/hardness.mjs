// Whether every file that may come in gives a plan or a clear error, in time and in little memory.
// Run after a build: node packages/tools/hardness.mjs [FILES, 100000 unless given] [FIRST] [SEED]
//
// The files run in a process of their own, which is watched from outside: time is that of the processor in its main
// thread, which is what a person would wait, so that a busy machine finds nothing that is not there.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const MOST_S = 2;
export const MOST_MB = 512;
const SEED = 20_261_014;
const WATCH_MS = 40;
/** A process starts again after so many files, as it would for a person. */
const STRETCH = 500;
const CHILD = fileURLToPath(new URL('hardness-child.mjs', import.meta.url));

/** Seconds of the processor that a process's main thread has used, and its memory in MB; Linux. */
function usage(pid) {
  const fields = readFileSync(`/proc/${pid}/task/${pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  const [, resident] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ');
  return {
    processorS: (Number(fields[11]) + Number(fields[12])) / 100,
    memoryMB: (Number(resident) * 4096) / 1e6,
  };
}

/** Runs files from…to in one process; comes back with where it ended. */
function stretch(seed, from, to, tally) {
  return new Promise((resolve) => {
    const argv = [`--max-old-space-size=${MOST_MB}`, '--expose-gc', CHILD, seed, from, to].map(String);
    const child = spawn(process.execPath, argv, { stdio: ['pipe', 'pipe', 'pipe'] });
    let current;
    let next = from;
    let stderr = '';
    const fault = (text) => {
      tally.faults.push({ index: current.index, kind: current.kind, text });
    };
    const look = () => {
      try {
        return usage(child.pid);
      } catch {
        return undefined; // it has just ended
      }
    };
    const watch = setInterval(() => {
      const now = current?.running ? look() : undefined;
      if (now === undefined) return;
      current.memoryMB = Math.max(current.memoryMB, now.memoryMB);
      current.processorS = now.processorS - current.startS;
      if (current.processorS > MOST_S) fault(`takes more than ${MOST_S} s`);
      else if (now.memoryMB > MOST_MB) fault(`takes ${now.memoryMB.toFixed(0)} MB`);
      else return;
      current.running = false;
      current.told = true;
      child.kill('SIGKILL');
    }, WATCH_MS);
    child.stdin.on('error', () => undefined); // a process that has just ended says so by itself
    child.stderr.on('data', (data) => {
      stderr = (stderr + data).slice(-2000);
    });
    createInterface({ input: child.stdout }).on('line', (line) => {
      const [word, ...rest] = line.split(' ');
      if (word === 'start') {
        const index = Number(rest[0]);
        const now = look();
        current = {
          index,
          kind: rest.slice(1).join(' '),
          startS: now?.processorS ?? 0,
          memoryMB: now?.memoryMB ?? 0,
          processorS: 0,
          running: true,
          told: false,
        };
        next = index + 1;
        child.stdin.write('.');
      } else if (word === 'done') {
        current.running = false;
        const now = look();
        if (now !== undefined)
          current.processorS = Math.max(current.processorS, now.processorS - current.startS);
      } else {
        current.running = false;
        const kind = current.kind;
        tally.kinds[kind] = (tally.kinds[kind] ?? 0) + 1;
        if (current.processorS > tally.slowestS)
          Object.assign(tally, { slowestS: current.processorS, slowest: current.index });
        if (current.memoryMB > tally.largestMB)
          Object.assign(tally, { largestMB: current.memoryMB, largest: current.index });
        if (word === 'end') tally.statuses[rest[0]] = (tally.statuses[rest[0]] ?? 0) + 1;
        else fault(rest.join(' '));
        current.told = true;
      }
    });
    child.on('close', (code, signal) => {
      clearInterval(watch);
      if (current === undefined)
        throw new Error(`the process of files ${from} to ${to} did not start: ${stderr}`);
      if (!current.told)
        fault(`ended the process (${signal ?? code}): ${stderr.slice(0, 300).replaceAll('\n', ' ')}`);
      resolve(next);
    });
  });
}

/**
 * Runs `count` files from number `first` on.
 *
 * @typedef {object} Tally how they were answered
 * @property {Record<string, number>} statuses by exit status
 * @property {Record<string, number>} kinds by kind of file
 * @property {{ index: number, kind: string, text: string }[]} faults
 * @property {number} slowestS
 * @property {number} slowest
 * @property {number} largestMB
 * @property {number} largest
 *
 * @param {{ count: number, first?: number, seed?: number, progress?: (done: number, tally: Tally) => void }} what
 * @returns {Promise<Tally>}
 */
export async function hardness({ count, first = 0, seed = SEED, progress }) {
  /** @type {Tally} */
  const tally = { statuses: {}, kinds: {}, faults: [], slowestS: 0, slowest: 0, largestMB: 0, largest: 0 };
  for (let next = first; next < first + count; ) {
    next = await stretch(seed, next, Math.min(first + count, next + STRETCH), tally);
    progress?.(next - first, tally);
  }
  return tally;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [count = 100_000, first = 0, seed = SEED] = process.argv.slice(2).map(Number);
  let told = 0;
  const tally = await hardness({
    count,
    first,
    seed,
    progress: (done, { faults }) => {
      for (; told < faults.length; told++) {
        const { index, kind, text } = faults[told];
        console.log(`file ${index} (${kind}): ${text}`);
      }
      if (done % 5000 < STRETCH) console.log(`${done} files, ${faults.length} faults`);
    },
  });
  const { statuses, faults, slowestS, slowest, largestMB, largest } = tally;
  console.log(
    `${count} files: ${statuses[0] ?? 0} planned, ${statuses[2] ?? 0} impossible, ${statuses[1] ?? 0} refused, ${faults.length} faults; ` +
      `slowest ${slowestS.toFixed(2)} s (${slowest}), largest ${largestMB.toFixed(0)} MB (${largest})`,
  );
  process.exitCode = faults.length > 0 ? 1 : 0;
}
