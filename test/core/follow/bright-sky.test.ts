// A sky that is brighter than forecast and then clouds over. By day nobody can tell lamps from sky; what a bright sky has
// lost must not be waited for as a cloud's light that comes back.

import { expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { weatherPlan } from '../../reference/weather-ways.js';

test('a bright sky that fades is followed as sky, read every twenty minutes', () => {
  const plan = weatherPlan('hand');
  let state = startFollow(plan);
  for (let frame = 76; frame < plan.frames.length; frame += 150) {
    const { at, sceneEv100 } = plan.frames[frame]!;
    const hours = Math.max(0, ((frame - 300) * plan.shoot.intervalS) / 3600);
    const offsetEv = 1 - 1.2 * hours;
    const reading = { atMs: Date.parse(at), ev100: sceneEv100 + offsetEv };
    const step = followFrame(state, { frame, reading, jump: true });
    state = step.state;
    expect(Math.abs(step.offsetEv - offsetEv), `frame ${frame}`).toBeLessThan(0.15);
  }
});
