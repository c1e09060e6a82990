// What the remedies of an impossible shoot say. That they cure is held in plan.test.ts and test/core/move.

import { planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { shootFrom } from './shoots.js';

function remediesOf(keys: Record<string, unknown>) {
  const plan = planShoot(shootFrom(keys));
  if (!('infeasible' in plan)) throw new Error('a plan exists');
  return plan.infeasible.remedies;
}

const camera = (more: object) => ({
  shutter: { shortest: '1/4000', longest: '30' },
  iso: { lowest: 100, highest: 400 },
  aperture: '8',
  ...more,
});

describe('a shutter the interval cuts short', () => {
  // "30" is 32 s, and the gap 1 s: an interval of 20 s leaves it 19 s.
  test('asks for more interval, and not for a longer shutter', () => {
    const iso = { lowest: 100, highest: 200 };
    const [remedy] = remediesOf({ intervalS: 20, camera: camera({ aperture: '4', iso }) });
    expect(remedy).toMatchObject({ change: 'longer-shutter' });
    expect(remedy!.text).toBe('Raise the interval from 20 to 33 s.');
    expect(remedy!.apply.camera?.shutter.longest).toBe('30');
  });

  // "60" is 64 s.
  test('asks for both where its own longest is not enough', () => {
    const [remedy] = remediesOf({ intervalS: 20, camera: camera({}) });
    expect(remedy!.text).toBe('Allow a shutter of 60 s and raise the interval from 20 to 65 s.');
  });

  test('asks for a longer shutter alone where the interval has room', () => {
    const [remedy] = remediesOf({
      intervalS: 90,
      camera: camera({ shutter: { shortest: '1/4000', longest: '4' } }),
    });
    expect(remedy!.text).toMatch(/^Allow a shutter of \d+ s\.$/);
  });
});

test('every remedy is one sentence, and says the change it stands for', () => {
  const texts = [
    { intervalS: 20, camera: camera({}) },
    {
      intervalS: 20,
      camera: camera({ iso: { lowest: 100, highest: 200 }, aperture: { widest: '5.6', narrowest: '8' } }),
    },
    {
      intervalS: 60,
      camera: camera({ shutter: { shortest: '1/15', longest: '30' } }),
      span: { fromSunAltitudeDeg: 20, toSunAltitudeDeg: 0 },
    },
    { intervalS: 60, camera: camera({}), limits: { toleranceEv: 0.1, secondsBetweenCues: 600 } },
  ].flatMap((keys) => remediesOf(keys).map(({ text }) => text));
  expect(texts.length).toBeGreaterThan(8);
  for (const text of texts) expect(text).toMatch(/^[A-Z][^.]*(\.\d[^.]*)*\.$/);
});
