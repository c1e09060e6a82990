// An evening followed by a person at a terminal: short lines in, one or two lines out that are read in the dark.

import {
  type FollowLines,
  type Plan,
  rfc3339,
  type Shoot,
  sentenceOf,
  type Zone,
  zoneOf,
} from '@evenfall/core';
import { colorsOf } from './colors.js';
import { type Course, further, lastReport, takenBack, UNDO } from './course.js';
import type { FollowFlags } from './follow-flags.js';
import type { Io } from './io.js';
import type { Journal } from './journal.js';
import { hanging, linesOf } from './layout.js';
import { wordsOf } from './print-options.js';
import { ringer } from './ringer.js';
import { type Answer, aheadLines, answerLines, clockOf, comingText, type Manner } from './spoken.js';
import { type Known, readTyped, type Told } from './typed.js';
import { wordsOver } from './wording.js';
import { speech } from './words/words.js';

/** An evening, and who follows it. */
export interface Session {
  readonly plan: Plan;
  readonly lines: FollowLines;
  readonly course: Course;
  readonly journal: Journal;
  readonly flags: FollowFlags;
  readonly io: Io;
}

/** The clock is that of the shoot from so long before its first frame, as readings are used, to so long after its last. */
const BEFORE_MS = 12 * 3_600_000;
const AFTER_MS = 2 * 3_600_000;

/** Follows until the input ends. */
export async function atTerminal({
  plan,
  lines,
  course: from,
  journal,
  flags,
  io,
}: Session): Promise<number> {
  const { shoot } = plan;
  const terminal = io.terminal!();
  const evening = eveningOf(shoot, lines);
  const said = speech(flags.language);
  const words = wordsOver(plan.kind === 'infeasible' ? {} : plan, { ...said, card: wordsOf(flags) });
  const { follow: w } = words;
  const painted = await colorsOf(io.color);
  const colors = flags.dark ? { ...painted, yellow: String } : painted;
  const manner = (): Manner => ({
    words,
    colors,
    columns: terminal.columns(),
    frameCount: evening.frameCount,
    stepsPerStop: shoot.camera.stepsPerStop,
  });
  let course = from;
  let answer = lastAnswer(course) ?? evening.first;
  let told: Told | undefined;
  let lastCue: number | undefined;
  const ring = ringer(flags.ring, terminal.nowMs, {
    soon: (cue) => {
      const at = rfc3339(terminal.nowMs(), evening.zone);
      say([colors.bold(`\u0007${w.ring}  ${clockOf(cue.at, words)}  ${comingText(cue, at, manner())}`)]);
    },
    due: (cue) => {
      print(['\u0007']);
      tell({ at: cue.at, jump: true });
    },
    quiet: () => {
      const ms = Math.floor(terminal.nowMs() / 1000) * 1000;
      if (ms > evening.startMs && ms < evening.endMs) tell({ at: rfc3339(ms, evening.zone), jump: true });
    },
  });

  const { startMs, endMs, zone } = evening;
  const [start, end] = [startMs, endMs].map((ms) => clockOf(rfc3339(ms, zone), words));
  const title = shoot.title === '' ? words.card.untitled : shoot.title;
  say([w.hello({ title, date: words.card.date(shoot.date), start: start!, end: end! }), w.invite]);
  if (course.steps.length > 0) sayAnswer();
  ring.set(answer.next);
  for await (const typed of terminal.lines()) {
    const read = readTyped(typed, known());
    if (read.kind === 'end') break;
    if (read.kind === 'tell') tell(read.told);
    else if (read.kind === 'wrong') say([`! ${sentenceOf(w.faults, 'wrong', read.fault)}`]);
    else if (read.kind === 'ahead') print(aheadLines(answer, manner()));
    else if (read.kind === 'help') print(helpLines());
    else if (read.kind === 'undo') undo();
    else if (told?.ev100 === undefined || !answer.readAgain) say([`! ${w.notDoubted}`]);
    else tell({ ...told, sure: true });
  }
  ring.stop();
  terminal.close();
  const { frame, readingsUsed, cues } = JSON.parse(lines.end(course.state)[0]!);
  say([
    w.ended({ frame: (frame ?? -1) + 1, of: evening.frameCount, readings: readingsUsed, cues }),
    ...(flags.journal === false ? [] : [w.kept]),
  ]);
  return 0;

  function print(texts: readonly string[]): void {
    terminal.say(`${(flags.dark ? texts.map((text) => colors.red(text)) : texts).join('\n')}\n`);
  }

  function say(texts: readonly string[]): void {
    print(texts.flatMap((text) => linesOf(text, terminal.columns())));
  }

  function tell(line: Told): void {
    const text = JSON.stringify(line);
    const next = further(lines, course, text);
    if (next.state.follow === course.state.follow) {
      say([`! ${w.notTaken}`]);
      return;
    }
    journal.keep(text);
    told = line;
    course = next;
    answer = lastAnswer(course)!;
    lastCue = answer.cue?.cue ?? line.done ?? answer.taken.at(-1)?.cue ?? lastCue;
    sayAnswer(line.done ?? line.missed);
    ring.set(answer.next);
  }

  /** @param reported a cue that the person has just spoken of: nothing about it is taken for granted */
  function sayAnswer(reported?: number | string): void {
    const taken = answer.taken.filter(({ cue }) => cue !== reported);
    print(answerLines({ ...answer, taken }, manner()));
  }

  function undo(): void {
    const at = lastReport(course);
    const back = takenBack(course, UNDO);
    if (at === undefined || back === undefined) {
      say([`! ${w.nothingToUndo}`]);
      return;
    }
    const { line } = course.steps[at]!;
    const report: Told = JSON.parse(line);
    const isTime = Object.keys(report).every((key) => ['at', 'jump', 'sure'].includes(key));
    journal.keep(UNDO);
    course = back;
    answer = lastAnswer(course) ?? evening.first;
    say([w.undone(isTime ? clockOf(report.at!, words) : reportText(report))]);
    // What holds at the time that was reached, without it; a slip in the time goes with it.
    if (isTime || report.at === undefined) sayAnswer();
    else tell({ at: report.at, jump: true });
    ring.set(answer.next);
  }

  function helpLines(): string[] {
    const lead = Math.max(...w.help.map(([each]) => each.length)) + 2;
    return w.help.flatMap(([each, means]) =>
      hanging(each.padEnd(lead), means, terminal.columns()).split('\n'),
    );
  }

  function known(): Known {
    const nowMs = terminal.nowMs();
    const isNow = nowMs >= startMs - BEFORE_MS && nowMs <= endMs + AFTER_MS;
    const answeredMs = Date.parse(answer.at);
    const cues = [...(answer.cue === undefined ? [] : [answer.cue]), ...answer.next];
    return {
      shoot,
      zone,
      nowMs: isNow ? nowMs : undefined,
      nearMs: isNow ? nowMs : answeredMs,
      frame: answer.frame,
      setting: answer.setting,
      cues: cues.map(({ cue, at }) => ({ cue, atMs: Date.parse(at) })),
      lastCue,
      filters: filtersAtHand(shoot, course),
    };
  }
}

/** "9.9", "done 3", "lost ND 6": a report as a person might have typed it. */
function reportText({ ev100, done, missed, lost, setting, kit }: Told): string {
  if (ev100 !== undefined) return `EV ${ev100}`;
  if (done !== undefined) return `done ${done}`;
  if (missed !== undefined) return `missed ${missed}`;
  if (lost !== undefined) return `lost ${lost}`;
  if (kit !== undefined) return `found, ${kit.filters.join(' + ')}`;
  const { filters, ...marks } = setting ?? {};
  return ['set', ...Object.values(marks), ...(filters ?? [])].join(' ');
}

function lastAnswer({ steps }: Course): Answer | undefined {
  const line = steps.at(-1)?.out[0];
  return line === undefined ? undefined : JSON.parse(line);
}

/** First and last frame, and what holds at the first; also of a plan that is impossible. */
function eveningOf(shoot: Shoot, lines: FollowLines) {
  const zone: Zone = zoneOf(shoot.place);
  const first: Answer = JSON.parse(lines.next(lines.start, '{"frame":0}').out[0]!);
  const { framesLeft }: { framesLeft: number } = JSON.parse(lines.end(lines.start)[0]!);
  const startMs = Date.parse(first.at);
  const endMs = startMs + (framesLeft - 1) * shoot.intervalS * 1000;
  return { zone, first, frameCount: framesLeft, startMs, endMs };
}

/** Filters of the shoot less those that were lost, as far as can be taken back. */
function filtersAtHand({ filters }: Shoot, { steps }: Course): string[] {
  let names = filters.map(({ name }) => name);
  for (const { line } of steps) {
    const { lost, kit }: Told = JSON.parse(line);
    if (kit?.filters !== undefined) names = [...kit.filters];
    if (lost !== undefined) names = names.filter((name) => name !== lost);
  }
  return names;
}
