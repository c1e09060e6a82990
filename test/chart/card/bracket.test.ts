// What a photographer who brackets reads on the card: what the camera is set to, and where every exposure stands.

import { describe, expect, test } from 'vitest';
import { cardHtml, cardPages, cardText, wordsFor } from '../../../packages/chart/src/index.js';
import { planned, shootWith } from '../planned.js';
import { pagesOnSheet, parseXml, textBoxes } from '../svg-reader.js';

const bracket = { frames: 3, stepEv: 2, betweenS: 0.3 } as const;
const camera = {
  aperture: '2.8',
  shutter: { shortest: '1/4000', longest: '8' },
  cardGB: 128,
  batteryFrames: 2000,
};
const plan = planned(shootWith('dusk', { intervalS: 16 }, { ...camera, bracket }));
const single = planned(shootWith('dusk', { intervalS: 16 }, camera));

const running = (text: string) => text.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');
const CARDS = {
  pages: () => cardPages(plan).map(running).join(' '),
  html: () => running(cardHtml(plan).replace(/<main>[\s\S]*<\/main>/, '')),
  text: () => running(cardText(plan)),
};
const seconds = (mark: string) => {
  const [over, under = '1'] = mark.replace(' s', '').split('/');
  return Number(over) / Number(under);
};

describe.each(Object.entries(CARDS))('the card as %s', (_name, card) => {
  test('says what the camera is set to, and how long the longest keep it busy', () => {
    const text = card();
    expect(text).toContain('Bracket: 3 exposures, 2 stops apart');
    expect(text).toContain('One release takes all 3');
    const longestS = Math.max(...plan.frames.map(({ shutterS }) => shutterS));
    const from = plan.frames.find(({ shutterS }) => shutterS === longestS)!;
    // By hand: two stops are a factor of four, t/4 + t + 4t, and two pauses.
    const busyS = (5.25 * longestS + 2 * bracket.betweenS).toFixed(1);
    const told = `Longest: ${from.bracketLongest} s from ${from.at.slice(11, 16)}, in all ${Number(busyS)} s of 16 s.`;
    expect(text).toContain(told);
  });

  test('has the middle exposure at every cue, and the ends two stops from it', () => {
    const ends = [
      ...card().matchAll(
        /(\S+(?: s)?) · ISO \d+ · f\/2\.8\b(?:(?! · ISO ).)*?middle of (\S+(?: s)?) to (\S+(?: s)?)/g,
      ),
    ];
    expect(ends.length).toBeGreaterThanOrEqual(plan.cues.length);
    // Marks are rounded: 1/13 is 1/12.7, and 6 s are 6.35 s. Source: docs/sources.md#marked-series.
    for (const [whole, middle, shortest, longest] of ends) {
      expect(Math.log2(seconds(middle!) / seconds(shortest!)), whole).toBeCloseTo(2, 0);
      expect(Math.log2(seconds(longest!) / seconds(middle!)), whole).toBeCloseTo(2, 0);
    }
    const last = plan.cues.findLast(({ changes }) => changes.some(({ control }) => control === 'shutter'))!;
    const { shutter, bracketLongest } = plan.frames[last.frame]!;
    expect(ends.map(([, middle, , longest]) => [seconds(middle!), seconds(longest!)])).toContainEqual([
      seconds(shutter),
      seconds(bracketLongest!),
    ]);
  });
});

test('nothing of it without one', () => {
  expect([...cardPages(single), cardHtml(single), cardText(single)].join(' ')).not.toMatch(
    /middle of|Bracket/,
  );
});

test.each(['en', 'de'] as const)('the first page has it in the order of work, %s', (language) => {
  for (const paper of ['a6', 'a5', 'letter'] as const) {
    const sheets = cardPages(plan, { paper, words: wordsFor({ language }) }).map(parseXml);
    const texts = textBoxes(sheets.flatMap(pagesOnSheet)[0]!).map(({ text }) => text);
    const [set, bracketing, checks] = [
      /^1\/\d+ · ISO/,
      /^(?:Bracket|Reihe): 3 [BE]/i,
      /^(?:Before starting|Vor dem Beginn)$/,
    ].map((wanted) => texts.findIndex((text) => wanted.test(text)));
    expect(set).toBeGreaterThan(0);
    expect(bracketing).toBeGreaterThan(set!);
    expect(checks).toBeGreaterThan(bracketing!);
    expect(texts.some((text) => /^(?:bracket: 3 by 2 stops|Reihe: 3 × 2 Blenden)$/.test(text))).toBe(true);
  }
});

test('where the first page is not enough, the next one is filled before another is begun', () => {
  const notes = Array.from({ length: 6 }, (_, i) => ({
    level: 'caution' as const,
    kind: 'frames-affected' as const,
    count: i,
    text: '',
  }));
  const pages = cardPages({ ...plan, notes }).map(parseXml);
  const holding = (wanted: string) =>
    pages.findIndex((page) => textBoxes(page).some(({ text }) => text === wanted));
  expect(holding('Before starting')).toBe(1);
  expect(holding('Readings')).toBe(1);
});
