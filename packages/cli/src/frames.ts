// Frames before anything starts: any two of recording, interval and clip give the third; intervals by subject.

import type { Language } from '@evenfall/chart';
import {
  exactFps,
  type Footage,
  type FootageGiven,
  footageOf,
  INTERVALS_BY_SUBJECT,
  intervalAdvice,
  longestMarkedShutter,
  type Subject,
  wholeSeconds,
} from '@evenfall/core';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { noted } from './described.js';
import type { Io } from './io.js';
import { hanging } from './layout.js';
import { type Act, languageOption, refuseLanguage } from './options.js';
import { Refusal } from './refusal.js';
import { type CommandWords, speech } from './words/words.js';

const LEAD = 17;

interface FramesOptions {
  readonly record?: number; // seconds
  readonly interval?: number;
  readonly clip?: number;
  readonly fps: number;
  readonly gap: number;
  readonly darkFrame?: boolean;
  readonly subject?: Subject;
  readonly json?: boolean;
  readonly language?: Language;
}

const EXAMPLES = `
Example:
  evenfall frames --record 90m --clip 12       interval and frames for a clip of 12 s
  evenfall frames --interval 8 --clip 20       how long it must be recorded
  evenfall frames --record 2h --interval 10    how long the clip will be
  evenfall frames --subject clouds             which interval is advised

Times are seconds, or 90m, 1h30m, 45s.`;

/** Adds "frames" to the command. */
export function addFrames(program: Command, io: Io, act: Act): void {
  noted(program.command('frames'), EXAMPLES, io.columns)
    .summary('compute recording, interval and clip')
    .description(
      'Computes the third from any two of recording, interval and clip, and the longest shutter the interval holds.',
    )
    .option('--record <time>', 'from the first shutter to the last', seconds)
    .option('--interval <time>', "from one frame's start to the next", seconds)
    .option('--clip <time>', 'length of the finished clip', seconds)
    .option('--fps <rate>', 'frames a second in the clip, 23.976 and 29.97 too', rate, 24)
    .option('--gap <time>', 'what the camera needs of each interval beside the shutter', gap, 1)
    .option('--dark-frame', 'long-exposure noise reduction takes the shutter time again')
    .addOption(new Option('--subject <name>', 'interval advised for a subject').choices(subjects()))
    .option('--json', 'print it for a program')
    .addOption(languageOption())
    .allowExcessArguments(false)
    .action((options: FramesOptions) => act(options, frames(options, io)));
}

async function frames(options: FramesOptions, io: Io): Promise<number> {
  const { record, interval, clip, subject } = options;
  const words = speech(options.language);
  const given = [record, interval, clip].filter((value) => value !== undefined).length;
  if (given !== 2 && !(given === 0 && subject !== undefined)) {
    throw new Refusal([{ kind: 'two-of-three' }]);
  }
  refuseLanguage(options.language, options.json ? '--json' : undefined);
  if (options.json) {
    io.out(`${JSON.stringify(framesData(options, given === 2), null, 2)}\n`);
    return 0;
  }
  const lines = [
    ...(given === 2 ? footageLines(options, words, io.columns) : []),
    ...(subject === undefined ? [] : subjectLines(subject, words, io.columns)),
  ];
  io.out(`${lines.join('\n')}\n`);
  return 0;
}

function footageLines(options: FramesOptions, words: CommandWords, columns: number): string[] {
  const w = words.footage;
  const fact = factIn(columns);
  const { fps, gap: gapS, darkFrame = false } = options;
  const footage = footageFrom(options);
  const whole = wholeSeconds(footage);
  const shutter = longestMarkedShutter(footage.intervalS, { gapS, darkFrame, stepsPerStop: 3 });
  const room = w.shutterText(
    shutter && { label: shutter.label, timeS: short(shutter.timeS) },
    w.beside(short(gapS), darkFrame),
  );
  return [
    ...noCameraDoes(footage, fps, gapS, words, columns),
    fact(w.frames, String(footage.frameCount)),
    fact(w.interval, `${words.plain(five(footage.intervalS))} s`),
    fact(w.recording, durationText(footage.recordingS, words)),
    fact(w.clip, w.clipText(short(footage.clipS), fpsText(fps))),
    fact(w.longestShutter, room),
    ...(whole.intervalS === footage.intervalS
      ? []
      : [
          fact(w.inWholeSeconds, w.inWholeSecondsText(whole.intervalS, whole.frameCount, short(whole.clipS))),
        ]),
  ];
}

/** @throws Refusal where the clip is shorter than two frames */
function footageFrom({ record, interval, clip, fps }: FramesOptions): Footage {
  const given =
    clip === undefined
      ? { recordingS: record, intervalS: interval }
      : interval === undefined
        ? { recordingS: record, clipS: clip }
        : { intervalS: interval, clipS: clip };
  try {
    return footageOf(given as FootageGiven, fps); // two of the three are there
  } catch {
    throw new Refusal([{ kind: 'clip-too-short' }]);
  }
}

/** The same for a program; `longestShutter` is null where none fits. */
function framesData(options: FramesOptions, isFootage: boolean): object {
  const { fps, gap: gapS, darkFrame = false, subject } = options;
  const footage = isFootage ? footageFrom(options) : undefined;
  return {
    ...(footage && {
      ...footage,
      clipFps: exactFps(fps),
      longestShutter: longestMarkedShutter(footage.intervalS, { gapS, darkFrame, stepsPerStop: 3 }) ?? null,
    }),
    ...(subject === undefined ? {} : { advice: intervalAdvice(subject) }),
  };
}

/** Why these numbers are none to go out with, before them; nothing where a camera keeps up. */
function noCameraDoes(
  { intervalS, recordingS, clipS }: Footage,
  fps: number,
  gapS: number,
  words: CommandWords,
  columns: number,
): string[] {
  const w = words.footage;
  const fact = factIn(columns);
  if (intervalS * exactFps(fps) <= 1 + 1e-9) {
    const text = w.noTimeLapseText({
      intervalS: short(intervalS),
      perS: short(1 / intervalS),
      clipS: short(clipS),
      recording: durationText(recordingS, words),
    });
    return [fact(w.noTimeLapse, text)];
  }
  return intervalS > gapS ? [] : [fact(w.noCamera, w.noCameraText(short(gapS), short(intervalS)))];
}

function subjectLines(subject: Subject, { footage: w }: CommandWords, columns: number): string[] {
  const fact = factIn(columns);
  const { minS, maxS, rows } = intervalAdvice(subject);
  const authors = new Set(rows.map(({ source }) => source)).size;
  return [
    fact(w.advised, w.advisedText(w.range(minS, maxS), subject, authors)),
    ...rows.map((row) =>
      fact('', w.sourceText(w.range(row.minS, row.maxS), row.words, w.sources[row.source])),
    ),
  ];
}

function factIn(columns: number): (name: string, text: string) => string {
  return (name, text) => hanging(name.padEnd(LEAD), text, columns);
}

function subjects(): Subject[] {
  return [...new Set(INTERVALS_BY_SUBJECT.flatMap((row) => row.subjects))];
}

/** To five figures. */
function five(value: number): number {
  return Number(value.toPrecision(5));
}

function short(value: number): string {
  return String(five(value));
}

/** "23.976" is what people call 24000/1001. */
function fpsText(fps: number): string {
  return String(Number(exactFps(fps).toFixed(3)));
}

/** "1 h 30 min", "45 s", "12 min 5 s". */
function durationText(totalS: number, words: CommandWords): string {
  const all = Math.round(totalS);
  const parts = [
    [Math.floor(all / 3600), 'h'],
    [Math.floor(all / 60) % 60, 'min'],
    [all % 60, 's'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, unit]) => `${count} ${unit}`);
  return all < 10 ? `${words.plain(five(totalS))} s` : told.join(' ');
}

/** "5400", "90m", "1h30m", "45s", "1h 30min", "2 s" as seconds; undefined for what is no time. */
export function timeOf(text: string): number | undefined {
  const part = '(\\d+(?:\\.\\d+)?|\\.\\d+)';
  const parts = new RegExp(`^(?:${part}h)?(?:${part}m(?:in)?)?(?:${part}s?)?$`).exec(
    text.replaceAll(/\s/g, ''),
  );
  if (parts === null || parts[0] === '') return undefined;
  const [h = 0, m = 0, s = 0] = parts.slice(1).map((each) => Number(each ?? 0));
  return 3600 * h + 60 * m + s;
}

/** A time above 0, as seconds. */
function seconds(text: string): number {
  const total = timeOf(text);
  if (total !== undefined && total > 0 && total <= 1e8) return total;
  throw new InvalidArgumentError('Give a time above 0, such as 5400, 90m, 1h30m or 45s.');
}

function gap(text: string): number {
  const value = timeOf(text);
  if (value !== undefined && value <= 3600) return value;
  throw new InvalidArgumentError('Give a time from 0 to an hour, such as 2, 0.5s or 1m.');
}

function rate(text: string): number {
  const value = Number(text);
  if (value > 0 && value <= 1000) return value;
  throw new InvalidArgumentError('Give frames a second above 0, at most 1000.');
}
