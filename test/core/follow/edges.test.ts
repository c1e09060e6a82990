// The numbers that following decides by, each tried on both sides of its edge: a tenth more or less gives another answer.
// They are our choices (docs/follow.md); what should come out is worked out by hand beside each.

import { describe, expect, test } from 'vitest';
import { type Evening, eveningOf } from '../../../packages/core/src/follow/evening.js';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { measured } from '../../../packages/core/src/follow/frame-level.js';
import { readingOfFrame } from '../../../packages/core/src/follow/frame-reading.js';
import { wasHeld, withHeld } from '../../../packages/core/src/follow/held.js';
import { readLine } from '../../../packages/core/src/follow/line-in.js';
import { type Before, momentOf } from '../../../packages/core/src/follow/moment.js';
import { reachAhead } from '../../../packages/core/src/follow/reach.js';
import { startTrust, takeReading } from '../../../packages/core/src/follow/trust.js';
import { carriedOffsetEv } from '../../../packages/core/src/light/own-light.js';
import { zoneOf } from '../../../packages/core/src/sky/clock.js';
import { HAND, RIG, readingOf, startMsOf } from './evenings.js';

const MINUTE_MS = 60_000;

/** As much of an evening as a part of following asks for. */
const partOf = (parts: object) => parts as unknown as Evening;

describe('what the light was off by in the last half hour', () => {
  test('is kept in parts of five minutes', () => {
    const first = withHeld([], 0, 0);
    expect(withHeld(first, 4.75 * MINUTE_MS, 0)).toHaveLength(1);
    expect(withHeld(first, 5.25 * MINUTE_MS, 0)).toHaveLength(2);
  });

  test('counts until a part began thirty minutes and its own five ago', () => {
    const held = withHeld([], 0, 3);
    expect(wasHeld(held, 34.5 * MINUTE_MS, 3)).toBe(true);
    expect(wasHeld(held, 35.5 * MINUTE_MS, 3)).toBe(false);
    expect(withHeld(held, 34.5 * MINUTE_MS, 0)).toHaveLength(2);
    expect(withHeld(held, 35.5 * MINUTE_MS, 0)).toHaveLength(1);
  });

  test('is what it is now within 0.4 stops', () => {
    const held = withHeld(withHeld([], 0, -1), 1, 1);
    expect([-1.42, -1.38, 1.38, 1.42].map((ev) => wasHeld(held, 2, ev))).toEqual([false, true, true, false]);
  });
});

describe('a reading far from what was expected', () => {
  // A scene of EV 8 with the sun on the horizon, met as forecast at first.
  const lightAt = () => ({ sceneEv100: 8, sunAltitudeDeg: 0 });
  const lastSaid = (readings: readonly (readonly [atS: number, offsetEv: number])[]) => {
    let taken: ReturnType<typeof takeReading> = { trust: startTrust(0) };
    for (const [atS, offsetEv] of readings) {
      taken = takeReading(taken.trust, { atMs: 1000 * atS, ev100: 8 + offsetEv }, lightAt, 0.07);
    }
    return taken.warning?.kind;
  };

  test('that is brighter is a torch for fifty seconds', () => {
    const torch = (forS: number) => [0, 10, 20, 30, 40, forS].map((s) => [20 + s, 3] as const);
    expect(lastSaid([[0, 0], ...torch(47)])).toBe('reading-doubted');
    expect(lastSaid([[0, 0], ...torch(53)])).toBe('reading-believed');
  });

  test('is believed three minutes after the last', () => {
    expect(
      lastSaid([
        [0, 0],
        [170, 3],
      ]),
    ).toBe('reading-doubted');
    expect(
      lastSaid([
        [0, 0],
        [190, 3],
      ]),
    ).toBe('reading-believed');
  });

  test('is borne out by another within half of what that is off by', () => {
    expect(
      lastSaid([
        [0, 0],
        [8, -3],
        [16, -2.05],
      ]),
    ).toBe('reading-believed');
    expect(
      lastSaid([
        [0, 0],
        [8, -3],
        [16, -1.95],
      ]),
    ).toBe('reading-doubted');
  });
});

describe('where the light will leave the kit', () => {
  const INTERVAL_MS = 1000;
  const evening = partOf({
    plan: { frames: Array.from({ length: 2000 }, () => ({ targetEv100: 5, sceneEv100: 5 })) },
    shoot: { limits: { toleranceEv: 0.25 } },
    reach: { darkEv100: 0, brightEv100: 10 },
    ...{
      frameCount: 2000,
      intervalMs: INTERVAL_MS,
      startMs: 0,
      zone: zoneOf({ longitudeDeg: 0, timeZone: 'UTC' }),
    },
  });
  const DARK_EV = -0.25; // the last target within tolerance
  const trust = startTrust(0);
  const kinds = (frame: number, targets: readonly number[], told: Parameters<typeof reachAhead>[4] = {}) =>
    reachAhead(evening, trust, frame, Float64Array.from(targets), told).warnings.map(({ kind }) => kind);
  const beyond = (now: boolean, frame: number, worstEv = 1) => ({ dark: { now, frame, worstEv } });

  test('is told from a twentieth of a stop', () => {
    expect(kinds(0, [DARK_EV - 0.047])).toEqual([]);
    expect(kinds(0, [DARK_EV - 0.053])).toEqual(['out-of-reach']);
  });

  test('is within again by a tenth of a stop', () => {
    expect(kinds(0, [DARK_EV + 0.095], beyond(true, 0))).toEqual([]);
    expect(kinds(0, [DARK_EV + 0.105], beyond(true, 0))).toEqual(['within-reach']);
  });

  test('is told again where it is half a stop more, or ten minutes otherwise', () => {
    expect(kinds(0, [DARK_EV - 1.48], beyond(true, 0))).toEqual([]);
    expect(kinds(0, [DARK_EV - 1.52], beyond(true, 0))).toEqual(['out-of-reach']);
    // Told to come at frame 1000; comes so many seconds before.
    const comes = (earlierS: number) =>
      kinds(0, [...Array(1000 - earlierS).fill(5), DARK_EV - 1], beyond(false, 1000));
    expect(comes(9.6 * 60)).toEqual([]);
    expect(comes(10.4 * 60)).toEqual(['out-of-reach']);
  });

  test('is looked for every half minute beyond the cues ahead', () => {
    const dark = (second: number) => {
      const frames = evening.plan.frames.map((frame, i) =>
        i === 1 + second ? { ...frame, targetEv100: -9 } : frame,
      );
      return reachAhead(partOf({ ...evening, plan: { frames } }), trust, 0, Float64Array.of(5), {}).warnings
        .length;
    };
    expect([27, 29, 30, 31, 33].map(dark)).toEqual([0, 0, 1, 0, 0]);
  });
});

describe('what frame it is', () => {
  const evening = (crew: 'rig' | 'hand') =>
    partOf({
      plan: { shoot: { crew }, clocksBack: undefined },
      ...{
        frameCount: 9000,
        intervalMs: 1000,
        startMs: 0,
        zone: zoneOf({ longitudeDeg: 0, timeZone: 'UTC' }),
      },
    });
  const before: Before = { last: 3000, told: [], doubted: undefined };
  const kind = (frame: number, more: Partial<Before> = {}) =>
    momentOf(evening('rig'), { frame }, { ...before, ...more }).kind;

  test('a minute back is a line that took its time', () => {
    expect(kind(3000 - 58)).toBe('late');
    expect(kind(3000 - 62)).toBe('back');
  });

  test('twenty minutes ahead are doubted, and borne out by a second time within as much', () => {
    expect(kind(3000 + 19.5 * 60)).toBe('on');
    expect(kind(3000 + 20.5 * 60)).toBe('ahead');
    const doubted = { way: 'ahead', count: 1, frame: 5000 } as const;
    expect(kind(5000 - 58, { doubted })).toBe('on');
    expect(kind(5000 - 62, { doubted })).toBe('ahead');
  });

  test('a clock set back is believed the third time', () => {
    const doubted = (count: number) => ({ way: 'back', count, frame: 2000 }) as const;
    expect(kind(2000, { doubted: doubted(1) })).toBe('back');
    expect(kind(2000, { doubted: doubted(2) })).toBe('rewound');
  });
});

describe('lines', () => {
  const read = (line: string) => readLine(line, () => 0).kind;

  test('have 16,000 characters at most', () => {
    const line = (length: number) => '{"frame":0}'.padEnd(length);
    expect(read(line(15_900))).toBe('ok');
    expect(read(line(16_100))).toBe('wrong');
  });

  test('are nested 32 deep at most', () => {
    const said = (depth: number) => JSON.stringify(readLine(`{"at":${'['.repeat(depth - 1)}`, () => 0));
    expect(said(32)).toContain('not one JSON object');
    expect(said(33)).toContain('nested more than 32 deep');
  });
});

test('a reading counts from twelve hours before the first frame on', () => {
  const warned = (hoursBefore: number) => {
    const reading = { atMs: startMsOf(RIG, 0) - hoursBefore * 60 * MINUTE_MS, ev100: 12, sure: true };
    return followFrame(startFollow(RIG), { frame: 0, reading }).warnings.map(({ kind }) => kind);
  };
  expect(warned(11.5)).not.toContain('reading-old');
  expect(warned(12.5)).toContain('reading-old');
});

test('of a silence it is told after ten minutes', () => {
  // Frames of 8 s: 72 are 9.6 minutes, 78 are 10.4.
  const { state } = followFrame(startFollow(RIG), { frame: 0, reading: readingOf(RIG, 0, 0) });
  const warned = (frame: number) => followFrame(state, { frame }).warnings.map(({ kind }) => kind);
  expect(warned(72)).toEqual([]);
  expect(warned(78)).toEqual(['no-reading']);
});

test('the last 24 cues may be reported missed', () => {
  let state = startFollow(RIG);
  for (let frame = 0; state.camera.cueCount < 30; frame++) state = followFrame(state, { frame }).state;
  expect(state.camera.done).toHaveLength(24);
  expect(state.camera.done[0]!.cue).toBe(7);
});

test('a cue is missed at a time within a year of the evening', () => {
  const { state } = followFrame(startFollow(RIG), { frame: 0 });
  const warned = (days: number) =>
    followFrame(state, {
      frame: 0,
      missed: { atMs: startMsOf(RIG, 0) + days * 24 * 60 * MINUTE_MS },
    }).warnings.map(({ kind }) => kind);
  expect(warned(350)).toEqual(['cue-unknown']);
  expect(warned(380)).toEqual(['time-unknown']);
});

describe('a frame', () => {
  test('is white from the JPEG value 254, of one channel or all', () => {
    // sRGB, IEC 61966-2-1: 253 is 0.982 of white, 254 0.991.
    const clipped = (value: number) => measured({ srgbPixels: [value, 0], channels: 1 }).clippedShare;
    expect(clipped(253)).toBe(0);
    expect(clipped(254)).toBe(0.5);
  });

  test('hides something where white parts, twice as bright, would raise its mean by a tenth of a stop', () => {
    // log2(1 + share / mean): 2^0.095 - 1 is 0.0681, 2^0.105 - 1 is 0.0755.
    const bound = (share: number) =>
      readingOfFrame({ mean: 0.4, clippedShare: 0.4 * share }, { atMs: 0, settingEv100: 0 }).bound;
    expect(bound(0.0681)).toBeUndefined();
    expect(bound(0.0755)).toBe('atLeast');
  });

  test('is taken as clipped from half of white on, where nothing else tells', () => {
    const bound = (mean: number) => readingOfFrame({ mean }, { atMs: 0, settingEv100: 0 }).bound;
    expect(bound(0.48)).toBeUndefined();
    expect(bound(0.52)).toBe('atLeast');
  });
});

describe('what an error costs', () => {
  // The plan's own price is the least.
  const shoot = { ...HAND.shoot, weights: { error: 0.01 } };
  const rmsIs = (rmsErrorEv: number) => {
    const plan = { ...HAND, shoot, summary: { ...HAND.summary, rmsErrorEv } };
    const { live, options, aheadFrames } = eveningOf(plan, {});
    return { ...live.weights, ...options, aheadFrames };
  };

  test('is 10 where a plan keeps to 0.12 stops or closer, by a power law to 1.06 at 0.2, and at 0.172 no less', () => {
    expect(rmsIs(0.12).errorNow).toBeCloseTo(10, 12);
    expect(rmsIs(0.1).errorNow).toBeCloseTo(10, 12);
    // Half way between the two in logarithms, √(0.12 · 0.2) = 0.1549, their geometric mean: √(10 · 1.06).
    expect(rmsIs(Math.sqrt(0.12 * 0.2)).errorNow).toBeCloseTo(Math.sqrt(10.6), 9);
    const slope = Math.log(10 / 1.06) / Math.log(0.2 / 0.12);
    expect(rmsIs(0.3).errorNow).toBeCloseTo(10 * (0.12 / 0.172) ** slope, 9);
  });

  test('is a twelfth far ahead, three minutes on to 1/e; beyond tolerance 2; a cue must save 0.15 in 8 s', () => {
    expect(rmsIs(0.12)).toMatchObject({ fadeS: 180, beyondTolerance: 2, hysteresisPerS: 0.15 / 8 });
    expect(rmsIs(0.12).errorAhead).toBeCloseTo(10 / 12, 12);
  });

  test('cues are told for twenty minutes: 150 frames of 8 s; a meter is steady to 0.07 stops', () => {
    expect(rmsIs(0.12)).toMatchObject({ aheadS: 1200, meterEv: 0.07, aheadFrames: 150 });
  });
});

test('light of its own stays as the sky goes: what is more than half a stop above the forecast, up to EV 7', () => {
  // EV 3 read where EV 1 was forecast: 2^3 - 2^1.5 are lamps, and where the sky is EV -1 they are there still.
  const lamps = 2 ** 3 - 2 ** 1.5;
  expect(carriedOffsetEv(2, 0, 1, -1)).toBeCloseTo(Math.log2(2 ** 1.5 / 4 + lamps) + 1, 12);
  // By day no lamps are brighter than EV 7.
  const sky = 2 ** 12 - 2 ** 7;
  expect(carriedOffsetEv(2, 0, 10, 8)).toBeCloseTo(Math.log2(sky / 4 + 2 ** 7) - 8, 12);
});
