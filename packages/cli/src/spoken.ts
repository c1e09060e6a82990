// An answer of following in one or two lines that a person reads in the dark: what to set, what comes, how sure.

import { settingText, warningText } from '@evenfall/chart';
import {
  dialStep,
  type FollowAnswer,
  type FollowCue,
  type FollowWarning,
  type StepsPerStop,
} from '@evenfall/core';
import type { Colors } from './colors.js';
import { hanging, together } from './layout.js';
import { changesText } from './wording.js';
import type { CommandWords } from './words/words.js';

/** What of a line of docs/follow.md is said. */
export interface Answer
  extends Pick<
    FollowAnswer,
    'frame' | 'at' | 'setting' | 'cue' | 'offsetEv' | 'sceneEv100' | 'affected' | 'warnings'
  > {
  readonly next: readonly FollowCue[];
  readonly taken: readonly FollowCue[];
  readonly lowEv100: number;
  readonly highEv100: number;
  readonly readAgain?: true;
}

/** How it is said. */
export interface Manner {
  readonly words: CommandWords;
  readonly colors: Colors;
  readonly columns: number; // of the terminal
  readonly frameCount: number;
  readonly stepsPerStop: StepsPerStop;
}

/** Lines without their breaks: what to set now, what is next; then whatever else should be known. */
export function answerLines(answer: Answer, manner: Manner): string[] {
  const { words, colors, columns, frameCount } = manner;
  const { follow } = words;
  const now = `${settingText(answer.setting, words.card)}  ${lightOf(answer, words)}`;
  const [first] = answer.next;
  const none = answer.frame >= frameCount - 1 ? follow.noneLeft : follow.noneSoon;
  const next =
    first === undefined ? none : `${clockOf(first.at, words)}  ${comingText(first, answer.at, manner)}`;
  const lead = Math.max(...[follow.now, follow.set, follow.next].map((text) => text.length)) + 2;
  const line = (head: string, text: string) => hanging(head.padEnd(lead), text, columns).split('\n');
  const changes = answer.cue === undefined ? [] : line('', doText(answer.cue, manner));
  return [
    ...line(answer.cue === undefined ? follow.now : follow.set, now).map((text) => colors.bold(text)),
    ...changes,
    ...line(follow.next, next),
    ...(answer.taken.length > 0
      ? hanging('', follow.taken(answer.taken[0]!.cue, answer.taken.at(-1)!.cue), columns).split('\n')
      : []),
    ...(answer.affected ? [follow.affected] : []),
    ...warningLines(answer.warnings, manner),
    ...(answer.readAgain ? [follow.readAgain] : []),
  ];
}

/** Warnings, with a mark before each. */
export function warningLines(
  warnings: readonly FollowWarning[],
  { words, columns, colors }: Manner,
): string[] {
  return warnings.flatMap((warning) =>
    hanging('! ', warningText(warning, words.card), columns)
      .split('\n')
      .map((text) => colors.yellow(text)),
  );
}

/** Every cue told ahead, a line each. */
export function aheadLines({ next, at }: Answer, manner: Manner): string[] {
  const { words, columns } = manner;
  if (next.length === 0) return [words.follow.noneSoon];
  return next.flatMap((cue) => {
    const [number = '', ...text] = `${cueText(cue, manner)}, ${inTime(cue, at, manner)}`.split(' ');
    return hanging(`  ${number} `, text.join(' '), columns).split('\n');
  });
}

/** "shutter 1/1000 → 1/800 (1 click), in 5 min". */
export function comingText(cue: FollowCue, fromAt: string, manner: Manner): string {
  return `${doText(cue, manner)}, ${inTime(cue, fromAt, manner)}`;
}

function inTime({ at }: FollowCue, fromAt: string, { words }: Manner): string {
  return together(words.follow.inTime(secondsTo(at, fromAt)));
}

function cueText(cue: FollowCue, manner: Manner): string {
  return manner.words.follow.cue(cue.cue, clockOf(cue.at, manner.words), doText(cue, manner));
}

/** Each change, with the clicks of its dial. */
function doText({ changes }: FollowCue, { words, stepsPerStop }: Manner): string {
  return changes
    .map((change) => {
      const text = changesText({ changes: [change] }, words.card);
      const { control, from, to } = change;
      if (control === 'filter') return text;
      const [a, b] = [from, to].map((label) => dialStep(control, label, stepsPerStop));
      if (a === undefined || b === undefined) return text;
      return `${text} ${together(`(${words.follow.clicks(Math.abs(b - a))})`)}`;
    })
    .join(', ');
}

function lightOf({ sceneEv100, lowEv100, highEv100, offsetEv }: Answer, { follow }: CommandWords): string {
  const off = Math.abs(offsetEv) < 0.05 ? follow.asPlanned : follow.offPlan(offsetEv);
  return `${together(follow.light({ ev: sceneEv100, low: lowEv100, high: highEv100 }))}, ${together(off)}`;
}

function secondsTo(at: string, fromAt: string): number {
  return Math.round((Date.parse(at) - Date.parse(fromAt)) / 1000);
}

export function clockOf(at: string, words: CommandWords): string {
  return words.card.clock(at, true);
}
