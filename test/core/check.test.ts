import { describe, expect, test } from 'vitest';
import { editDistance, nearestWord } from '../../packages/core/src/check.js';

describe('edit distance', () => {
  test.each([
    ['', '', 0, 'nothing to do'],
    ['', 'abc', 3, 'three put in'],
    ['kitten', 'sitting', 3, 'the textbook example of Levenshtein distance, from memory'],
    ['flaw', 'lawn', 2, 'one out at the front, one in at the end'],
    ['dsuk', 'dusk', 1, 'neighbours swapped'],
    ['ca', 'abc', 3, 'tells optimal string alignment from the unrestricted distance (2), from memory'],
    ['TimeZone', 'timezone', 0, 'case does not count'],
  ])('%s to %s is %i: %s', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
    expect(editDistance(b, a)).toBe(edits);
  });
});

test('the nearest word is the first of equals, and none where none is known', () => {
  expect(nearestWord('cat', ['dog', 'car', 'bat'])).toBe('car');
  expect(nearestWord('cat', [])).toBeUndefined();
});

test('of a word sixty letters are compared', () => {
  const xs = (count: number) => 'x'.repeat(count);
  expect(nearestWord(`${xs(60)}tail`, [xs(60), `${xs(60)}tail`])).toBe(xs(60));
  expect(nearestWord(xs(60), [xs(54), xs(60)])).toBe(xs(60));
});
