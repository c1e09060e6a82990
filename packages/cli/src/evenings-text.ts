// The evenings to come as a table for a person.

import { english } from '@evenfall/chart';
import { clockOver, type Evening, type Evenings } from '@evenfall/core';
import type { Colors } from './colors.js';
import { COLUMNS, linesOf, table } from './layout.js';
import { counted, ev, placeText } from './wording.js';

// A day's row says which of two it is no more than its date does.
const clock = clockOver(undefined);

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A line an evening under what it is of, and what the columns mean. */
export function eveningsText({ shoot, evenings }: Evenings, colors: Pick<Colors, 'bold' | 'red'>): string {
  const dawn = shoot.direction === 'dawn';
  const [first, last] = [evenings[0]!, evenings[evenings.length - 1]!];
  const days =
    first === last ? english.date(first.date) : `${english.date(first.date)} to ${english.date(last.date)}`;
  const head = [
    'day',
    dawn ? 'rise' : 'set',
    'steepest',
    'moon',
    'moon°',
    'stops',
    'cues',
    'off',
    'reserve',
    'of',
  ];
  const rows = evenings.map((evening) => [...skyCells(evening), ...planCells(evening)]);
  const lines = table(head, rows, [
    ...(['left', 'left', 'left', 'right', 'right'] as const),
    ...(['right', 'right', 'right', 'right', 'right'] as const),
  ]);
  const lead = lines[0]!.indexOf('stops');
  const can = evenings.filter(({ plan }) => plan !== undefined).length;
  return `${[
    ...linesOf(shoot.title === '' ? english.untitled : shoot.title).map((line) => colors.bold(line)),
    days,
    placeText(shoot.place),
    '',
    `${can} of ${counted(evenings.length, dawn ? 'morning' : 'evening')} can be done with this kit.`,
    '',
    ...lines.map((line, i) => {
      const { infeasible } = evenings[i - 1] ?? {};
      if (infeasible === undefined) return line;
      const why = reasonText(infeasible, COLUMNS - lead);
      return `${line.slice(0, lead).trimEnd().padEnd(lead)}${why.replace(/^no/, colors.red('no'))}`;
    }),
    '',
    ...linesOf(LEGEND.replace('evenings', dawn ? 'mornings' : 'evenings')),
  ].join('\n')}\n`;
}

const LEGEND =
  'Steepest: when the light changes fastest, and EV a minute. Moon: its lit share, + waxing, - waning, and its altitude at the end (below 0 it is down). Off: the worst error, stops. Reserve: stops the scene may be darker/brighter, as on so many evenings in 100.';

/** "Sat 12 Sep", "19:47", "20:16 -0.25", "+62 %", "-12". */
function skyCells({ date, horizonAt, light }: Evening): string[] {
  const day = new Date(`${date}T00:00:00Z`);
  const name = `${WEEKDAYS[day.getUTCDay()]} ${String(day.getUTCDate()).padStart(2)} ${MONTHS[day.getUTCMonth()]}`;
  const { steepest } = light ?? {};
  return [
    name,
    horizonAt === undefined ? 'none' : clock(horizonAt),
    steepest === undefined ? '' : `${clock(steepest.at)} ${Math.abs(steepest.evPerMin).toFixed(2)}`,
    light === undefined ? '' : moonText(light),
    light === undefined ? '' : ev(light.moonAltitudeDeg, 0),
  ];
}

function moonText({ moonLitFraction, moonWaxing }: NonNullable<Evening['light']>): string {
  const percent = Math.round(100 * moonLitFraction);
  if (percent === 0) return 'new';
  return percent === 100 ? 'full' : `${moonWaxing ? '+' : '-'}${percent} %`;
}

function planCells({ light, plan }: Evening): string[] {
  if (plan === undefined) return ['', '', '', '', ''];
  const { cueCount, worstErrorEv, reserveDarkEv, reserveBrightEv, eveningsHeldShare } = plan;
  return [
    ev(light?.rampStops ?? 0),
    String(cueCount),
    worstErrorEv.toFixed(2),
    `${short(reserveDarkEv)}/${short(reserveBrightEv)}`,
    // No forecast is sure enough to say all of them.
    eveningsHeldShare > 0.99 ? '>99' : String(Math.round(100 * eveningsHeldShare)),
  ];
}

/** Three characters are enough: nobody counts tenths of ten stops. */
function short(stops: number): string {
  return stops < 9.95 ? stops.toFixed(1) : stops.toFixed(0);
}

/** Why not, as briefly as a column holds. */
function reasonText(infeasible: NonNullable<Evening['infeasible']>, columns: number): string {
  switch (infeasible.reason) {
    case 'no-span':
      return 'no: the sun does not go so far';
    case 'no-time':
      return 'no: the interval leaves no shutter';
    default: {
      const { reason, worstShortfallEv, at } = infeasible;
      const stops = worstShortfallEv < 0.05 ? '' : ` by ${ev(worstShortfallEv)}`;
      return `no: ${reason.replace('-', ' ')}${stops} from ${clock(at)}`.slice(0, columns);
    }
  }
}
