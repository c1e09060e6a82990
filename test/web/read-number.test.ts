// What people type and paste for numbers and places; what each means was worked out by hand.

import { describe, expect, it } from 'vitest';
import { readNumber, readPlace } from '../../packages/web/src/parts/read-number.js';

describe('a number as it is typed or pasted', () => {
  it.each([
    ['3.2s', 3.2],
    ['3,2 s', 3.2],
    ['1/125', 0.008],
    ['f/8', 8],
    ['f / 5,6', 5.6],
    ['ISO 800', 800],
    ['−1.5', -1.5],
    ['-12°', -12],
    ['80 %', 80],
    ['6.26 W', -6.26],
    ['6.26 E', 6.26],
    ['33.9 S', -33.9],
    ['53°21′N', 53.35], // 21 of 60 minutes
    ['6°16\'12"W', -6.27], // 16.2 of 60 minutes
    ['12° 30′ O', 12.5], // German: Ost
  ])('%s is %d', (text, value) => {
    expect(readNumber(text)).toBeCloseTo(value, 6);
  });

  it.each(['', 'north', '12 apples', '1/0/2', '5 km/h', '--3'])('“%s” is none', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });
});

describe('two coordinates in one text', () => {
  it.each([
    ['53.35, -6.26', 53.35, -6.26],
    ['53.35,-6.26', 53.35, -6.26],
    ['53,35; −6,26', 53.35, -6.26],
    ['53.35 -6.26', 53.35, -6.26],
    ['53°21′N 6°16′W', 53.35, -6.266667],
    ["53° 21' N, 6° 15' W", 53.35, -6.25],
    ['6.26 W, 53.35 N', 53.35, -6.26],
    ['N 53.35 W 6.26', 53.35, -6.26],
  ])('%s', (text, latitudeDeg, longitudeDeg) => {
    expect(readPlace(text)).toEqual({ latitudeDeg, longitudeDeg });
  });

  it.each(['53.35', '-36,85', '95.0, 6.2', 'here, there'])('“%s” are none', (text) => {
    expect(readPlace(text)).toBeUndefined();
  });
});
