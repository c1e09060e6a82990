// Order of a mixed line on paper, against answers worked out from the Unicode Bidirectional Algorithm, UAX #9.
// Letters A to Z stand for a script written from the right, as in the annex; the test puts Hebrew in their place.

import { expect, test } from 'vitest';
import { hasRightToLeft, visualRuns } from '../../packages/cli/src/bidi.js';

const hebrew = (text: string) =>
  text.replace(/[A-Z]/g, (c) => String.fromCodePoint(0x5d0 + c.charCodeAt(0) - 65));
const latin = (text: string) =>
  text.replace(/[\u05d0-\u05ea]/g, (c) => String.fromCodePoint(65 + c.codePointAt(0)! - 0x5d0));

/** What stands on paper from left to right, sign by sign. */
function onPaper(text: string, rightToLeft: boolean): string {
  return latin(
    visualRuns(hebrew(text), rightToLeft)
      .map((run) => (run.rightToLeft ? [...run.text].reverse().join('') : run.text))
      .join(''),
  );
}

test.each([
  // UAX #9, 3.4, examples of reordering (rule L2), without the embeddings.
  ['car means CAR.', false, 'car means RAC.'],
  ['car MEANS CAR.', true, '.RAC SNAEM car'],
  ['HE SAID car TODAY', true, 'YADOT car DIAS EH'],
  // Numbers keep their order; a separator between digits belongs to them (W4).
  ['EVENING 18:30', true, '18:30 GNINEVE'],
  ['EVENING 2 OF 3', true, '3 FO 2 GNINEVE'],
  ['at EVENING 2, take', false, 'at 2 GNINEVE, take'],
  ['take 2', false, 'take 2'],
  // Brackets face the other way (L4).
  ['HARBOUR (NIGHT)', true, '(THGIN) RUOBRAH'],
  ['HARBOUR (night 2)', true, '(night 2) RUOBRAH'],
  // An isolate from the right inside a line from the left (X5a).
  ['car \u2067(MEANS) 2\u2069 x', false, 'car \u20672 (SNAEM)\u2069 x'],
  ['', true, ''],
  ['...', true, '...'],
])('%s, from the right %s: %s', (text, rightToLeft, shown) => {
  expect(onPaper(text, rightToLeft)).toBe(shown);
});

test('a mark stays with its letter', () => {
  expect(visualRuns('שָׁלוֹם', true)).toEqual([{ text: 'שָׁלוֹם', rightToLeft: true }]);
});

test('tells scripts written from the right', () => {
  expect(['ערב', 'مساء', 'Abend ערב'].map(hasRightToLeft)).toEqual([true, true, true]);
  expect(['Évening — 18:30', 'Вечер', '夕暮れ'].map(hasRightToLeft)).toEqual([false, false, false]);
});
