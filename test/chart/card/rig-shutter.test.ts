// A shutter that a rig times freely, on the card: told by the clock, apart from the cues that are left for a person.

import { writeCuesCsv } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import {
  calendarTexts,
  cardPages,
  cardText,
  shutterEnds,
  wordsFor,
} from '../../../packages/chart/src/index.js';
import { planned, shootWith } from '../planned.js';

const PLANS = {
  'the shutter alone': planned(
    shootWith('dusk', { crew: 'rig', filters: [] }, { bulb: true, iso: { lowest: 800, highest: 800 } }),
  ),
  'a filter and ISO beside it': planned(shootWith('dusk', { crew: 'rig' }, { bulb: true })),
};
const LANGUAGES = ['en', 'de'] as const;

describe.each(Object.entries(PLANS))('%s', (name, plan) => {
  const times = plan.shutterTimes!;
  const label = (text: string) => (text.includes('/') ? text : `${text} s`);

  test('the plan tells the shutter at every third of a stop', () => {
    // Eight stops and more pass between the ends of this evening.
    expect(times.length).toBeGreaterThan(15);
    expect(plan.cues.length > 0).toBe(name !== 'the shutter alone');
  });

  test.each(LANGUAGES)('the text card, %s', (language) => {
    const text = cardText(plan, { words: wordsFor({ language }) });
    expect(text).not.toMatch(/leave the camera as it stands|Die Kamera bleibt/);
    // In running text, where lines break anywhere.
    const running = text.replace(/\s+/g, ' ');
    const [shortest, longest] = shutterEnds(plan.frames);
    expect(running).toContain(
      language === 'en'
        ? `The rig times the shutter, ${shortest} to ${longest}: leave it alone.`
        : `Die Steuerung misst die Belichtungszeit ab, ${shortest} bis ${longest}: nichts verstellen.`,
    );
    expect(running).toContain(
      language === 'en' ? 'twice the shutter time for each stop darker' : 'doppelte Zeit je Blende dunkler',
    );
    const rows = text.split('\n').filter((line) => /^ {4}\d\d:\d\d:\d\d {2}/.test(line));
    expect(rows).toHaveLength(times.length);
    times.forEach(({ at, frame, changes }, i) => {
      const number = language === 'en' ? `frame ${frame + 1}` : `Bild ${frame + 1}`;
      expect(rows[i]).toContain(`${at.slice(11, 19)}  ${label(changes[0]!.to)}  ${number}  `);
    });
    expect(text.split('\n').filter((line) => /^\[ \] \d\d:/.test(line))).toHaveLength(plan.cues.length);
  });

  test('the printed card has each clock time with its shutter', () => {
    const texts = cardPages(plan)
      .join('')
      .replaceAll(/<[^>]*>/g, '|');
    for (const { at, changes } of times) {
      expect(texts).toContain(at.slice(11, 19));
      expect(texts).toContain(label(changes[0]!.to));
    }
  });

  test('the table has rows for both in order; the calendar rings for cues alone', () => {
    const rows = writeCuesCsv(plan).trim().split('\r\n').slice(1);
    expect(rows).toHaveLength(plan.cues.length + times.length);
    const frames = rows.map((row) => Number(row.split(',')[0]));
    expect(frames).toEqual([...frames].sort((a, b) => a - b));
    expect(calendarTexts(plan, wordsFor({})).cues).toHaveLength(plan.cues.length);
  });
});
