// The shoot the page opens with is written out by hand: it must be what the reader makes of its shortest file.

import { planExposures, readShoot } from '@evenfall/core';
import { describe, expect, it } from 'vitest';
import { firstShoot } from '../../packages/web/src/state/first-shoot.js';

describe('the first shoot', () => {
  it('has every default as the reader of files fills it in', () => {
    const file = {
      format: 'evenfall-shoot/1',
      place: { latitudeDeg: 38.72, longitudeDeg: -9.14, timeZone: 'Europe/Lisbon' },
      date: '2026-06-01',
      intervalS: 6,
      camera: {
        shutter: { shortest: '1/4000', longest: '4' },
        iso: { lowest: 100, highest: 6400 },
        aperture: '4',
        frameMB: 30,
        cardGB: 64,
        batteryFrames: 1200,
        lens: { focalMm: 24 },
        sensor: { widthMm: 36, heightMm: 24 },
      },
      scene: { night: 'city' },
    };
    expect(readShoot(file)).toEqual({ kind: 'ok', shoot: firstShoot('2026-06-01') });
  });

  it('has a plan in every week, which waits for nothing to be loaded', () => {
    for (let week = 0; week < 53; week++) {
      const date = new Date(Date.UTC(2026, 0, 1 + 7 * week)).toISOString().slice(0, 10);
      expect(planExposures(firstShoot(date)), date).toHaveProperty('frames');
    }
  });
});
