// The plan checker passes a plan written out by hand and refuses it with any one value changed.

import { expect, test } from 'vitest';
import { HAND_OBJECTIVE } from '../../reference/hand-ramp.js';
import { checkPlan } from '../../reference/plan-checker.js';

/** The ramp of hand-ramp.ts as a plan file; 6⅓ is the exact EV of f/8, 1/1.26 s, ISO 100. */
function handPlan() {
  const third = 1 / 3;
  const bare = {
    iso: 100,
    isoExact: 100,
    aperture: '8',
    fNumber: 8,
    filters: [] as string[],
    filterStops: 0,
  };
  const filtered = {
    iso: 200,
    isoExact: 200,
    aperture: '8',
    fNumber: 8,
    filters: ['ND 0.9'],
    filterStops: 3,
  };
  const at = (s: string) => `2026-06-21T21:00:${s}+02:00`;
  const light = (ev: number) => ({ sunAltitudeDeg: 5, sceneEv100: ev, targetEv100: ev });
  const long = {
    shutter: '3.2',
    shutterS: 3.174802103936399,
    ...filtered,
    settingEv100: 6 + third,
    errorEv: 0,
  };
  return {
    format: 'evenfall-plan/1',
    shoot: {
      format: 'evenfall-shoot/1',
      title: '',
      place: { latitudeDeg: 50, longitudeDeg: 8 },
      date: '2026-06-21',
      direction: 'dusk',
      span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
      intervalS: 10,
      clipFps: 24,
      camera: {
        stepsPerStop: 3,
        shutter: { shortest: '1/250', longest: '4' },
        bulb: false,
        iso: { lowest: 50, highest: 400 },
        aperture: '8' as unknown,
        gapS: 1,
        darkFrame: false,
        frameMB: 30,
        cardGB: 0.1,
        batteryFrames: 5,
      },
      filters: [{ name: 'ND 0.9', stops: 3 }],
      stackFilters: false,
      scene: {},
      look: { nightEv: -1.5 } as unknown,
      readings: [],
      crew: 'hand',
      limits: {
        toleranceEv: 0.75,
        largestStepEv: 1,
        secondsBetweenCues: 10,
        framesLostPerFilterChange: 2,
      } as Record<string, number>,
      moves: [],
    } as Record<string, unknown> & { camera: Record<string, unknown>; limits: Record<string, number> },
    summary: {
      frameCount: 6,
      startAt: at('00'),
      endAt: at('50'),
      clipS: 0.25,
      cardNeededGB: 0.18,
      cardFits: false,
      batteryFits: false,
      sceneFromEv100: 6.5,
      sceneToEv100: 6 + third,
      rampStops: 0.5,
      // f/8, 1/250 to "4", ISO 50 to 400, three stops of filter: EV 2 to 18, 0.75 beyond.
      reserveDarkEv: 4.75,
      reserveBrightEv: 12.25,
      eveningsHeldShare: 1, // no evening is 4.75 stops darker
      worstErrorEv: 0.5,
      rmsErrorEv: 0.25, // of frames 0, 1, 2 and 5
      cueCount: 2,
      objective: HAND_OBJECTIVE as number,
    },
    events: [{ name: 'sunset', at: at('30'), sunAltitudeDeg: -0.833 }],
    frames: [
      {
        frame: 0,
        at: at('00'),
        ...light(6.5),
        shutter: '1',
        shutterS: 1,
        ...bare,
        settingEv100: 6,
        errorEv: -0.5,
      },
      {
        frame: 1,
        at: at('10'),
        ...light(6),
        shutter: '1',
        shutterS: 1,
        ...bare,
        settingEv100: 6,
        errorEv: 0,
      },
      {
        frame: 2,
        at: at('20'),
        ...light(6 + third),
        shutter: '0.8',
        shutterS: 0.7937005259840998,
        ...bare,
        settingEv100: 6 + third,
        errorEv: 0,
      },
      { frame: 3, at: at('30'), ...light(6 + third), ...long },
      { frame: 4, at: at('40'), ...light(6 + third), ...long },
      { frame: 5, at: at('50'), ...light(6 + third), ...long },
    ].map((f) => ({ ...f, affected: f.frame === 3 || f.frame === 4 })),
    cues: [
      { frame: 2, at: at('20'), sunAltitudeDeg: 5, changes: [{ control: 'shutter', from: '1', to: '0.8' }] },
      {
        frame: 3,
        at: at('30'),
        sunAltitudeDeg: 5,
        changes: [
          { control: 'shutter', from: '0.8', to: '3.2' },
          { control: 'iso', from: '100', to: '200' },
          { control: 'filter', from: 'none', to: 'ND 0.9' },
        ],
        // From 2^(-1/3) s to 2^(5/3) s.
        notes: [{ kind: 'blur-jump', stops: 2 }],
      },
    ],
    notes: [{ level: 'caution', text: 'The card is too small.' }],
  };
}
type HandPlan = ReturnType<typeof handPlan>;

test('a plan written by hand is sound', () => {
  expect(checkPlan(handPlan())).toEqual([]);
});

const BROKEN: [string, RegExp, (plan: HandPlan) => void][] = [
  ['another format', /^format is/, (p) => Object.assign(p, { format: 'evenfall-plan/2' })],
  ['a frame number', /frame 2: frame is 3/, (p) => Object.assign(p.frames[2]!, { frame: 3 })],
  [
    'a frame late',
    /frame 2: 5000 ms off/,
    (p) => Object.assign(p.frames[2]!, { at: p.frames[2]!.at.replace('20+', '25+') }),
  ],
  ['a time without offset', /no RFC 3339/, (p) => Object.assign(p.frames[2]!, { at: '2026-06-21T21:00:20' })],
  [
    'a marked time for the exact one',
    /frame 3: shutterS is 3.2/,
    (p) => Object.assign(p.frames[3]!, { shutterS: 3.2 }),
  ],
  ['a label of another time', /frame 2: shutterS/, (p) => Object.assign(p.frames[2]!, { shutter: '0.6' })],
  [
    'a label that is no mark',
    /"5.1" is no|"0.9" is no|no shutter mark/,
    (p) => Object.assign(p.frames[2]!, { shutter: 'half' }),
  ],
  ['an ISO', /frame 4: isoExact/, (p) => Object.assign(p.frames[4]!, { isoExact: 201 })],
  ['an f-number', /frame 4: fNumber/, (p) => Object.assign(p.frames[4]!, { fNumber: 8.1 })],
  [
    'an unknown filter',
    /frame 3: a filter that is not owned/,
    (p) => Object.assign(p.frames[3]!, { filters: ['ND 1.8'] }),
  ],
  [
    'two filters',
    /frame 3: 2 filters on/,
    (p) => Object.assign(p.frames[3]!, { filters: ['ND 0.9', 'ND 0.9'] }),
  ],
  ['the stops of a filter', /frame 3: filterStops/, (p) => Object.assign(p.frames[3]!, { filterStops: 2.9 })],
  ['a setting EV', /frame 1: settingEv100/, (p) => Object.assign(p.frames[1]!, { settingEv100: 6.01 })],
  ['an error', /frame 0: errorEv is 0.5/, (p) => Object.assign(p.frames[0]!, { errorEv: 0.5 })],
  [
    'a target off the look',
    /frame 1: targetEv100/,
    (p) => Object.assign(p.frames[1]!, { sunAltitudeDeg: -6 }),
  ],
  [
    'a look as a table',
    /frame 1: targetEv100/,
    (p) =>
      Object.assign(p.shoot, {
        look: [
          { sunAltitudeDeg: 0, offsetEv: 0 },
          { sunAltitudeDeg: 10, offsetEv: 1 },
        ],
      }),
  ],
  ['an affected frame', /frame 4: affected/, (p) => Object.assign(p.frames[4]!, { affected: false })],
  ['a spoilt judged frame', /frame 5: affected/, (p) => Object.assign(p.frames[5]!, { affected: true })],
  ['no cue', /cues at frames 3,/, (p) => p.cues.shift()],
  ['a cue at another frame', /cues at frames 1,3/, (p) => Object.assign(p.cues[0]!, { frame: 1 })],
  [
    'a cue at another time',
    /cue at frame 2: not at/,
    (p) => Object.assign(p.cues[0]!, { at: p.cues[1]!.at }),
  ],
  [
    'a cue to another mark',
    /cue at frame 3: says/,
    (p) => Object.assign(p.cues[1]!.changes[0]!, { to: '4' }),
  ],
  ['a cue without its filter', /cue at frame 3: says/, (p) => p.cues[1]!.changes.pop()],
  ['a blur jump by half', /cue at frame 3: notes/, (p) => Object.assign(p.cues[1]!.notes![0]!, { stops: 1 })],
  ['a blur jump untold', /cue at frame 3: notes/, (p) => Object.assign(p.cues[1]!, { notes: undefined })],
  ['a note', /level is "loud"/, (p) => Object.assign(p.notes[0]!, { level: 'loud' })],
  [
    'a shutter beyond the camera',
    /frame 3: shutter is beyond/,
    (p) => Object.assign(p.shoot.camera, { shutter: { shortest: '1/250', longest: '2.5' } }),
  ],
  [
    'an ISO beyond the camera',
    /frame 3: iso is beyond/,
    (p) => Object.assign(p.shoot.camera, { iso: { lowest: 50, highest: 160 } }),
  ],
  [
    'an aperture beyond the camera',
    /frame 0: aperture is beyond/,
    (p) => Object.assign(p.shoot.camera, { aperture: { widest: '4', narrowest: '7.1' } }),
  ],
  ['a gap', /frame 3: busy/, (p) => Object.assign(p.shoot.camera, { gapS: 7 })],
  ['a dark frame', /frame 3: busy/, (p) => Object.assign(p.shoot.camera, { darkFrame: true, gapS: 4 })],
  [
    'the start filter',
    /frame 0: not the start filter/,
    (p) => Object.assign(p.shoot, { startFilter: 'ND 0.9' }),
  ],
  ['tolerance', /frame 0: error/, (p) => Object.assign(p.shoot.limits, { toleranceEv: 0.4 })],
  [
    'spacing',
    /frame 3: only 1 frames after/,
    (p) => Object.assign(p.shoot.limits, { secondsBetweenCues: 11 }),
  ],
  [
    'a limit on filter changes',
    /^1 filter changes/,
    (p) => Object.assign(p.shoot.limits, { maxFilterChanges: 0 }),
  ],
  [
    'frames lost',
    /a filter change that is never judged/,
    (p) => Object.assign(p.shoot.limits, { framesLostPerFilterChange: 3 }),
  ],
  ['the crew', /summary: objective/, (p) => Object.assign(p.shoot, { crew: 'rig' })],
  ['the direction', /summary: objective/, (p) => Object.assign(p.shoot, { direction: 'dawn' })],
  ['bulb', /frame 0: bulb gives/, (p) => Object.assign(p.shoot.camera, { bulb: true })],
];
for (const key of Object.keys(handPlan().summary)) {
  const wrong: Record<string, unknown> = {
    cardFits: true,
    batteryFits: true,
    startAt: '2026-06-21T21:00:01Z',
    endAt: '2026-06-21T21:00:01Z',
  };
  BROKEN.push([
    `the summary's ${key}`,
    new RegExp(`^summary: ${key}`),
    (p) => Object.assign(p.summary, { [key]: wrong[key] ?? 7 }),
  ]);
}
for (const [what, message, breakIt] of BROKEN) {
  test(`the plan checker refuses: ${what}`, () => {
    const plan = handPlan();
    breakIt(plan);
    expect(checkPlan(plan)).toContainEqual(expect.stringMatching(message));
  });
}

// Rules 3 and 4 need whole frames changed; the values that no longer fit are reported beside the rule.
const MOVED: [string, RegExp, (plan: HandPlan) => void][] = [
  [
    'two controls at once',
    /frame 1: two controls/,
    (p) => Object.assign(p.frames[1]!, { iso: 125, shutter: '0.8' }),
  ],
  [
    'a step too large',
    /frame 1: a step of 4, 3 allowed/,
    (p) => Object.assign(p.frames[1]!, { shutter: '0.4' }),
  ],
  [
    'a net change too large',
    /frame 3: .* stops net/,
    (p) =>
      p.frames.slice(3).forEach((f) => {
        Object.assign(f, { shutter: '0.8' });
      }),
  ],
  [
    'aperture with the filter',
    /frame 3: aperture moves/,
    (p) =>
      p.frames.slice(3).forEach((f) => {
        Object.assign(f, { aperture: '9' });
      }),
  ],
  [
    'a cue on an affected frame',
    /frame 4: a cue before/,
    (p) =>
      p.frames.slice(4).forEach((f) => {
        Object.assign(f, { shutter: '2.5' });
      }),
  ],
];
for (const [what, message, breakIt] of MOVED) {
  test(`the plan checker refuses: ${what}`, () => {
    const plan = handPlan();
    breakIt(plan);
    expect(checkPlan(plan)).toContainEqual(expect.stringMatching(message));
  });
}

test('one filter cannot be on the lens twice, even where two may be', () => {
  const plan = handPlan();
  Object.assign(plan.shoot, { stackFilters: true });
  expect(checkPlan(plan)).toEqual([]);
  Object.assign(plan.frames[3]!, { filters: ['ND 0.9', 'ND 0.9'] });
  expect(checkPlan(plan)).toContain('frame 3: one filter twice');
});

test('a filter may be told by its density or its factor', () => {
  // 0.90309 is 3 log10 2.
  for (const filter of [{ density: 0.9030899869919435 }, { factor: 8 }]) {
    const plan = handPlan();
    Object.assign(plan.shoot, { filters: [{ name: 'ND 0.9', ...filter }] });
    expect(checkPlan(plan)).toEqual([]);
  }
});

test('the look raises the target by smoothstep between the horizon and -12°', () => {
  const plan = handPlan();
  // A quarter of the way: 3 / 16 - 2 / 64 = 0.15625 of -1.5.
  Object.assign(plan.frames[1]!, { sunAltitudeDeg: -3, sceneEv100: 6 - 0.234375 });
  expect(checkPlan(plan)).toEqual([]);
});

test('under bulb the shutter makes the error zero, is in no cue and no price, and is told at each third of a stop', () => {
  const plan = handPlan();
  plan.shoot.camera.bulb = true;
  Object.assign(plan.frames[0]!, { sceneEv100: 6, targetEv100: 6, errorEv: 0, shutter: '' });
  plan.cues.shift();
  plan.cues[0]!.changes.shift();
  Object.assign(plan.summary, {
    sceneFromEv100: 6,
    rampStops: 1 / 3,
    reserveBrightEv: 18.75 - (6 + 1 / 3),
    worstErrorEv: 0,
    rmsErrorEv: 0,
    cueCount: 1,
  });
  // As hand-ramp.ts, frame 0 as frame 1, less 7 for the shutter's cue and 1 for its part in the other.
  plan.summary.objective = 2 * 0.193914 + 0.210504 + (20 + 1.5 + 6) + 2 + 2.284294;
  // A third of a stop at frame 2; frame 3 is a cue, and nothing moves after it.
  const { at, sunAltitudeDeg, shutter } = plan.frames[2]!;
  const row = { frame: 2, at, sunAltitudeDeg, changes: [{ control: 'shutter', from: '', to: shutter }] };
  Object.assign(plan, { shutterTimes: [row] });
  expect(checkPlan(plan)).toEqual([]);
  Object.assign(plan, { shutterTimes: [] });
  expect(checkPlan(plan)).toEqual([expect.stringMatching(/^shutter times say , frames say 2 /)]);
});

test('an answer without a ramp is sound with a reason, a frame and its remedies', () => {
  const infeasible = {
    reason: 'too-dark',
    frame: 3,
    at: '2026-06-21T21:00:30+02:00',
    shortfallEv: 1.3,
    remedies: [],
  };
  const answer = { format: 'evenfall-plan/1', infeasible };
  expect(checkPlan(answer)).toEqual([]);
  expect(checkPlan({ ...answer, infeasible: { ...infeasible, reason: 'tired' } })).toHaveLength(1);
  expect(checkPlan({ ...answer, infeasible: { ...infeasible, frame: -1 } })).toHaveLength(1);
  expect(checkPlan({ ...answer, infeasible: { ...infeasible, shortfallEv: -1 } })).toHaveLength(1);
  expect(checkPlan({ ...answer, infeasible: { reason: 'no-span', remedies: [] } })).toEqual([]);
});

test('what is no plan is refused, not thrown at', () => {
  expect(checkPlan(null)).toEqual(['plan: no object']);
  expect(checkPlan({ format: 'evenfall-plan/1' })).toEqual(['plan.shoot: no object']);
});
