// The table of docs/follow.md: outcomes of simulated evenings, kept in test/data/follow/evenings.csv, as medians.

import { EVENINGS, meet, type Outcome, WAYS } from './follow-evenings.js';

const NUMBERS = ['rms', 'worst', 'cues', 'reversals'] as const;
const KEYS = WAYS.map(({ key }) => key);

/** One evening met in every way, by the way's key. */
export interface EveningRow {
  readonly seed: number;
  readonly clouds: boolean;
  readonly outcomes: ReadonlyMap<string, Outcome>;
}

export function metEvening(seed: number, clouds: boolean): EveningRow {
  return { seed, clouds, outcomes: new Map(WAYS.map((way) => [way.key, meet(way, seed, clouds)])) };
}

/** All evenings, each without clouds and with them. Takes minutes. */
export function allEvenings(): EveningRow[] {
  const seeds = Array.from({ length: EVENINGS }, (_, i) => i + 1);
  return [false, true].flatMap((clouds) => seeds.map((seed) => metEvening(seed, clouds)));
}

/** Rows as CSV; stops to a thousandth. */
export function rowsToCsv(rows: readonly EveningRow[]): string {
  const header = ['seed', 'clouds', ...KEYS.flatMap((key) => NUMBERS.map((number) => `${key}_${number}`))];
  const lines = rows.map(({ seed, clouds, outcomes }) =>
    [
      seed,
      clouds ? 1 : 0,
      ...KEYS.flatMap((key) => NUMBERS.map((number) => digits(outcomes.get(key)![number]))),
    ].join(),
  );
  return `${[header.join(), ...lines].join('\n')}\n`;
}

function digits(value: number): number {
  return Math.round(value * 1000) / 1000;
}

export function rowsOfTable(table: readonly Record<string, string>[]): EveningRow[] {
  return table.map((row) => ({
    seed: Number(row.seed),
    clouds: row.clouds === '1',
    outcomes: new Map(
      KEYS.map((key) => {
        const of = (number: string) => Number(row[`${key}_${number}`]);
        return [key, { rms: of('rms'), worst: of('worst'), cues: of('cues'), reversals: of('reversals') }];
      }),
    ),
  }));
}

/** Value below which a share of the evenings lies; the middle of two where it falls between them. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  return (sorted[Math.floor(at)]! + sorted[Math.ceil(at)]!) / 2;
}

export function valuesOf(
  rows: readonly EveningRow[],
  key: string,
  number: keyof Outcome,
  clouds: boolean,
): number[] {
  return rows.filter((row) => row.clouds === clouds).map((row) => row.outcomes.get(key)![number]);
}

/** The table in Markdown. */
export function tableText(rows: readonly EveningRow[]): string {
  const block = (key: string, clouds: boolean) => {
    const median = (number: keyof Outcome) => quantile(valuesOf(rows, key, number, clouds), 0.5);
    const late = quantile(valuesOf(rows, key, 'rms', clouds), 0.95);
    return [
      `${median('rms').toFixed(3)} (${late.toFixed(3)})`,
      median('worst').toFixed(2),
      String(median('cues')),
      String(median('reversals')),
    ];
  };
  return [
    '| way | clouds: rms, stops | worst | cues | reversals | no clouds: rms | worst | cues | reversals |',
    '|---|---|---|---|---|---|---|---|---|',
    ...WAYS.map(({ key, name }) => `| ${[name, ...block(key, true), ...block(key, false)].join(' | ')} |`),
  ].join('\n');
}
