// The simulated evenings of docs/follow.md. All of them take minutes, so their outcomes are kept in a table that
// `node packages/tools/follow-table.mjs --write` brings up to date; here a few are simulated again, the same ways, and compared.

import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTable } from '../../reference/csv.js';
import { EVENINGS, eveningPlan, type Outcome, WAYS } from '../../reference/follow-evenings.js';
import {
  allEvenings,
  metEvening,
  quantile,
  rowsOfTable,
  rowsToCsv,
  tableText,
  valuesOf,
} from '../../reference/follow-table.js';

const DOC = new URL('../../../docs/follow.md', import.meta.url);
const DATA = new URL('../../data/follow/evenings.csv', import.meta.url);
const OPEN = '<!-- evenings: written by packages/tools/follow-table.mjs -->';
const CLOSE = '<!-- end of evenings -->';

// Set by packages/tools/follow-table.mjs alone.
const asked = process.env.FOLLOW_TABLE;

if (asked !== undefined) {
  test('all evenings, simulated again', () => {
    const rows = allEvenings();
    expect(rows.length).toBe(2 * EVENINGS);
    if (asked !== 'write') {
      process.stdout.write(`\n${tableText(rows)}\n\n`);
      return;
    }
    writeFileSync(DATA, rowsToCsv(rows));
    // From what was written, so that both round alike.
    const table = tableText(rowsOfTable(readTable('follow/evenings.csv')));
    process.stdout.write(`\n${table}\n\n`);
    const doc = readFileSync(DOC, 'utf8');
    const from = doc.indexOf(OPEN) + OPEN.length;
    writeFileSync(DOC, `${doc.slice(0, from)}\n\n${table}\n\n${doc.slice(doc.indexOf(CLOSE))}`);
  });
} else {
  describe('simulated evenings', () => {
    const rows = rowsOfTable(readTable('follow/evenings.csv'));

    test('the table holds every evening, with clouds and without', () => {
      const seeds = Array.from({ length: EVENINGS }, (_, i) => i + 1);
      for (const clouds of [false, true]) {
        expect(rows.filter((row) => row.clouds === clouds).map(({ seed }) => seed)).toEqual(seeds);
      }
    });

    test('evenings simulated again come out as the table has them', () => {
      for (const [seed, clouds] of [
        [3, true],
        [117, true],
        [117, false],
      ] as const) {
        const kept = rows.find((row) => row.seed === seed && row.clouds === clouds)!;
        for (const [key, outcome] of metEvening(seed, clouds).outcomes) {
          const { rms, worst, cues, reversals } = kept.outcomes.get(key)!;
          const where = `seed ${seed}, ${key}`;
          expect(outcome.rms, where).toBeCloseTo(rms, 2.9);
          expect(outcome.worst, where).toBeCloseTo(worst, 2.9);
          expect([outcome.cues, outcome.reversals], where).toEqual([cues, reversals]);
        }
      }
    });

    test('the plan they depart from is one of 900 frames and 48 cues for hands', () => {
      const { frames, summary, shoot } = eveningPlan();
      expect([frames.length, summary.cueCount, shoot.crew]).toEqual([900, 48, 'hand']);
    });

    const median = (number: keyof Outcome, clouds: boolean, key = 'follow') =>
      quantile(valuesOf(rows, key, number, clouds), 0.5);

    test('under clouds: at most 0.126 stop rms, half a stop at worst, 57 cues, 7 reversals', () => {
      expect(median('rms', true)).toBeLessThanOrEqual(0.126);
      expect(median('worst', true)).toBeLessThanOrEqual(0.5);
      expect(median('cues', true)).toBeLessThanOrEqual(57);
      expect(median('reversals', true)).toBeLessThanOrEqual(7);
    });

    test('without clouds: at most 0.108 stop rms, half a stop at worst, no more cues than planned, no reversal', () => {
      expect(median('rms', false)).toBeLessThanOrEqual(0.108);
      expect(median('worst', false)).toBeLessThanOrEqual(0.5);
      expect(median('cues', false)).toBeLessThanOrEqual(48);
      expect(median('reversals', false)).toBe(0);
    });

    test('following beats the plan alone, the plan with one reading, and a stepper with as few cues', () => {
      for (const clouds of [false, true]) {
        for (const key of ['open', 'one', 'third']) {
          expect(median('rms', clouds), key).toBeLessThan(median('rms', clouds, key));
        }
        expect(median('cues', clouds, 'sixth')).toBeGreaterThan(2 * median('cues', clouds));
      }
      expect(WAYS.length).toBe(8);
    });

    test('asked once a minute, and done as told between, it takes no more than asked at every frame', () => {
      for (const clouds of [false, true]) {
        expect(median('cues', clouds, 'asked1')).toBeLessThanOrEqual(median('cues', clouds));
        // As good as a reading a minute with every frame asked for.
        const [asked, read] = [median('rms', clouds, 'asked1'), median('rms', clouds, 'follow1')];
        expect(asked).toBeLessThan(1.05 * read);
      }
    });

    test('the table in docs/follow.md is that of the data', () => {
      const doc = readFileSync(DOC, 'utf8');
      expect(doc.slice(doc.indexOf(OPEN) + OPEN.length, doc.indexOf(CLOSE)).trim()).toBe(tableText(rows));
    });
  });
}
