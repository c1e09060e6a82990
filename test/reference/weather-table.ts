// The table of weather in docs/follow.md: outcomes of a hundred evenings a row, kept in test/data/follow/weather.csv.

import { quantile } from './follow-table.js';
import { type Met, type MetEvening, metWeather, SCENES, type Scene } from './weather-ways.js';

export const EVENINGS = 100;
/** No constant was chosen on these: those were looked for with seeds below 300. */
export const FIRST_SEED = 1001;

const WAYS = ['stepping', 'smoothing', 'follow'] as const;
const NUMBERS = ['rms', 'worst', 'turns', 'reversals'] as const;

export interface WeatherRow {
  readonly scene: number; // place in SCENES
  readonly seed: number;
  readonly met: MetEvening;
}

/** Takes minutes. */
export function allWeather(): WeatherRow[] {
  return SCENES.flatMap((scene, at) =>
    Array.from({ length: EVENINGS }, (_, i) => {
      const seed = FIRST_SEED + i;
      return { scene: at, seed, met: metWeather(scene, seed) };
    }),
  );
}

/** Rows as CSV; stops to a thousandth. */
export function weatherToCsv(rows: readonly WeatherRow[]): string {
  const header = ['scene', 'seed', ...WAYS.flatMap((way) => NUMBERS.map((n) => `${way}_${n}`)), 'hindsight'];
  const lines = rows.map(({ scene, seed, met }) => {
    const values = [...WAYS.flatMap((way) => NUMBERS.map((number) => met[way][number])), met.hindsight];
    return [scene, seed, ...values.map((value) => Math.round(value * 1000) / 1000)].join();
  });
  return `${[header.join(), ...lines].join('\n')}\n`;
}

export function weatherOfTable(table: readonly Record<string, string>[]): WeatherRow[] {
  const metOf = (row: Record<string, string>, way: string): Met => {
    const of = (number: string) => Number(row[`${way}_${number}`]);
    return { rms: of('rms'), worst: of('worst'), turns: of('turns'), reversals: of('reversals') };
  };
  return table.map((row) => ({
    scene: Number(row.scene),
    seed: Number(row.seed),
    met: {
      stepping: metOf(row, 'stepping'),
      smoothing: metOf(row, 'smoothing'),
      follow: metOf(row, 'follow'),
      hindsight: Number(row.hindsight),
    },
  }));
}

/** What a share of a scene's evenings stays under. */
export function weatherQuantile(
  rows: readonly WeatherRow[],
  scene: number,
  value: (met: MetEvening) => number,
  share: number,
): number {
  return quantile(
    rows.filter((row) => row.scene === scene).map(({ met }) => value(met)),
    share,
  );
}

export function sceneName({ crew, kind, everyS, meterEv, stated }: Scene): string {
  const cadence = everyS === 0 ? 'every frame' : everyS === 60 ? 'every minute' : `every ${everyS / 60} min`;
  const meter = meterEv > 0.1 ? `, meter ±${meterEv}${stated === true ? ' and said so' : ''}` : '';
  return `${crew}, ${kind}, ${cadence}${meter}`;
}

/** The table in Markdown. */
export function weatherText(rows: readonly WeatherRow[]): string {
  const lines = SCENES.map((scene, at) => {
    const rms = (way: (typeof WAYS)[number]) => stops((met) => met[way].rms);
    const stops = (value: (met: MetEvening) => number) =>
      `${weatherQuantile(rows, at, value, 0.5).toFixed(3)} (${weatherQuantile(rows, at, value, 0.9).toFixed(3)})`;
    const median = (value: (met: MetEvening) => number) => String(weatherQuantile(rows, at, value, 0.5));
    const cells = [
      sceneName(scene),
      rms('stepping'),
      rms('smoothing'),
      rms('follow'),
      stops(({ hindsight }) => hindsight),
      `${median(({ smoothing }) => smoothing.turns)} / ${median(({ follow }) => follow.turns)}`,
      median(({ follow }) => follow.reversals),
    ];
    return `| ${cells.join(' | ')} |`;
  });
  return [
    '| evening | stepping | smoothing | **follow** | hindsight | turns, smoothing / follow | reversals |',
    '|---|---|---|---|---|---|---|',
    ...lines,
  ].join('\n');
}
