// One fall of the sun (dusk) or one rise (dawn): when it passes from one altitude to another, and when it meets the
// horizon. Works on any curve of altitude; sun.ts has the sun's.

import { within } from '../check.js';
import { sentenceOf } from '../words/sentences.js';
import { bisect, type Curve, rangeOf, SKY_STEP_MS, sampleCurve, turnsOf } from './crossing.js';
import type { Direction } from './direction.js';
import { keepLast } from './keep-last.js';
import { englishNoPass, type WhyNoPass } from './missing.js';

/** How far outside the day a fall or rise of the sun is followed; away from the poles one lasts half a day. */
const PASS_MARGIN_MS = 36 * 3_600_000;

/** One unbroken fall or rise of the sun. */
interface Run {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** The falls (dusk) or rises (dawn) of the sun that touch a day, in order of time. */
const runsOfDay = keepLast(
  (direction: Direction, dayStartMs: number, dayEndMs: number, sun: Curve): readonly Run[] => {
    const [firstMs, lastMs] = [dayStartMs - PASS_MARGIN_MS, dayEndMs + PASS_MARGIN_MS];
    const inner = turnsOf(sun, sampleCurve(sun, firstMs, lastMs, SKY_STEP_MS)).filter(
      (t) => t.atMs > firstMs && t.atMs < lastMs,
    );
    const ends = [{ atMs: firstMs, value: sun(firstMs) }, ...inner, { atMs: lastMs, value: sun(lastMs) }];
    const runs: Run[] = [];
    for (let i = 1; i < ends.length; i++) {
      const [from, to] = [ends[i - 1]!, ends[i]!];
      const falls = to.value < from.value;
      if (falls === (direction === 'dusk') && from.atMs < dayEndMs && to.atMs > dayStartMs) {
        runs.push({ fromMs: from.atMs, toMs: to.atMs, fromDeg: from.value, toDeg: to.value });
      }
    }
    return runs;
  },
);

/** The run that fills most of the day. Undefined only at a pole, where the sun may rise or fall for months. */
function mainRun(runs: readonly Run[], dayStartMs: number, dayEndMs: number): Run | undefined {
  const share = (run: Run) => Math.min(run.toMs, dayEndMs) - Math.max(run.fromMs, dayStartMs);
  return [...runs].sort((a, b) => share(b) - share(a))[0];
}

/**
 * When the sun passes from one altitude to another, `startMs` to `endMs`, UTC epoch milliseconds; or how far
 * the fall or rise in question goes, from `reachedHighDeg` to `reachedLowDeg`, and why.
 */
export type SunPass =
  | { readonly kind: 'ok'; readonly startMs: number; readonly endMs: number }
  | {
      readonly kind: 'none';
      /** Highest and lowest altitude of the fall or rise in question. */
      readonly reachedHighDeg: number;
      readonly reachedLowDeg: number;
      /** Why, in numbers. */
      readonly because: WhyNoPass;
      /** A sentence for people. */
      readonly why: string;
    };

/** The first pass from one altitude to the other that starts in the day; see sunPass in sun.ts. */
export function passInDay(
  direction: Direction,
  fromAltitudeDeg: number,
  toAltitudeDeg: number,
  dayStartMs: number,
  dayEndMs: number,
  sun: Curve,
): SunPass {
  within('fromAltitudeDeg', fromAltitudeDeg, -90, 90);
  within('toAltitudeDeg', toAltitudeDeg, -90, 90);
  const dusk = direction === 'dusk';
  if (dusk ? toAltitudeDeg >= fromAltitudeDeg : toAltitudeDeg <= fromAltitudeDeg) {
    throw new RangeError(
      `toAltitudeDeg must be ${dusk ? 'below' : 'above'} fromAltitudeDeg at ${direction}, got ${fromAltitudeDeg} to ${toAltitudeDeg}`,
    );
  }

  const passes = ({ fromDeg, toDeg }: Run, altitudeDeg: number) =>
    fromDeg >= altitudeDeg !== toDeg >= altitudeDeg;
  const runs = runsOfDay(direction, dayStartMs, dayEndMs, sun);
  let started: Run | undefined;
  for (const run of runs) {
    if (!passes(run, fromAltitudeDeg)) continue;
    const startMs = bisect(sun, fromAltitudeDeg, run.fromMs, run.toMs);
    if (startMs < dayStartMs || startMs >= dayEndMs) continue;
    if (passes(run, toAltitudeDeg)) {
      return { kind: 'ok', startMs, endMs: bisect(sun, toAltitudeDeg, run.fromMs, run.toMs) };
    }
    started = run;
  }

  const run = started ?? mainRun(runs, dayStartMs, dayEndMs);
  if (run === undefined) {
    const { low, high } = rangeOf(sun, dayStartMs, dayEndMs);
    return noPass({ kind: 'sun-does-not-turn', direction, altitudeDeg: high }, low, high);
  }
  const { fromDeg, toDeg } = run;
  return noPass(
    started === undefined && passes(run, fromAltitudeDeg)
      ? { kind: 'sun-passes-another-day', direction, altitudeDeg: fromAltitudeDeg }
      : {
          kind: 'sun-falls-short',
          direction,
          fromDeg,
          toDeg,
          wantedFromDeg: fromAltitudeDeg,
          wantedToDeg: toAltitudeDeg,
        },
    Math.min(fromDeg, toDeg),
    Math.max(fromDeg, toDeg),
  );
}

function noPass(because: WhyNoPass, reachedLowDeg: number, reachedHighDeg: number): SunPass {
  const why = sentenceOf(englishNoPass, 'kind', because);
  return { kind: 'none', reachedHighDeg, reachedLowDeg, because, why };
}

/**
 * The instant at which the fall or rise that fills most of the day passes altitude 0, or where it does not, its end
 * nearest to 0.
 */
export function horizonMoment(
  direction: Direction,
  dayStartMs: number,
  dayEndMs: number,
  sun: Curve,
): number {
  const run = mainRun(runsOfDay(direction, dayStartMs, dayEndMs, sun), dayStartMs, dayEndMs);
  // At a pole the sun may not turn for months: any instant of the day is as good as another.
  if (run === undefined) return dayStartMs;
  if (run.fromDeg >= 0 !== run.toDeg >= 0) return bisect(sun, 0, run.fromMs, run.toMs);
  return Math.abs(run.fromDeg) < Math.abs(run.toDeg) ? run.fromMs : run.toMs;
}
