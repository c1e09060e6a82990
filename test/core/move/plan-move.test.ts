// Moves through the whole product: a shoot file in, a plan out, held by the plain checker, which computes positions
// and times by its own means.

import {
  type PlanMade,
  planShoot,
  readPlan,
  type Shoot,
  shootGap,
  tightestOf,
  writeFramesCsv,
  writePlan,
} from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { problemFrom } from '../../../packages/core/src/plan/targets.js';
import { kitOf } from '../../../packages/core/src/shoot/kit.js';
import { shutterFits } from '../../../packages/core/src/shoot/time-left.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { seeded } from '../../reference/random.js';
import { shootFrom } from '../shoots.js';

const OPTICS = { lens: { focalMm: 35 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };
const CAMERA = {
  shutter: { shortest: '1/4000', longest: '15' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '4',
};
const camera = <More extends object>(more: More) => ({ camera: { ...CAMERA, ...OPTICS, ...more } });
const pan = (more: object = {}) => ({
  axis: 'pan',
  by: { deg: 40 },
  gear: { topSpeedDegPerS: 2, settleS: 1 },
  ...more,
});

function made(shoot: Shoot): PlanMade {
  const plan = planShoot(shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

const faultsOf = (shoot: Shoot) => checkPlan(JSON.parse(writePlan(planShoot(shoot))));

describe('a plan with moves', () => {
  test('40 random shoots with any moves: the plain checker finds nothing wrong', () => {
    const { chance, between, whole, pick } = seeded(20_260_914);
    const ease = () => pick<unknown>(['linear', 'smoothstep', 'quintic', { trapezoid: between(0, 0.5) }]);
    const mode = () => pick(['stopped', 'continuous']);
    let moved = 0;
    for (let i = 0; i < 40; i++) {
      const turnGear = () => ({
        settleS: between(0, 2),
        topSpeedDegPerS: between(0.5, 10),
        ...(chance(0.5) ? { accelerationDegPerS2: between(0.5, 10) } : {}),
        ...(chance(0.5) ? { smallestStepDeg: 0.01 } : {}),
      });
      const all = [
        {
          axis: 'pan',
          by: pick<unknown>([
            { deg: between(-90, 90) },
            { fromBearingDeg: between(0, 359), toBearingDeg: between(0, 359) },
            {
              fromPoint: { fromLeft: between(0, 0.4), fromBottom: between(0, 1) },
              toPoint: { fromLeft: between(0.6, 1) },
              cameraTiltDeg: between(-30, 30),
            },
          ]),
          mode: mode(),
          ease: ease(),
          gear: turnGear(),
        },
        {
          axis: 'tilt',
          by: pick<unknown>([
            { sizeM: between(1, 50), distanceM: between(5, 500) },
            { fromPoint: { fromBottom: between(0, 0.4) }, toPoint: { fromBottom: 1 }, focalMm: 24 },
          ]),
          mode: mode(),
          ease: ease(),
          gear: turnGear(),
        },
        {
          axis: 'slide',
          by: pick<unknown>([
            { m: between(0.2, 5) },
            { trackM: between(1, 20), carriageM: 0.3, marginM: 0.1 },
          ]),
          mode: mode(),
          ease: ease(),
          gear: pick<unknown>([
            { settleS: between(0, 2), topSpeedMPerS: between(0.01, 0.2), smallestStepM: 0.0001 },
            { settleS: 0.5, moveS: between(0.2, 2) },
          ]),
          nearestM: between(2, 40),
        },
      ];
      const keys = {
        intervalS: pick([8, 12.5, 20]),
        clipFps: pick([23.976, 24, 25, 29.97]),
        ...camera({ darkFrame: chance(0.2), bulb: chance(0.15), batteryFrames: 700, coldFactor: 0.7 }),
        crew: pick(['hand', 'rig']),
        moves: all.filter(() => chance(0.6)).slice(0, whole(1, 3)),
      };
      const shoot = shootFrom(keys.camera.bulb ? { ...keys, crew: 'rig' } : keys);
      expect(faultsOf(shoot)).toEqual([]);
      if (planShoot(shoot).kind !== 'infeasible' && shoot.moves.length > 0) moved++;
    }
    expect(moved).toBeGreaterThan(20);
  });

  test('keeps the longest step and its rest free in every interval', () => {
    const plan = made(shootFrom({ intervalS: 10, ...camera({}), moves: [pan()] }));
    // Smoothstep: at most 1.5 times the mean step, at 2 degrees a second.
    const step = (1.5 * 40) / (plan.frames.length - 1);
    expect(plan.move?.gap.moveS).toBeCloseTo(step / 2, 4);
    expect(plan.move?.gap.gapS).toBeCloseTo(1 + step / 2 + 1, 4);
    const longest = plan.frames.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
    expect(longest).toBeLessThanOrEqual(10 - plan.move!.gap.gapS);
    // "8" is 8 s: beside a gap of 1 s it would have fitted.
    expect(made(shootFrom({ intervalS: 10, ...camera({}) })).frames.at(-1)?.shutter).toBe('8');
    expect(plan.frames.at(-1)?.shutter).not.toBe('8');
  });

  test('its tightest frame is the one with the least slack, and its parts make the interval', () => {
    const plan = made(shootFrom({ intervalS: 10, ...camera({}), moves: [pan()] }));
    const tightest = tightestOf(plan);
    expect(tightest.slackS).toBe(Math.min(...plan.frames.map(({ slackS }) => slackS!)));
    expect(tightest).toMatchObject(plan.move!.tightest);
    const { shutterS, darkS, writeS, moveS, settleS, slackS } = tightest;
    expect(shutterS + darkS + writeS + moveS + settleS + slackS).toBeCloseTo(10, 9);
  });

  test('without moves says nothing of moves, and the tightest frame is that of the longest shutter', () => {
    const plan = made(shootFrom({ intervalS: 10, ...camera({}) }));
    expect(plan).not.toHaveProperty('move');
    expect(plan.frames[0]).not.toHaveProperty('slackS');
    const longest = plan.frames.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
    const tightest = tightestOf(plan);
    expect(tightest.slackS).toBeCloseTo(10 - 1 - longest, 9);
    expect(plan.frames[tightest.frame]?.shutterS).toBe(longest);
  });

  test('a pan too fast to watch is cured by any one of its remedies', () => {
    const shoot = shootFrom({ intervalS: 20, ...camera({}), moves: [pan({ by: { deg: 90 } })] });
    const [finding] = made(shoot).move!.findings;
    expect(finding).toMatchObject({ kind: 'too-fast', level: 'caution' });
    expect(finding!.remedies.map(({ change }) => change)).toEqual([
      'more-frames',
      'longer-recording',
      'shorter-move',
    ]);
    const [more, , shorter] = finding!.remedies;
    const kinds = (keys: object) =>
      made(shootFrom({ intervalS: 20, ...camera({}), moves: shoot.moves, ...keys })).move!.findings.map(
        ({ kind }) => kind,
      );
    expect(kinds(more!.apply)).not.toContain('too-fast');
    expect(kinds(shorter!.apply)).not.toContain('too-fast');
    const note = made(shoot).notes.find(({ text }) => text.startsWith(finding!.text));
    for (const { text } of finding!.remedies) expect(note?.text).toContain(text);
  });

  test('comes back whole from its file, and so does an answer with moves to apply', () => {
    const slide = { axis: 'slide', by: { m: 3 }, gear: { moveS: 1 }, nearestM: 9, toward: 'forward' };
    const plan = made(shootFrom({ intervalS: 20, ...camera({ coldFactor: 0.8 }), moves: [pan(), slide] }));
    expect(readPlan(JSON.parse(writePlan(plan)))).toEqual({ kind: 'ok', plan });
    const moves = [pan({ by: { deg: 300 }, gear: { settleS: 5, topSpeedDegPerS: 1 } })];
    const iso = { lowest: 100, highest: 12800 };
    const none = planShoot(shootFrom({ intervalS: 6, ...camera({ iso }), moves }));
    expect(none.kind === 'infeasible' && none.infeasible.remedies.some(({ apply }) => apply.moves)).toBe(
      true,
    );
    expect(readPlan(JSON.parse(writePlan(none)))).toEqual({ kind: 'ok', plan: none });
  });

  test('the frames as a table have columns for the axes that move alone', () => {
    const csv = writeFramesCsv(made(shootFrom({ intervalS: 30, ...camera({}), moves: [pan()] })));
    const [head, first] = csv.split('\r\n').map((row) => row.split(','));
    expect(head!.slice(-8)).toEqual([
      'panDeg',
      'darkS',
      'writeS',
      'moveS',
      'settleS',
      'slackS',
      'widthsPerS',
      'blurPx',
    ]);
    expect(first).toHaveLength(head!.length);
    expect(first![head!.indexOf('panDeg')]).toBe('0');
  });

  test('a finding, its remedies and the cautions for people are among the notes; without moves none is', () => {
    const slide = { axis: 'slide', by: { m: 30 }, gear: { topSpeedMPerS: 0.05, settleS: 0.5 } };
    const texts = (moves: unknown[]) =>
      made(shootFrom({ intervalS: 20, ...camera({}), moves }))
        .notes.map(({ text }) => text)
        .join('\n');
    for (const hazard of ['fingers', 'tether', 'over people', 'dark', 'Wind', 'Local rules', 'licensed']) {
      expect(texts([slide]), hazard).toContain(hazard);
    }
    expect(texts([pan()])).toContain('fingers');
    expect(texts([pan()])).not.toContain('licensed riggers');
    expect(texts([])).not.toContain('fingers');
  });
});

describe('where the move leaves the shutter too little', () => {
  const slow = {
    axis: 'slide',
    by: { m: 30 },
    ease: { trapezoid: 0.2 },
    gear: { topSpeedMPerS: 0.05, settleS: 3 },
  };
  const dark = shootFrom({
    intervalS: 8,
    ...camera({
      iso: { lowest: 100, highest: 2000 },
      shutter: { shortest: '1/4000', longest: '6' },
      gapS: 0.5,
    }),
    span: { fromSunAltitudeDeg: 2, toSunAltitudeDeg: -14 },
    scene: { facing: 'side', night: 'town' },
    moves: [slow],
  });
  const none = shootFrom({
    intervalS: 3,
    ...camera({ iso: { lowest: 100, highest: 12800 }, darkFrame: true }),
    moves: [slow],
  });

  test.each([
    ['at night, the answer is too dark', dark, 'too-dark'],
    ['in every interval, the answer is that there is no time', none, 'no-time'],
  ])('%s, and every remedy has a plan that the checker finds sound', (_name, shoot, reason) => {
    const plan = planShoot(shoot);
    if (plan.kind !== 'infeasible') throw new Error('a plan was found');
    const { infeasible } = plan;
    expect(infeasible.reason).toBe(reason);
    expect(infeasible.text).toContain('the longest step of the move takes');
    const changes = infeasible.remedies.map(({ change }) => change);
    expect(changes).toEqual(
      expect.arrayContaining(
        reason === 'no-time' ? ['longer-interval'] : ['longer-shutter', 'shorter-settle'],
      ),
    );
    for (const { apply } of infeasible.remedies) {
      const cured = { ...shoot, ...apply };
      made(cured);
      expect(faultsOf(cured)).toEqual([]);
    }
    expect(checkPlan(JSON.parse(writePlan(plan)))).toEqual([]);
  });

  test('a remedy of less does not cure', () => {
    const plan = planShoot(dark);
    if (plan.kind !== 'infeasible') throw new Error('a plan was found');
    const settle = plan.infeasible.remedies.find(({ change }) => change === 'shorter-settle')!.apply.moves!;
    const longer = settle.map((move) =>
      move.axis === 'slide' ? { ...move, gear: { ...move.gear, settleS: move.gear.settleS + 0.1 } } : move,
    );
    expect(planShoot({ ...dark, moves: longer }).kind === 'infeasible').toBe(true);
  });

  test('nor does an interval a second shorter than the one offered', () => {
    const plan = planShoot(none);
    if (plan.kind !== 'infeasible') throw new Error('a plan was found');
    const interval = plan.infeasible.remedies.find(({ change }) => change === 'longer-interval')!;
    const intervalS = interval.apply.intervalS!;
    expect(interval.text).toBe(`Raise the interval from 3 to ${intervalS} s.`);
    expect(planShoot({ ...none, intervalS: intervalS - 1 }).kind === 'infeasible').toBe(true);
  });

  test('a dark frame that takes the time may be turned off', () => {
    const shoot = shootFrom({
      intervalS: 8,
      ...camera({ iso: { lowest: 100, highest: 2000 }, darkFrame: true }),
      scene: { facing: 'side', night: 'town' },
      moves: [pan()],
    });
    const plan = planShoot(shoot);
    if (plan.kind !== 'infeasible') throw new Error('a plan was found');
    expect(plan.infeasible.remedies.map(({ change }) => change)).toContain('no-dark-frame');
    made({ ...shoot, camera: { ...shoot.camera, darkFrame: false } });
  });

  test('the gap of fewer frames is longer, as their steps are', () => {
    expect(shootGap(dark, 100).gapS).toBeGreaterThan(shootGap(dark, 200).gapS);
  });
});

test('followed live on an evening far darker than forecast, the shutter still leaves the move its time', () => {
  const shoot = shootFrom({ intervalS: 10, ...camera({}), moves: [pan()] });
  const plan = made(shoot);
  const { gapS } = shootGap(shoot, plan.frames.length);
  let state = startFollow(plan);
  let longest = 0;
  for (const { frame, at, sceneEv100 } of plan.frames) {
    const step = followFrame(state, { frame, reading: { atMs: Date.parse(at), ev100: sceneEv100 - 2 } });
    state = step.state;
    longest = Math.max(longest, step.setting.shutterS);
  }
  expect(longest).toBeGreaterThan(5);
  expect(longest).toBeLessThanOrEqual(10 - gapS);
});

describe('stars', () => {
  const night = { fromSunAltitudeDeg: -6, toSunAltitudeDeg: -13 };
  const starNotes = (keys: object) =>
    made(shootFrom({ intervalS: 20, span: night, ...keys })).notes.filter(({ text }) =>
      text.startsWith('Stars'),
    );

  test('have their longest shutters told where night comes into the span and the lens is known', () => {
    const [note] = starNotes(camera({ lens: { focalMm: 24 } }));
    // 500 / 24, on a sensor of 36 × 24 mm: docs/sources.md#star-rules.
    expect(note?.text).toContain('20.8 s by the 500 rule');
    // (35 · 4 + 30 · 6) / 24, the pitch of 6000 pixels on 36 mm.
    expect(note?.text).toContain('13.3 s by the simplified NPF rule');
    expect(note?.level).toBe('info');
  });

  test('are those that trail fastest in all frames of a pan', () => {
    // At 43.5° north the celestial equator stands 46.5° high in the south and meets the horizon due west; behind
    // 24 mm the frame takes in 36.9° to either side. From north-west it is out of the picture; a pan south finds it.
    const lens = { focalMm: 24 };
    const scene = { facing: { azimuthDeg: 330 } };
    const declinations = (moves: unknown[]) =>
      starNotes({ ...camera({ lens }), scene, moves }).map(
        ({ text }) => /declination (-?\d+)°/.exec(text)?.[1],
      );
    expect(Number(declinations([])[0])).toBeGreaterThan(10);
    expect(declinations([pan({ by: { deg: -90 } })])).toEqual(['0']);
  });

  test('say how far a star trails, in pixels of two digits', () => {
    const sensor = { widthMm: 36, heightMm: 24, widthPx: 6000 };
    const [note] = starNotes(camera({ lens: { focalMm: 24 }, sensor }));
    const [, seconds, pixels] =
      /opens for ([\d.]+) s at most, a trail of ([\d.]+) pixels/.exec(note!.text) ?? [];
    // Near the equator a star goes 15.041 arc seconds a second; a pixel of 6 µm behind 24 mm is 51.6 of them.
    expect(Number(pixels)).toBeCloseTo((15.041 * Number(seconds)) / 51.57, 1);
    expect(pixels).toMatch(/^(\d\d|\d\.\d|0\.\d\d?)$/);
  });

  // Due west, where the equator meets the horizon; f/4 and 6 µm behind 24 mm, and 15.0411" a second there:
  // (35 · 4 + 30 · 6) / 24 = 13.33, (16.9 · 4 + 0.1 · 24 + 13.7 · 6) / 24 = 6.34, and 7.2921e-5 · 24000 / 6 = 0.2917 px/s.
  const west = { facing: { azimuthDeg: 270 }, viewAltitudeDeg: 10 };
  const lens = { focalMm: 24 };
  const longest = (keys: object) =>
    made(shootFrom({ intervalS: 20, span: night, ...keys }))
      .frames.filter(({ sunAltitudeDeg }) => sunAltitudeDeg < -10)
      .reduce((most, { shutterS }) => Math.max(most, shutterS), 0);

  test('are told by every rule, with what the plan does, to three figures', () => {
    const keys = { ...camera({ lens, iso: { lowest: 100, highest: 1600 } }), scene: west };
    expect(longest(keys)).toBe(16);
    expect(starNotes(keys)).toEqual([
      {
        level: 'info',
        kind: 'stars',
        // By the published rules, for the pixels of this sensor: as the text has them.
        rule500S: expect.closeTo(20.83, 2),
        npfSimpleS: expect.closeTo(13.3, 1),
        npfFullS: expect.closeTo(6.34, 2),
        declinationDeg: expect.closeTo(0, 0),
        longestS: 16,
        trailPx: expect.closeTo(4.7, 1),
        text: 'Stars stay points up to 20.8 s by the 500 rule, 13.3 s by the simplified NPF rule, 6.34 s by the full one at declination 0°. At night this plan opens for 16 s at most, a trail of 4.7 pixels.',
      },
    ]);
  });

  test('are told by the 500 rule alone where the pixels are not counted', () => {
    const keys = { ...camera({ lens, sensor: { widthMm: 36, heightMm: 24 } }), scene: west };
    const [note] = starNotes(keys);
    expect(note!.text).toMatch(
      /^Stars stay points up to 20\.8 s by the 500 rule\. At night this plan opens for [\d.]+ s at most\.$/,
    );
  });

  test('are asked for by the widest opening of the night', () => {
    // Down to f/2.83 the full rule gives (16.9 · 2.83 + 0.1 · 24 + 82.2) / 24 = 5.52 s.
    const open = camera({
      lens,
      aperture: { widest: '2.8', narrowest: '4' },
      iso: { lowest: 100, highest: 500 },
    });
    expect(starNotes({ ...open, scene: west })[0]!.text).toContain('5.52 s by the full one');
  });

  test('are a caution only where every rule is broken', () => {
    const at = (focalMm: number) =>
      starNotes({ ...camera({ lens: { focalMm }, iso: { lowest: 100, highest: 1600 } }), scene: west })[0]!;
    // 16 s: by the 500 rule up to 31.2 mm.
    expect(at(31)).toMatchObject({ level: 'info', text: expect.stringContaining('16.1 s by the 500 rule') });
    expect(at(32)).toMatchObject({
      level: 'caution',
      text: expect.stringContaining('15.6 s by the 500 rule'),
    });
  });

  test('are spoken of from a sun of -10° on', () => {
    const to = (toSunAltitudeDeg: number) =>
      starNotes({ ...camera({ lens }), scene: west, span: { fromSunAltitudeDeg: -6, toSunAltitudeDeg } });
    expect(to(-9.9)).toEqual([]);
    expect(to(-10.2)).toHaveLength(1);
  });

  test('are a caution where the plan opens longer than any rule allows', () => {
    const [note] = starNotes(camera({ lens: { focalMm: 200 } }));
    expect(note).toMatchObject({ level: 'caution' });
  });

  test('are not spoken of by day, nor without a lens', () => {
    expect(starNotes(camera({ lens: { focalMm: 24 } }))).toHaveLength(1);
    expect(starNotes({ ...camera({}), span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -6 } })).toEqual([]);
    expect(starNotes({ camera: CAMERA })).toEqual([]);
  });
});

test('a shutter that just fits beside a gap has room, with and without its dark frame', () => {
  const room = (intervalS: number, darkFrame: boolean) => {
    const shutter = { shortest: '1', longest: '1' };
    const shoot = shootFrom({ intervalS: 20, ...camera({ shutter, darkFrame, gapS: 2 }) });
    const problem = problemFrom(shoot, kitOf(shoot), [0]);
    return shutterFits({ ...problem, intervalS });
  };
  expect([room(3, false), room(2.99, false), room(4, true), room(3.99, true)]).toEqual([
    true,
    false,
    true,
    false,
  ]);
});

describe('card and battery', () => {
  const HOUR = { startAt: '2026-09-18T19:00:00+02:00', endAt: '2026-09-18T20:00:00+02:00' };
  const notes = (more: object) =>
    made(shootFrom({ intervalS: 10, span: HOUR, camera: { ...CAMERA, ...more } })).notes;

  test('a card that is too small says when it is full and which interval would fit it', () => {
    // 361 frames; 3 GB hold 100 of 30 MB, full with the start of frame 101, 1000 s in. 3600 s / 99 steps = 36.37 s.
    const [note] = notes({ frameMB: 30, cardGB: 3 });
    expect(note).toEqual({
      level: 'warning',
      kind: 'card-full',
      holds: 100,
      frameCount: 361,
      neededGB: expect.closeTo(10.83, 9),
      at: '2026-09-18T19:16:40+02:00',
      fitIntervalS: 36.37,
      text: 'The card holds 100 of the 361 frames; bring 10.8 GB or more. It is full at 19:16. An interval of 36.37 s or more would fit it.',
    });
  });

  test('a charge that lasts in the warm does not in the cold', () => {
    expect(notes({ batteryFrames: 420 }).some(({ text }) => text.includes('charge'))).toBe(false);
    const [note] = notes({ batteryFrames: 420, coldFactor: 0.5 });
    // 210 frames, spent 2100 s in.
    expect(note?.level).toBe('warning');
    expect(note?.text).toMatch(
      /^One charge gives 210 of the 361 frames in the cold; .* It is spent at 19:35\.$/,
    );
  });

  test('the summary has the clock time at which card or charge give out, and none where they last', () => {
    // By hand: frame 101 of one every 10 s starts 1000 s in, 19:16:40; frame 211 at 2100 s, 19:35:00.
    const summary = (more: object) =>
      made(shootFrom({ intervalS: 10, span: HOUR, camera: { ...CAMERA, ...more } })).summary;
    const short = summary({ frameMB: 30, cardGB: 3, batteryFrames: 420, coldFactor: 0.5 });
    expect(short.cardFullAt).toBe('2026-09-18T19:16:40+02:00');
    expect(short.batteryOutAt).toBe('2026-09-18T19:35:00+02:00');
    // 361 frames of 30 MB are 10.83 GB.
    const enough = summary({ frameMB: 30, cardGB: 10.83, batteryFrames: 361 });
    expect(enough).not.toHaveProperty('cardFullAt');
    expect(enough).not.toHaveProperty('batteryOutAt');
  });

  test('nearly all of a card or a charge is a caution', () => {
    const told = notes({ frameMB: 30, cardGB: 11.4, batteryFrames: 380 });
    expect(told.filter(({ text }) => text.startsWith('The frames take 95 %'))).toHaveLength(2);
    expect(told.every(({ level }) => level !== 'warning')).toBe(true);
  });
});
