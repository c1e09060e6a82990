// A plan made with the default scene and one reading of an evening that is another: it is used, and the plan is not surer
// of itself than before.

import { forecastLight, type SceneWords } from '@evenfall/core';
import { expect, test } from 'vitest';
import { planOf } from '../../reference/evening-shoot.js';

const SHOOT = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 52, longitudeDeg: 5, timeZone: 'Europe/Amsterdam' },
  date: '2026-09-22',
  intervalS: 8,
  camera: { shutter: { shortest: '1/4000', longest: '6' }, iso: { lowest: 100, highest: 25600 } },
};

// Wide open for cloud, so that the kit reaches the dark end; not for lamps, so that it reaches the bright one.
const CASES: { name: string; words: Partial<SceneWords>; aperture: string; frames: number[] }[] = [
  { name: 'heavy cloud', words: { cloud: 'heavy' }, aperture: '2.8', frames: [100, 500, 700] },
  {
    name: 'heavy cloud over water',
    words: { cloud: 'heavy', surface: 'water' },
    aperture: '2.8',
    frames: [100, 500, 700],
  },
  { name: 'overcast', words: { cloud: 'overcast' }, aperture: '2.8', frames: [100, 500, 700] },
  { name: 'street lamps', words: { lamps: 'street' }, aperture: '4', frames: [600, 650] },
];

for (const { name, words, aperture, frames } of CASES) {
  const given = { ...SHOOT, camera: { ...SHOOT.camera, aperture } };
  const forecast = planOf(given);
  for (const frame of frames) {
    test(`${name}, read at frame ${frame}`, () => {
      const { at, sceneEv100 } = forecast.frames[frame]!;
      const { shoot } = forecast;
      const scene = { ...shoot.scene, ...words };
      const ev100 = forecastLight({ ...shoot, scene }, Float64Array.of(Date.parse(at))).sceneEv100[0]!;
      const plan = planOf({ ...given, readings: [{ at, ev100 }] });
      expect(plan.notes.filter(({ text }) => text.includes('was not used'))).toEqual([]);
      const movedEv = plan.frames[frame]!.sceneEv100 - sceneEv100;
      expect(Math.abs(movedEv - (ev100 - sceneEv100))).toBeLessThan(0.2);
      expect(plan.summary.eveningsHeldShare).toBeLessThan(0.99);
    });
  }
}
