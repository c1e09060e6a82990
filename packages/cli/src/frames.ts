// Frames before anything starts: any two of recording, interval and clip give the third; intervals by subject.

import {
  exactFps,
  type Footage,
  type FootageGiven,
  footageOf,
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  longestMarkedShutter,
  type Subject,
  wholeSeconds,
} from '@evenfall/core';
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Io } from './io.js';
import { hanging } from './layout.js';
import { Refusal } from './refusal.js';

const LEAD = 17;

interface FramesOptions {
  readonly record?: number; // seconds
  readonly interval?: number;
  readonly clip?: number;
  readonly fps: number;
  readonly gap: number;
  readonly darkFrame?: boolean;
  readonly subject?: Subject;
}

const EXAMPLES = `
Example:
  evenfall frames --record 90m --clip 12       interval and frames for a clip of 12 s
  evenfall frames --interval 8 --clip 20       how long it must be recorded
  evenfall frames --record 2h --interval 10    how long the clip will be
  evenfall frames --subject clouds             which interval is advised

Times are seconds, or 90m, 1h30m, 45s.`;

/** Adds "frames" to the command. */
export function addFrames(program: Command, io: Io, act: (action: Promise<number>) => Promise<void>): void {
  program
    .command('frames')
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
    .allowExcessArguments(false)
    .addHelpText('after', EXAMPLES)
    .action((options: FramesOptions) => act(frames(options, io)));
}

async function frames(options: FramesOptions, io: Io): Promise<number> {
  const { record, interval, clip, subject } = options;
  const given = [record, interval, clip].filter((value) => value !== undefined).length;
  if (given !== 2 && !(given === 0 && subject !== undefined)) {
    throw new Refusal(['give two of --record, --interval and --clip, or --subject alone']);
  }
  const lines = [
    ...(given === 2 ? footageLines(options) : []),
    ...(subject === undefined ? [] : subjectLines(subject)),
  ];
  io.out(`${lines.join('\n')}\n`);
  return 0;
}

function footageLines({
  record,
  interval,
  clip,
  fps,
  gap: gapS,
  darkFrame = false,
}: FramesOptions): string[] {
  const given =
    clip === undefined
      ? { recordingS: record, intervalS: interval }
      : interval === undefined
        ? { recordingS: record, clipS: clip }
        : { intervalS: interval, clipS: clip };
  let footage: Footage;
  try {
    footage = footageOf(given as FootageGiven, fps); // two of the three are there
  } catch {
    throw new Refusal(['--clip is shorter than two frames; give a longer one']);
  }
  const whole = wholeSeconds(footage);
  const shutter = longestMarkedShutter(footage.intervalS, { gapS, darkFrame, stepsPerStop: 3 });
  const beside = `beside a gap of ${short(gapS)} s${darkFrame ? ' and its dark frame' : ''}`;
  const room =
    shutter === undefined
      ? `none fits ${beside}`
      : `"${shutter.label}", which is ${short(shutter.timeS)} s, ${beside}`;
  return [
    ...noCameraDoes(footage, fps, gapS),
    fact('Frames', String(footage.frameCount)),
    fact('Interval', `${short(footage.intervalS)} s`),
    fact('Recording', durationText(footage.recordingS)),
    fact('Clip', `${short(footage.clipS)} s at ${fpsText(fps)} frames a second`),
    fact('Longest shutter', room),
    ...(whole.intervalS === footage.intervalS
      ? []
      : [
          fact(
            'In whole seconds',
            `every ${whole.intervalS} s: ${whole.frameCount} frames, a clip of ${short(whole.clipS)} s`,
          ),
        ]),
  ];
}

/** Why these numbers are none to go out with, before them; nothing where a camera keeps up. */
function noCameraDoes({ intervalS, recordingS, clipS }: Footage, fps: number, gapS: number): string[] {
  if (intervalS * exactFps(fps) <= 1 + 1e-9) {
    const text = `a frame every ${short(intervalS)} s is ${short(1 / intervalS)} a second, and a clip of ${short(clipS)} s from ${durationText(recordingS)} runs no faster than life: film it as video, or record longer`;
    return [fact('No time-lapse', text)];
  }
  if (intervalS > gapS) return [];
  const text = `the camera needs ${short(gapS)} s of each ${short(intervalS)} s beside the shutter: give a longer recording, a shorter clip, or the --gap that it really needs`;
  return [fact('No camera does', text)];
}

/** What a reader needs to weigh a row: what kind of page it is, and its age. */
const SOURCES: Readonly<Record<IntervalAdvice['source'], string>> = {
  skarbnik: 'an article on choosing the interval, 2015',
  cogto: 'an article on time-lapse photography, undated',
  'aperture-authority': 'a photo magazine on the web, undated',
};

function subjectLines(subject: Subject): string[] {
  const { minS, maxS, rows } = intervalAdvice(subject);
  const count = new Set(rows.map(({ source }) => source)).size;
  const range = (from: number, to: number) => (from === to ? `${from} s` : `${from} to ${to} s`);
  return [
    fact(
      'Advised',
      `${range(minS, maxS)} for ${subject.replaceAll('-', ' ')}; ${count === 1 ? 'one author says so' : `${count} authors, each from experience`}; nobody has measured it`,
    ),
    ...rows.map((row) => fact('', `${range(row.minS, row.maxS)}: ${row.words} (${SOURCES[row.source]})`)),
  ];
}

function fact(name: string, text: string): string {
  return hanging(name.padEnd(LEAD), text);
}

function subjects(): Subject[] {
  return [...new Set(INTERVALS_BY_SUBJECT.flatMap((row) => row.subjects))];
}

function short(value: number): string {
  return String(Number(value.toPrecision(5)));
}

/** "23.976" is what people call 24000/1001. */
function fpsText(fps: number): string {
  return String(Number(exactFps(fps).toFixed(3)));
}

/** "1 h 30 min", "45 s", "12 min 5 s". */
function durationText(totalS: number): string {
  const all = Math.round(totalS);
  const parts = [
    [Math.floor(all / 3600), 'h'],
    [Math.floor(all / 60) % 60, 'min'],
    [all % 60, 's'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, unit]) => `${count} ${unit}`);
  return all < 10 ? `${short(totalS)} s` : told.join(' ');
}

/** "5400", "90m", "1h30m", "45s", "1h 30min", "2 s" as seconds; undefined for what is no time. */
function timeOf(text: string): number | undefined {
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
