// Runs the command over a stretch of the hard files, and says where it is as it goes: a line before a file, upon which
// it waits for a byte, one when the command is done, and one when its answer is checked. hardness.mjs watches it, and
// ends it when a file takes too long or too much.
//
//   node packages/tools/hardness-child.mjs SEED FROM TO

import { readSync, writeSync } from 'node:fs';
import { run } from '../cli/dist/main.js';
import { readPlan } from '../core/dist/index.js';
import { hardFile } from './hard-files.mjs';

/** Plans above this are not read back: reading is not what is measured, and takes more than planning. */
const MOST_READ_BACK = 5_000_000;

/** What may stand on standard error beside a plan: that the zone of the coordinates may be the neighbour's. */
const BORDER_WARNING =
  /^standard input: the time zone \S+ \(UTC[^)]*\) is that of the coordinates, within \d+ km of [^\n]+, write place\.timeZone\n$/;

/** What is wrong with how a file was answered; undefined where nothing is. */
function faultOf(status, out, err) {
  if (status === 1) {
    if (out !== '') return 'printed a plan and an error';
    const lines = err.split('\n');
    if (lines.pop() !== '') return 'the last line has no end';
    if (lines.length === 0 || lines.length > 50) return `${lines.length} lines of errors`;
    const odd = lines.find(
      (line) =>
        !/^(evenfall: standard input(:\d+:| is|:) | {2}\d+ \| )/.test(line) ||
        line.length > 700 ||
        /[\p{Cc}\p{Cs}\u2028\u2029]|this should not happen|undefined|\[object/u.test(line),
    );
    return odd === undefined ? undefined : `an odd error: ${odd.slice(0, 300)}`;
  }
  if (status !== 0 && status !== 2) return `status ${status}`;
  if (err !== '' && !BORDER_WARNING.test(err)) return `an error beside a plan: ${err.slice(0, 200)}`;
  if (out.length > MOST_READ_BACK) return out.endsWith('}\n') ? undefined : 'the plan has no end';
  const read = readPlan(JSON.parse(out));
  if (read.kind === 'wrong') return `the plan does not read: ${read.errors[0].message}`;
  if ((read.plan.kind === 'infeasible') !== (status === 2)) return `status ${status} of another kind of plan`;
  return undefined;
}

const [seed, from, to] = process.argv.slice(2).map(Number);
const say = (line) => writeSync(1, `${line}\n`);

for (let index = from; index < to; index++) {
  const { kind, content } = hardFile(seed, index);
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  let out = '';
  let err = '';
  const io = {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    stdinBytes: async function* all() {
      yield bytes;
    },
    stdinLines: async function* none() {},
    nowMs: Date.now,
    columns: 80,
    color: false,
  };
  // What earlier files left is not this one's. Not every time: it throws compiled code away as well.
  if (process.memoryUsage.rss() > 250e6) globalThis.gc?.();
  say(`start ${index} ${kind}`);
  readSync(0, Buffer.alloc(1));
  let fault;
  let status;
  try {
    status = await run(['plan', '-', '--json'], io);
    say('done');
    fault = faultOf(status, out, err);
  } catch (error) {
    fault = `threw ${error instanceof Error ? `${error.stack}`.split('\n').slice(0, 3).join(' ') : error}`;
  }
  say(fault === undefined ? `end ${status}` : `fault ${fault.replaceAll('\n', ' ')}`);
}
