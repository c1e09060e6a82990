// Frames before anything starts: any two of recording, interval and clip give the third; intervals by subject.

import type { Language } from '@evenfall/chart';
import {
  exactFps,
  type Footage,
  type FootageGiven,
  footageOf,
  INTERVALS_BY_SUBJECT,
  longestMarkedShutter,
  type Subject,
} from '@evenfall/core';
import type { Io } from './io.js';
import { hanging } from './layout.js';
import { Refusal } from './refusal.js';
import { refuseLanguage } from './refuse-language.js';
import { type CommandWords, speech } from './words/words.js';

const LEAD = 17;

export interface FramesOptions {
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

export async function frames(options: FramesOptions, io: Io): Promise<number> {
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
  const whole = footageFrom(options, true);
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
function footageFrom({ record, interval, clip, fps }: FramesOptions, wholeSeconds = false): Footage {
  const given =
    clip === undefined
      ? { recordingS: record, intervalS: interval }
      : interval === undefined
        ? { recordingS: record, clipS: clip }
        : { intervalS: interval, clipS: clip };
  try {
    return footageOf(given as FootageGiven, fps, { wholeSeconds }); // two of the three are there
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
    ...(subject === undefined ? {} : { advice: INTERVALS_BY_SUBJECT[subject] }),
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
  const { minS, maxS, rows } = INTERVALS_BY_SUBJECT[subject];
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
