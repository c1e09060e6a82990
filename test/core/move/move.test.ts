import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { timeOfStep } from '../../../packages/core/src/exposure/dial.js';
import { footageOf } from '../../../packages/core/src/footage/footage.js';
import {
  type Move,
  type MoveFinding,
  type MovePlan,
  type MoveRemedy,
  type MoveRequest,
  planMoves,
} from '../../../packages/core/src/move/move.js';
import { anyMoves, OPTICS, slide, turn } from './moves.js';

/** A dusk's shutters: short by day, `longestS` at night, in marked thirds. */
function dusk(frameCount: number, longestS: number) {
  const [from, to] = [1 / 128, longestS].map((s) => Math.ceil(-3 * Math.log2(s!) - 1e-9));
  return Array.from({ length: frameCount }, (_, i) => {
    const share = frameCount < 2 ? 1 : Math.min(1, (1.25 * i) / (frameCount - 1));
    return { shutterS: timeOfStep(Math.round(from! + (to! - from!) * share), 3) };
  });
}

/** Whatever values a remedy may have. */
interface Values {
  readonly frameCount?: number;
  readonly intervalS?: number;
  readonly shutterS?: number;
  readonly settleS?: number;
  readonly writeS?: number;
  readonly lengths?: readonly number[];
}
const values = (remedy: MoveRemedy): Values => remedy as Values;

/** The request as a person would change it who follows a remedy. */
function followed(request: MoveRequest, plan: MovePlan, remedy: MoveRemedy): MoveRequest {
  const { frameCount = request.frames.length, intervalS = request.intervalS, ...other } = values(remedy);
  const longestS = Math.max(...request.frames.map(({ shutterS }) => shutterS));
  const frames = frameCount === request.frames.length ? request.frames : dusk(frameCount, longestS);
  const cut = (shutterS: number) =>
    remedy.change === 'shorter-shutter' ? Math.min(shutterS, other.shutterS!) : shutterS;
  const settled = (gear: { settleS: number }) => Math.min(gear.settleS, other.settleS ?? gear.settleS);
  return {
    ...request,
    intervalS,
    frames: frames.map(({ shutterS }) => ({ shutterS: cut(shutterS) })),
    writeS: other.writeS ?? request.writeS,
    darkFrame: remedy.change === 'no-dark-frame' ? false : request.darkFrame,
    moves: request.moves.map((given, i): Move => {
      const move = remedy.change === 'stop' ? { ...given, mode: 'stopped' as const } : given;
      const length = other.lengths?.[i] ?? plan.travels[i]!.length;
      return move.axis === 'slide'
        ? { ...move, by: { m: length }, gear: { ...move.gear, settleS: settled(move.gear) } }
        : { ...move, by: { deg: length }, gear: { ...move.gear, settleS: settled(move.gear) } };
    }),
  };
}

const found = (plan: MovePlan, kind: MoveFinding['kind']) =>
  plan.findings.find((finding) => finding.kind === kind);
const remedyOf = (plan: MovePlan, kind: MoveFinding['kind'], change: MoveRemedy['change']) =>
  found(plan, kind)?.remedies.find((remedy) => remedy.change === change) as MoveRemedy & Values;

describe('a pan between two points of a picture, through a dusk of 2 h, for a clip of 12 s', () => {
  const { frameCount, intervalS } = footageOf({ recordingS: 7200, clipS: 12 }, 24);
  const request: MoveRequest = {
    moves: [
      turn('pan', 0, {
        ease: 'quintic',
        by: {
          // atan(0.77 · 18/24) = 30.0° on each side.
          fromPoint: { fromLeft: 0.115, fromBottom: 0.5 },
          toPoint: { fromLeft: 0.885, fromBottom: 0.5 },
          focalMm: 24,
        },
      }),
    ],
    frames: dusk(frameCount, 8),
    intervalS,
    clipFps: 24,
    writeS: 1,
    darkFrame: false,
    optics: OPTICS,
  };
  const plan = planMoves(request);

  test('is 60°, has time, and is too fast to watch', () => {
    expect(plan.frames).toHaveLength(288);
    expect(plan.travels[0]!.length).toBeCloseTo(60, 0);
    expect(found(plan, 'no-time')).toBeUndefined();
    expect(plan.tightest.slackS).toBeGreaterThan(0);
    // Source: hand: 60° of 54.43° in 287 steps at 24 a second, 1.875 times the mean in the middle.
    expect(plan.fastest?.crossingS).toBeCloseTo(54.43 / ((60 / 287) * 24 * 1.875), 1);
    expect(found(plan, 'too-fast')?.text).toMatch(
      /^At its fastest, frame 144, the picture passes its own width in 5\.7\d s/,
    );
  });

  test('is cured by each change that the advice names', () => {
    const remedies = found(plan, 'too-fast')!.remedies;
    expect(remedies.map(({ change }) => change)).toEqual(['more-frames', 'longer-recording', 'shorter-move']);
    for (const remedy of remedies) {
      const cured = planMoves(followed(request, plan, remedy));
      expect(cured.fastest!.crossingS, remedy.text).toBeGreaterThanOrEqual(7);
      expect(cured.fastest!.crossingS, remedy.text).toBeLessThan(7.1);
      expect(cured.findings, remedy.text).toEqual([]);
    }
  });
});

describe('a slide of 30 m with long shutters at night', () => {
  const request: MoveRequest = {
    moves: [
      slide(0, {
        by: { trackM: 30, carriageM: 0.4, marginM: 0.3 },
        ease: { trapezoid: 0.2 },
        nearestM: 60,
        gear: { settleS: 3, topSpeedMPerS: 0.02 },
      }),
    ],
    frames: dusk(600, 8),
    intervalS: 12,
    clipFps: 24,
    writeS: 1,
    darkFrame: false,
    optics: OPTICS,
  };
  const plan = planMoves(request);

  test('has too little time, and says where, how much and what for', () => {
    // Source: hand: 29 m in 599 steps, 1.25 times the mean, at 0.02 m/s: 3.03 s; 8 + 1 + 3.03 + 3 = 15.03 s.
    expect(plan.gap.moveS).toBeCloseTo(((29 / 599) * 1.25) / 0.02, 6);
    expect(plan.tightest.slackS).toBeCloseTo(12 - 15.03, 2);
    const finding = found(plan, 'no-time')!;
    expect(finding.level).toBe('warning');
    expect(finding.text).toContain(
      '3.03 s more than its interval of 12 s: shutter 8 s, writing 1 s, moving 3.03 s, settling 3 s.',
    );
    expect(request.frames[(finding as { frame: number }).frame]!.shutterS).toBe(8);
  });

  test('is cured by each change that the advice names', () => {
    const remedies = found(plan, 'no-time')!.remedies;
    expect(remedies.map(({ change }) => change)).toEqual(['longer-interval', 'shorter-shutter']);
    for (const remedy of remedies) {
      const cured = planMoves(followed(request, plan, remedy));
      expect(found(cured, 'no-time'), remedy.text).toBeUndefined();
      expect(cured.tightest.slackS, remedy.text).toBeLessThan(1);
    }
  });
});

describe('advice', () => {
  const base: MoveRequest = {
    moves: [turn('pan', 40)],
    frames: dusk(481, 4),
    intervalS: 10,
    clipFps: 24,
    writeS: 1,
    darkFrame: false,
    optics: OPTICS,
  };

  test('nothing is said about a move that has time and is good to watch', () => {
    expect(planMoves(base).findings).toEqual([]);
  });

  test('a dark frame that is one too many may be turned off, a long rest cut, a slow card changed', () => {
    const tight = planMoves({ ...base, frames: dusk(481, 8), intervalS: 11, darkFrame: true });
    expect(remedyOf(tight, 'no-time', 'no-dark-frame').text).toContain('noise reduction off');
    // 8 s, as long again for the dark frame, 1 s for writing and 1 s of rest are 18, and the step comes on top.
    const short = /^Frame \d+ needs ([\d.]+) s more than its interval of 11 s: /.exec(
      found(tight, 'no-time')!.text,
    );
    expect(Number(short?.[1])).toBeCloseTo(18 + tight.gap.moveS - 11, 1);
    const resting = { ...base, moves: [turn('pan', 40, { gear: { settleS: 6, topSpeedDegPerS: 5 } })] };
    const rest = planMoves(resting);
    expect(remedyOf(rest, 'no-time', 'shorter-settle').settleS).toBeCloseTo(10 - 4 - 1 - rest.gap.moveS, 1);
    const slow = planMoves({ ...base, writeS: 6 });
    expect(remedyOf(slow, 'no-time', 'shorter-write').writeS).toBeCloseTo(10 - 4 - 1 - slow.gap.moveS, 1);
  });

  test('a slide against a pan is shortened until what each rounds away leaves the picture slow enough', () => {
    const against = [turn('pan', -44, { ease: 'linear' }), slide(3, { ease: 'linear', nearestM: 1 })];
    const request = { ...base, moves: against, frames: dusk(20, 1), intervalS: 100 };
    const plan = planMoves(request);
    const cured = planMoves(followed(request, plan, remedyOf(plan, 'too-fast', 'shorter-move')));
    expect(cured.fastest?.crossingS).toBeGreaterThanOrEqual(7);
    // A move this short is rounded coarsely.
    expect(cured.fastest?.crossingS).toBeLessThan(8);
  });

  test('a shorter interval that leaves too little for the shutter says so', () => {
    const plan = planMoves({ ...base, moves: [turn('pan', 150)], frames: dusk(481, 8) });
    const remedy = remedyOf(plan, 'too-fast', 'more-frames');
    expect(remedy.text).toContain('for a shutter that the plan opens for 8 s');
    // Whatever it says is left does fit.
    const cured = planMoves(
      followed({ ...base, moves: [turn('pan', 150)], frames: dusk(481, remedy.shutterS!) }, plan, remedy),
    );
    expect(remedy.shutterS).toBeLessThan(8);
    expect(found(cured, 'no-time')).toBeUndefined();
  });

  test('a continuous move beyond its motor is named, and each remedy lets the motor follow', () => {
    const gear = { settleS: 0, topSpeedDegPerS: 0.01 };
    const request = { ...base, moves: [turn('pan', 40, { mode: 'continuous', gear })] };
    const plan = planMoves(request);
    // Source: hand: 40° in 4800 s, 1.5 times the mean.
    expect(found(plan, 'gear-too-slow')?.text).toBe(
      'The pan would have to reach 0.0125° a second; its motor goes 0.01° a second.',
    );
    const remedies = found(plan, 'gear-too-slow')!.remedies;
    expect(remedies.map(({ change }) => change)).toEqual([
      'shorter-move',
      'longer-recording',
      'longer-interval',
    ]);
    for (const remedy of remedies) {
      expect(found(planMoves(followed(request, plan, remedy)), 'gear-too-slow'), remedy.text).toBeUndefined();
    }
  });

  // Eased, the middle runs 1.5 times as fast: 54.43° wide, 480 steps at 24 a second, 70 s take 10.4°.
  test('a pan of 11° is seen, one of 9° is not', () => {
    const kinds = (deg: number) =>
      planMoves({ ...base, moves: [turn('pan', deg)] }).findings.map(({ kind }) => kind);
    expect(kinds(11)).not.toContain('too-slow');
    expect(kinds(9)).toContain('too-slow');
  });

  test('a move that nobody would see is named, and each remedy shows it', () => {
    const request = { ...base, moves: [turn('pan', 2)] };
    const plan = planMoves(request);
    const remedies = found(plan, 'too-slow')!.remedies;
    expect(remedies.map(({ change }) => change)).toEqual(['longer-move', 'fewer-frames']);
    for (const remedy of remedies) {
      expect(planMoves(followed(request, plan, remedy)).fastest!.crossingS, remedy.text).toBeLessThanOrEqual(
        70,
      );
    }
  });

  test('steps below the motor: told where it starts and ends, warned where nothing else is left', () => {
    const gear = (smallestStepDeg: number) => ({ settleS: 1, topSpeedDegPerS: 5, smallestStepDeg });
    const some = planMoves({ ...base, moves: [turn('pan', 40, { gear: gear(0.01) })] });
    expect(found(some, 'steps-too-small')).toMatchObject({
      level: 'info',
      remedies: [],
      text: expect.stringMatching(
        /^\d+ of 480 steps of the pan, where it starts and ends, are below .*0\.01°/,
      ),
    });
    const coarse = { ...base, moves: [turn('pan', 40, { gear: gear(0.2) })] };
    const all = planMoves(coarse);
    expect(found(all, 'steps-too-small')).toMatchObject({
      level: 'caution',
      text: expect.stringMatching(/^Every step of the pan is below .*0\.2°.* stand and jump\.$/),
    });
    const longer = remedyOf(all, 'steps-too-small', 'longer-move');
    expect(found(planMoves(followed(coarse, all, longer)), 'steps-too-small')?.level).toBe('info');
  });

  test('smear grows with the shutter, is worst late, and is a caution where it shows', () => {
    const plan = planMoves({ ...base, moves: [turn('pan', 40, { mode: 'continuous', ease: 'linear' })] });
    const blur = plan.frames.map(({ blurPx }) => blurPx as number);
    for (let i = 1; i < 480; i++) expect(blur[i]).toBeGreaterThanOrEqual(blur[i - 1]! * (1 - 1e-9));
    expect(blur[480]).toBe(0); // it has arrived
    // Source: hand: 40°/4800 s for 4 s, 6000 px over 36 mm behind 35 mm; at the edge (18/35)² more, at the corner
    // also up or down by the product of the two.
    const centre = ((((40 / 4800) * 4 * Math.PI) / 180) * 35 * 6000) / 36;
    const corner = Math.hypot(1 + (18 / 35) ** 2, (18 * 12) / 35 ** 2);
    expect(blur[479]).toBeCloseTo(centre * corner, 6);
    expect(found(plan, 'blur')).toMatchObject({ level: 'info' });
    const faster = planMoves({ ...base, moves: [turn('pan', 80, { mode: 'continuous', ease: 'linear' })] });
    expect(found(faster, 'blur')).toMatchObject({ level: 'caution' });
  });
});

describe('properties', () => {
  const request = fc
    .record({
      moves: anyMoves,
      frameCount: fc.integer({ min: 20, max: 120 }),
      intervalS: fc.integer({ min: 2, max: 40 }),
      gapShare: fc.option(fc.double({ min: 0.5, max: 1, noNaN: true })),
      longest: fc.integer({ min: -13, max: 3 }),
      writeS: fc.double({ min: 0, max: 3, noNaN: true }),
      darkFrame: fc.boolean(),
    })
    .map(({ frameCount, longest, gapShare, ...rest }): MoveRequest => {
      const longestS = timeOfStep(longest, 3);
      const wide = { ...rest, frames: dusk(frameCount, longestS), clipFps: 25, optics: OPTICS };
      // Most intervals hold the longest shutter and but a share of the gap.
      return gapShare === null
        ? wide
        : { ...wide, intervalS: longestS * (rest.darkFrame ? 2 : 1) + gapShare * planMoves(wide).gap.gapS };
    });

  test('every remedy cures what it was offered for, and the worst is told first', () => {
    const tried = new Map<string, number>();
    const order = ['warning', 'caution', 'info'];
    let mixed = 0;
    fc.assert(
      fc.property(request, (r) => {
        const plan = planMoves(r);
        const levels = plan.findings.map(({ level }) => order.indexOf(level));
        expect(levels).toEqual(levels.toSorted());
        if (new Set(levels).size > 1) mixed++;
        for (const { kind, remedies } of plan.findings) {
          for (const remedy of remedies) {
            const cured = planMoves(followed(r, plan, remedy));
            // Two continuous moves may both be too fast for their motors: one at a time.
            const still = cured.findings.filter((finding) => finding.kind === kind);
            const before = plan.findings.filter((finding) => finding.kind === kind);
            expect(still.length, `${kind}: ${remedy.text}`).toBeLessThan(before.length);
            tried.set(`${kind} ${remedy.change}`, (tried.get(`${kind} ${remedy.change}`) ?? 0) + 1);
          }
        }
      }),
      { seed: 22, numRuns: 250, endOnFailure: true },
    );
    expect(mixed).toBeGreaterThan(30);
    for (const pair of [
      'no-time longer-interval',
      'no-time shorter-shutter',
      'no-time no-dark-frame',
      'no-time shorter-move',
      'no-time shorter-settle',
      'no-time shorter-write',
      'gear-too-slow shorter-move',
      'gear-too-slow longer-recording',
      'gear-too-slow longer-interval',
      'too-fast more-frames',
      'too-fast longer-recording',
      'too-fast shorter-move',
    ]) {
      expect(tried.get(pair) ?? 0, pair).toBeGreaterThan(3);
    }
  });

  test('what is to be cut from the interval is no more than it needs', () => {
    const seen = { shutterS: 0, settleS: 0, writeS: 0 };
    fc.assert(
      fc.property(request, (r) => {
        const plan = planMoves(r);
        for (const remedy of found(plan, 'no-time')?.remedies ?? []) {
          for (const key of ['shutterS', 'settleS', 'writeS'] as const) {
            const least = values(remedy)[key];
            if (least === undefined) continue;
            seen[key]++;
            const short = followed(r, plan, { ...remedy, [key]: least + 0.011 } as MoveRemedy);
            expect(found(planMoves(short), 'no-time'), remedy.text).toBeDefined();
          }
        }
      }),
      { seed: 24, endOnFailure: true },
    );
    expect(Math.min(seen.shutterS, seen.settleS, seen.writeS)).toBeGreaterThan(3);
  });

  test('shutters that fit beside the gap are never found short of time', () => {
    fc.assert(
      fc.property(request, (r) => {
        const { gap } = planMoves(r);
        const roomS = (r.intervalS - gap.gapS) / (r.darkFrame ? 2 : 1);
        if (roomS <= 0) return;
        const frames = r.frames.map(({ shutterS }) => ({ shutterS: Math.min(shutterS, roomS) }));
        const plan = planMoves({ ...r, frames });
        expect(found(plan, 'no-time')).toBeUndefined();
        expect(plan.tightest.slackS).toBeCloseTo(Math.min(...plan.frames.map(({ slackS }) => slackS)), 8);
      }),
      { seed: 23 },
    );
  });
});

test('positions stand under the keys of their axes', () => {
  const gear = { settleS: 0, topSpeedDegPerS: 5, smallestStepDeg: 0.5 };
  const plan = planMoves({
    moves: [turn('pan', -10, { gear, ease: 'linear' }), turn('tilt', 5), slide(2, { ease: 'linear' })],
    frames: dusk(11, 1),
    intervalS: 60,
    clipFps: 24,
    writeS: 0,
    darkFrame: false,
  });
  expect(plan.frames[5]).toMatchObject({ panDeg: -5, panSteps: -10, tiltDeg: 2.5, slideM: 1 });
  expect(plan.frames[10]).toMatchObject({ panDeg: -10, panSteps: -20, tiltDeg: 5, slideM: 2 });
  expect(Object.keys(plan.frames[5]!)).not.toContain('slideSteps');
  expect(plan.fastest).toBeUndefined();
  expect(plan.frames[5]!.widthsPerS).toBeUndefined();
});

test('the card says what the move is, where it starts and where it ends', () => {
  const plan = planMoves({
    moves: [
      turn('pan', -60),
      slide(1.2, { ease: { trapezoid: 0.25 }, mode: 'continuous', toward: 'forward' }),
    ],
    frames: dusk(101, 1),
    intervalS: 60,
    clipFps: 24,
    writeS: 0,
    darkFrame: false,
  });
  expect(plan.lines).toEqual([
    {
      whole: 'Pan 60° left, stopped at every frame, ease smoothstep',
      start: 'Pan: from 0°, first step 0.018°, longest 0.9° in the middle',
      end: 'Pan: stands at 60° left',
    },
    {
      whole: 'Slide 1.2 m forward, without a stop, ease trapezoid 0.25',
      start: 'Slide: from 0 m, first step 0.00032 m, longest 0.016 m in the middle',
      end: 'Slide: stands at 1.2 m forward',
    },
  ]);
});

test('cautions name every hazard where something moves, riggers where it travels, and nothing where nothing does', () => {
  const cautions = (moves: readonly Move[]) => planMoves({ ...still, moves }).cautions;
  const still = { frames: dusk(3, 1), intervalS: 60, clipFps: 24, writeS: 0, darkFrame: false };
  expect(cautions([])).toEqual([]);
  const pan = cautions([turn('pan', 9)]);
  expect(new Set(pan.map(({ topic }) => topic))).toEqual(
    new Set(['pinch', 'drop', 'overhead', 'trip', 'wind', 'law']),
  );
  expect(pan.some(({ text }) => text.includes('licensed riggers'))).toBe(false);
  expect(cautions([slide(9)]).some(({ text }) => text.includes('licensed riggers'))).toBe(true);
});

test('errors name the argument and the value', () => {
  const good = { moves: [], frames: dusk(3, 1), intervalS: 60, clipFps: 24, writeS: 0, darkFrame: false };
  expect(() => planMoves({ ...good, frames: [] })).toThrow(
    'frames.length must be positive and finite, got 0',
  );
  expect(() => planMoves({ ...good, writeS: -1 })).toThrow('writeS must be positive and finite, got -1');
  expect(() => planMoves({ ...good, frames: [{ shutterS: 0 }] })).toThrow(
    'shutterS must be positive and finite, got 0',
  );
  expect(() => planMoves({ ...good, moves: [turn('pan', 0)] })).toThrow('moves.0.by: goes-nowhere');
});
