// What the letters of a PDF cannot show is said when it is made; a light chart says what it is of.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EVENING, evenfall, folder } from './run.js';

const titled = (title: string) => EVENING.replace('"Slipway & gulls"', `"${title}"`);

// DejaVu Sans has Latin, Greek, Cyrillic, Arabic, arrows and stars, and neither Han nor U+1F305 (its own list of blocks).
test('a PDF names the characters that it has no letters for, once each', async () => {
  const { at } = folder();
  const { status, err } = await evenfall(['card', '-', '-o', at('card.pdf')], titled('港 🌅 港 Αθήνα ★ Ää'));
  expect(status).toBe(0);
  expect(err).toContain('card.pdf: its letters have none for 港 🌅; an empty box stands there');
  expect(err.match(/\n/g)).toHaveLength(1);
});

test('says nothing of a title that it can show, and nothing of a file that brings no letters', async () => {
  const { at } = folder();
  for (const [name, title] of [
    ['card.pdf', 'Αθήνα & مساء ★ Ää'],
    ['card.html', '港 🌅'],
  ]) {
    const { status, err } = await evenfall(['card', '-', '-o', at(name!)], titled(title!));
    expect({ status, err }).toEqual({ status: 0, err: '' });
  }
});

test('a light chart has title, date and place', async () => {
  const { at } = folder();
  await evenfall(['light', '-', '-o', at('light.svg')], EVENING);
  const svg = readFileSync(at('light.svg'), 'utf8');
  expect(svg).toContain('Slipway &amp; gulls</text>');
  expect(svg).toContain('Saturday 12 September 2026 · 57.0500° N · 9.9200° E · Europe/Copenhagen');
});
