// Moves in words, as a person would read them off a tape or a protractor.

import { expect, test } from 'vitest';
import { moveRemedy } from '../../../packages/core/src/move/english.js';
import { otherLengths, roundedLength } from '../../../packages/core/src/move/lengths.js';
import { travelsOf } from '../../../packages/core/src/move/resolve.js';
import { easeText, lengthText, secondsText, wayText } from '../../../packages/core/src/move/words.js';
import { slide, turn } from './moves.js';

// One decimal of a degree, two of a metre, and as many more as show two figures.
test.each([
  [60, 'deg', '60°'],
  [-12.54, 'deg', '12.5°'],
  [0.0123, 'deg', '0.012°'],
  [0.1, 'deg', '0.1°'],
  [0, 'deg', '0°'],
  [1.204, 'm', '1.2 m'],
  [-0.0456, 'm', '0.046 m'],
  [0, 'm', '0 m'],
] as const)('%f %s is %s', (length, unit, text) => {
  expect(lengthText(length, unit)).toBe(text);
});

// Three figures; minutes from two of them on.
test.each([
  [0.12345, '0.123 s'],
  [9.996, '10 s'],
  [119.4, '119 s'],
  [120, '2 min'],
  [4567, '76.1 min'],
])('%f seconds are %s', (seconds, text) => {
  expect(secondsText(seconds)).toBe(text);
});

test('which way a move goes', () => {
  const way = (move: Parameters<typeof travelsOf>[0][number]) => wayText(travelsOf([move])[0]!);
  expect([turn('pan', 9), turn('pan', -9), turn('tilt', 9), turn('tilt', -9)].map(way)).toEqual([
    'right',
    'left',
    'up',
    'down',
  ]);
  const forward = { toward: 'forward' } as const;
  expect([slide(1), slide(-1), slide(1, forward), slide(-1, forward)].map(way)).toEqual([
    'right',
    'left',
    'forward',
    'back',
  ]);
});

test('an ease by its name, a trapezoid by its share', () => {
  expect([easeText('quintic'), easeText({ trapezoid: 0.25 })]).toEqual(['quintic', 'trapezoid 0.25']);
});

// The number given has to be enough: shorter is rounded down, longer up, whichever way the move goes.
test('a length is rounded to what is read, toward zero or away from it', () => {
  expect([roundedLength(12.37, 'deg', 'zero'), roundedLength(-12.37, 'deg', 'zero')]).toEqual([12.3, -12.3]);
  expect([roundedLength(12.31, 'deg', 'away'), roundedLength(-12.31, 'deg', 'away')]).toEqual([12.4, -12.4]);
  expect([roundedLength(0.537, 'm', 'zero'), roundedLength(0.531, 'm', 'away')]).toEqual([0.53, 0.54]);
  expect([roundedLength(26.4, 'deg', 'zero'), roundedLength(26.4, 'deg', 'away')]).toEqual([26.4, 26.4]);
});

test('all moves by one share, or those that are meant', () => {
  const travels = travelsOf([turn('pan', -40), slide(1.2)]);
  expect(moveRemedy(otherLengths(travels, 0.5))).toEqual({
    change: 'shorter-move',
    text: 'Shorten the move: pan 20° instead of 40°, slide 0.6 m instead of 1.2 m.',
    lengths: [-20, 0.6],
    changed: [
      { axis: 'pan', unit: 'deg', from: -40, to: -20 },
      { axis: 'slide', unit: 'm', from: 1.2, to: 0.6 },
    ],
  });
  expect(moveRemedy(otherLengths(travels, 1.5, ({ axis }) => axis === 'slide'))).toEqual({
    change: 'longer-move',
    text: 'Lengthen the move: slide 1.8 m instead of 1.2 m.',
    lengths: [-40, 1.8],
    changed: [{ axis: 'slide', unit: 'm', from: 1.2, to: 1.8 }],
  });
});
