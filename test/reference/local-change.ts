// For ramps too long to search whole: every single small change of a ramp, tried one by one. An optimum allows none
// that is legal and cheaper. It proves nothing more: a ramp may stand here and still be beaten by two changes at once.

import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import { type Rules, rulesOf } from './kit-settings.js';
import { checkRamp, type RampSetting } from './ramp-cost.js';

interface LocalChange {
  readonly what: string;
  readonly saves: number; // > 0
}

/** What turns at one frame; steps as on the dial, `stack` the one to go to. */
interface Cue {
  readonly frame: number;
  readonly shutterBy: number;
  readonly isoBy: number;
  readonly apertureBy: number;
  readonly stack: number | undefined;
}

interface Ramp {
  readonly start: RampSetting;
  readonly cues: readonly Cue[]; // by frame
}

/** @returns the legal changes that lower the objective of a legal ramp, best first; `tried` counts the legal ones */
export function improvingChanges(problem: RampProblem, frames: readonly RampSetting[]) {
  const before = checkRamp(problem, frames);
  if (before.violations.length > 0) throw new Error(`not a legal ramp: ${before.violations[0]}`);
  const rules = rulesOf(problem);
  const ramp = takeApart(frames, problem.kit.bulb);
  const found: LocalChange[] = [];
  let tried = 0;
  for (const [what, changed] of neighbours(ramp, problem)) {
    const candidate = putTogether(changed, rules, problem.kit.bulb);
    if (misses(problem, candidate)) continue;
    const after = checkRamp(problem, candidate);
    if (after.violations.length > 0) continue;
    tried++;
    const saves = before.objective - after.objective;
    if (saves > 1e-9 * Math.max(1, before.objective)) found.push({ what, saves });
  }
  return { tried, found: found.sort((a, b) => b.saves - a.saves) };
}

/** Whether some frame is plainly out of tolerance, which most changes bring about: the whole check is not needed then. */
function misses({ kit, limits, targetEv100 }: RampProblem, frames: readonly RampSetting[]): boolean {
  let judgedFrom = 0;
  for (let i = 0; i < frames.length; i++) {
    const { shutterStep, isoStep, apertureStep, stack } = frames[i]!;
    if (i > 0 && stack !== frames[i - 1]!.stack) judgedFrom = i + limits.framesLostPerFilterChange;
    if (i < judgedFrom) continue;
    const settingEv = (apertureStep + shutterStep - isoStep) / kit.stepsPerStop + kit.stackStops[stack]!;
    if (Math.abs(settingEv - targetEv100[i]!) > limits.toleranceEv + 1e-6) return true;
  }
  return false;
}

function takeApart(frames: readonly RampSetting[], bulb: boolean): Ramp {
  const cues: Cue[] = [];
  for (let i = 1; i < frames.length; i++) {
    const [a, b] = [frames[i - 1]!, frames[i]!];
    const shutterBy = bulb ? 0 : b.shutterStep - a.shutterStep;
    const isoBy = b.isoStep - a.isoStep;
    const apertureBy = b.apertureStep - a.apertureStep;
    const stack = b.stack === a.stack ? undefined : b.stack;
    if (shutterBy === 0 && isoBy === 0 && apertureBy === 0 && stack === undefined) continue;
    cues.push({ frame: i, shutterBy, isoBy, apertureBy, stack });
  }
  return { start: frames[0]!, cues };
}

function putTogether({ start, cues }: Ramp, rules: Rules, bulb: boolean): RampSetting[] {
  const frames: RampSetting[] = [];
  let at = start;
  let next = 0;
  for (let i = 0; i < rules.frameCount; i++) {
    for (; cues[next]?.frame === i; next++) {
      const { shutterBy, isoBy, apertureBy, stack } = cues[next]!;
      at = {
        shutterStep: at.shutterStep + shutterBy,
        isoStep: at.isoStep + isoBy,
        apertureStep: at.apertureStep + apertureBy,
        stack: stack ?? at.stack,
      };
    }
    frames.push(bulb ? rules.settingAt(i, { ...at, shutterStep: 'follows' }) : at);
  }
  return frames;
}

function* neighbours({ start, cues }: Ramp, { kit, targetEv100 }: RampProblem): Generator<[string, Ramp]> {
  const none = { shutterBy: 0, isoBy: 0, apertureBy: 0, stack: undefined };
  const nudges = [1, -1].flatMap((by) => [
    { ...none, shutterBy: by },
    { ...none, isoBy: by },
    { ...none, apertureBy: by },
    { ...none, shutterBy: by, isoBy: by }, // the same exposure
  ]);
  const withCues = (changed: readonly (Cue | undefined)[]): Ramp => ({
    start,
    cues: changed.filter((cue) => cue !== undefined).sort((a, b) => a.frame - b.frame),
  });

  for (const by of nudges) {
    yield [`start otherwise by ${JSON.stringify(by)}`, { start: nudged(start, by), cues }];
    for (let frame = 1; frame < targetEv100.length; frame++) {
      yield [`add ${JSON.stringify(by)} at ${frame}`, withCues([...cues, { frame, ...by }])];
    }
  }
  for (const [k, cue] of cues.entries()) {
    const at = `the cue at ${cue.frame}`;
    const replaced = (by: Partial<Cue>) => withCues(cues.with(k, { ...cue, ...by }));
    yield [`one frame earlier, ${at}`, replaced({ frame: cue.frame - 1 })];
    yield [`one frame later, ${at}`, replaced({ frame: cue.frame + 1 })];
    yield [`drop ${at}`, withCues(cues.with(k, { ...cue, ...none }))];
    yield [`ISO for shutter, ${at}`, replaced({ shutterBy: 0, isoBy: cue.isoBy - cue.shutterBy })];
    yield [`shutter for ISO, ${at}`, replaced({ shutterBy: cue.shutterBy - cue.isoBy, isoBy: 0 })];
    if (cue.stack !== undefined) {
      for (const stack of kit.stackStops.keys()) yield [`stack ${stack}, ${at}`, replaced({ stack })];
    }
    for (const by of nudges) {
      const more = { ...nudgedCue(cue, by) };
      yield [`${JSON.stringify(by)} more, ${at}`, replaced(more)];
      const following = cues[k + 1];
      if (following === undefined) continue;
      const less = nudgedCue(following, {
        shutterBy: -by.shutterBy,
        isoBy: -by.isoBy,
        apertureBy: -by.apertureBy,
      });
      yield [`${JSON.stringify(by)} from the next, ${at}`, withCues(cues.with(k, more).with(k + 1, less))];
    }
    for (const [j, other] of cues.entries()) {
      if (j <= k) continue;
      yield [`drop ${at} and at ${other.frame}`, withCues(cues.filter((c) => c !== cue && c !== other))];
      const exchanged = cues.with(k, { ...other, frame: cue.frame }).with(j, { ...cue, frame: other.frame });
      yield [`exchange ${at} and at ${other.frame}`, withCues(exchanged)];
    }
  }
}

type Steps = Pick<Cue, 'shutterBy' | 'isoBy' | 'apertureBy'>;

function nudged(setting: RampSetting, by: Steps): RampSetting {
  return {
    ...setting,
    shutterStep: setting.shutterStep + by.shutterBy,
    isoStep: setting.isoStep + by.isoBy,
    apertureStep: setting.apertureStep + by.apertureBy,
  };
}

function nudgedCue(cue: Cue, by: Steps): Cue {
  return {
    ...cue,
    shutterBy: cue.shutterBy + by.shutterBy,
    isoBy: cue.isoBy + by.isoBy,
    apertureBy: cue.apertureBy + by.apertureBy,
  };
}
