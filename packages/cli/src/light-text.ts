// The light table for a person to read: how it goes in two sentences, events, and the curve thinned to a screenful.

import { missingText } from '@evenfall/chart';
import { type LightRow, type LightTable, type Shoot, type Steepest, steepestMinute } from '@evenfall/core';
import type { Screen } from './colors.js';
import { columnsThatFit, hanging, linesOf, table } from './layout.js';
import { headingLines, wordsOver } from './wording.js';
import type { CommandWords } from './words/words.js';

const MOST_ROWS = 36;
const HOUR_MS = 3_600_000;
/** Events this far from the span still belong to the evening. */
const NEAR_H = 6;
/** Columns that a narrow screen does without, the first of them first: azimuth, sky, lux, moon, likely range, sun. */
const LEAST = [2, 5, 4, 3, 7, 1];

/** The fall in words, events around the span, and every so many rows of the table, the last one included. */
export function lightText(
  light: LightTable,
  shoot: Shoot,
  inWords: CommandWords,
  screen: Pick<Screen, 'bold' | 'columns'>,
): string {
  const words = wordsOver(light, inWords);
  const steepest = steepestMinute(light.rows, shoot.intervalS);
  const stride = Math.max(1, Math.ceil(light.rows.length / MOST_ROWS));
  const rows = light.rows.filter((_, i) => i % stride === 0 || i === light.rows.length - 1);
  const marked = steepest === undefined ? undefined : nearestTo(rows, steepest.at);
  const cells = [words.light.columns, ...rows.map((row) => cellsOf(row, words))];
  // Two columns more for the mark behind the steepest row.
  const kept = columnsThatFit(cells, LEAST, screen.columns - 2);
  const [head, ...body] = cells.map((row) => kept.map((i) => row[i]!));
  const curve = table(head!, body, ['left', ...kept.slice(1).map(() => 'right' as const)]);
  const lines = [
    ...headingLines(shoot, words.card.untitledLight, words, screen),
    '',
    ...linesOf(wayText(light, steepest, words), screen.columns),
    '',
    ...eventLines(light, words, screen.columns),
    '',
    ...curve.map((line, i) => (i > 0 && rows[i - 1] === marked ? screen.bold(`${line} *`) : line)),
    ...(kept.length === cells[0]!.length ? [] : ['', ...linesOf(words.widerShows, screen.columns)]),
  ];
  return `${lines.join('\n')}\n`;
}

function cellsOf(row: LightRow, words: CommandWords): string[] {
  const ev = words.fixed;
  return [
    words.card.clock(row.at, true),
    ev(row.sunAltitudeDeg),
    ev(row.sunAzimuthDeg, 0),
    ev(row.moonAltitudeDeg),
    twoFigures(row.illuminanceLx, words),
    twoFigures(row.skyLuminanceCdM2, words),
    ev(row.sceneEv100),
    words.light.likely(ev(row.lowEv100), ev(row.highEv100)),
    ev(row.slopeEvPerMin, 2),
  ];
}

/** How far the light goes, where it goes fastest, and how little of it is over at sunset. */
function wayText(
  { rows, events }: LightTable,
  steepest: Steepest | undefined,
  { light: w, card }: CommandWords,
): string {
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  if (steepest === undefined) return w.single(first.sceneEv100);
  const { at, sunAltitudeDeg, evPerMin } = steepest;
  const perMin = Math.abs(evPerMin);
  const third = perMin < 0.005 ? {} : { thirdS: Math.round(20 / perMin) };
  const sentences = [
    w.way(first.sceneEv100, last.sceneEv100),
    w.steepest({ time: card.clock(at, true), sunDeg: sunAltitudeDeg, evPerMin, ...third }),
  ];
  const event = events.find(
    ({ name, at }) =>
      (name === 'sunset' || name === 'sunrise') &&
      Date.parse(at) >= Date.parse(first.at) &&
      Date.parse(at) <= Date.parse(last.at),
  );
  if (event !== undefined) {
    const left = Math.abs(last.sceneEv100 - nearestTo(rows, event.at).sceneEv100);
    sentences.push(w.stillToCome(card.events[event.name], card.clock(event.at, true), left));
  }
  return sentences.join(' ');
}

function eventLines(
  { events, missing, rows }: LightTable,
  { light: w, card, fixed }: CommandWords,
  columns: number,
): string[] {
  const from = Date.parse(rows[0]!.at) - NEAR_H * HOUR_MS;
  const to = Date.parse(rows[rows.length - 1]!.at) + NEAR_H * HOUR_MS;
  const near = events.filter(({ at }) => Date.parse(at) >= from && Date.parse(at) <= to);
  const names = [...near, ...missing].map(({ name }) => card.events[name]);
  const width = Math.max(18, ...names.map((name) => name.length));
  return [
    ...near.map(({ name, at, sunAltitudeDeg }) => {
      const sun = name.startsWith('moon') ? '' : `  ${w.sun} ${fixed(sunAltitudeDeg)}°`;
      const when = `${card.events[name].padEnd(width)}  ${at.slice(0, 10)} ${card.clock(at, true)}`;
      return when.length + sun.length <= columns ? `${when}${sun}` : when;
    }),
    ...missing.map((why) =>
      hanging(`${card.events[why.name].padEnd(width)}  `, w.missing(missingText(why, card)), columns),
    ),
  ];
}

function nearestTo(rows: readonly LightRow[], at: string): LightRow {
  const apart = (row: LightRow) => Math.abs(Date.parse(row.at) - Date.parse(at));
  return rows.reduce((a, b) => (apart(b) < apart(a) ? b : a));
}

/** Two figures are all the model knows: 4800, 12, 0.35, 0.0012. */
function twoFigures(value: number, { fixed }: CommandWords): string {
  if (value === 0) return '0';
  const digits = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value)))));
  return fixed(Number(value.toPrecision(2)), digits);
}
