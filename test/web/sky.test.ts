// The colours of the drawn sky, held against what is known of the real one.

import { describe, expect, it } from 'vitest';
import { brightness, onScreen, skyColumn, skyRadiance } from '../../packages/web/src/chart/sky.js';

const LOW = 4;
const HIGH = 60;

describe('the sky toward the sun', () => {
  it('is blue overhead by day: the fourth power of the wavelength (Rayleigh 1871)', () => {
    const [r, g, b] = skyRadiance(50, 90);
    expect(b).toBeGreaterThan(g);
    expect(g).toBeGreaterThan(r);
    // Thin air scatters 450 nm (610 / 450)^4 = 3.38 times as strongly as 610 nm; the way through it takes some back.
    expect(b / r).toBeGreaterThan(2.2);
    expect(b / r).toBeLessThan(3.38);
  });

  it('is red above yellow above blue at the horizon of a setting sun', () => {
    const [r, g, b] = skyRadiance(0, LOW);
    expect(r).toBeGreaterThan(g);
    expect(g).toBeGreaterThan(b);
  });

  it('is blue overhead in twilight, which ozone makes it (Hulburt 1953)', () => {
    const [r, , b] = skyRadiance(-6, HIGH);
    expect(b / r).toBeGreaterThan(2);
  });

  it('loses three to five powers of ten overhead from sunset to the end of nautical dusk', () => {
    // Zenith luminance falls from some hundreds of cd/m² at sunset to some thousandths at -12°, from memory of
    // published twilight photometry; a single scattering falls a little faster, and the night is its floor.
    const fall = (from: number, to: number) =>
      Math.log10(
        brightness(skyColumn(from, 2)[1] ?? [0, 0, 0]) / brightness(skyColumn(to, 2)[1] ?? [1, 1, 1]),
      );
    expect(fall(0, -12)).toBeGreaterThan(3);
    expect(fall(0, -12)).toBeLessThan(6);
  });

  it('gets no brighter as the sun sinks below the horizon, and never shows what a screen cannot', () => {
    let before = Number.POSITIVE_INFINITY;
    for (let sun = 0; sun >= -20; sun -= 0.5) {
      const column = skyColumn(sun, 10);
      const now = brightness(column[9] ?? [0, 0, 0]);
      expect(now, `sun ${sun}`).toBeLessThanOrEqual(before * 1.0001);
      before = now;
      for (const colour of column.map(onScreen)) {
        for (const part of colour) {
          expect(part).toBeGreaterThanOrEqual(0);
          expect(part).toBeLessThanOrEqual(1 + 1e-9);
        }
      }
    }
    expect(before).toBeGreaterThan(0);
  });
});
