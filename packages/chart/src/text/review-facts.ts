// A review in a few lines: what was taken, what was on time, what it was off, what is left after the correction.

import type { Review } from '@evenfall/core';
import { checkGiven, givenWords } from './given.js';
import type { Language } from './languages.js';
import type { Words } from './words.js';

/** One line of it. */
export interface ReviewFact {
  /** What it is of: "Cues". */
  readonly name: string;
  /** "8 on time, 1 late or early, 1 never done". */
  readonly text: string;
}

interface FactWords {
  readonly names: Readonly<
    Record<'taken' | 'frames' | 'brackets' | 'cues' | 'offBy' | 'correction' | 'light' | 'forecast', string>
  >;
  readonly range: (from: string, to: string) => string;
  readonly frames: (taken: number, planned: number, missing: number) => string;
  readonly brackets: (exposures: number, brackets: number, whole: number) => string;
  readonly noCues: string;
  readonly cues: (onTime: number, offTime: number, missed: number) => string;
  readonly offBy: (rms: string, step: string) => string;
  readonly correction: (p: {
    readonly largest: string;
    readonly step: string;
    readonly seen: string;
    readonly whiteCdM2: number;
    readonly isUnseen: boolean;
  }) => string;
  readonly lightFrom: Readonly<Record<Review['summary']['lightFrom'], string>>;
  readonly forecast: (p: {
    readonly offset: string;
    readonly isBrighter: boolean;
    readonly spread: string;
    readonly percent: number;
  }) => string;
  readonly never: string;
  readonly late: (by: string, isLate: boolean) => string;
}

const english: FactWords = {
  names: {
    taken: 'Taken',
    frames: 'Frames',
    brackets: 'Brackets',
    cues: 'Cues',
    offBy: 'Off by',
    correction: 'Correction',
    light: 'Light',
    forecast: 'Forecast',
  },
  range: (from, to) => `${from} to ${to}`,
  frames: (taken, planned, missing) =>
    `${taken} of ${planned} planned${missing === 0 ? ', none missing' : `, ${missing} missing`}`,
  brackets: (exposures, brackets, whole) =>
    `${exposures} ${exposures === 1 ? 'exposure' : 'exposures'} in ${brackets} ${brackets === 1 ? 'bracket' : 'brackets'}, ${whole} of them whole`,
  noCues: 'none planned',
  cues: (onTime, offTime, missed) => `${onTime} on time, ${offTime} late or early, ${missed} never done`,
  offBy: (rms, step) => `${rms} stops rms; the largest step from frame to frame is ${step}`,
  correction: (p) =>
    `${p.largest} stops at most; the largest step left is ${p.step}, ${p.isUnseen ? 'below' : 'above'} the ${p.seen} that is just seen on a white of ${p.whiteCdM2} cd/m²`,
  lightFrom: {
    forecast: 'as forecast: no readings, no levels',
    readings: 'as metered',
    levels: "as the frames' own levels have it",
  },
  forecast: (p) =>
    `the light was ${p.offset} stops ${p.isBrighter ? 'brighter' : 'darker'}, spread ${p.spread}; ${p.percent} % of it within the likely range`,
  never: 'never',
  late: (by, isLate) => `${by} ${isLate ? 'late' : 'early'}`,
};

const german: FactWords = {
  names: {
    taken: 'Aufgenommen',
    frames: 'Bilder',
    brackets: 'Reihen',
    cues: 'Einsätze',
    offBy: 'Daneben',
    correction: 'Korrektur',
    light: 'Licht',
    forecast: 'Vorhersage',
  },
  range: (from, to) => `${from} bis ${to}`,
  frames: (taken, planned, missing) =>
    `${taken} von ${planned} geplanten${missing === 0 ? ', keines fehlt' : missing === 1 ? ', 1 fehlt' : `, ${missing} fehlen`}`,
  brackets: (exposures, brackets, whole) =>
    `${exposures} Belichtungen in ${brackets} ${brackets === 1 ? 'Reihe' : 'Reihen'}, davon ${whole} vollständig`,
  noCues: 'keine geplant',
  cues: (onTime, offTime, missed) =>
    `${onTime} pünktlich, ${offTime} zu spät oder zu früh, ${missed} nie ausgeführt`,
  offBy: (rms, step) => `${rms} Blenden quadr. Mittel; größter Schritt von Bild zu Bild ${step}`,
  correction: ({ largest, step, seen, whiteCdM2, isUnseen }) =>
    `höchstens ${largest} Blenden; der größte Schritt danach ist ${step}, ${isUnseen ? 'unter' : 'über'} den ${seen}, die auf einem Weiß von ${whiteCdM2} cd/m² gerade sichtbar sind`,
  lightFrom: {
    forecast: 'wie vorhergesagt: weder Messungen noch Helligkeiten',
    readings: 'wie gemessen',
    levels: 'nach der Helligkeit der Bilder selbst',
  },
  forecast: ({ offset, isBrighter, spread, percent }) =>
    `das Licht war ${offset} Blenden ${isBrighter ? 'heller' : 'dunkler'}, Streuung ${spread}; ${percent} % davon in der erwarteten Spanne`,
  never: 'nie',
  late: (by, isLate) => `${by} zu ${isLate ? 'spät' : 'früh'}`,
};

const WORDS: Readonly<Record<Language, FactWords>> = { en: english, de: german };

const wordsIn = ({ language }: Words) => WORDS[language as Language];

/**
 * A review in a few lines for a person to read.
 *
 * @param review from `reviewFrames`
 * @param words language and clock, from {@link wordsFor}
 * @returns five lines or more, each with its name: taken, frames, cues, what the frames are off, the correction, and the light
 * @throws RangeError on what is no review or no words
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { reviewFrames } from '@evenfall/core';
 * import { reviewFacts, wordsFor } from '@evenfall/chart';
 *
 * const taken = plan.frames.map(({ frame, at, shutterS, iso }) => ({ file: `${frame}.jpg`, at, shutterS, iso }));
 * const facts = reviewFacts(reviewFrames(plan, taken.slice(1)), wordsFor());
 * facts[1].name; // → 'Frames'
 * facts[1].text.endsWith(', 1 missing'); // → true
 * ```
 */
export function reviewFacts(review: Review, words: Words): ReviewFact[] {
  checkGiven('review', review, 'summary', 'what reviewFrames gives');
  const { summary, frames, cues, missingFrames, forecast } = review;
  const own = wordsIn(givenWords(words));
  const { names } = own;
  const onTime = cues.filter(({ lateS }) => lateS === 0).length;
  const missed = cues.filter(({ lateS, seen }) => lateS === null && seen).length;
  const [first, last] = [frames[0]!, frames[frames.length - 1]!];
  const facts = [
    { name: names.taken, text: own.range(words.clock(first.at, true), words.clock(last.at, true)) },
    {
      name: names.frames,
      text: own.frames(summary.takenFrames, summary.plannedFrames, missingFrames.length),
    },
    ...bracketFacts(frames, own),
    {
      name: names.cues,
      text: cues.length === 0 ? own.noCues : own.cues(onTime, cues.length - onTime - missed, missed),
    },
    {
      name: names.offBy,
      text: own.offBy(words.number(summary.rmsErrorEv, 2), words.number(summary.stepBeforeEv, 2)),
    },
    {
      name: names.correction,
      text: own.correction({
        largest: words.number(summary.largestOffsetEv, 2),
        step: words.number(summary.stepAfterEv, 3),
        seen: words.number(summary.justNoticeableEv, 3),
        whiteCdM2: summary.whiteCdM2,
        isUnseen: summary.stepAfterEv <= summary.justNoticeableEv,
      }),
    },
    { name: names.light, text: own.lightFrom[summary.lightFrom] },
  ];
  if (forecast === undefined) return facts;
  const text = own.forecast({
    offset: words.number(Math.abs(forecast.offsetEv), 1),
    isBrighter: forecast.offsetEv > 0,
    spread: words.number(forecast.spreadEv, 2),
    percent: Math.round(100 * forecast.inRangeShare),
  });
  return [...facts, { name: names.forecast, text }];
}

/** How many exposures were taken of all brackets, and how many brackets are whole; none without brackets. */
function bracketFacts(frames: Review['frames'], { names, brackets: told }: FactWords): ReviewFact[] {
  const brackets = frames.filter(({ exposures, doubled }) => exposures !== undefined && doubled !== true);
  if (brackets.length === 0) return [];
  const taken = brackets.reduce((sum, { exposures = [] }) => sum + exposures.length, 0);
  const whole = brackets.filter(({ missingEv }) => missingEv === undefined).length;
  return [{ name: names.brackets, text: told(taken, brackets.length, whole) }];
}

/**
 * When a cue was done.
 *
 * @param lateS seconds, early where negative; null where it was never done
 * @param words language, from {@link wordsFor}
 * @returns a few words
 * @throws RangeError on what is no words
 * @example
 * ```ts
 * import { cueDoneText, wordsFor } from '@evenfall/chart';
 *
 * cueDoneText(-20, wordsFor()); // → '20 s early'
 * cueDoneText(null, wordsFor({ language: 'de' })); // → 'nie'
 * ```
 */
export function cueDoneText(lateS: number | null, words: Words): string {
  const own = wordsIn(givenWords(words));
  return lateS === null ? own.never : own.late(words.seconds(Math.abs(lateS)), lateS > 0);
}
