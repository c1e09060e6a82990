// What remedies leave to spare, and those for what the crew's own rules forbid. Amounts of the others:
// remedy-amounts.test.ts.

import { planShoot, type Remedy, readShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { reserveText, wordsFor } from '../../../packages/chart/src/index.js';
import { PLAIN_SHOOT, shootFrom } from '../shoots.js';

function infeasible(keys: Record<string, unknown>) {
  const plan = planShoot(shootFrom(keys));
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
  return plan.infeasible;
}

/** The plan that a remedy gives. */
function cured(keys: Record<string, unknown>, { apply }: Remedy) {
  const plan = planShoot({ ...shootFrom(keys), ...apply });
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

const find = (remedies: readonly Remedy[], change: Remedy['change']) =>
  remedies.find((remedy) => remedy.change === change)!;

const camera = (more: object) => ({
  shutter: { shortest: '1/4000', longest: '30' },
  iso: { lowest: 100, highest: 400 },
  aperture: '8',
  ...more,
});
const ND = [
  { name: 'ND 0.9', density: 0.9 },
  { name: 'ND 3.0', density: 3 },
];
/** f/8 and 1/15 s at the shortest: daylight of EV 14 wants four stops more. */
const SLOW = camera({ shutter: { shortest: '1/15', longest: '30' }, iso: { lowest: 100, highest: 12_800 } });
const DAYLIGHT = { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 2 };

const IMPOSSIBLE: Record<string, unknown>[] = [
  { intervalS: 40, camera: camera({}) },
  { intervalS: 40, camera: camera({ iso: { lowest: 100, highest: 200 } }) },
  { intervalS: 60, camera: SLOW, span: DAYLIGHT },
  { intervalS: 60, camera: camera({ iso: { lowest: 100, highest: 6400 } }), limits: { toleranceEv: 0.1 } },
  { intervalS: 60, camera: SLOW, span: DAYLIGHT, filters: ND, startFilter: 'ND 0.9' },
];

describe('what a remedy leaves', () => {
  test('is what the plan it gives keeps, at the end that keeps less', () => {
    const reserves: number[] = [];
    for (const keys of IMPOSSIBLE) {
      for (const remedy of infeasible(keys).remedies) {
        const plan = cured(keys, remedy);
        const { reserveDarkEv, reserveBrightEv } = plan.summary;
        const tight = plan.notes.find(({ kind }) => kind === 'tight-interval');
        expect(remedy.spareS, remedy.text).toBe(tight?.kind === 'tight-interval' ? tight.spareS : undefined);
        expect(remedy.reserveEv, remedy.text).toBeCloseTo(Math.min(reserveDarkEv, reserveBrightEv), 9);
        expect(remedy.reserveText?.split(/ Its tightest| The clip/)[0]).toBe(
          remedy.reserveEv! < 0.05
            ? 'It works, with nothing to spare.'
            : `It leaves ${remedy.reserveEv!.toFixed(1)} stops of reserve.`,
        );
        reserves.push(remedy.reserveEv!);
      }
    }
    expect(Math.min(...reserves)).toBeLessThan(0.05);
    expect(Math.max(...reserves)).toBeGreaterThan(0.5);
  });

  test('puts those that leave less than half a stop after those that leave more', () => {
    let mixed = 0;
    for (const keys of IMPOSSIBLE) {
      const little = infeasible(keys).remedies.map(({ reserveEv }) => reserveEv! < 0.5);
      expect(little).toEqual([...little].sort());
      if (new Set(little).size === 2) mixed++;
    }
    expect(mixed).toBeGreaterThan(0);
  });
});

test('a shorter shutter is offered where it is too bright', () => {
  const keys = { intervalS: 60, camera: SLOW, span: DAYLIGHT };
  const remedy = find(infeasible(keys).remedies, 'faster-shutter');
  expect(remedy.text).toMatch(/^Allow shutters as short as 1\/\d+ s instead of 1\/15 s\.$/);
  cured(keys, remedy);
});

test('a limit on filter changes in the way is raised by what it takes', () => {
  // The sun is up: nothing but the strong filter will do at first, nothing but the bare lens at last.
  const keys = { intervalS: 60, camera: SLOW, filters: ND, limits: { maxFilterChanges: 0 } };
  const remedy = find(infeasible(keys).remedies, 'more-filter-changes');
  expect(remedy).toMatchObject({ maxFilterChanges: 1, fromFilterChanges: 0 });
  expect(remedy.text).toBe('Allow 1 filter change instead of none.');
  const { frames } = cured(keys, remedy);
  expect(new Set(frames.map(({ filters }) => filters.join())).size).toBe(2);
});

test('a filter to begin with in the way gives place to the weakest that does', () => {
  const keys = { intervalS: 60, camera: SLOW, span: DAYLIGHT, filters: ND, startFilter: 'ND 0.9' };
  const strong = find(infeasible(keys).remedies, 'start-filter');
  expect(strong.text).toBe('Begin with ND 3.0 instead of ND 0.9.');
  expect(cured(keys, strong).frames[0]!.filters).toEqual(['ND 3.0']);

  const dark = { ...keys, span: { fromSunAltitudeDeg: -9, toSunAltitudeDeg: -13 }, startFilter: 'ND 3.0' };
  const bare = find(infeasible(dark).remedies, 'start-filter');
  expect(bare.text).toBe('Begin without ND 3.0.');
  expect(bare.apply).toEqual({ startFilter: 'none' });
  expect(cured(dark, bare).frames[0]!.filters).toEqual([]);
  const { place, date } = PLAIN_SHOOT as Record<string, unknown>;
  expect(readShoot({ ...PLAIN_SHOOT, place, date, startFilter: 'none' }).kind).toBe('ok');
});

test('a filter is offered by half stops, the least that does', () => {
  const keys = { intervalS: 60, camera: SLOW, span: DAYLIGHT };
  const { change, stops } = find(infeasible(keys).remedies, 'another-filter') as Remedy & { stops: number };
  expect(change).toBe('another-filter');
  const lensWith = (strength: number) =>
    planShoot(shootFrom({ ...keys, filters: [{ name: 'ND', stops: strength }] }));
  expect('frames' in lensWith(stops)).toBe(true);
  expect(lensWith(stops - 0.5).kind === 'infeasible').toBe(true);
});

describe('a tolerance below half a click', () => {
  const keys = (toleranceEv: number, stepsPerStop = 3) => ({
    intervalS: 60,
    crew: 'rig',
    camera: camera({ iso: { lowest: 100, highest: 6400 }, aperture: '2.8', stepsPerStop }),
    limits: { toleranceEv },
  });

  // By hand: half of a third of a stop is 0.1667, half of a half 0.25.
  test.each([
    [0.1, 3, 'No dial can follow within 0.1: half a click is 0.17.'],
    [0.2, 2, 'No dial can follow within 0.2: half a click is 0.25.'],
  ])('of %s on a dial of 1/%i stops is said to be', (toleranceEv, stepsPerStop, text) => {
    const why = infeasible(keys(toleranceEv, stepsPerStop));
    expect(why.text.endsWith(` ${text}`)).toBe(true);
    expect(why).toMatchObject({
      reason: 'too-fast',
      belowHalfClick: { toleranceEv, halfClickEv: 0.5 / stepsPerStop },
    });
    expect(find(why.remedies, 'looser-tolerance').text).toMatch(/^Accept 0\.\d+ EV of error instead of /);
  });

  test('is not blamed where the light is what is too fast', () => {
    const limits = { toleranceEv: 0.5, largestStepEv: 1 / 3, secondsBetweenCues: 600 };
    const why = infeasible({ ...keys(0.5), limits });
    expect(why.reason).toBe('too-fast');
    expect(why).not.toHaveProperty('belowHalfClick');
  });
});

// At -9.9° the light has another third of a stop to fall before this kit ends: it is the last half degree that is cut off.
test('a span of less than a degree is no remedy', () => {
  const kit = camera({});
  const from = (fromSunAltitudeDeg: number) =>
    infeasible({ intervalS: 40, camera: kit, span: { fromSunAltitudeDeg, toSunAltitudeDeg: -12 } }).remedies;
  const { span } = find(from(3), 'shorter-span').apply;
  const end = (span as { toSunAltitudeDeg: number }).toSunAltitudeDeg;
  expect(end).toBeGreaterThan(-12);
  const shorter = find(from(end + 1.5), 'shorter-span').apply.span as typeof span & {
    toSunAltitudeDeg: number;
  };
  expect(shorter).toMatchObject({ fromSunAltitudeDeg: end + 1.5 });
  // Another minute of starting, another last frame: a tenth of a degree.
  expect(Math.abs(shorter.toSunAltitudeDeg - end)).toBeLessThan(0.11);
  expect(find(from(end + 0.5), 'shorter-span')).toBeUndefined();
});

// By hand: "30" is 32 s. With a gap of 0.5 s an interval of 33 s has 0.5 s left, less than a twentieth (1.65 s).
test('a remedy whose plan has hardly a margin in its interval says so, in both languages', () => {
  const keys = {
    intervalS: 33,
    camera: camera({
      shutter: { shortest: '1/4000', longest: '20' },
      iso: { lowest: 100, highest: 800 },
      gapS: 0.5,
    }),
  };
  const { remedies } = infeasible(keys);
  const longer = find(remedies, 'longer-shutter');
  expect(longer.apply.camera?.shutter.longest).toBe('30');
  expect(longer.spareS).toBeCloseTo(0.5, 9);
  expect(longer.reserveText).toMatch(/\. Its tightest interval has only 500 ms to spare\.$/);
  expect(reserveText(longer, wordsFor({ language: 'de' }))).toMatch(
    /\. Das knappste Intervall hat dann nur 500 ms übrig\.$/,
  );
  expect(cured(keys, longer).notes.map(({ kind }) => kind)).toContain('tight-interval');
  // Others keep the shutter, and their margin.
  const roomy = remedies.filter(({ spareS }) => spareS === undefined);
  expect(roomy.length).toBeGreaterThan(0);
  for (const remedy of roomy)
    expect(cured(keys, remedy).notes.map(({ kind }) => kind)).not.toContain('tight-interval');
});

// A closed October sky, six seconds apart: a shutter of 30 s (32 s) and a gap of 1 s want an interval of 33 s, a clip of two elevenths.
test('a remedy that leaves little of the clip says so, in both languages', () => {
  const keys = {
    place: { latitudeDeg: 55.9, longitudeDeg: -3.2, timeZone: 'Europe/London' },
    date: '2026-10-08',
    intervalS: 6,
    camera: camera({
      shutter: { shortest: '1/4000', longest: '4' },
      iso: { lowest: 100, highest: 6400 },
      aperture: '5.6',
    }),
    scene: { cloud: 'overcast' },
  };
  const { remedies } = infeasible(keys);
  const longer = find(remedies, 'longer-shutter');
  expect(longer.apply.intervalS).toBe(33);
  const { clipS, fromClipS } = longer.clip!;
  const plan = cured(keys, longer);
  expect(clipS).toBeCloseTo(plan.summary.frameCount / 24, 9);
  // The same two hours and more, to within the frame that a span is rounded to.
  expect(Math.abs(fromClipS * 6 - clipS * 33)).toBeLessThan(33 / 24 + 60 / 24);
  const [short, whole] = [clipS, fromClipS].map((s) => String(Number(s.toPrecision(3))));
  expect(longer.reserveText).toContain(` The clip is ${short} s long then, instead of ${whole} s.`);
  expect(reserveText(longer, wordsFor({ language: 'de' }))).toContain(
    ` Der Clip ist dann ${short!.replace('.', ',')} s lang statt ${whole!.replace('.', ',')} s.`,
  );
  // Every other one keeps two thirds of the frames or more, but a shorter span, which says itself what it leaves out.
  const others = remedies.filter(({ clip, change }) => clip === undefined && change !== 'shorter-span');
  expect(others.length).toBeGreaterThan(1);
  for (const remedy of others) {
    expect(cured(keys, remedy).summary.frameCount).toBeGreaterThanOrEqual(fromClipS * 24 * (2 / 3));
  }
});

test('less than two thirds of the clip is little: 20 of 33 are, 23 are not', () => {
  const clipLeft = (intervalS: number) => {
    const { remedies } = infeasible({
      place: { latitudeDeg: 55.9, longitudeDeg: -3.2, timeZone: 'Europe/London' },
      ...{ date: '2026-10-08', intervalS, scene: { cloud: 'overcast' } },
      camera: camera({
        shutter: { shortest: '1/4000', longest: '4' },
        iso: { lowest: 100, highest: 6400 },
        aperture: '5.6',
      }),
    });
    const longer = find(remedies, 'longer-shutter');
    expect(longer.apply.intervalS).toBe(33);
    return longer.clip;
  };
  expect(clipLeft(20)).toBeDefined();
  expect(clipLeft(23)).toBeUndefined();
});
