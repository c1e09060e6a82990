// Ten slips of a program that uses the packages, in strict TypeScript, under both ways in which compilers find modules: each
// does not compile, or is told at the door by an error that names it.

import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as core from '@evenfall/core';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

/** In the clone, where the built packages are found by name. */
const FILE = join(fileURLToPath(new URL('.', import.meta.url)), 'integrator.ts');

const BEFORE = `import { dialStep, followFrame, planShoot, readShoot, solveRamp, startFollow } from '@evenfall/core';
import type { FollowState, Plan, PlanMade, RampProblem, Remedy, Shoot, ShootFile } from '@evenfall/core';
declare const plan: PlanMade;
declare const shoot: Shoot;
declare const problem: RampProblem;
declare const state: FollowState;
declare const remedy: Remedy;
`;

/** What does not compile, and the part of the compiler's words that names it. */
const SLIPS = [
  [
    'an answer where its state belongs',
    'followFrame(followFrame(state, { frame: 1 }), { frame: 2 });',
    /'kind'/,
  ],
  ['a frame where a state belongs', 'followFrame(plan.frames[0]!, { frame: 1 });', /FollowState/],
  [
    'a plan not asked whether it is possible',
    'export const read = (any: Plan) => any.frames.length;',
    /frames/,
  ],
  ['a kind of remedy that there is none of', "export const is = remedy.change === 'more-iso';", /no overlap/],
  ['a misspelt weight', 'solveRamp({ ...problem, weights: { shuterCue: 2 } });', /shuterCue/],
  [
    'a mark where a step belongs',
    "solveRamp({ ...problem, kit: { ...problem.kit, iso: { lowestStep: '100', highestStep: 18 } } });",
    /string/,
  ],
  ['an unknown dial', "dialStep('aperature', '4', 3);", /aperature/],
  ['a word that is no direction', "planShoot({ ...shoot, direction: 'evening' });", /evening/],
  [
    'a misspelt key of a shoot file',
    "export const file: ShootFile = { format: 'evenfall-shoot/1', place: { latitudeDeg: 1, longitudeDeg: 2 }, date: '2026-09-12', intervalls: 6, camera: shoot.camera };",
    /intervalls/,
  ],
  [
    'a setting that is not there in a warning',
    "export const no = followFrame(state, { frame: 1 }).warnings[0]!.kind === 'meter-failed';",
    /no overlap/,
  ],
] as const;

/** What is right, and compiles: keys that are undefined, marks as numbers, a whole file with what may be left out. */
const RIGHT = `
const offset: number | undefined = undefined;
const file: ShootFile = {
  format: 'evenfall-shoot/1', title: undefined, place: { latitudeDeg: 57, longitudeDeg: 10, timeZone: undefined },
  date: '2026-09-12', intervalS: 6, weights: undefined, limits: { toleranceEv: offset },
  camera: { shutter: { shortest: '1/4000', longest: 4 }, iso: { lowest: 100, highest: 6400 }, aperture: 5.6, bulb: undefined },
};
const read = readShoot(file);
if (read.kind === 'ok') {
  const made = planShoot({ ...read.shoot, weights: undefined }, { remedies: false, signal: undefined });
  let next = startFollow(made, { aheadS: undefined });
  next = followFrame(next, { frame: 0, reading: undefined, setting: { iso: undefined } }).state;
}
solveRamp({ ...problem, weights: { iso: undefined }, bracket: undefined });
`;

describe.each([
  ['node16', ts.ModuleKind.Node16, ts.ModuleResolutionKind.Node16],
  ['bundler', ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
])('under %s resolution', (_, module, moduleResolution) => {
  const options: ts.CompilerOptions = {
    ...{ module, moduleResolution, noEmit: true, strict: true, exactOptionalPropertyTypes: true },
    ...{
      noUncheckedIndexedAccess: true,
      target: ts.ScriptTarget.ES2022,
      lib: ['lib.es2022.d.ts'],
      types: [],
    },
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile } = host;
  const known = new Map<string, ts.SourceFile | undefined>();
  const faultsOf = (text: string) => {
    host.getSourceFile = (path, ...rest) => {
      if (path === FILE) return ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
      if (!known.has(path)) known.set(path, getSourceFile(path, ...rest));
      return known.get(path);
    };
    host.fileExists = (path) => path === FILE || ts.sys.fileExists(path);
    return ts
      .getPreEmitDiagnostics(ts.createProgram([FILE], options, host))
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
  };

  test('what is right compiles', () => {
    expect(faultsOf(BEFORE + RIGHT)).toEqual([]);
  });

  test.each(SLIPS)('%s does not compile', (_, line, words) => {
    const faults = faultsOf(BEFORE + line);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(words);
  });
});

describe('the same without types is told at the door', () => {
  const read = core.readShoot({
    format: 'evenfall-shoot/1',
    place: { latitudeDeg: 57.05, longitudeDeg: 9.92, timeZone: 'Europe/Copenhagen' },
    date: '2026-09-12',
    intervalS: 120,
    camera: {
      shutter: { shortest: '1/4000', longest: '8' },
      iso: { lowest: 100, highest: 6400 },
      aperture: '4',
    },
  });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  const { shoot } = read;
  const plan = core.planShoot(shoot) as core.PlanMade;
  const span = core.shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error(span.why);
  const { problem } = core.rampProblemOf(shoot, core.forecastLight(shoot, span.times));
  const { kit, limits, ...rest } = problem;
  const state = core.startFollow(plan);

  const rows: readonly (readonly [string, () => unknown, string])[] = [
    [
      'NaN as a price',
      () => core.solveRamp({ ...problem, weights: { iso: Number.NaN } }),
      'weights.iso must be 0 or more, got NaN',
    ],
    [
      'a misspelt price',
      () => core.solveRamp({ ...problem, weights: { shuterCue: 2 } as never }),
      'weights must have no key "shuterCue"; the nearest is "shutterCue"',
    ],
    [
      'ends swapped',
      () => core.solveRamp({ ...problem, kit: { ...kit, shutter: { longestStep: 36, shortestStep: -9 } } }),
      'kit.shutter.longestStep must not be above shortestStep (-9), got 36',
    ],
    [
      'a mark where a step belongs',
      () => core.solveRamp({ ...problem, kit: { ...kit, iso: { lowestStep: 0, highestStep: 6400 } } }),
      'kit.iso.highestStep must be a step of the dial, which dialStep gives of a mark, a whole number from -80 to 80, got 6400',
    ],
    [
      'no limits',
      () => core.solveRamp({ ...rest, kit } as never),
      'limits must be a group with toleranceEv, largestStepEv, secondsBetweenCues, framesLostPerFilterChange, got undefined',
    ],
    [
      'an unknown word',
      () => core.planShoot({ ...shoot, direction: 'evening' as never }),
      'direction must be one of "dusk", "dawn", got "evening"',
    ],
    [
      'a NaN place',
      () => core.planShoot({ ...shoot, place: { ...shoot.place, latitudeDeg: Number.NaN } }),
      'place.latitudeDeg must be from -90 to 90, got NaN',
    ],
    [
      'more frames than a plan holds',
      () => core.planShoot({ ...shoot, intervalS: 0.001 }),
      'intervalS must leave at most 100000 frames, got 0.001',
    ],
    [
      'an unknown dial',
      () => core.dialStep('aperature' as never, '4', 3),
      'control must be one of "shutter", "iso", "aperture", got "aperature"',
    ],
    [
      'an answer where its state belongs',
      () => core.followFrame(core.followFrame(state, { frame: 1 }) as never, { frame: 2 }),
      'state must be from startFollow or resumeFollow, or the state of an answer, got an answer: give its state',
    ],
    [
      'a state through JSON',
      () => core.followFrame(JSON.parse(JSON.stringify(state)), { frame: 2 }),
      'state must not go through JSON, got a copy without its plan: use saveFollow and resumeFollow',
    ],
    [
      'a plan without frames',
      () => core.startFollow({ ...plan, frames: [] }),
      'plan.frames must hold at least 1, got 0',
    ],
    [
      'a misspelt option',
      () => core.startFollow(plan, { ahead: 5 } as never),
      'options must have no key "ahead"; the nearest is "aheadS"',
    ],
  ];

  test.each(rows)('%s', (_, call, message) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });

  test('limits are used as they are', () => {
    // So that the row without them shows the check and not the problem.
    expect(core.solveRamp({ ...rest, kit, limits }).kind).toBe('ok');
  });
});
