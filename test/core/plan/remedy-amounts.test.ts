// How much of a remedy is enough, by arithmetic on the light table: a kit that ends so many stops short needs that many
// more of ISO, aperture, shutter, tolerance or look, rounded up to what can be set, and none where no dial goes so far.

import { lightTable, type Plan, planShoot, type Remedy } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { stepOfLabel } from '../../reference/plan-labels.js';
import { shootFrom } from '../shoots.js';

const TOLERANCE_EV = 0.75;
// An interval that holds any shutter, and steps that no light outruns: nothing but the kit's ends decides.
const ROOM = {
  intervalS: 300,
  crew: 'rig',
  look: { nightEv: 0 },
  limits: { toleranceEv: TOLERANCE_EV, largestStepEv: 3, secondsBetweenCues: 0 },
};
const EVENING = { startAt: '2026-09-18T19:30:00+02:00', endAt: '2026-09-18T22:00:00+02:00' };
const MORNING = { startAt: '2026-09-18T06:30:00+02:00', endAt: '2026-09-18T09:30:00+02:00' };

function infeasible(plan: Plan) {
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
  expect(plan.format).toBe('evenfall-plan/1');
  return plan.infeasible;
}

/** The same where the light is the reason. */
function byLight(plan: Plan) {
  const answer = infeasible(plan);
  if (!('frame' in answer)) throw new Error(answer.text);
  return answer;
}

function lightOf(keys: Record<string, unknown>) {
  const table = lightTable(shootFrom(keys));
  if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
  return table.rows;
}

/** What every remedy but the span says, by its change. */
function amounts(remedies: readonly Remedy[]) {
  return Object.fromEntries(
    remedies
      .filter(({ change }) => change !== 'shorter-span')
      .map(({ change, apply }) => {
        const { camera, look, limits } = apply;
        const filters = apply.filters as { stops: number }[] | undefined;
        const dials = camera && {
          'longer-shutter': camera.shutter.longest,
          'faster-shutter': camera.shutter.shortest,
          'higher-iso': camera.iso.highest,
          'wider-aperture': camera.aperture,
          'narrower-aperture': camera.aperture,
        };
        const amount = dials?.[change as keyof typeof dials] ?? look ?? limits?.toleranceEv;
        return [change, amount ?? filters?.at(-1)?.stops];
      }),
  );
}

/** Thirds of a stop that are at least so many stops. */
const thirds = (stops: number) => Math.ceil(3 * stops - 1e-9);
const inSteps = (ev: number, perEv: number) => Math.ceil(ev * perEv - 1e-9) / perEv;
const without = (all: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));

/** The marked number nearest a step's exact value, from marks. */
function marked(dial: 'shutter' | 'iso' | 'aperture', step: number, marks: string): string | undefined {
  return marks.split(' ').find((mark) => stepOfLabel(dial, mark, 3) === step);
}

// Printed on lenses and bodies: docs/sources.md#marked-series. Above 60 s each mark is double that of a stop less.
const ISOS =
  '100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 10000 12800 16000 20000 ' +
  '25600 32000 40000 51200 64000 80000 102400';
const APERTURES =
  '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32';
const SHORT_TIMES =
  '1/15 1/20 1/25 1/30 1/40 1/50 1/60 1/80 1/100 1/125 1/160 1/200 1/250 1/320 1/400 1/500 1/640 1/800 1/1000 1/1250 ' +
  '1/1600 1/2000 1/2500 1/3200 1/4000 1/5000 1/6400 1/8000';
const LONG_TIMES = '4 5 6 8 10 13 15 20 25 30 40 50 60 80 100 120 160 200 240';

describe('too dark', () => {
  const kit = (highest: number) => ({
    ...ROOM,
    span: EVENING,
    camera: {
      shutter: { shortest: '1/8000', longest: '4' },
      iso: { lowest: 100, highest },
      aperture: { widest: '4', narrowest: '16' },
    },
  });
  const light = lightOf(kit(100));
  const darkest = light.at(-1)!.sceneEv100;

  test.each([100, 250, 800, 2000, 3200, 5000, 8000, 12_800, 16_000, 20_000, 25_600, 32_000, 40_000])(
    'with ISO %i at most, each dial goes as far as the last frame asks',
    (highest) => {
      const isoStep = stepOfLabel('iso', String(highest), 3);
      // f/4 counts 4, 4 s counts -2.
      const lowEv = 4 - 2 - isoStep / 3 - TOLERANCE_EV;
      const short = lowEv - darkest;
      expect(short).toBeGreaterThan(0);
      const { reason, frame, at, text, shortfallEv, remedies } = byLight(planShoot(shootFrom(kit(highest))));
      expect(reason).toBe('too-dark');
      const first = light.findIndex(({ sceneEv100 }) => sceneEv100 < lowEv);
      expect({ frame, at }).toEqual({ frame: first, at: light[first]!.at });
      expect(shortfallEv).toBeCloseTo(lowEv - light[first]!.sceneEv100, 9);
      const stops = short < 0.05 ? 'less than 0.05 stops' : `${short.toFixed(1)} stops at the most`;
      expect(text).toBe(
        `From frame ${first + 1} (${light[first]!.at.slice(11, 19)}) on the scene is too dark for this kit, by ${stops}.`,
      );

      const more = thirds(short);
      const iso = marked('iso', isoStep + more, ISOS);
      const widest = marked('aperture', 12 - more, APERTURES);
      const tolerance = inSteps(TOLERANCE_EV + short, 20);
      expect(amounts(remedies)).toEqual(
        without({
          'longer-shutter': marked('shutter', -6 - more, LONG_TIMES),
          'higher-iso': iso === undefined ? undefined : Number(iso),
          'wider-aperture': widest === undefined ? undefined : { widest, narrowest: '16' },
          // The night is looked at as dark as it is let: the sun stands at -15°, past where a look is whole.
          'darker-look': short > 6 ? undefined : { nightEv: -inSteps(short, 10) + 0 },
          'looser-tolerance': tolerance > 2 ? undefined : Number(tolerance.toFixed(3)),
        }),
      );
      const span = remedies.find(({ change }) => change === 'shorter-span')!;
      const last = light[first - 1]!.at;
      expect(span.apply.span).toEqual({ startAt: light[0]!.at, endAt: last });
      expect(span.text).toBe(`Shoot only from 19:30 to ${last.slice(11, 16)}.`);
    },
  );

  // ISO 800 counts 3 stops. Tenths do not lose one to rounding: -4.9 and 1.1 more are -6.
  test('a look goes as far as six stops down, from wherever it is', () => {
    const toleranceEv = 0.5;
    const short = 4 - 2 - 3 - toleranceEv - (darkest + 4.9);
    expect(short).toBeGreaterThan(1);
    expect(short).toBeLessThan(1.1);
    const limits = { ...ROOM.limits, toleranceEv };
    const { remedies } = infeasible(planShoot(shootFrom({ ...kit(800), limits, look: { nightEv: -4.9 } })));
    expect(amounts(remedies)['darker-look']).toEqual({ nightEv: -6 });
  });

  test('two frames are the least that a shorter span has', () => {
    const first = light.findIndex(({ sceneEv100 }) => sceneEv100 < 4 - 2 - 4 - TOLERANCE_EV);
    const from = (frames: number) =>
      infeasible(
        planShoot(shootFrom({ ...kit(1600), span: { ...EVENING, startAt: light[first - frames]!.at } })),
      ).remedies.find(({ change }) => change === 'shorter-span')?.apply.span;
    expect(from(2)).toEqual({ startAt: light[first - 2]!.at, endAt: light[first - 1]!.at });
    expect(from(1)).toBeUndefined();
  });

  // ISO 32000 counts 25 thirds.
  const byHair = 4 - 2 - 25 / 3 - darkest - 0.001;

  test('less than a twentieth is said as that, and a tolerance goes up to the next twentieth', () => {
    const keys = kit(32_000);
    const { text, remedies } = infeasible(
      planShoot(shootFrom({ ...keys, limits: { ...keys.limits, toleranceEv: byHair } })),
    );
    expect(text).toMatch(/ the scene is too dark for this kit, by less than 0\.05 stops\.$/);
    const loose = Math.ceil((byHair + 0.001) * 20) / 20;
    const looser = remedies.find(({ change }) => change === 'looser-tolerance')!;
    expect(looser.apply.limits!.toleranceEv).toBeCloseTo(loose, 9);
    expect(looser.text).toBe(
      `Accept ${Number(loose.toFixed(2))} EV of error instead of ${Number(byHair.toFixed(3))}.`,
    );
  });

  // ISO 25600 counts 8 stops; a filter that stays on asks for the rest. An error of two stops is the most that is advised.
  test.each([
    [1.98, 2],
    [2.01, undefined],
  ])('where an error of %f stops would do, %f is advised', (needEv, loose) => {
    const keys = kit(25_600);
    const stops = needEv - (4 - 2 - 8 - darkest);
    expect(stops).toBeGreaterThan(0);
    for (const toleranceEv of [TOLERANCE_EV, 0.76]) {
      const { remedies } = infeasible(
        planShoot(
          shootFrom({
            ...keys,
            filters: [{ name: 'on', stops }],
            startFilter: 'on',
            limits: { ...keys.limits, toleranceEv, maxFilterChanges: 0 },
          }),
        ),
      );
      const looser = remedies.find(({ change }) => change === 'looser-tolerance');
      expect(looser?.apply.limits?.toleranceEv).toBe(loose);
    }
  });

  test('every remedy says from what to what', () => {
    const { remedies } = infeasible(planShoot(shootFrom(kit(32_000))));
    const now = amounts(remedies);
    const { nightEv } = now['darker-look'] as { nightEv: number };
    const { widest } = now['wider-aperture'] as { widest: string };
    expect(remedies.map(({ text }) => text)).toEqual(
      expect.arrayContaining([
        `Allow a shutter of ${now['longer-shutter']} s.`,
        `Raise the ISO limit from 32000 to ${now['higher-iso']}.`,
        `Open the aperture to f/${widest}.`,
        `Let the night be darker: ${nightEv} stops against metered instead of 0.`,
        `Accept ${now['looser-tolerance']} EV of error instead of 0.75.`,
      ]),
    );
  });
});

describe('too dark at dawn', () => {
  const kit = (endAt: string) => ({
    ...ROOM,
    direction: 'dawn',
    span: { ...MORNING, endAt },
    camera: {
      shutter: { shortest: '1/8000', longest: '4' },
      iso: { lowest: 100, highest: 400 },
      aperture: '4',
    },
  });
  const light = lightOf(kit(MORNING.endAt));
  // f/4 counts 4, 4 s counts -2, ISO 400 counts 2.
  const first = light.findIndex(({ sceneEv100 }) => sceneEv100 >= 4 - 2 - 2 - TOLERANCE_EV);
  const spanOf = (last: number) =>
    infeasible(planShoot(shootFrom(kit(light[last]!.at)))).remedies.find(
      ({ change }) => change === 'shorter-span',
    )?.apply.span;

  test('a shorter span begins with the first frame that is light enough, and has two or more', () => {
    expect(first).toBeGreaterThan(0);
    for (const more of [5, 2, 1]) {
      expect(spanOf(first + more)).toEqual({ startAt: light[first]!.at, endAt: light[first + more]!.at });
    }
    expect(spanOf(first)).toBeUndefined();
    expect(spanOf(first - 1)).toBeUndefined();
  });
});

describe('too bright', () => {
  const kit = (aperture: unknown, shortest = '1/60', more: object = {}) => ({
    ...ROOM,
    direction: 'dawn',
    span: MORNING,
    camera: { shutter: { shortest, longest: '60' }, iso: { lowest: 100, highest: 102_400 }, aperture },
    ...more,
  });
  const light = lightOf(kit('8'));
  const brightest = light.reduce((most, { sceneEv100 }) => Math.max(most, sceneEv100), -99);

  test.each(['1/15', '1/40', '1/60', '1/160', '1/250', '1/320'])(
    'with %s at the shortest, each dial goes as far as the brightest frame asks',
    (shortest) => {
      const step = stepOfLabel('shutter', shortest, 3);
      const highEv = 6 + step / 3 + TOLERANCE_EV;
      const over = brightest - highEv;
      expect(over).toBeGreaterThan(0);
      const range = { widest: '2.8', narrowest: '8' };
      const answer = byLight(planShoot(shootFrom(kit(range, shortest))));
      expect(answer.reason).toBe('too-bright');
      const first = light.findIndex(({ sceneEv100 }) => sceneEv100 > highEv);
      expect(answer.frame).toBe(first);
      expect(answer.shortfallEv).toBeCloseTo(light[first]!.sceneEv100 - highEv, 9);
      expect(answer.text).toBe(
        `From frame ${first + 1} (${light[first]!.at.slice(11, 19)}) on the scene is too bright for this kit, by ${over.toFixed(1)} stops at the most.`,
      );
      const narrower = marked('aperture', 18 + thirds(over), APERTURES);
      const tolerance = inSteps(TOLERANCE_EV + over, 20);
      expect(amounts(answer.remedies)).toEqual(
        without({
          'narrower-aperture': narrower === undefined ? undefined : { widest: '2.8', narrowest: narrower },
          'faster-shutter': marked('shutter', step + thirds(over), SHORT_TIMES),
          'another-filter': over > 10 ? undefined : Math.max(1, inSteps(over, 2)),
          'looser-tolerance': tolerance > 2 ? undefined : Number(tolerance.toFixed(3)),
        }),
      );
    },
  );

  test('a filter of one stop is one of a stop', () => {
    const filter = infeasible(planShoot(shootFrom(kit('8', '1/320')))).remedies.find(
      ({ change }) => change === 'another-filter',
    )!;
    expect(filter.text).toBe('Bring an ND filter of 1 stop.');
    expect(filter.apply.filters).toEqual([{ name: 'ND of 1 stop', stops: 1 }]);
  });

  test('a filter that is brought has a name of its own', () => {
    const over = brightest - (6 + stepOfLabel('shutter', '1/60', 3) / 3 + TOLERANCE_EV);
    const stops = inSteps(over, 2);
    const owned = { name: `ND of ${stops} stops`, stops: 0.5 };
    const { remedies } = infeasible(planShoot(shootFrom(kit('8', '1/60', { filters: [owned] }))));
    const filter = remedies.find(({ change }) => change === 'another-filter')!;
    expect(filter.apply.filters).toEqual([owned, { name: `another ND of ${stops} stops`, stops }]);
    expect(filter.text).toBe(`Bring an ND filter of ${stops} stops.`);
    const free = infeasible(planShoot(shootFrom(kit('8')))).remedies;
    expect(free.find(({ change }) => change === 'another-filter')!.apply.filters).toEqual([
      { name: `ND of ${stops} stops`, stops },
    ]);
  });
});

describe('a shorter span by the sun', () => {
  // Rounded inward to a tenth of a degree: the sun stands past what is asked for on the frames that are left out.
  const span = (from: number, to: number) => ({ fromSunAltitudeDeg: from, toSunAltitudeDeg: to });
  const up = (deg: number) => Math.ceil(deg * 10) / 10 + 0;
  const down = (deg: number) => Math.floor(deg * 10) / 10 + 0;
  const kit = (keys: object, shutter: object, iso: object) => ({
    ...ROOM,
    intervalS: 60,
    ...keys,
    camera: { shutter, iso, aperture: '8' },
  });
  const dim = [
    { shortest: '1/8000', longest: '4' },
    { lowest: 100, highest: 1600 },
  ] as const;
  const bright = [
    { shortest: '1/60', longest: '30' },
    { lowest: 100, highest: 102_400 },
  ] as const;
  // f/8 counts 6: the dim kit ends at EV 6 - 2 - 4, the bright one near EV 6 + 6.
  const lowEv = 6 - 2 - 4 - TOLERANCE_EV;
  const highEv = 6 + stepOfLabel('shutter', '1/60', 3) / 3 + TOLERANCE_EV;

  function cut(keys: ReturnType<typeof kit>) {
    const found = infeasible(planShoot(shootFrom(keys))).remedies.find(
      ({ change }) => change === 'shorter-span',
    )!;
    const { fromSunAltitudeDeg: from, toSunAltitudeDeg: to } = found.apply.span as ReturnType<typeof span>;
    expect(found.text).toBe(`Shoot a shorter span: from ${from}° to ${to}° of sun altitude.`);
    expect('frames' in planShoot(shootFrom({ ...keys, span: found.apply.span }))).toBe(true);
    return [from, to];
  }

  test('ends before the dark at dusk', () => {
    const keys = kit({ span: span(5.55, -12.55) }, ...dim);
    const rows = lightOf(keys);
    const last = rows[rows.findIndex(({ sceneEv100 }) => sceneEv100 < lowEv) - 1]!;
    expect(cut(keys)).toEqual([5.55, up(last.sunAltitudeDeg)]);
  });

  test('is none where a tenth of a degree is more than is left', () => {
    // Every 10 s the sun falls by 0.03°: two frames before the dark are less than the tenth it is rounded to.
    const keys = { ...kit({ span: span(5.55, -12.55) }, ...dim), intervalS: 10 };
    const rows = lightOf(keys);
    const dark = rows.findIndex(({ sceneEv100 }) => sceneEv100 < lowEv);
    const from = rows
      .slice(0, dark - 1)
      .findLast(({ sunAltitudeDeg }) => up(sunAltitudeDeg - 0.06) > sunAltitudeDeg)!;
    const late = { ...keys, span: span(from.sunAltitudeDeg, -12.55) };
    const { remedies } = infeasible(planShoot(shootFrom(late)));
    expect(remedies.map(({ change }) => change)).not.toContain('shorter-span');
  });

  test('is none that would end where it begins', () => {
    // From -9.6° on, dark from the third frame, at -9.66°: the second, at -9.63°, rounds to -9.6° again.
    const keys = { ...kit({ span: span(-9.6, -12.55) }, ...dim), intervalS: 10 };
    const rows = lightOf(keys);
    expect(up(rows[1]!.sunAltitudeDeg)).toBe(-9.6);
    const toleranceEv = 6 - 2 - 4 - (rows[1]!.sceneEv100 + rows[2]!.sceneEv100) / 2;
    const answer = byLight(planShoot(shootFrom({ ...keys, limits: { ...ROOM.limits, toleranceEv } })));
    expect(answer.frame).toBe(2);
    expect(answer.remedies.map(({ change }) => change)).not.toContain('shorter-span');
  });

  test('begins after the dark at dawn', () => {
    const keys = kit({ direction: 'dawn', span: span(-12.55, 5.55) }, ...dim);
    const first = lightOf(keys).find(({ sceneEv100 }) => sceneEv100 >= lowEv)!;
    expect(cut(keys)).toEqual([up(first.sunAltitudeDeg), 5.55]);
  });

  test('begins after the glare at dusk', () => {
    const keys = kit({ span: span(25.45, -3.55) }, ...bright);
    const first = lightOf(keys).find(({ sceneEv100 }) => sceneEv100 <= highEv)!;
    expect(cut(keys)).toEqual([down(first.sunAltitudeDeg), -3.55]);
  });

  test('ends before the glare at dawn', () => {
    const keys = kit({ direction: 'dawn', span: span(-3.55, 25.55) }, ...bright);
    const rows = lightOf(keys);
    const last = rows[rows.findIndex(({ sceneEv100 }) => sceneEv100 > highEv) - 1]!;
    expect(cut(keys)).toEqual([-3.55, down(last.sunAltitudeDeg)]);
  });
});

describe('too fast', () => {
  const limits = { toleranceEv: 0.6, largestStepEv: 1 / 3, secondsBetweenCues: 120 };
  const remedies = infeasible(planShoot(shootFrom({ intervalS: 20, limits }))).remedies;
  const planned = (change: object) =>
    'frames' in planShoot(shootFrom({ intervalS: 20, limits: { ...limits, ...change } }));

  test('cues that are closer by whole intervals, and no closer than they need', () => {
    const closer = remedies.find(({ change }) => change === 'closer-cues')!;
    const { secondsBetweenCues } = closer.apply.limits!;
    expect(closer.text).toBe(`Allow cues ${secondsBetweenCues} s apart instead of 120 s.`);
    expect(closer.apply.limits).toEqual({
      ...shootFrom({ intervalS: 20, limits }).limits,
      secondsBetweenCues,
    });
    expect(secondsBetweenCues % 20).toBe(0);
    expect([
      planned({ secondsBetweenCues }),
      planned({ secondsBetweenCues: secondsBetweenCues + 20 }),
    ]).toEqual([true, false]);
  });

  // A spacing that is no whole number of intervals holds as many as it takes: 110 s are six of 20 s.
  test('a spacing between two intervals counts as the longer', () => {
    const between = { ...limits, secondsBetweenCues: 110 };
    const cut = infeasible(planShoot(shootFrom({ intervalS: 20, limits: between }))).remedies;
    const of = (all: readonly Remedy[]) =>
      all.find(({ change }) => change === 'closer-cues')!.apply.limits!.secondsBetweenCues;
    expect(of(cut)).toBe(of(remedies));
  });

  // At its fastest the light falls by 0.29 EV a minute: a third of a stop each minute keeps up, one every other does not.
  test('cues go as close as one at every frame', () => {
    const every = { toleranceEv: 0.5, largestStepEv: 1 / 3, secondsBetweenCues: 120 };
    const why = infeasible(planShoot(shootFrom({ intervalS: 60, limits: every })));
    if (why.reason !== 'too-fast') throw new Error(why.reason);
    const { text, shortfallEv, remedies: all } = why;
    expect(shortfallEv).toBeLessThan(0.05);
    expect(text).toContain(': that frame would be off by less than 0.05 stops more than allowed.');
    expect(all.find(({ change }) => change === 'closer-cues')?.text).toBe(
      'Allow cues 60 s apart instead of 120 s.',
    );
  });

  test('steps of more than three stops are no advice', () => {
    const stepFor = (secondsBetweenCues: number) => {
      const plan = planShoot(
        shootFrom({ intervalS: 20, limits: { toleranceEv: 2, largestStepEv: 1, secondsBetweenCues } }),
      );
      if (plan.kind === 'ok') return 1;
      return plan.infeasible.remedies.find(({ change }) => change === 'larger-steps')?.apply.limits
        ?.largestStepEv;
    };
    const steps = [300, 500, 600, 700, 800, 900, 1000, 1100, 1200].map(stepFor);
    const given = steps.filter((step) => step !== undefined);
    expect(Math.max(...given)).toBeLessThanOrEqual(3);
    expect(Math.max(...given)).toBeGreaterThan(2.5);
    expect(steps).toContain(undefined);
  });
});
