import fc from 'fast-check';
import { expect, test } from 'vitest';
import { setUpAt } from '../../../packages/core/src/plan/set-up.js';

// By hand: twenty minutes back, then down to whole five minutes on the clock of the place.
test.each([
  ['2026-10-14T18:07:31+01:00', '2026-10-14T17:45:00+01:00'],
  ['2026-10-14T18:05:00+01:00', '2026-10-14T17:45:00+01:00'], // already whole
  ['2026-10-15T00:10:00-03:00', '2026-10-14T23:50:00-03:00'], // the evening before
  ['2026-03-01T05:04:59Z', '2026-03-01T04:40:00Z'],
  ['1890-06-01T05:04:00-00:23', '1890-06-01T04:40:00-00:23'], // local, not universal, five minutes
])('%s: set up by %s', (startAt, by) => {
  expect(setUpAt(startAt)).toBe(by);
});

test('between twenty and twenty-five minutes before, whatever the offset', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 4e12 }), fc.integer({ min: -840, max: 840 }), (ms, offsetMin) => {
      const two = (n: number) => String(Math.abs(n)).padStart(2, '0');
      const offset = `${offsetMin < 0 ? '-' : '+'}${two(Math.trunc(offsetMin / 60))}:${two(offsetMin % 60)}`;
      const startAt = new Date(ms + offsetMin * 60_000).toISOString().slice(0, 19) + offset;
      const by = setUpAt(startAt);
      const leadS = (Date.parse(startAt) - Date.parse(by)) / 1000;
      expect(leadS).toBeGreaterThanOrEqual(1200);
      expect(leadS).toBeLessThan(1500);
      expect(by).toMatch(/T\d\d:\d[05]:00/);
      expect(by.slice(19)).toBe(offset);
    }),
    { seed: 20261014, numRuns: 300 },
  );
});

test('a time without its offset is refused', () => {
  expect(() => setUpAt('2026-10-14T18:07:31')).toThrow(
    'startAt must be a time with its offset, got "2026-10-14T18:07:31"',
  );
});
