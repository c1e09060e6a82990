// What the letters of a PDF cannot show is said when it is made; a light chart says what it is of.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cardMakers } from '../../packages/cli/src/card-files.js';
import { madePlan } from '../chart/made-plan.js';
import { PDF_READERS, partsRead } from './pdf-readers.js';
import { EVENING, evenfall, folder } from './run.js';

const titled = (title: string) => EVENING.replace('"Slipway & gulls"', `"${title}"`);

// DejaVu Sans has Latin, Greek, Cyrillic, Arabic, arrows and stars, and neither Han nor U+1F305 (its own list of blocks).
test('a PDF names the characters that it has no letters for, once each', async () => {
  const { at } = folder();
  const { status, err } = await evenfall(['card', '-', '-o', at('card.pdf')], titled('港 🌅 港 Αθήνα ★ Ää'));
  expect(status).toBe(0);
  expect(err).toContain('card.pdf: its letters have none for 港 🌅; ? stands there');
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

// U+3000 is a space, U+FE0F chooses a form and U+20E3 surrounds what is before it (Unicode's character database).
test.each([
  ['港の灯り', '????', '港 の 灯 り'],
  ['港 & <b>', '? & <b>', '港'],
  ['夕\u3000A\u3000B', '? A B', '夕'],
  ['☀\ufe0f x\u20e3 🇩🇪 👩‍👩‍👧', '☀\ufe0f ? ? ?', '\u20e3 🇩 🇪 👩 👧'],
  ['Φώτα, Лампы', 'Φώτα, Лампы', ''],
  ['नमस्ते', '???', 'न म स ् त े'],
])(
  'a question mark stands for each sign of "%s" that has no letter, and it is read as it was',
  async (title, drawn, named) => {
    const [file] = await cardMakers({})['.pdf']!(madePlan({ cues: 5, title }), 'card.pdf');
    expect(file!.unshown?.join(' ')).toBe(named);
    const bytes = file!.content as Uint8Array;
    const shown = (text: string) => text.replaceAll('\ufe0f', '');
    for (const { open } of PDF_READERS) {
      const { pages, fonts } = await open(bytes);
      for (const { text } of pages)
        expect(shown(text)).toMatch(new RegExp(`^${shown(drawn).replaceAll('?', '\\?')} `));
      expect(fonts).toHaveLength(2);
    }
    const sections = await partsRead(bytes);
    const [heading] = sections[0]!;
    expect(heading).toEqual({ type: 'H1', text: `${title} page 1 of ${sections.length}` });
  },
);

test('a light chart has title, date and place', async () => {
  const { at } = folder();
  await evenfall(['light', '-', '-o', at('light.svg')], EVENING);
  const svg = readFileSync(at('light.svg'), 'utf8');
  expect(svg).toContain('Slipway &amp; gulls</text>');
  expect(svg).toContain('Saturday 12 September 2026 · 57.0500° N · 9.9200° E · Europe/Copenhagen');
});
