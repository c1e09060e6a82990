// The follow command: a plan file, then one JSON object a line in and out, or a person at a terminal, until the input
// ends. What comes in is kept in a journal, so that a process that is started anew goes on where the last one stood.

import { createHash } from 'node:crypto';
import { realpathSync } from 'node:fs';
import { type FollowLines, followLines, saveFollow } from '@evenfall/core';
import { atTerminal } from './at-terminal.js';
import { type Course, courseOf, further, takenBack } from './course.js';
import type { FollowFlags } from './follow-flags.js';
import { hold } from './hold.js';
import type { Io } from './io.js';
import { type Journal, NO_JOURNAL, openJournal } from './journal.js';
import { loadPlan } from './load-plan.js';
import { refuse } from './print-options.js';
import { Refusal } from './refusal.js';

/**
 * Follows a plan by what is typed at a terminal or, where there is none or `json` asks for it, by the lines of standard
 * input; one that is impossible as closely as the kit can. Status 2 where there is nothing to follow. Its journal is the
 * plan's path with `.journal`.
 *
 * @throws Refusal where the plan cannot be read, or another process is following it
 */
export async function follow(planPath: string, flags: FollowFlags, io: Io): Promise<number> {
  const { startOver = false, journal = true, meter, json = false } = flags;
  const isPerson = io.terminal !== undefined && !json;
  if (!isPerson) refuse(flags, ['ring', 'language', 'clock', 'dark'], undefined);
  const say = (line: string) => io.err(`evenfall: ${line}\n`);
  const loaded = await loadPlan(planPath);
  const lines = followLines(loaded, meter === undefined ? {} : { meterEv: meter });
  if (loaded.kind === 'infeasible')
    say(`${planPath}: ${loaded.infeasible.text} It is followed as closely as the kit can.`);
  const goOn = (course: Course, kept: Journal) =>
    isPerson
      ? atTerminal({ plan: loaded, lines, course, journal: kept, flags, io })
      : answer(lines, course, kept, io);
  if (!journal) return goOn(courseOf(lines), NO_JOURNAL);
  const held = await hold(createHash('sha256').update(realpathSync(planPath)).digest('hex').slice(0, 16));
  if (held === undefined) {
    throw new Refusal([{ kind: 'followed-already', path: planPath }]);
  }
  try {
    const path = `${planPath}.journal`;
    const { plan } = saveFollow(lines.start.follow);
    const kept = openJournal({ path, plan, startOver, say });
    const course = replayed(lines, kept.lines);
    if (kept.lines.length > 0 && course.state.follow !== lines.start.follow) {
      const { frame } = course.state.follow;
      const { unread } = course.state;
      const where = frame === undefined ? 'before the first frame' : `at frame ${frame + 1}`;
      const unreadText = unread === 0 ? '' : ` (${unread} of them not readable)`;
      say(
        `${path}: taken up after ${kept.lines.length} lines${unreadText}, ${where}; to start over, say --start-over`,
      );
    }
    try {
      return await goOn({ ...course, state: { ...course.state, lines: 0, unread: 0 } }, kept);
    } finally {
      kept.close();
    }
  } finally {
    held.release();
  }
}

/** Answers line by line, each kept before it is answered. */
async function answer(lines: FollowLines, from: Course, journal: Journal, io: Io): Promise<number> {
  let { state } = from;
  let again = from.steps.at(-1);
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

/** Where the lines of a journal lead. */
function replayed(lines: FollowLines, kept: readonly string[]): Course {
  let course = courseOf(lines);
  for (const line of kept) course = takenBack(course, line) ?? further(lines, course, line);
  return course;
}
