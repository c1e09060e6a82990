// Sun and moon are sampled every half hour. Nothing may slip through: every ten minutes finds the same twilights,
// anywhere from pole to pole, the evenings on which the sun only just touches a level among them.

import { expect, test } from 'vitest';
import { crossings, skyEvents, sunPosition } from '../../../packages/core/src/sky/sun.js';

const DAY_MS = 86_400_000;
const LEVELS = { civil: -6, nautical: -12, astronomical: -18 } as const;

test('300 places and days: the twilights of a finer search, to the millisecond', () => {
  let found = 0;
  for (let k = 0; k < 300; k++) {
    const place = { latitudeDeg: -89.5 + ((k * 7.31) % 179), longitudeDeg: ((k * 13.7) % 360) - 180 };
    const fromMs = Date.UTC(2000 + (k % 60), k % 12, 1 + (k % 28));
    const sun = (atMs: number) => sunPosition(atMs, place).altitudeDeg;
    const { events } = skyEvents(fromMs, fromMs + 2 * DAY_MS, place);
    for (const [name, levelDeg] of Object.entries(LEVELS)) {
      const named = events.filter((event) => event.name.startsWith(name)).map(({ atMs }) => atMs);
      expect(named).toEqual(crossings(sun, levelDeg, fromMs, fromMs + 2 * DAY_MS).map(({ atMs }) => atMs));
      found += named.length;
    }
  }
  expect(found).toBeGreaterThan(1000);
});
