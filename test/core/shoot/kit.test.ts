import { describe, expect, test } from 'vitest';
import { kitOf, settingOf } from '../../../packages/core/src/shoot/kit.js';
import { shootFrom } from '../shoots.js';

const shoot = shootFrom({ filters: [{ name: 'ND 8', factor: 8 }] });

describe('a frame as the dials say it', () => {
  const { ramp, stacks } = kitOf(shootFrom({ crew: 'rig', camera: { ...shoot.camera, bulb: true } }));
  const textOf = (timeS: number) =>
    settingOf(
      { ramp, stacks },
      {
        shutterStep: -Math.log2(timeS) * 3,
        isoStep: ramp.iso.lowestStep,
        apertureStep: ramp.aperture.widestStep,
        stack: 0,
        settingEv100: 0,
        errorEv: 0,
        affected: false,
      },
    ).shutter;

  // As the dials are marked: "0.3" is the shortest time in seconds, "1/4" the longest as a part of one.
  test.each([
    [30.04, '30'],
    [0.5, '0.5'],
    [0.3151, '0.315'],
    [0.301, '0.301'],
    [0.25, '1/4'],
    [1 / 79.23, '1/79.2'],
  ])('%f s, timed freely, is "%s"', (timeS, text) => expect(textOf(timeS)).toBe(text));
});

describe('what is not in the kit is refused by name', () => {
  test.each([
    [{ startFilter: 'ND 9' }, 'startFilter "ND 9" is not among the filters'],
    [{ camera: { ...shoot.camera, aperture: '5.7' } }, 'aperture "5.7" is not on a dial of 1/3-stop steps'],
  ])('%o', (change, message) =>
    expect(() => kitOf({ ...shoot, ...change })).toThrow(new RangeError(message)),
  );
});
