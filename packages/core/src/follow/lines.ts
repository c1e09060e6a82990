// Following as lines of text: one JSON object in, one out. A pure reducer, so that a command, a socket or a test
// can drive it. No line ends the stream. The format: docs/follow.md.

import type { Plan } from '../plan/types.js';
import { frameStartMs } from './evening.js';
import { type FollowState, followFrame, startFollow } from './follow.js';
import { readLine } from './line-in.js';
import type { FollowAnswer, FollowCue, FollowOptions, FollowSetting } from './types.js';
import type { FollowWarning } from './warning.js';

/** What is known while lines are read. */
export interface LinesState {
  /** Of the evening. */
  readonly follow: FollowState;
  /** Read so far, blank ones too. */
  readonly lines: number;
  /** Used so far. */
  readonly readings: number;
  /** Lines that were not understood. */
  readonly unread: number;
}

/** One line further. */
export interface LinesStep {
  /** For the next line; the one given is not changed. */
  readonly state: LinesState;
  /** JSON objects, one or none, without line breaks. */
  readonly out: readonly string[];
}

/** How to read an evening's lines. */
export interface FollowLines {
  /** Before the first line. */
  readonly start: LinesState;
  /** One line in, with or without its line break; one line out, none for a blank one. Never throws. */
  next(state: LinesState, line: string): LinesStep;
  /** At the end of input: one line that sums up. */
  end(state: LinesState): readonly string[];
}

/**
 * An evening followed as lines of text, one JSON object in, one out. A line in has a key of {@link FollowInput} or `at`, RFC 3339; a line out is {@link FollowAnswer} in short, with its `kind`.
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @param options how far ahead to plan, how steady the meter is
 * @returns where to start, how to read a line, how to end
 * @throws RangeError on options out of range, or a plan that contradicts its own kit
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { followLines } from '@evenfall/core';
 *
 * const lines = followLines(plan);
 * const { state, out } = lines.next(lines.start, '{"frame":0}');
 * JSON.parse(out[0]!).setting.shutter === plan.frames[0]?.shutter; // → true
 * JSON.parse(lines.end(state)[0]!); // → { lines: 1, framesLeft: plan.frames.length - 1 }
 * ```
 */
export function followLines(plan: Plan, options: FollowOptions = {}): FollowLines {
  const follow = startFollow(plan, options);
  return { start: { follow, lines: 0, readings: 0, unread: 0 }, next, end };
}

function next(state: LinesState, line: string): LinesStep {
  const lines = state.lines + 1;
  const read = readLine(line, (frame) => frameStartMs(state.follow.evening, frame));
  if (read.kind === 'blank') return { state: { ...state, lines }, out: [] };
  if (read.kind === 'wrong') return refused(state, lines, read.text);
  try {
    const { state: follow, ...answer } = followFrame(state.follow, read.input);
    const used = follow.trust.offset !== state.follow.trust.offset && read.input.reading !== undefined;
    return {
      state: { ...state, follow, lines, readings: state.readings + (used ? 1 : 0) },
      out: [JSON.stringify(lineOf(answer), shortEv)],
    };
  } catch (error) {
    // Nothing is known to come here; were it to, an evening is worth more than the report of a fault.
    return refused(state, lines, `this should not happen: ${error instanceof Error ? error.message : error}`);
  }
}

function refused(state: LinesState, lines: number, why: string): LinesStep {
  const warning = { kind: 'bad-line', why, text: `Line ${lines}: ${why}. Nothing is changed.` };
  return {
    state: { ...state, lines, unread: state.unread + 1 },
    out: [JSON.stringify({ kind: 'wrong', line: lines, warnings: [warning] })],
  };
}

function end({ follow, lines, readings, unread }: LinesState): string[] {
  const { frame, camera, evening } = follow;
  return [
    JSON.stringify({
      kind: 'end',
      end: true,
      lines,
      linesNotUnderstood: unread,
      readingsUsed: readings,
      ...(frame === undefined ? {} : { frame }),
      framesLeft: frame === undefined ? evening.frameCount : evening.frameCount - 1 - frame,
      cues: camera.cueCount,
    }),
  ];
}

interface SettingOut {
  readonly shutter: string;
  readonly shutterS: number;
  readonly iso: number;
  readonly aperture: string;
  readonly filters: readonly string[];
}

interface LineOut {
  readonly kind: 'ok';
  readonly frame: number;
  readonly at: string;
  readonly setting: SettingOut;
  readonly cue?: Omit<FollowCue, 'setNow'> & { readonly setNow?: SettingOut | undefined };
  readonly next: readonly FollowCue[];
  readonly taken: readonly FollowCue[];
  readonly offsetEv: number;
  readonly sceneEv100: number;
  readonly lowEv100: number;
  readonly highEv100: number;
  readonly errorEv: number;
  readonly affected: boolean;
  readonly readAgain?: true;
  readonly warnings: readonly FollowWarning[];
}

/** What is printed of an answer. */
function lineOf(answer: Omit<FollowAnswer, 'state'>): LineOut {
  const { cue } = answer;
  return {
    kind: 'ok',
    frame: answer.frame,
    at: answer.at,
    setting: settingOut(answer.setting),
    ...(cue === undefined ? {} : { cue: { ...cue, ...(cue.setNow && { setNow: settingOut(cue.setNow) }) } }),
    next: answer.cuesAhead,
    taken: answer.cuesTaken,
    offsetEv: answer.offsetEv,
    sceneEv100: answer.sceneEv100,
    lowEv100: answer.lowEv100,
    highEv100: answer.highEv100,
    errorEv: answer.errorEv,
    affected: answer.affected,
    ...(answer.readAgain ? { readAgain: true } : {}),
    warnings: answer.warnings,
  };
}

function settingOut({ shutter, shutterS, iso, aperture, filters }: FollowSetting): SettingOut {
  return { shutter, shutterS, iso, aperture, filters };
}

/** EVs and degrees to a thousandth. Adding 0 keeps -0 out of sight. */
function shortEv(key: string, value: unknown): unknown {
  if (typeof value !== 'number' || !/(ev100|Ev100|Ev|Deg)$/.test(key)) return value;
  return Math.round(value * 1000) / 1000 + 0;
}
