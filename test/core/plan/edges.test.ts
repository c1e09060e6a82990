// The numbers that a plan decides by, each tried on both sides of its edge: a tenth more or less gives another answer.
// They are our choices; what should come out is worked out by hand beside each.

import { describe, expect, test } from 'vitest';
import { planChoices } from '../../../packages/core/src/plan/choices.js';
import { englishReserve } from '../../../packages/core/src/plan/english.js';
import { planEvenings } from '../../../packages/core/src/plan/evenings.js';
import { forecastLight } from '../../../packages/core/src/plan/forecast.js';
import type { NoteContext } from '../../../packages/core/src/plan/note-context.js';
import { starNotes, startView } from '../../../packages/core/src/plan/notes-stars.js';
import { sunInFrameNotes } from '../../../packages/core/src/plan/notes-sun.js';
import { supplyNotes } from '../../../packages/core/src/plan/notes-supplies.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import { appliedTo } from '../../../packages/core/src/plan/remedies/apply.js';
import {
  ANOTHER_FILTER,
  darkerLook,
  largerSteps,
  longerShutter,
  looserTolerance,
  moreFilterChanges,
} from '../../../packages/core/src/plan/remedies/kit-kinds.js';
import { raisingMost } from '../../../packages/core/src/plan/remedies/raise.js';
import { longerInterval, timeKinds } from '../../../packages/core/src/plan/remedies/time.js';
import { eveningsHeldShare, HELD_ENOUGH, reserveOf } from '../../../packages/core/src/plan/reserve.js';
import { skylineEvents } from '../../../packages/core/src/plan/skyline-events.js';
import { rampWeights } from '../../../packages/core/src/ramp/weights.js';
import { shootSpan } from '../../../packages/core/src/shoot/span.js';
import { opticsOf } from '../../../packages/core/src/shoot/time-left.js';
import { bareProblem } from '../ramp/bare-problem.js';
import { evenPan, shootFrom } from '../shoots.js';

const span = { fromSunAltitudeDeg: 4, toSunAltitudeDeg: -12 };
const camera = {
  shutter: { shortest: '1/4000', longest: '30' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '4',
};
const optics = { lens: { focalMm: 24 }, sensor: { widthMm: 36, heightMm: 24 } };
const shoot = shootFrom({ intervalS: 60, span, camera: { ...camera, ...optics } });

function forecastOf(of: typeof shoot) {
  const found = shootSpan(of);
  if (found.kind !== 'ok') throw new Error(found.why);
  return forecastLight(of, found.times);
}
const forecast = forecastOf(shoot);
const plan = planShoot(shoot);
if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);

test('choices weigh errors by powers of two, up to 64 times as the shoot does, and ISO eight times', () => {
  const wide = shootFrom({ intervalS: 20, limits: { toleranceEv: 1.5 } });
  const found = planChoices(wide);
  if (found.kind === 'infeasible') throw new Error(found.infeasible.text);
  const { choices } = found;
  const asked = rampWeights('hand');
  const powers = choices.map(({ apply }) => Math.log2(apply.weights.error / asked.error));
  for (const power of powers) expect(power).toBeCloseTo(Math.round(power), 9);
  expect(Math.max(...powers)).toBeCloseTo(6, 9);
  const [clean] = choices.filter(({ apply }) => apply.weights.iso !== asked.iso);
  expect(clean!.apply.weights.iso).toBeCloseTo(8 * asked.iso, 9);
});

test('time to spare is told from a twentieth of a millisecond', () => {
  const said = (spareS: number) => englishReserve({ reserveEv: 1, spareS });
  expect(said(0.000_048)).toContain('no time to spare');
  expect(said(0.000_052)).not.toContain('no time');
});

test('evenings are those of a leap year at most', () => {
  // Stopped before the first one is planned.
  const signal = { aborted: true, reason: new Error('stopped') };
  expect(() => planEvenings(shoot, { days: 366, signal })).toThrow('stopped');
  expect(() => planEvenings(shoot, { days: 367, signal })).toThrow('days must be from 1 to 366');
});

describe('notes', () => {
  const lens = { optics: opticsOf(shoot.camera)!, start: startView(shoot, forecast) };

  test('stars are spoken of below 10° of sun', () => {
    const notes = (sunAltitudeDeg: number) => {
      const frames = plan.frames.map((frame) => ({ ...frame, sunAltitudeDeg }));
      return starNotes({ ...plan, frames }, lens).length;
    };
    expect([notes(-9.5), notes(-10.5)]).toEqual([0, 1]);
  });

  test('a sun in the frame, where it pulls the meter by a twentieth of a stop', () => {
    // The first frame, the sun 4° high in the middle of a sky that fills it.
    const scene = { ...shoot.scene, skyShare: 1, viewAltitudeDeg: 0 };
    const seen = { shoot: { ...shoot, scene }, frames: plan.frames.slice(0, 1) };
    const [light] = forecast.light;
    const notes = (luminanceCdM2: number) =>
      sunInFrameNotes(seen, { ...forecast, light: [{ ...light!, luminanceCdM2 }] }, lens);
    const [found] = notes(light!.luminanceCdM2) as unknown as readonly { pullEv: number }[];
    const discCdM2 = light!.luminanceCdM2 * (2 ** found!.pullEv - 1);
    const pulledBy = (ev: number) => notes(discCdM2 / (2 ** ev - 1)).length;
    expect([pulledBy(0.048), pulledBy(0.052)]).toEqual([0, 1]);
  });

  test('a card and a charge, where more than nine tenths are in use', () => {
    const kinds = (frameCount: number) => {
      const supplied = { ...shoot, camera: { ...shoot.camera, cardGB: 3, frameMB: 30, batteryFrames: 100 } };
      const context = { shoot: supplied, forecast, summary: { ...plan.summary, frameCount } };
      return supplyNotes(context as unknown as NoteContext).map(({ kind }) => kind);
    };
    expect(kinds(85)).toEqual([]);
    expect(kinds(95)).toEqual(['card-nearly-full', 'battery-nearly-spent']);
  });
});

describe('remedies', () => {
  test('go as far as a shutter of 256 s, a look of -6, a tolerance of 2, steps of 3, 20 filter changes', () => {
    // From 30 (2^5 s) to 256 (2^8 s) in thirds; from a look of 0 in tenths; a tolerance of a half in twentieths; steps of one in thirds.
    const limits = { toleranceEv: 0.5, largestStepEv: 1, maxFilterChanges: 1 };
    const from = shootFrom({ intervalS: 60, span, camera, limits, look: { nightEv: 0 } });
    expect(longerShutter(from, 10).amounts).toBe(9);
    expect(darkerLook(from)!.amounts).toBe(60);
    expect(looserTolerance(from).amounts).toBe(30);
    expect(largerSteps(from).amounts).toBe(6);
    expect(moreFilterChanges(from)!.amounts).toBe(19);
  });

  test('nothing is worth bringing for less than a twentieth of the evenings', () => {
    const { moreShare } = raisingMost(shoot, forecast, 0);
    expect(raisingMost(shoot, forecast, moreShare! - 0.0525).moreShare).toBe(moreShare);
    expect(raisingMost(shoot, forecast, moreShare! - 0.0475)).toEqual({});
  });

  // The strengths in which filters are commonly sold: common practice. Each kit has too few stops at the bright end, and one
  // stronger than it needs would leave a hole between the settings with it and without.
  test.each([
    { stops: 3, aperture: '5.6', shutter: { shortest: '1/125', longest: '1/15' } },
    { stops: 6, aperture: '2.8', shutter: { shortest: '1/60', longest: '1' } },
    { stops: 10, aperture: '1.4', shutter: { shortest: '1/125', longest: '30' } },
  ])('a filter of $stops stops is brought where it holds most', ({ stops, aperture, shutter }) => {
    const short = shootFrom({
      intervalS: 60,
      span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 3 },
      camera: { ...camera, aperture, shutter, iso: { lowest: 100, highest: stops === 10 ? 102400 : 100 } },
    });
    expect(raisingMost(short, forecastOf(short), 0).change).toEqual({ change: 'another-filter', stops });
  });

  test('another filter has 1 to 10 stops, by halves', () => {
    const stops = [1, 2, ANOTHER_FILTER.amounts].map((amount) => ANOTHER_FILTER.at(amount));
    expect(stops).toMatchObject([{ stops: 1 }, { stops: 1.5 }, { stops: 10 }]);
  });

  test('an interval is tried in forty lengths, a move cut by 95 hundredths', () => {
    const from = shootFrom({
      intervalS: 60,
      span,
      camera: { ...camera, shutter: { shortest: '1/4000', longest: '30' } },
    });
    // No interval holds a shutter as long as this with a way that takes all the time there is.
    const busy = shootFrom({ intervalS: 10, span, camera, moves: [evenPan(30)] });
    expect(
      longerInterval({ ...from, intervalS: 2, camera: { ...from.camera, darkFrame: true } }, 100).amounts,
    ).toBe(40);
    const cut = timeKinds(busy).find(({ at }) => at(1).change === 'shorter-move')!;
    expect(cut.amounts).toBe(95);
  });

  test('no way is longer than a shoot file holds: 3600° and 10 km', () => {
    const slide = {
      axis: 'slide',
      by: { m: 1 },
      mode: 'stopped',
      ease: 'linear',
      gear: { settleS: 1, moveS: 1 },
    };
    const possible = (move: object, length: number) => {
      const moving = shootFrom({ intervalS: 60, span, camera, moves: [move] });
      const change = { change: 'longer-move', lengths: [length], changed: [] } as const;
      return appliedTo(moving, forecast, change) !== undefined;
    };
    expect([possible(evenPan(30), 3500), possible(evenPan(30), 3700)]).toEqual([true, false]);
    expect([possible(slide, 9700), possible(slide, 10_300)]).toEqual([true, false]);
  });
});

test('four evenings in five are enough; words that a reading has shown to be wrong are no ground for more than 98 of 100', () => {
  expect(HELD_ENOUGH).toBe(0.8);
  const at = plan.frames[0]!.at;
  const ev100 = plan.frames[0]!.sceneEv100 + 2.5; // brighter than any weather makes it
  const read = forecastOf({ ...shoot, readings: [{ at, ev100 }] });
  expect(read.correction.used).toHaveLength(1);
  expect(eveningsHeldShare({ darkEv: 30, brightEv: 30 }, read)).toBe(0.98);
});

test('the sun is behind a skyline with the last of its disc, 16 minutes of arc', () => {
  // 10° high as the eye sees it; refraction lifts the sun by 5.5' there (Bennett 1982).
  const fromMs = Date.parse(`${shoot.date}T12:00:00Z`);
  const high = { ...shoot, scene: { ...shoot.scene, skylineDeg: 10 } };
  const [behind] = skylineEvents(high, fromMs, fromMs + 12 * 3_600_000).filter(
    ({ name }) => name === 'sun-behind-skyline',
  );
  expect(Math.abs(behind!.sunAltitudeDeg + 5.5 / 60 - (10 - 16 / 60))).toBeLessThan(0.005);
});

test('a target is out of reach by more than a billionth of a stop', () => {
  // f/4, 1/4000 s to 4 s, ISO 100: from EV 2 down to 1.25 within tolerance; a target at 8 leaves 6.75 of it.
  const darkEv = (belowEv: number) => reserveOf(bareProblem([8, 1.25 - belowEv])).darkEv;
  expect(darkEv(0.95e-9)).toBe(0);
  expect(darkEv(1.05e-9)).toBeCloseTo(6.75, 12);
});
