import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetThrough } from '../../../packages/core/src/light/offset.js';
import {
  addReading,
  correctedBandAt,
  correctedEv100At,
  correctForecast,
  type Forecast,
  type Reading,
  startCorrection,
} from '../../../packages/core/src/light/reading.js';

const MIN = 60_000;
const START = Date.UTC(2025, 8, 20, 16);
// A plain dusk: sun 6° up at the start, 0.2° a minute, the scene falling with it.
const sunAltitudeAt = (atMs: number) => 6 - (0.2 * (atMs - START)) / MIN;
const forecastEv100At = (atMs: number) => 9 + sunAltitudeAt(atMs);
// Of level ground under any weather; light/weather.test.ts holds it against measurements.
const BAND = { lowEv: -3.26, highEv: 0.35 };
const forecast = (cloud: 'unknown' | 'clear' | 'cloudy' = 'unknown'): Forecast => ({
  forecastEv100At,
  sunAltitudeAt,
  known: { cloud, base: { stops: 0, cover: 0 } },
});
const reading = (minute: number, offsetEv: number): Reading => ({
  atMs: START + minute * MIN,
  ev100: forecastEv100At(START + minute * MIN) + offsetEv,
});
const offsets = (list: Reading[], cloud?: 'clear') => {
  const { offsetEvAt } = correctForecast(list, forecast(cloud));
  return (minute: number) => offsetEvAt(START + minute * MIN);
};

test('without readings the forecast and its band stand', () => {
  const start = startCorrection(forecast());
  expect(correctedEv100At(start, START)).toBe(15);
  expect(correctedBandAt(start, START)).toEqual(BAND);
});

describe('one reading', () => {
  test('moves the forecast by itself and fades, before and after alike', () => {
    const offset = offsets([reading(20, -1.5)]);
    expect(Math.abs(offset(20) + 1.5)).toBeLessThan(0.03);
    expect(offset(21)).toBeGreaterThan(offset(20));
    expect(offset(140)).toBeGreaterThan(-1.2);
    expect(offset(140)).toBeLessThan(-0.4);
    expect(offset(20 + 24 * 60)).toBeCloseTo(0, 2);
    expect(offset(-20)).toBeCloseTo(offset(60), 9);
  });

  test('is weighed as the normal equations say: 0.988 at once, 0.828 after 33 minutes', () => {
    // By hand: lasting 0.87² + 1² = 1.7569, cloud 0.67² = 0.4489, meter 1/36. At once 2.2058 / 2.2336.
    // At 33 min: r = √3·33/180 = 0.31754, 1.7569·1.31754·e^-0.31754 = 1.6851; 0.4489/e = 0.1651; 1.8502 / 2.2336.
    const offset = offsetThrough([{ atMs: 0, offsetEv: 1 }], { cloudEv: 0.67, meterEv: 1 / 6 });
    expect(offset(0)).toBeCloseTo(0.98756, 4);
    expect(offset(33 * MIN)).toBeCloseTo(0.82836, 4);
  });

  test('moves the forecast its own way, darker where it is darker', () => {
    const darker = correctForecast([reading(20, -1.5)], forecast());
    const at = START + 20 * MIN;
    expect(Math.abs(correctedEv100At(darker, at) - (forecastEv100At(at) - 1.5))).toBeLessThan(0.03);
  });

  test('narrows the band to the meter, which then widens with the minutes', () => {
    const once = correctForecast([reading(0, -1)], forecast());
    expect(correctedBandAt(once, START).highEv).toBeCloseTo(1 / 6, 9);
    expect(correctedBandAt(once, START + 5 * MIN).lowEv).toBeCloseTo(-0.77, 2);
    expect(correctedBandAt(once, START + 5 * MIN).lowEv).toBeGreaterThan(-0.78);
  });
});

describe('several readings', () => {
  test('give an offset that drifts through them and a little beyond', () => {
    const offset = offsets(
      [0, 10, 20, 30].map((minute) => reading(minute, -0.02 * minute)),
      'clear',
    );
    expect(Math.abs(offset(15) + 0.3)).toBeLessThan(0.05);
    expect(offset(36)).toBeLessThan(offset(30) - 0.04);
    expect(offset(36)).toBeGreaterThan(-0.72);
  });

  test('count the more the nearer they are in time', () => {
    const offset = offsets([reading(0, 0.6), reading(40, -0.6)]);
    expect(offset(5)).toBeGreaterThan(0.3);
    expect(offset(35)).toBeLessThan(-0.3);
    expect(Math.abs(offset(20))).toBeLessThan(0.01);
  });

  test('average out the meter where they were taken together', () => {
    const together = offsets([-0.1, 0.1, -0.1, 0.1].map((e, i) => reading(10 + i / 100, -1 + e)));
    expect(Math.abs(together(10) + 1)).toBeLessThan(0.03);
  });

  test('one by one or as a list in any order, they give the same', () => {
    const list = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 90 }), fc.double({ min: -0.1, max: 0.1, noNaN: true })),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(list, (pairs) => {
        const unique = [...new Map(pairs).entries()].sort((a, b) => a[0] - b[0]);
        const inTime = unique.map(([minute, offsetEv]) => reading(minute, offsetEv));
        const byOne = inTime.reduce(addReading, startCorrection(forecast()));
        const byList = correctForecast([...inTime].reverse(), forecast());
        expect(byList.used).toEqual(byOne.used);
        for (const minute of [-30, 0, 17, 44, 120]) {
          const at = START + minute * MIN;
          expect(byList.offsetEvAt(at)).toBeCloseTo(byOne.offsetEvAt(at), 9);
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  test('adding one leaves the earlier state as it was', () => {
    const one = addReading(startCorrection(forecast()), reading(0, -1));
    const before = one.offsetEvAt(START);
    addReading(one, reading(1, -0.8));
    expect(one.used.length).toBe(1);
    expect(one.offsetEvAt(START)).toBe(before);
  });

  test('sixty and more a minute apart still follow the light', () => {
    const list = Array.from({ length: 90 }, (_, minute) => reading(minute, Math.sin(minute / 30)));
    const offset = offsets(list);
    expect(correctForecast(list, forecast()).used.length).toBe(90);
    for (const minute of [40, 60, 89])
      expect(Math.abs(offset(minute) - Math.sin(minute / 30))).toBeLessThan(0.1);
  });
});

describe('a reading is refused by name', () => {
  const refusedBy = (list: Reading[]) => correctForecast(list, forecast());

  test('where no scene gives it, on either side', () => {
    const dark = refusedBy([reading(0, -13)]);
    expect(dark.used).toEqual([]);
    expect(dark.refused[0]?.reason).toBe('impossible');
    expect(dark.refused[0]?.text).toMatch(
      /^EV 2\.0 is darker than any scene with the sun at 6°: 4\.\d at least\. Check ISO, filter and time\.$/,
    );
    expect(dark.offsetEvAt(START)).toBe(0);
    // A white wall in the sun meters 17 (1.5 stops over sunny 16's 15 on a grey card); no scene at dusk 19.
    expect(refusedBy([reading(0, 2)]).refused).toEqual([]);
    expect(refusedBy([reading(0, 4)]).refused[0]?.text).toContain('EV 19.0 is brighter than any scene');
  });

  test('but not because its words were wrong: heavy cloud over water, lamps in the dark', () => {
    expect(refusedBy([reading(0, -7)]).used.length).toBe(1);
    expect(refusedBy([reading(100, 13)]).used.length).toBe(1);
    expect(refusedBy([reading(100, 17)]).refused[0]?.reason).toBe('impossible');
  });

  test('a scene stated in numbers beyond all words has any weather about it', () => {
    const lit = { ...forecast(), forecastEv100At: () => 14 };
    const at = START + 100 * MIN;
    expect(correctForecast([{ atMs: at, ev100: 14.5 }], lit).used.length).toBe(1);
    expect(correctForecast([{ atMs: at, ev100: 17.5 }], lit).refused[0]?.reason).toBe('impossible');
    // 1 to 98 % of measured minutes lie from -4.1 to 1 stop, and a frame is two off where its words are wrong: -6.1 to 3.
    const usedBy = (sceneEv100: number, offEv: number) => {
      const stated = { ...forecast(), forecastEv100At: () => sceneEv100 };
      return correctForecast([{ atMs: at, ev100: sceneEv100 + offEv }], stated).used.length;
    };
    expect([usedBy(14, 2.95), usedBy(14, 3.05)]).toEqual([1, 0]);
    expect([usedBy(-25, -6.05), usedBy(-25, -6.15)]).toEqual([1, 0]);
  });

  test('a reading that the words explain leaves the weather its room about it', () => {
    // As heavy cloud does under a clear plan: the weather may still do to it what it does to any evening.
    const heavy = correctForecast([reading(0, -6.3)], forecast());
    const band = correctedBandAt(heavy, START + 90 * MIN);
    expect(band.lowEv).toBeLessThan(-1.5);
    expect(correctedBandAt(heavy, START).lowEv).toBeCloseTo(-1 / 6, 9);
  });

  test('lamps that hold the light while the forecast falls contradict nothing', () => {
    // Eight stops in forty minutes, a reading every ten.
    const list = [60, 70, 80, 90, 100].map((minute, i) => reading(minute, 2 * i));
    expect(refusedBy(list).refused).toEqual([]);
  });

  test('where it has moved faster than skies do, and the forecast stays with the others', () => {
    const one = refusedBy([reading(0, -0.5), reading(1, -0.4), reading(2, -2.5)]);
    expect(one.used.length).toBe(2);
    expect(one.refused[0]?.reason).toBe('contradictory');
    expect(one.refused[0]?.text).toMatch(/^2\.1 stops from the reading of EV \d+\.\d 1 minutes apart/);
    expect(one.offsetEvAt(START + 2 * MIN)).toBeGreaterThan(-0.6);
  });

  test('in order of time, whatever order the list comes in', () => {
    const list = [reading(0, -0.5), reading(1, -0.4), reading(2, -2.5), reading(3, -0.5)];
    const shuffled = [list[2]!, list[0]!, list[3]!, list[1]!];
    expect(refusedBy(shuffled).refused).toEqual(refusedBy(list).refused);
    expect(refusedBy(shuffled).refused.map((refusal) => refusal.reading)).toEqual([list[2]]);
  });

  // docs/light.md: within half an hour.
  test.each([
    [29, 'superseded'],
    [31, 'contradictory'],
  ] as const)('the next one bears it out %i minutes later: the first refusal is %s', (minutes, reason) => {
    // Before the start and by a sky so dark that no weather leads back from it: sun and words for the scene stand still.
    const still: Forecast = { ...forecast(), forecastEv100At: () => 15, sunAltitudeAt: () => 20 };
    const at = (minute: number, offsetEv: number) => ({ atMs: START + minute * MIN, ev100: 15 + offsetEv });
    const { refused } = correctForecast([at(0, 0), at(1, -4), at(1 + minutes, -4)], still);
    expect(refused[0]?.reason).toBe(reason);
  });

  test('unless the next one bears it out: then the earlier ones are set aside', () => {
    const list = [reading(0, -0.5), reading(1, -0.4), reading(2, -2.5), reading(3, -2.6)];
    const changed = refusedBy(list);
    expect(changed.used).toEqual(list.slice(2));
    expect(changed.refused.map((refusal) => refusal.reason)).toEqual(['superseded', 'superseded']);
    expect(Math.abs(changed.offsetEvAt(START + 3 * MIN) + 2.55)).toBeLessThan(0.1);
  });

  test('and a number that is none is the caller’s mistake', () => {
    expect(() => refusedBy([{ atMs: START, ev100: Number.NaN }])).toThrow('ev100 must be finite, got NaN');
  });
});

test('on 200 made-up evenings of any weather, correcting beats both the forecast and the last reading', () => {
  // Weather as measured: a lasting offset of 0.87 stop around -0.7, and cloud of 0.67 that forgets itself in 33 minutes,
  // a meter good to a sixth; a reading every 10 minutes, judged 5 minutes after each.
  const random = seeded(2025);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let corrected = 0;
  let held = 0;
  let alone = 0;
  let count = 0;
  for (let evening = 0; evening < 200; evening++) {
    const lasting = -0.7 + 0.87 * normal();
    let cloud = 0.67 * normal();
    let state = startCorrection(forecast());
    let last = 0;
    const keep = Math.exp(-5 / 33);
    for (let minute = 0; minute <= 120; minute += 5) {
      const truth = lasting + cloud;
      if (minute % 10 === 0) {
        last = truth + normal() / 6;
        state = addReading(state, reading(minute, last));
      } else {
        corrected += (state.offsetEvAt(START + minute * MIN) - truth) ** 2;
        held += (last - truth) ** 2;
        alone += truth ** 2;
        count++;
      }
      cloud = keep * cloud + 0.67 * Math.sqrt(1 - keep ** 2) * normal();
    }
  }
  expect(count).toBe(2400);
  expect(Math.sqrt(corrected / count)).toBeLessThan(0.4);
  expect(corrected).toBeLessThan(held);
  expect(corrected).toBeLessThan(alone / 4);
});

/** Uniform numbers in [0, 1) from a seed (mulberry32). */
function seeded(seed: number) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
