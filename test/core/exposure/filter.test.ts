import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filterStacks, filterStops } from '../../../packages/core/src/exposure/filter.js';
import { readTable } from '../../reference/csv.js';

describe('filters are what they are', () => {
  // Source: nd_filters.csv; definitions: density = log10 factor, stops = log2 factor.
  const rows = readTable('exposure/nd_filters.csv');
  test.each(rows.filter((row) => row.exact_stops_from_factor !== ''))('$name by factor', (row) => {
    const stops = filterStops({ name: row.name, factor: Number(row.marked_factor) });
    expect(stops).toBeCloseTo(Number(row.exact_stops_from_factor), 6);
  });
  test.each(rows.filter((row) => row.exact_stops_from_density !== ''))('$name by density', (row) => {
    const stops = filterStops({ name: row.name, density: Number(row.marked_density) });
    expect(stops).toBeCloseTo(Number(row.exact_stops_from_density), 6);
  });

  // Source: worked_examples.csv W033, W035, W037.
  test('ND1000 is 9.966 stops, not 10; ND8 and ND64 make 9', () => {
    expect(filterStops({ name: 'a', factor: 1000 })).toBeCloseTo(9.965784, 6);
    expect(filterStops({ name: 'a', density: 0.9 })).toBeCloseTo(2.989735, 6);
    const owned = [
      { name: 'ND8', factor: 8 },
      { name: 'ND64', factor: 64 },
    ];
    expect(filterStacks(owned, true).at(-1)).toEqual({ names: ['ND8', 'ND64'], stops: 9 });
  });
});

test('stacks: the bare lens, each filter, each pair where allowed, weakest first', () => {
  const spec = fc.record({ name: fc.string(), stops: fc.double({ min: 0, max: 15, noNaN: true }) });
  fc.assert(
    fc.property(fc.array(spec, { maxLength: 6 }), fc.boolean(), (owned, two) => {
      const stacks = filterStacks(owned, two);
      const n = owned.length;
      expect(stacks.length).toBe(1 + n + (two ? (n * (n - 1)) / 2 : 0));
      expect(stacks[0]).toEqual({ names: [], stops: 0 });
      for (let i = 1; i < stacks.length; i++)
        expect(stacks[i].stops).toBeGreaterThanOrEqual(stacks[i - 1].stops);
      for (const { names } of stacks) expect(names.length).toBeLessThanOrEqual(two ? 2 : 1);
    }),
  );
});

test('a filter that would brighten is refused by name', () => {
  expect(() => filterStops({ name: 'odd', factor: 0.5 })).toThrow(
    'filter "odd" must not brighten the picture, got -1 stops',
  );
  expect(() => filterStops({ name: 'odd', factor: 0 })).toThrow('factor must be positive and finite, got 0');
  expect(() => filterStops({ name: 'odd', density: Number.NaN })).toThrow('density must be finite, got NaN');
});
