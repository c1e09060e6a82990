import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shootSpan } from '../../../packages/core/src/shoot/span.js';
import { shootFrom } from '../shoots.js';

const first = (shoot: ReturnType<typeof shootFrom>) => {
  const span = shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error(span.why);
  return { atMs: span.times[0]!, lastMs: span.times[span.times.length - 1]! };
};

describe('the first frame', () => {
  test('by the sun: for hands on the whole minute before what a rig starts at, and it ends no later', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 364 }),
        fc.integer({ min: -60, max: 60 }),
        fc.constantFrom('dusk' as const, 'dawn' as const),
        (day, latitudeDeg, direction) => {
          const date = new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10);
          const place = { latitudeDeg, longitudeDeg: 5, timeZone: 'Europe/Amsterdam' };
          const span =
            direction === 'dusk'
              ? { fromSunAltitudeDeg: 4, toSunAltitudeDeg: -4 }
              : { fromSunAltitudeDeg: -4, toSunAltitudeDeg: 4 };
          const shoot = { place, date, direction, span, intervalS: 7 };
          const hand = first(shootFrom({ ...shoot, crew: 'hand' }));
          const rig = first(shootFrom({ ...shoot, crew: 'rig' }));
          expect(hand.atMs % 60_000).toBe(0);
          // The rig's is rounded to its second, which may be the minute itself.
          expect(rig.atMs - hand.atMs).toBeGreaterThanOrEqual(0);
          expect(rig.atMs - hand.atMs).toBeLessThanOrEqual(60_000);
          // The span ends where it did, to an interval.
          expect(Math.abs(rig.lastMs - hand.lastMs)).toBeLessThan(8000);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('by the clock: where the shoot says, hands or not', () => {
    const span = { startAt: '2026-09-22T19:00:31+02:00', endAt: '2026-09-22T21:00:00+02:00' };
    for (const crew of ['hand', 'rig'] as const) {
      expect(first(shootFrom({ date: '2026-09-22', span, crew })).atMs).toBe(Date.parse(span.startAt));
    }
  });
});
