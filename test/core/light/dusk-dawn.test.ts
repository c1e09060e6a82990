// Dusk and dawn mirror each other: the same light at the same altitude of the sun.

import { expect, test } from 'vitest';
import { lightTable } from '../../../packages/core/src/plan/plan.js';
import { shootFrom } from '../shoots.js';

test('a clear moonless dawn is the dusk run backwards, altitude by altitude', () => {
  // New moon, so that neither end has its light.
  const rowsOf = (direction: 'dusk' | 'dawn') => {
    const table = lightTable(shootFrom({ direction, date: '2026-10-10', intervalS: 10 }));
    if (!('rows' in table)) throw new Error(table.infeasible.text);
    return table.rows;
  };
  const [dusk, dawn] = [rowsOf('dusk'), rowsOf('dawn')];
  for (let sunDeg = 5.5; sunDeg > -12; sunDeg -= 0.5) {
    const evening = dusk.find((row) => row.sunAltitudeDeg <= sunDeg)!;
    const morning = dawn.find((row) => row.sunAltitudeDeg >= sunDeg)!;
    expect(Math.abs(evening.sceneEv100 - morning.sceneEv100)).toBeLessThan(0.1);
    expect(Math.abs(evening.slopeEvPerMin + morning.slopeEvPerMin)).toBeLessThan(0.02);
  }
});
