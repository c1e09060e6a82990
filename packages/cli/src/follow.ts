// The follow command: a plan file, then one JSON object a line in and out, until the input ends. What comes in is kept
// in a journal, so that a process that is started anew goes on where the last one stood.

import { createHash } from 'node:crypto';
import { realpathSync } from 'node:fs';
import { type FollowLines, followLines, type LinesState, saveFollow } from '@evenfall/core';
import { hold } from './hold.js';
import type { Io } from './io.js';
import { type Journal, NO_JOURNAL, openJournal } from './journal.js';
import { loadPlan } from './load-plan.js';
import { Refusal } from './refusal.js';

/** What the command may be told beside the plan. */
export interface FollowFlags {
  /** Set the journal aside and begin a new one. */
  readonly startOver?: boolean;
  /** `false`: read no journal and write none. */
  readonly journal?: boolean;
  /** Standard deviation of one reading, stops, > 0; absent: a steady meter's. */
  readonly meter?: number;
}

/**
 * Follows a plan by the lines of standard input, one that is impossible as closely as the kit can; status 2 where there is
 * nothing to follow. Its journal is the
 * plan's path with `.journal`.
 *
 * @throws Refusal where the plan cannot be read, or another process is following it
 */
export async function follow(
  planPath: string,
  { startOver = false, journal = true, meter }: FollowFlags,
  io: Io,
): Promise<number> {
  const say = (line: string) => io.err(`evenfall: ${line}\n`);
  const loaded = await loadPlan(planPath);
  const lines = followLines(loaded, meter === undefined ? {} : { meterEv: meter });
  if ('infeasible' in loaded)
    say(`${planPath}: ${loaded.infeasible.text} It is followed as closely as the kit can.`);
  if (!journal) return answer(lines, lines.start, undefined, NO_JOURNAL, io);
  const held = await hold(createHash('sha256').update(realpathSync(planPath)).digest('hex').slice(0, 16));
  if (held === undefined) {
    throw new Refusal([{ kind: 'followed-already', path: planPath }]);
  }
  try {
    const path = `${planPath}.journal`;
    const { plan } = saveFollow(lines.start.follow);
    const kept = openJournal({ path, plan, startOver, say });
    const { state, last, unreadLines } = replayed(lines, kept.lines);
    if (last !== undefined) {
      const { frame } = state.follow;
      const where = frame === undefined ? 'before the first frame' : `at frame ${frame + 1}`;
      const unread = unreadLines === 0 ? '' : ` (${unreadLines} of them not readable)`;
      say(
        `${path}: taken up after ${kept.lines.length} lines${unread}, ${where}; to start over, say --start-over`,
      );
    }
    try {
      return await answer(lines, state, last, kept, io);
    } finally {
      kept.close();
    }
  } finally {
    held.release();
  }
}

/** A line that was answered, and what with. */
interface Answered {
  readonly line: string;
  readonly out: readonly string[];
}

/** Answers line by line, each kept before it is answered. */
async function answer(
  lines: FollowLines,
  from: LinesState,
  last: Answered | undefined,
  journal: Journal,
  io: Io,
): Promise<number> {
  let state = from;
  let again = last;
  for await (const line of io.stdinLines()) {
    // Whoever got no answer because the process ended sends the line again: it counts once.
    if (again !== undefined && line.trim() === again.line) {
      state = { ...state, lines: state.lines + 1 };
      print(again.out);
    } else {
      const step = lines.next(state, line);
      if (step.state.follow !== state.follow) journal.keep(line.trim());
      state = step.state;
      print(step.out);
    }
    if (line.trim() !== '') again = undefined;
  }
  print(lines.end(state));
  return 0;

  function print(out: readonly string[]): void {
    for (const text of out) io.out(`${text}\n`);
  }
}

/** Where the lines of a journal lead, and the last of them. Lines are counted anew: they belong to an input. */
function replayed(lines: FollowLines, kept: readonly string[]) {
  let state = lines.start;
  let last: Answered | undefined;
  for (const line of kept) {
    const step = lines.next(state, line);
    if (step.state.follow !== state.follow) last = { line, out: step.out };
    state = step.state;
  }
  return { state: { ...state, lines: 0, unread: 0 }, last, unreadLines: state.unread };
}
