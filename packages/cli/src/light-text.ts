// The light table for a person to read: how it goes in two sentences, events, and the curve thinned to a screenful.

import { english } from '@evenfall/chart';
import {
  clockOver,
  type LightRow,
  type LightTable,
  type Shoot,
  type Steepest,
  steepestMinute,
} from '@evenfall/core';
import type { Colors } from './colors.js';
import { hanging, linesOf, table } from './layout.js';

import { ev, eventText, placeText } from './wording.js';

const MOST_ROWS = 36;
const HOUR_MS = 3_600_000;
/** Events this far from the span still belong to the evening. */
const NEAR_H = 6;

/** The fall in words, events around the span, and every so many rows of the table, the last one included. */
export function lightText(light: LightTable, shoot: Shoot, colors: Pick<Colors, 'bold'>): string {
  const steepest = steepestMinute(light.rows, shoot.intervalS);
  const clock = clockOver(light.clocksBack);
  const stride = Math.max(1, Math.ceil(light.rows.length / MOST_ROWS));
  const rows = light.rows.filter((_, i) => i % stride === 0 || i === light.rows.length - 1);
  const marked = steepest === undefined ? undefined : nearestTo(rows, steepest.at);
  const lines = [
    ...linesOf(shoot.title === '' ? english.untitledLight : shoot.title).map((line) => colors.bold(line)),
    `${english.date(shoot.date)}, ${shoot.direction}`,
    placeText(shoot.place),
    '',
    ...wayLines(light, steepest),
    '',
    ...eventLines(light),
    '',
    ...table(
      ['clock', 'sun°', 'az°', 'moon°', 'lux', 'sky cd/m²', 'EV 100', 'likely', 'EV/min'],
      rows.map((row) => [
        clock(row.at, true),
        ev(row.sunAltitudeDeg),
        ev(row.sunAzimuthDeg, 0),
        ev(row.moonAltitudeDeg),
        twoFigures(row.illuminanceLx),
        twoFigures(row.skyLuminanceCdM2),
        ev(row.sceneEv100),
        `${ev(row.lowEv100)} to ${ev(row.highEv100)}`,
        ev(row.slopeEvPerMin, 2),
      ]),
      ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
    ).map((line, i) => (i > 0 && rows[i - 1] === marked ? colors.bold(`${line} *`) : line)),
  ];
  return `${lines.join('\n')}\n`;
}

/** How far the light goes, where it goes fastest, and how little of it is over at sunset. */
function wayLines({ rows, events, clocksBack }: LightTable, steepest: Steepest | undefined): string[] {
  const clock = clockOver(clocksBack);
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  if (steepest === undefined) return [`EV ${ev(first.sceneEv100)} at ISO 100.`];
  const wayEv = last.sceneEv100 - first.sceneEv100;
  const verb = (stops: number) => (stops < 0 ? 'falls' : 'rises');
  const perMin = Math.abs(steepest.evPerMin);
  const third = perMin < 0.005 ? '' : `, a third of a stop every ${Math.round(20 / perMin)} seconds`;
  const sentences = [
    `The light ${verb(wayEv)} ${ev(Math.abs(wayEv))} stops, from EV ${ev(first.sceneEv100)} to ${ev(last.sceneEv100)} at ISO 100.`,
    `Steepest (*) at ${clock(steepest.at, true)}, sun ${ev(steepest.sunAltitudeDeg)}°: it ${verb(steepest.evPerMin)} ${perMin.toFixed(2)} EV a minute${third}.`,
  ];
  const event = events.find(
    ({ name, at }) =>
      (name === 'sunset' || name === 'sunrise') &&
      Date.parse(at) >= Date.parse(first.at) &&
      Date.parse(at) <= Date.parse(last.at),
  );
  if (event !== undefined) {
    const left = Math.abs(last.sceneEv100 - nearestTo(rows, event.at).sceneEv100);
    sentences.push(
      `At ${event.name}, ${clock(event.at, true)}, ${ev(left)} of these stops are still to come.`,
    );
  }
  return linesOf(sentences.join(' '));
}

function eventLines({ events, missing, rows, clocksBack }: LightTable): string[] {
  const clock = clockOver(clocksBack);
  const from = Date.parse(rows[0]!.at) - NEAR_H * HOUR_MS;
  const to = Date.parse(rows[rows.length - 1]!.at) + NEAR_H * HOUR_MS;
  const near = events.filter(({ at }) => Date.parse(at) >= from && Date.parse(at) <= to);
  return [
    ...near.map(({ name, at, sunAltitudeDeg }) => {
      const sun = name.startsWith('moon') ? '' : `  sun ${ev(sunAltitudeDeg)}°`;
      return `${eventText(name).padEnd(18)}  ${at.slice(0, 10)} ${clock(at, true)}${sun}`;
    }),
    ...missing.map(({ name, why }) => hanging(`${eventText(name).padEnd(18)}  `, `does not happen: ${why}`)),
  ];
}

function nearestTo(rows: readonly LightRow[], at: string): LightRow {
  const apart = (row: LightRow) => Math.abs(Date.parse(row.at) - Date.parse(at));
  return rows.reduce((a, b) => (apart(b) < apart(a) ? b : a));
}

/** Two figures are all the model knows: 4800, 12, 0.35, 0.0012. */
function twoFigures(value: number): string {
  if (value === 0) return '0';
  const digits = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value)))));
  return Number(value.toPrecision(2)).toFixed(digits);
}
