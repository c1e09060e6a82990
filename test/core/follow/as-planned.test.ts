// An evening that is a stop darker than forecast throughout falls as the planned one does. So it can be followed in about
// the plan's number of cues and about as closely as the plan follows the forecast, however finely time is cut and whether
// one asks at every frame or once a minute. A plan looser than stepping by the meter is followed about as closely as
// by a smoothed meter (weather.test.ts), in fewer turns of a dial than stepping takes.

import { expect, test } from 'vitest';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { outcomeOf, WAYS } from '../../reference/follow-evenings.js';

const { camera } = EVENING_SHOOT;

/** A dial turned by a third once the meter is off by a third (docs/follow.md), a third of a stop at a time. */
const STEPPING_RMS_EV = 0.18;
/** What hands reach who smooth a meter's readings and know the forecast, on calm evenings (the same page). */
const SMOOTHING_RMS_EV = 0.14;

for (const { name, change, toleranceEv } of [
  { name: 'a quarter stop, every 8 s', change: {}, toleranceEv: 0.25 },
  { name: 'half a stop, every 8 s', change: {}, toleranceEv: 0.5 },
  { name: 'three quarters, every 8 s', change: {}, toleranceEv: 0.75 },
  {
    name: 'half a stop, every 2.4 s',
    change: {
      intervalS: 2.4,
      camera: {
        ...camera,
        shutter: { ...camera.shutter, longest: '1.3' },
        iso: { lowest: 100, highest: 25600 },
      },
    },
    toleranceEv: 0.5,
  },
  { name: 'half a stop, every 40 s', change: { intervalS: 40 }, toleranceEv: 0.5 },
]) {
  const plan = planOf({ ...EVENING_SHOOT, ...change, limits: { toleranceEv } });
  const evening = {
    offsetEv: new Float64Array(plan.frames.length).fill(-1),
    meterEv: new Float64Array(plan.frames.length),
  };
  for (const key of ['follow', 'asked1']) {
    const way = WAYS.find((each) => each.key === key)!;
    test(`${way.name}, within ${name}`, () => {
      const { cues, rms, worst } = outcomeOf(way, plan, evening);
      const planned = plan.cues.length;
      expect(worst).toBeLessThan(toleranceEv);
      expect(cues).toBeGreaterThanOrEqual(0.9 * planned);
      if (plan.summary.rmsErrorEv < STEPPING_RMS_EV) {
        expect(cues).toBeLessThanOrEqual(1.12 * planned);
        expect(rms).toBeLessThan(1.05 * plan.summary.rmsErrorEv);
      } else {
        const turns = 3 * plan.summary.rampStops;
        expect(cues).toBeLessThan(turns);
        expect(rms).toBeLessThan(SMOOTHING_RMS_EV);
      }
    });
  }
}
