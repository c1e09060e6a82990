// What goes without saying in a first shoot, and the part of the file that each answer becomes. Whether an answer is right
// is for the reader of shoots alone.

import { longestMarkedShutter } from '@evenfall/core';
import type { Answers, Question } from './questions.js';

type Group = Readonly<Record<string, unknown>>;

/** Keys of the shoot file that an answer stands for, as paths. */
export const PATHS: Readonly<Record<Question, readonly (readonly string[])[]>> = {
  title: [['title']],
  at: [['place']],
  on: [['date']],
  direction: [['direction']],
  interval: [['intervalS']],
  shutter: [['camera', 'shutter']],
  iso: [['camera', 'iso']],
  aperture: [['camera', 'aperture']],
  lens: [
    ['camera', 'lens'],
    ['camera', 'sensor'],
  ],
  nd: [['filters']],
  facing: [['scene', 'facing']],
  night: [['scene', 'night']],
  lamps: [['scene', 'lamps']],
};

/** What the camera needs between frames, seconds: as the reader of shoots has it where a file says nothing. */
const GAP_S = 1;
/** Millimetres of a full frame. */
const FULL_FRAME = { widthMm: 36, heightMm: 24 };
const NONE = /^(?:none|no|-|0|keine?r?|nein)$/i;
const DIRECTIONS: Readonly<Record<string, string>> = {
  evening: 'dusk',
  sunset: 'dusk',
  abend: 'dusk',
  morning: 'dawn',
  sunrise: 'dawn',
  morgen: 'dawn',
};

/**
 * What goes without saying, as it would be typed; empty for what is then left out, undefined for what has to be said.
 *
 * @param answers those before it
 * @param today local date, YYYY-MM-DD
 */
export function usual(question: Question, answers: Answers, today: string): string | undefined {
  const interval = numberOr((answers.interval ?? '8').replace(/ ?s$/, ''));
  // A number that is none is told by the reader of shoots.
  const room = typeof interval === 'number' && interval > 0 && interval < 1e6 ? interval : 8;
  const longest = longestMarkedShutter(room, { gapS: GAP_S, darkFrame: false, stepsPerStop: 3 });
  const texts: Readonly<Record<Question, string | undefined>> = {
    title: '',
    at: undefined,
    on: today,
    direction: 'dusk',
    interval: '8',
    shutter: `1/4000 to ${longest?.label ?? '1/2'}`,
    iso: '100 to 6400',
    aperture: '4',
    lens: '24',
    nd: 'none',
    facing: 'toward-sun',
    night: 'town',
    lamps: 'street',
  };
  return texts[question];
}

/** The value of a shoot file that answers make, unchecked: every question answered, or left to what is usual. */
export function shootOf(answers: Answers, today: string): Group {
  const said = (question: Question) => answers[question] ?? usual(question, answers, today) ?? '';
  const focalMm =
    NONE.test(said('lens')) || said('lens') === '' ? undefined : said('lens').replace(/ ?mm$/, '');
  const [shortest, longest] = ends(said('shutter'));
  const [lowest, highest] = ends(said('iso'));
  const direction = said('direction');
  return {
    format: 'evenfall-shoot/1',
    title: said('title'),
    place: placeOf(said('at')),
    date: said('on'),
    direction: DIRECTIONS[direction.toLowerCase()] ?? direction,
    intervalS: numberOr(said('interval')),
    camera: {
      shutter: { shortest, longest },
      iso: { lowest: numberOr(lowest!), highest: numberOr(highest!) },
      aperture: said('aperture'),
      ...(focalMm === undefined ? {} : { lens: { focalMm: numberOr(focalMm) }, sensor: FULL_FRAME }),
    },
    filters: NONE.test(said('nd')) ? [] : partsOf(said('nd')).map(filterOf),
    scene: { facing: said('facing'), night: said('night'), lamps: said('lamps') },
  };
}

/** "53.35, -6.26", "53.35 -6.26", "53.35 N 6.26 W"; what is not there is left out, what is no number left as it is. */
function placeOf(text: string): Group {
  const [latitudeDeg, longitudeDeg] = partsOf(text.replaceAll(/[°]?\s*(?=[NSEWO]\b)/gi, '')).map((part) => {
    const [, number, wind] = /^(\d+(?:\.\d+)?)([NSEWO])$/i.exec(part) ?? [];
    if (number === undefined) return numberOr(part.replace(/°$/, ''));
    return /[SW]/i.test(wind!) ? -Number(number) : Number(number);
  });
  return {
    ...(latitudeDeg === undefined ? {} : { latitudeDeg }),
    ...(longitudeDeg === undefined ? {} : { longitudeDeg }),
  };
}

/** Stops, as people name filters in a bag; "ND 6" too. */
function filterOf(text: string, i: number, all: readonly string[]): Group {
  const stops = text.replace(/^nd ?/i, '').replace(/ ?stops?$/i, '');
  const twin = all.slice(0, i).filter((other) => other === text).length;
  return { name: `ND ${stops}${twin === 0 ? '' : ` (${twin + 1})`}`, stops: numberOr(stops) };
}

/** "1/4000 to 6", "100-6400", "1/4000 … 6": two ends, the second the first where only one is given. */
function ends(text: string): readonly [string, string] {
  const [from = '', to = from] = text.split(/\s*(?:\bto\b|\bbis\b|\.\.+|…|–|-)\s*/i);
  return [from.trim(), to.trim()];
}

function partsOf(text: string): string[] {
  return text
    .replaceAll(/\bnd\s+/gi, 'nd')
    .split(/[\s,;]+/)
    .filter((part) => part !== '');
}

/** A number where it is one, else the text for the reader to tell. */
function numberOr(text: string): number | string {
  return /^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(text.trim()) ? Number(text) : text;
}
