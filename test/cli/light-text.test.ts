// What `evenfall light` tells a newcomer at a glance, on made-up curves and on a real evening.

import type { LightRow, LightTable } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { lightText } from '../../packages/cli/src/light-text.js';
import { german } from '../../packages/cli/src/words/de.js';
import { english } from '../../packages/cli/src/words/en.js';
import { shootFrom } from '../core/shoots.js';

const PLAIN = { bold: (text: unknown) => String(text), columns: 80 };
const START_MS = Date.parse('2026-09-18T20:00:00Z');
const at = (minute: number) => new Date(START_MS + minute * 60_000).toISOString().replace('.000Z', '+00:00');

/** A row a minute with the scene at those EVs. */
function tableOf(ev: readonly number[]): LightTable {
  const rows = ev.map(
    (sceneEv100, i): LightRow => ({
      at: at(i),
      sunAltitudeDeg: 2 - i / 2,
      sunAzimuthDeg: 270,
      moonAltitudeDeg: -10,
      moonAzimuthDeg: 0,
      moonLitFraction: 0.5,
      illuminanceLx: 100,
      moonIlluminanceLx: 0,
      skyLuminanceCdM2: 10,
      sceneEv100,
      lowEv100: sceneEv100 - 1,
      highEv100: sceneEv100 + 1,
      slopeEvPerMin: 0,
    }),
  );
  return {
    format: 'evenfall-light/1',
    kind: 'ok',
    events: [
      { name: 'sunset', at: at(1), sunAltitudeDeg: -0.833 },
      { name: 'moonrise', at: at(60 * 20), sunAltitudeDeg: -30 },
    ],
    missing: [
      {
        name: 'astronomical-dusk',
        kind: 'sun-stays-above',
        ...{ horizon: false, reachedDeg: -10.6, levelDeg: -18 },
        why: 'the sun reaches only -10.6°',
      },
    ],
    rows,
  };
}

const shoot = shootFrom({ intervalS: 60 });
const textOf = (ev: readonly number[], options = shoot) => lightText(tableOf(ev), options, english, PLAIN);
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('light in two sentences', () => {
  // By hand: 12 to 9 are 3 stops, of which 2.8 come after 20:01; the steepest minute loses 1.5, a third in 13.3 s.
  test('says how far it falls, where it is steepest and what is still to come at sunset', () => {
    const text = flat(textOf([12, 11.8, 11, 9.5, 9]));
    expect(text).toContain('The light falls 3.0 stops, from EV 12.0 to 9.0 at ISO 100.');
    expect(text).toContain(
      'Steepest (*) at 20:02:00, sun 1.0°: it falls 1.50 EV a minute, a third of a stop every 13 seconds.',
    );
    expect(text).toContain('At sunset, 20:01:00, 2.8 of these stops are still to come.');
  });

  test('at dawn it rises', () => {
    expect(textOf([9, 9.5, 11])).toContain('The light rises 2.0 stops, from EV 9.0 to 11.0');
    expect(flat(textOf([9, 9.5, 11]))).toContain('it rises 1.50 EV a minute');
  });

  test('marks the steepest row and no other', () => {
    const marked = textOf([12, 11.8, 11, 9.5, 9])
      .split('\n')
      .filter((line) => line.endsWith(' *'));
    expect(marked).toHaveLength(1);
    expect(marked[0]).toMatch(/^20:02:00 /);
  });

  test('one row has no speed', () => {
    expect(textOf([12])).toContain('EV 12.0 at ISO 100.');
    expect(textOf([12])).not.toContain('Steepest');
  });

  test('leaves out events of another day, and keeps those that do not happen', () => {
    const text = textOf([12, 11, 10]);
    expect(text).toContain('sunset');
    expect(text).not.toContain('moonrise');
    expect(text).toMatch(/^astronomical dusk {3}does not happen: the sun reaches only -10.6°$/m);
  });

  test('keeps to 80 columns at the widest values', () => {
    const [row] = tableOf([-12.34]).rows;
    const wide = { ...row!, sunAltitudeDeg: -12.3, moonAltitudeDeg: -45.6, skyLuminanceCdM2: 0.000123456 };
    const rows = [
      wide,
      { ...wide, at: at(1), sceneEv100: -13.9, illuminanceLx: 128_800, slopeEvPerMin: -0.41 },
    ];
    for (const words of [english, german]) {
      const text = lightText({ ...tableOf([0]), rows }, shoot, words, PLAIN);
      for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    }
  });
});
