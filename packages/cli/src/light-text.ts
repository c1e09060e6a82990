// The light table for a person to read: events, and the curve thinned to a screenful.

import { english } from '@evenfall/chart';
import type { LightTable, Shoot } from '@evenfall/core';
import type { Colors } from './colors.js';
import { hanging, linesOf, table } from './layout.js';
import { clock, ev, eventText, placeText } from './wording.js';

const MOST_ROWS = 36;

/** Events and every so many rows of the table, the last one included. */
export function lightText(light: LightTable, shoot: Shoot, colors: Colors): string {
  const stride = Math.max(1, Math.ceil(light.rows.length / MOST_ROWS));
  const rows = light.rows.filter((_, i) => i % stride === 0 || i === light.rows.length - 1);
  const lines = [
    ...linesOf(shoot.title === '' ? english.untitledLight : shoot.title).map((line) => colors.bold(line)),
    `${english.date(shoot.date)}, ${shoot.direction}`,
    placeText(shoot.place),
    '',
    ...light.events.map(({ name, at, sunAltitudeDeg }) => {
      const sun = name.startsWith('moon') ? '' : `  sun ${ev(sunAltitudeDeg)}°`;
      return `${eventText(name).padEnd(18)}  ${at.slice(0, 10)} ${clock(at)}${sun}`;
    }),
    ...light.missing.map(({ name, why }) =>
      hanging(`${eventText(name).padEnd(18)}  `, `does not happen: ${why}`),
    ),
    '',
    ...table(
      ['clock', 'sun°', 'azimuth°', 'moon°', 'lux', 'EV 100', 'likely', 'EV/min'],
      rows.map((row) => [
        clock(row.at),
        ev(row.sunAltitudeDeg),
        ev(row.sunAzimuthDeg, 0),
        ev(row.moonAltitudeDeg),
        lux(row.illuminanceLx),
        ev(row.sceneEv100),
        `${ev(row.lowEv100)} to ${ev(row.highEv100)}`,
        ev(row.slopeEvPerMin, 2),
      ]),
      ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
    ),
  ];
  return `${lines.join('\n')}\n`;
}

/** Two figures are all the model knows: 4800, 12, 0.35, 0.0012. */
function lux(value: number): string {
  if (value === 0) return '0';
  const digits = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value)))));
  return Number(value.toPrecision(2)).toFixed(digits);
}
