// The evenings to come as a table for a person.

import type { Evening, EveningInfeasible, Evenings } from '@evenfall/core';
import type { Screen } from './colors.js';
import { columnsThatFit, linesOf, table } from './layout.js';
import { placeText } from './wording.js';
import type { CommandWords } from './words/words.js';

/** Columns of the sky, before those of the plan. */
const SKY_COLUMNS = 5;
/** What a narrow screen does without, the first of them first: of how many evenings, worst error, moon's altitude, steepest. */
const LEAST = [9, 7, 4, 2];

/** A line an evening under what it is of, and what the columns mean. */
export function eveningsText(
  { shoot, evenings }: Evenings,
  words: CommandWords,
  screen: Pick<Screen, 'bold' | 'red' | 'columns'>,
): string {
  const { card, evenings: w } = words;
  const dawn = shoot.direction === 'dawn';
  const [first, last] = [evenings[0]!, evenings[evenings.length - 1]!];
  const cells = [
    w.columns(dawn),
    ...evenings.map((evening) => [...skyCells(evening, words), ...planCells(evening, words)]),
  ];
  const kept = columnsThatFit(cells, LEAST, screen.columns);
  const [head, ...rows] = cells.map((row) => kept.map((i) => row[i]!));
  const lines = table(
    head!,
    rows,
    kept.map((i) => (i < 3 ? 'left' : 'right')),
  );
  // Where the cells of a plan begin, which say why there is none.
  const skyCount = kept.filter((i) => i < SKY_COLUMNS).length;
  const lead =
    table(
      head!.slice(0, skyCount),
      rows.map((row) => row.slice(0, skyCount)),
      [],
    ).reduce((most, line) => Math.max(most, line.length), 0) + 2;
  const can = evenings.filter(({ kind }) => kind === 'ok').length;
  return `${[
    ...linesOf(shoot.title === '' ? card.untitled : shoot.title, screen.columns).map((line) =>
      screen.bold(line),
    ),
    ...linesOf(
      first === last ? card.date(first.date) : words.range(card.date(first.date), card.date(last.date)),
      screen.columns,
    ),
    ...linesOf(placeText(shoot.place, card), screen.columns),
    '',
    ...linesOf(w.possible(can, evenings.length, dawn), screen.columns),
    '',
    ...lines.map((line, i) => {
      const evening = evenings[i - 1];
      if (evening?.kind !== 'infeasible') return line;
      const why = reasonText(evening.infeasible, words).slice(0, screen.columns - lead - w.no.length - 2);
      return `${line.slice(0, lead).trimEnd().padEnd(lead)}${screen.red(w.no)}: ${why}`;
    }),
    '',
    ...linesOf(w.legend(dawn), screen.columns),
    ...(kept.length === cells[0]!.length ? [] : linesOf(words.widerShows, screen.columns)),
  ].join('\n')}\n`;
}

/** "Sat 12 Sep", "19:47", "20:16 0.25", "+62 %", "-12". */
function skyCells(
  { date, horizonAt, light }: Evening,
  { evenings: w, fixed, card: { clock } }: CommandWords,
): string[] {
  const day = new Date(`${date}T00:00:00Z`);
  const name = `${w.weekdays[day.getUTCDay()]} ${String(day.getUTCDate()).padStart(2)} ${w.months[day.getUTCMonth()]}`;
  const { steepest } = light ?? {};
  return [
    name,
    horizonAt === undefined ? w.noHorizon : clock(horizonAt),
    steepest === undefined ? '' : `${clock(steepest.at)} ${fixed(Math.abs(steepest.evPerMin), 2)}`,
    light === undefined ? '' : moonText(light, w),
    light === undefined ? '' : fixed(light.moonAltitudeDeg, 0),
  ];
}

function moonText(
  { moonLitFraction, moonWaxing }: NonNullable<Evening['light']>,
  { newMoon, fullMoon }: CommandWords['evenings'],
): string {
  const percent = Math.round(100 * moonLitFraction);
  if (percent === 0) return newMoon;
  return percent === 100 ? fullMoon : `${moonWaxing ? '+' : '-'}${percent} %`;
}

function planCells(evening: Evening, { fixed }: CommandWords): string[] {
  if (evening.kind !== 'ok') return ['', '', '', '', ''];
  const { light, plan } = evening;
  const { cueCount, worstErrorEv, reserveDarkEv, reserveBrightEv, eveningsHeldShare } = plan;
  // Three characters are enough: nobody counts tenths of ten stops.
  const short = (stops: number) => fixed(stops, stops < 9.95 ? 1 : 0);
  return [
    fixed(light.rampStops),
    String(cueCount),
    fixed(worstErrorEv, 2),
    `${short(reserveDarkEv)}/${short(reserveBrightEv)}`,
    // No forecast is sure enough to say all of them.
    eveningsHeldShare > 0.99 ? '>99' : String(Math.round(100 * eveningsHeldShare)),
  ];
}

/** Why not, as briefly as a column holds. */
function reasonText(
  infeasible: EveningInfeasible['infeasible'],
  { evenings: w, card }: CommandWords,
): string {
  const reason = w.reasons[infeasible.reason];
  if (!('worstShortfallEv' in infeasible)) return reason;
  const { worstShortfallEv, at } = infeasible;
  return [reason, ...(worstShortfallEv < 0.05 ? [] : [w.by(worstShortfallEv)]), w.from(card.clock(at))].join(
    ' ',
  );
}
