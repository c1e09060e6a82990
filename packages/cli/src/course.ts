// The course of a followed evening: every line that changed something, so that the last report can be taken back.

import type { FollowLines, LinesState } from '@evenfall/core';

/** A line that was answered, what with, and what was known before it. */
export interface Step {
  readonly line: string;
  readonly out: readonly string[];
  readonly before: LinesState;
}

export interface Course {
  readonly state: LinesState;
  /** The latest last; older ones are forgotten. */
  readonly steps: readonly Step[];
}

/** How many lines can be taken back. Our choice: an hour of a line a minute. */
const MOST_STEPS = 60;

/** In the journal, the line that takes the last report back. */
export const UNDO = '{"undo":true}';

/** Before the first line. */
export function courseOf({ start }: FollowLines): Course {
  return { state: start, steps: [] };
}

/** One line further. */
export function further(lines: FollowLines, { state, steps }: Course, line: string): Course {
  const { state: after, out } = lines.next(state, line);
  if (after.follow === state.follow) return { state: after, steps };
  return { state: after, steps: [...steps, { line, out, before: state }].slice(-MOST_STEPS) };
}

/**
 * Where a line takes the last report back, what was known before that; lines that only asked are passed over, because
 * nobody means those.
 *
 * @returns undefined for any other line, and where there is no report to take back
 */
export function takenBack(course: Course, line: string): Course | undefined {
  const at = line === UNDO ? lastReport(course) : undefined;
  if (at === undefined) return undefined;
  const { before } = course.steps[at]!;
  const { lines, unread } = course.state;
  return { state: { ...before, lines, unread }, steps: course.steps.slice(0, at) };
}

/** Which step holds the last report. */
export function lastReport({ steps }: Course): number | undefined {
  const at = steps.findLastIndex(({ line }) => isReport(line));
  return at < 0 ? undefined : at;
}

function isReport(line: string): boolean {
  const told: unknown = JSON.parse(line.replace(/^\uFEFF/, ''));
  return Object.keys(told as object).some((key) => !['at', 'frame', 'jump'].includes(key));
}
