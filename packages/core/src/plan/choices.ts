// Choices, not one answer: the same shoot under other prices, as a curve between the number of cues and the
// error, so that a person can choose.

import { given } from '../check.js';
import { dialLabel } from '../exposure/dial.js';
import { hold, onlyKeys } from '../hold.js';
import type { RampFrame, RampProblem } from '../ramp/problem.js';
import { solved } from '../ramp/solve.js';
import { type RampWeights, rampWeights } from '../ramp/weights.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { noRamp, noSpan } from './infeasible.js';
import type { PlanOptions } from './plan.js';
import { prepare } from './prepare.js';
import { solve } from './solve.js';
import { stopIf } from './stop.js';
import type { PlanInfeasible } from './types.js';

/** One way to shoot the same evening. `{ ...shoot, ...apply }` plans it. */
export interface PlanChoice {
  /** What it is best at, or that it is what the shoot asks for; nothing for a point between. */
  readonly names: readonly ('fewest-cues' | 'smoothest' | 'cleanest-iso' | 'as-asked')[];
  /** Whole, 0 or more. */
  readonly cueCount: number;
  /** Cues that change the filter, whole, 0 or more. */
  readonly filterChanges: number;
  /** Root of the mean square error over frames not affected, stops. */
  readonly rmsErrorEv: number;
  /** Largest error of a frame not affected, stops, without its sign. */
  readonly worstErrorEv: number;
  /** As marked. */
  readonly highestIso: number;
  /** The `weights` that give it. */
  readonly apply: { readonly weights: RampWeights };
}

/** The curve of a shoot that has a plan. */
export interface PlanChoices {
  /** That there is something to choose from. */
  readonly kind: 'ok';
  /** One or more, fewest cues first. */
  readonly choices: readonly PlanChoice[];
}

/** Error prices to try, as multiples of the shoot's own: from cues that hardly matter to error that hardly does. */
const ERROR_TIMES = Array.from({ length: 13 }, (_, i) => 2 ** (i - 6));
/** ISO is priced this much higher where the cleanest is asked for. */
const CLEAN_ISO_TIMES = 8;

/**
 * The curve between cues and error, fewest cues first: every choice on it has fewer cues or less error than
 * any other. The one the shoot asks for is always among the answers, and one of a lower highest ISO where
 * there is one. Takes about fifteen times as long as {@link planShoot}.
 *
 * @param shoot from {@link readShoot}
 * @param options what says when to stop
 * @returns one choice or more, or why the shoot has no plan at all
 * @throws RangeError on a shoot that `readShoot` would refuse; the signal's reason where it stops the work
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { planChoices, planShoot } from '@evenfall/core';
 *
 * const found = planChoices({ ...shoot, intervalS: 60 });
 * if (found.kind === 'infeasible') throw new Error(found.infeasible.text);
 * const fewest = found.choices[0]!;
 * fewest.names[0]; // → 'fewest-cues'
 * const again = planShoot({ ...shoot, intervalS: 60, ...fewest.apply });
 * again.kind === 'ok' && again.cues.length === fewest.cueCount; // → true
 * ```
 */
export function planChoices(
  shoot: Shoot,
  options: Pick<PlanOptions, 'signal'> = {},
): PlanChoices | PlanInfeasible {
  checkShoot(shoot);
  hold('options', options, onlyKeys('signal'));
  const { signal } = options;
  stopIf(signal);
  const prepared = prepare(shoot);
  if (prepared.kind === 'no-span') return noSpan(shoot, prepared, { signal });
  const first = solve(prepared);
  if (first.kind !== 'ok') return noRamp(shoot, prepared, first, { signal });
  const { problem } = prepared;
  const asked = { ...rampWeights(shoot.crew), ...given(shoot.weights) };

  const tried = ERROR_TIMES.map((times) => {
    stopIf(signal);
    return choiceOf(problem, { ...asked, error: asked.error * times });
  });
  const askedFor = choiceOf(problem, asked);
  const clean = choiceOf(problem, { ...asked, iso: asked.iso * CLEAN_ISO_TIMES });
  const curve = tried.filter(
    (choice, i) =>
      !tried.some((other, j) => j !== i && betters(other, choice, j < i)) && !same(choice, askedFor),
  );
  // Worth a line only where ISO need not go as high as in every other choice.
  const cleaner = [...curve, askedFor].every(({ highestIso }) => clean.highestIso < highestIso);
  const all = [...curve, askedFor, ...(cleaner ? [clean] : [])].sort(
    (a, b) => a.cueCount - b.cueCount || b.rmsErrorEv - a.rmsErrorEv,
  );
  const least = (value: (choice: PlanChoice) => number) =>
    all.reduce((best, choice) => (value(choice) < value(best) - 1e-12 ? choice : best));
  const [fewest, smoothest] = [least((c) => c.cueCount), least((c) => c.rmsErrorEv)];
  const cleanest = all.find(({ highestIso }) => highestIso === Math.min(...all.map((c) => c.highestIso)));
  const choices = all.map((choice) => ({
    ...choice,
    names: [
      ...(choice === fewest ? (['fewest-cues'] as const) : []),
      ...(choice === smoothest ? (['smoothest'] as const) : []),
      ...(choice === cleanest ? (['cleanest-iso'] as const) : []),
      ...(choice === askedFor ? (['as-asked'] as const) : []),
    ],
  }));
  return { kind: 'ok', choices };
}

/** Whether a has no more cues and no more error than b, and less of one, or is the same found earlier. */
function betters(a: PlanChoice, b: PlanChoice, earlier: boolean): boolean {
  if (a.cueCount > b.cueCount || a.rmsErrorEv > b.rmsErrorEv + 1e-12) return false;
  return earlier || a.cueCount < b.cueCount || a.rmsErrorEv < b.rmsErrorEv - 1e-12;
}

function same(a: PlanChoice, b: PlanChoice): boolean {
  return a.cueCount === b.cueCount && Math.abs(a.rmsErrorEv - b.rmsErrorEv) < 1e-9;
}

function choiceOf(problem: RampProblem, weights: RampWeights): PlanChoice {
  const ramp = solved({ ...problem, weights });
  if (ramp.kind === 'infeasible') throw new Error('prices do not decide whether a ramp exists');
  const { stepsPerStop, iso } = problem.kit;
  const judged = ramp.frames.filter(({ affected }) => !affected).map(({ errorEv }) => errorEv);
  const highestStep = ramp.frames.reduce((most, { isoStep }) => Math.max(most, isoStep), iso.lowestStep);
  return {
    names: [],
    cueCount: countChanges(ramp.frames, problem.kit.bulb),
    filterChanges: ramp.frames.filter(({ stack }, i) => i > 0 && stack !== ramp.frames[i - 1]?.stack).length,
    rmsErrorEv: Math.sqrt(judged.reduce((sum, ev) => sum + ev * ev, 0) / judged.length),
    worstErrorEv: judged.reduce((most, ev) => Math.max(most, Math.abs(ev)), 0),
    highestIso: Number(dialLabel('iso', highestStep, stepsPerStop)),
    apply: { weights },
  };
}

function countChanges(frames: readonly RampFrame[], bulb: boolean): number {
  return frames.filter((frame, i) => {
    const before = frames[i - 1];
    if (before === undefined) return false;
    return (
      frame.stack !== before.stack ||
      frame.isoStep !== before.isoStep ||
      frame.apertureStep !== before.apertureStep ||
      (!bulb && frame.shutterStep !== before.shutterStep)
    );
  }).length;
}
