// The weather of docs/follow.md, met by following and by two simple ways. All of it takes minutes, so the outcomes are kept
// in a table that `node packages/tools/follow-table.mjs --write` brings up to date; here a few are met again and compared.

import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTable } from '../../reference/csv.js';
import { hindsightRms } from '../../reference/hindsight.js';
import {
  allWeather,
  EVENINGS,
  FIRST_SEED,
  sceneName,
  weatherOfTable,
  weatherQuantile,
  weatherText,
  weatherToCsv,
} from '../../reference/weather-table.js';
import { type MetEvening, metWeather, SCENES } from '../../reference/weather-ways.js';

const DOC = new URL('../../../docs/follow.md', import.meta.url);
const DATA = new URL('../../data/follow/weather.csv', import.meta.url);
const OPEN = '<!-- weather: written by packages/tools/follow-table.mjs -->';
const CLOSE = '<!-- end of weather -->';

// Set by packages/tools/follow-table.mjs alone.
const asked = process.env.FOLLOW_TABLE;

if (asked !== undefined) {
  test('all weather, met again', () => {
    const rows = allWeather();
    if (asked !== 'write') {
      process.stdout.write(`\n${weatherText(rows)}\n\n`);
      return;
    }
    writeFileSync(DATA, weatherToCsv(rows));
    // From what was written, so that both round alike.
    const table = weatherText(weatherOfTable(readTable('follow/weather.csv')));
    process.stdout.write(`\n${table}\n\n`);
    const doc = readFileSync(DOC, 'utf8');
    const from = doc.indexOf(OPEN) + OPEN.length;
    writeFileSync(DOC, `${doc.slice(0, from)}\n\n${table}\n\n${doc.slice(doc.indexOf(CLOSE))}`);
  });
} else {
  describe('weather', () => {
    const rows = weatherOfTable(readTable('follow/weather.csv'));

    test('the table in docs/follow.md is that of the data, a hundred evenings a row', () => {
      expect(rows.length).toBe(SCENES.length * EVENINGS);
      const doc = readFileSync(DOC, 'utf8');
      expect(doc.slice(doc.indexOf(OPEN) + OPEN.length, doc.indexOf(CLOSE)).trim()).toBe(weatherText(rows));
    });

    test('evenings met again come out as the table has them', () => {
      SCENES.forEach((scene, at) => {
        const seed = FIRST_SEED + at;
        const kept = rows.find((row) => row.scene === at && row.seed === seed)!.met;
        const met = metWeather(scene, seed);
        const where = `${sceneName(scene)}, seed ${seed}`;
        expect(met.hindsight, where).toBeCloseTo(kept.hindsight, 2.9);
        for (const way of ['stepping', 'smoothing', 'follow'] as const) {
          expect(met[way].rms, where).toBeCloseTo(kept[way].rms, 2.9);
          expect([met[way].turns, met[way].reversals], where).toEqual([kept[way].turns, kept[way].reversals]);
        }
      });
    });

    test.each(SCENES.map((scene, at) => [sceneName(scene), at] as const))(
      'no worse than the better of two simple ways, by the median and at nine in ten: %s',
      (_name, at) => {
        for (const share of [0.5, 0.9]) {
          const rms = (way: (met: MetEvening) => number) => weatherQuantile(rows, at, way, share);
          const simple = Math.min(
            rms(({ stepping }) => stepping.rms),
            rms(({ smoothing }) => smoothing.rms),
          );
          expect(rms(({ follow }) => follow.rms)).toBeLessThanOrEqual(1.05 * simple);
        }
      },
    );

    test('nobody who turns by thirds comes out better than who knew the evening beforehand', () => {
      for (const { met } of rows) {
        // Both are rounded to a thousandth.
        expect(met.hindsight).toBeLessThanOrEqual(Math.min(met.stepping.rms, met.smoothing.rms) + 0.001);
      }
    });

    test('hindsight is that of all ways tried one by one', () => {
      const dial = { stepsPerStop: 1, darkEv100: 0, brightEv100: 2, spacing: 2 };
      const wanted = [2, 1.2, 0.9, 0.1, 0.3, 1.6];
      let least = Number.POSITIVE_INFINITY;
      const walk = (level: number, frame: number, free: number, squares: number): void => {
        const sum = squares + (level - wanted[frame]!) ** 2;
        if (frame === wanted.length - 1) {
          least = Math.min(least, sum);
          return;
        }
        for (const turn of frame + 1 >= free ? [-1, 0, 1] : [0]) {
          const next = level + turn;
          if (next < dial.darkEv100 || next > dial.brightEv100) continue;
          walk(next, frame + 1, turn === 0 ? free : frame + 1 + dial.spacing, sum);
        }
      };
      for (const level of [0, 1, 2]) walk(level, 0, 1, 0);
      expect(hindsightRms(wanted, dial)).toBeCloseTo(Math.sqrt(least / wanted.length), 12);
    });
  });
}
