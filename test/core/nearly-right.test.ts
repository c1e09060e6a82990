// Exported functions with nearly right arguments: one value of a right call changed, as a slip of a person or a program would.
// Each answers, or throws a RangeError that says something of it; never a TypeError or anything else from inside.

import * as core from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const RUNS = 500;

const FILE = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 50.0832, longitudeDeg: -5.3182, timeZone: 'Europe/London' },
  date: '2026-10-14',
  span: { fromSunAltitudeDeg: 2, toSunAltitudeDeg: -8 },
  intervalS: 120,
  camera: {
    shutter: { shortest: '1/4000', longest: '8' },
    iso: { lowest: 100, highest: 6400 },
    aperture: { widest: '2.8', narrowest: '4' },
    ...{ frameMB: 30, cardGB: 16, batteryFrames: 300, lens: { focalMm: 24 } },
    ...{ sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 }, bracket: { frames: 3, stepEv: 1 } },
  },
  filters: [{ name: 'ND 3', stops: 3 }],
  readings: [{ at: '2026-10-14T18:30:00+01:00', ev100: 9 }],
  weights: { shutterCue: 2 },
} satisfies core.ShootFile;

const read = core.readShoot(FILE);
if (read.kind === 'wrong') throw new Error(JSON.stringify(read.errors));
const { shoot } = read;
const plan = core.planShoot(shoot);
if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
const span = core.shootSpan(shoot);
if (span.kind !== 'ok') throw new Error(span.why);
const all = core.forecastLight(shoot, span.times);
const { kit, problem } = core.rampProblemOf(shoot, all);
const forecast = { sceneEv100: [...all.sceneEv100].slice(0, 3), sky: all.sky.slice(0, 3) };
const ramp = core.solveRamp(problem);
if (ramp.kind !== 'ok') throw new Error(ramp.kind);
const zone = core.zoneOf(FILE.place);
const state = core.startFollow(plan);
const FROM_MS = Date.UTC(2026, 9, 14, 12);
const taken = plan.frames.map(({ at, shutterS, iso, fNumber }, i) => ({
  file: `${i}.jpg`,
  at,
  shutterS,
  iso,
  fNumber,
}));

const withCamera = (camera: Partial<core.Shoot['camera']>): core.Shoot => ({
  ...shoot,
  camera: { ...shoot.camera, ...camera },
});

type Calls = readonly (readonly [(...given: never[]) => unknown, readonly unknown[]])[];
const CALLS: Calls = [
  [core.readShoot, [FILE]],
  [core.planShoot, [shoot, { remedies: false }]],
  [core.lightTable, [shoot]],
  [core.planExposures, [shoot]],
  [core.planEvenings, [shoot, { fromDate: '2026-10-20', days: 1 }]],
  [core.settingOf, [kit, ramp.frames[3]]],
  [core.cuesOf, [plan.frames.slice(0, 20), true]],
  [core.planTimes, [plan]],
  [core.frameAt, [plan, Date.parse(plan.frames[3]!.at)]],
  [core.sunAndMoon, [FROM_MS, FILE.place]],
  [core.shootSpan, [shoot]],
  [core.shootOnDate, [shoot, '2026-10-20']],
  [core.forecastLight, [shoot, [...span.times.slice(0, 3)]]],
  [core.rampProblemOf, [shoot, forecast]],
  [core.targetsOf, [shoot, forecast]],
  [core.shootGap, [shoot, 10]],
  [core.exposingS, [2, { darkFrame: true, bracket: FILE.camera.bracket }]],
  [core.moveCautions, [[{ axis: 'pan' }]]],
  [core.clocksNear, [FILE.place, '2026-10-25', () => 'UTC']],
  [core.sceneOf, [shoot.scene, 260]],
  [core.steepestMinute, [plan.frames.slice(0, 3), 20]],
  [core.frameOfTags, ['a.jpg', { DateTimeOriginal: '2026:10:14 18:07:31', ExposureTime: 0.008, ISO: 100 }]],
  [core.solveRamp, [{ ...problem, targetEv100: Array.from(problem.targetEv100) }]],
  [core.rampWeights, ['hand']],
  [core.startFollow, [plan, { aheadS: 600 }]],
  [core.followFrame, [state, { frame: 3, reading: { atMs: Date.parse(plan.frames[3]!.at), ev100: 10 } }]],
  [core.saveFollow, [state]],
  [core.resumeFollow, [plan, core.saveFollow(state)]],
  [core.reviewFrames, [plan, taken, { mostEv: 2 }]],
  [core.readingOfFrame, [{ mean: 0.2 }, { atMs: FROM_MS, timeS: 1 / 60, fNumber: 4, iso: 100 }]],
  [core.dialStep, ['shutter', '1/60', 3]],
  [core.dialLabel, ['iso', 6, 3]],
  [core.dialLabels, ['aperture', 2]],
  [core.valueOfStep, ['shutter', 6, 3]],
  [core.ev100Of, [{ timeS: 1 / 60, fNumber: 4, iso: 100 }]],
  [core.filterStops, [{ name: 'ND 8', factor: 8 }]],
  [core.footageOf, [{ recordingS: 3600, intervalS: 10 }, 24]],
  [core.longestMarkedShutter, [10, { gapS: 1, darkFrame: false, stepsPerStop: 3 }]],
  [core.framesHeld, [{ cardGB: 64, frameMB: 30, batteryFrames: 900, coldFactor: 0.5 }]],
  [core.framesLostByDefault, [8]],
  [core.fieldOfViewDeg, [36, 24]],
  [core.zoneOf, [FILE.place]],
  [core.civilDay, ['2026-10-25', zone]],
  [core.wallToMs, ['2026-10-25', '18:00', zone]],
  [core.rfc3339, [FROM_MS, zone]],
  [core.skyEvents, [FROM_MS, FROM_MS + 6e7, FILE.place]],
];

/** Places in a value, from the whole of it down; of a long list the first entry alone. */
function placesIn(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const keys = Array.isArray(value) ? [...value.keys()].slice(0, 1) : Object.keys(value);
  return [path, ...keys.flatMap((key) => placesIn(Reflect.get(value, key), [...path, key]))];
}

/** A copy with another value at a place; or without it, or with its last key misspelt. */
function changed(value: unknown, [key, ...rest]: readonly (string | number)[], slip: Slip): unknown {
  if (key === undefined) return slip.to;
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, unknown>;
  if (rest.length > 0 || slip.kind === 'value' || Array.isArray(value)) {
    copy[key] = changed(Reflect.get(value as object, key), rest, slip);
    return copy;
  }
  if (slip.kind === 'misspelt') copy[`${key}s`] = copy[key];
  delete copy[key];
  return copy;
}

interface Slip {
  readonly kind: 'value' | 'left out' | 'misspelt';
  readonly to: unknown;
}

const slips: fc.Arbitrary<Slip> = fc.oneof(
  fc.record({
    kind: fc.constant('value' as const),
    to: fc.constantFrom<unknown>(
      ...[
        Number.NaN,
        Number.POSITIVE_INFINITY,
        -1,
        0,
        1e9,
        0.5,
        '1/60',
        '',
        'nothing',
        null,
        undefined,
        [],
        {},
        true,
      ],
    ),
  }),
  fc.record({ kind: fc.constantFrom('left out' as const, 'misspelt' as const), to: fc.constant(undefined) }),
);

const cases = fc
  .constantFrom(...CALLS)
  .chain(([call, args]) =>
    fc.tuple(
      fc.constant(call),
      fc.constant(args),
      fc.constantFrom(...placesIn(args).filter(({ length }) => length > 0)),
      slips,
    ),
  );

/** What a program gives that has lost its way: nothing, nothing by name, the same thing all over. */
const LOST: readonly (readonly unknown[])[] = [
  [],
  ...[undefined, null, 7, Number.NaN, 'x', {}, [], true].flatMap((value) => [[value], Array(4).fill(value)]),
];

test.each(
  Object.entries(core).filter(([, value]) => typeof value === 'function') as [
    string,
    (...given: unknown[]) => unknown,
  ][],
)('%s given nothing, or nothing like it, answers or names what must be', (_, call) => {
  for (const args of LOST) {
    try {
      call(...args);
    } catch (error) {
      expect(error, JSON.stringify(args)).toBeInstanceOf(RangeError);
      expect((error as Error).message, JSON.stringify(args)).toMatch(
        / must |not on the|not in |no such|is no |is not /,
      );
    }
  }
});

test('one value that is not right is answered, or told by a RangeError', () => {
  let refused = 0;
  fc.assert(
    fc.property(cases, ([call, args, path, slip]) => {
      try {
        // What no type allows.
        call(...(changed(args, path, slip) as never[]));
      } catch (error) {
        refused++;
        expect(error, `${call.name} ${path.join('.')} ${slip.kind} ${String(slip.to)}`).toBeInstanceOf(
          RangeError,
        );
        expect((error as Error).message).not.toMatch(
          /Invalid (typed )?array length|Invalid time value|call stack/,
        );
      }
    }),
    { numRuns: RUNS, seed: 20 },
  );
  expect(refused).toBeGreaterThan(RUNS / 4);
});

// What a newcomer wrote, and what came back.
test.each<readonly [string, () => unknown, string]>([
  [
    'a misspelt key of followFrame',
    () => core.followFrame(state, { frame: 0, reding: 1 } as never),
    'the nearest is "reading"',
  ],
  [
    'a misspelt dial',
    () => core.followFrame(state, { frame: 0, setting: { shuter: '1/60' } } as never),
    'input.setting must have no key "shuter"; the nearest is "shutter"',
  ],
  [
    'a misspelt end',
    () => core.followFrame(state, { frame: 0, kit: { iso: { higest: 100 } } } as never),
    'input.kit.iso must have no key "higest"',
  ],
  ['no input', () => core.followFrame(state, undefined as never), 'input must be a group, got undefined'],
  [
    'a misspelt option',
    () => core.planShoot(shoot, { remedys: false } as never),
    'the nearest is "remedies"',
  ],
  ['another', () => core.planEvenings(shoot, { dayz: 1 } as never), 'the nearest is "days"'],
  ['the whole answer', () => core.planShoot(read as never), 'got an answer of readShoot; give its "shoot"'],
  ['a file not read', () => core.planShoot(FILE as never), 'a shoot file is read by readShoot'],
  [
    'a kit without its stacks',
    () => core.settingOf({ ramp: problem.kit, stacks: [] }, ramp.frames[0]!),
    'kit.stacks',
  ],
  [
    'a shutter whose ends are swapped',
    () => core.planShoot(withCamera({ shutter: { shortest: '8', longest: '1/4000' } })),
    'camera.shutter must run from its longest to its shortest, got 1/4000 to 8',
  ],
  [
    'ISO whose ends are',
    () => core.lightTable(withCamera({ iso: { lowest: 6400, highest: 100 } })),
    'camera.iso must run from its lowest to its highest, got 6400 to 100',
  ],
  [
    'an aperture whose ends are',
    () => core.planShoot(withCamera({ aperture: { widest: '4', narrowest: '2.8' } })),
    'camera.aperture must run from its widest to its narrowest, got 4 to 2.8',
  ],
  ['no setting', () => core.followFrame(state, { frame: 0, setting: null as never }), 'input.setting'],
  ['no kit', () => core.followFrame(state, { frame: 0, kit: null as never }), 'input.kit'],
  [
    'a plan that cannot be shot, reviewed',
    () =>
      core.reviewFrames(
        { ...plan, kind: 'infeasible', infeasible: { reason: 'x', text: '' } } as never,
        taken,
      ),
    'plan must be one that can be shot',
  ],
  ['a shoot written as a plan', () => core.writePlan(shoot as never), 'plan.format'],
  ['an answer written as a shoot', () => core.writeShoot(read as never), 'give its "shoot"'],
  ['a plan written as a review', () => core.writeReview(plan as never), 'review.format'],
  ['a plan written as a table of a review', () => core.writeReviewCsv(plan as never), 'review.format'],
  ['a plan written as light', () => core.writeLight(plan as never), 'table.format'],
  ['a plan written as evenings', () => core.writeEvenings(plan as never), 'evenings.format'],
  [
    'an evening without a plan',
    () => core.frameAt({ infeasible: {} } as never, 0),
    'plan.frames must be a list',
  ],
])('%s is told by name', (_, call, said) => {
  expect(call).toThrow(RangeError);
  expect(call).toThrow(said);
});

test('an answer gives back its own setting, and a plan its frame', () => {
  const first = core.followFrame(state, { frame: 0 });
  for (const setting of [first.setting, plan.frames[0]]) {
    const { warnings } = core.followFrame(first.state, { frame: 1, setting });
    expect(warnings).toEqual(core.followFrame(first.state, { frame: 1 }).warnings);
  }
});
