// How bright the frames of the drawn clip are, worked out by hand.

import type { PlanFrame } from '@evenfall/core';
import { describe, expect, it } from 'vitest';
import { brighterEv, frameColumn } from '../../packages/web/src/strip/brightness.js';
import { eveningWith, libraryPlan } from './build.js';

/** Linear light of an sRGB value (IEC 61966-2-1). */
const linear = (value: number) => {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};

const light = (frame: PlanFrame) => {
  const [r = 0, g = 0, b = 0] = frameColumn(frame, 1)[0] ?? [];
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
};

describe('a frame of the strip', () => {
  const [first] = libraryPlan(eveningWith()).frames as [PlanFrame, ...PlanFrame[]];
  const off = (stops: number): PlanFrame => ({ ...first, sceneEv100: 10, settingEv100: 10 - stops });

  it('is a stop brighter where the setting lets in a stop more than the light asks for', () => {
    expect(brighterEv(off(1))).toBe(1);
    expect(light(off(1)) / light(off(0))).toBeCloseTo(2, 1);
    expect(light(off(-1)) / light(off(0))).toBeCloseTo(0.5, 1);
  });

  it('shows a third of a stop, the step of a dial', () => {
    expect(light(off(1 / 3)) / light(off(0))).toBeCloseTo(2 ** (1 / 3), 1);
  });

  it('is what the error and the look say: scene less setting is look less error', () => {
    for (const frame of libraryPlan(eveningWith()).frames) {
      const look = frame.sceneEv100 - frame.targetEv100;
      expect(brighterEv(frame)).toBeCloseTo(look - frame.errorEv, 9);
    }
  });
});
