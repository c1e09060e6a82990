// A plan out of what was solved: frames, cues, sums and notes.

import { exposingS, suppliesByFrame } from '../footage/bracket.js';
import { exactFps } from '../footage/footage.js';
import { clipLengthS } from '../footage/frames.js';
import { framesHeld, suppliesFor } from '../footage/supplies.js';
import type { RampResult } from '../ramp/problem.js';
import { type NamedKit, settingOf } from '../shoot/kit.js';
import type { Camera, Shoot } from '../shoot/shoot.js';
import { civilDay, clocksBack, rfc3339, type Zone } from '../sky/clock.js';
import { keepLast } from '../sky/keep-last.js';
import { skyEvents } from '../sky/sun.js';
import { withCueNotes } from './cue-notes.js';
import { cuesOf, shutterTimesOf } from './cues.js';
import type { Forecast } from './forecast.js';
import { exposureNotes } from './notes.js';
import type { Prepared } from './prepare.js';
import { eveningsHeldShare, frameReserves, type Reserve, reserveOf } from './reserve.js';
import { setUpAt } from './set-up.js';
import { skylineEvents } from './skyline-events.js';
import type { PlanEvent, PlanFrame, PlanMade, PlanSummary } from './types.js';

/** The exposures of a shoot under the ramp that was found for it: the whole plan where nothing moves and no lens is known. */
export function exposedPlan(
  shoot: Shoot,
  { forecast, problem, kit }: Prepared,
  ramp: Extract<RampResult, { kind: 'ok' }>,
): PlanMade {
  const { frames, cues, summary } = rampOfPlan(shoot, { forecast, problem, kit }, ramp);
  const { events, clocksBack } = eventsOf(shoot, forecast.zone, forecast.times[0]);
  return {
    format: 'evenfall-plan/1',
    kind: 'ok',
    shoot,
    summary,
    events,
    frames,
    cues,
    ...(shoot.camera.bulb ? { shutterTimes: shutterTimesOf(frames, cues) } : {}),
    notes: exposureNotes({ shoot, forecast, problem, frames, summary, events, clocksBack }),
    ...(clocksBack && { clocksBack }),
  };
}

/** A ramp as the plan has it, in numbers too, without what else a person should know. */
export function rampOfPlan(
  shoot: Shoot,
  { forecast, problem, kit }: Omit<Prepared, 'kind'>,
  ramp: Extract<RampResult, { kind: 'ok' }>,
): Pick<PlanMade, 'frames' | 'cues' | 'summary'> {
  const frames = framesOf(forecast, problem.targetEv100, kit, ramp);
  const cues = withCueNotes(cuesOf(frames, !shoot.camera.bulb), frames);
  const summary = {
    ...summaryOf(shoot, frames, cues.length, ramp.objective, reserveOf(problem)),
    eveningsHeldShare: eveningsHeldShare(frameReserves(problem), forecast),
  };
  return { frames, cues, summary };
}

/** Events of sun and moon on the local day on which the span starts and the one after, and whether clocks are put back then. */
export function eventsOf(shoot: Shoot, zone: Zone, startMs: number) {
  const { startMs: fromMs, endMs } = civilDay(rfc3339(startMs, zone).slice(0, 10), zone);
  const { endMs: toMs } = civilDay(rfc3339(endMs, zone).slice(0, 10), zone);
  const { latitudeDeg, longitudeDeg, aboveHorizonM } = shoot.place;
  const { events, missing } = eventsAt(latitudeDeg, longitudeDeg, aboveHorizonM, fromMs, toMs);
  const all = [...events, ...skylineEvents(shoot, fromMs, toMs)].sort((a, b) => a.atMs - b.atMs);
  return {
    events: all.map(({ name, atMs, sunAltitudeDeg }): PlanEvent => {
      return { name, at: rfc3339(Math.round(atMs / 1000) * 1000, zone), sunAltitudeDeg };
    }),
    // The plan's own: what is kept must not change with it.
    missing: missing.map((one) => ({ ...one })),
    clocksBack: clocksBack(fromMs, toMs, zone),
  };
}

const eventsAt = keepLast(
  (
    latitudeDeg: number,
    longitudeDeg: number,
    aboveHorizonM: number | undefined,
    fromMs: number,
    toMs: number,
  ) => skyEvents(fromMs, toMs, { latitudeDeg, longitudeDeg, aboveHorizonM }),
);

function framesOf(
  { times, sky, zone, sceneEv100, lowEv100, highEv100 }: Forecast,
  targetEv100: ArrayLike<number>,
  kit: NamedKit,
  ramp: Extract<RampResult, { kind: 'ok' }>,
): PlanFrame[] {
  const { bracket } = kit;
  return ramp.frames.map((frame, i) => {
    const setting = settingOf(kit, frame);
    const { shutterS } = setting;
    return {
      frame: i,
      at: rfc3339(times[i], zone),
      sunAltitudeDeg: sky[i].sunAltitudeDeg,
      sceneEv100: sceneEv100[i],
      lowEv100: lowEv100[i],
      highEv100: highEv100[i],
      targetEv100: targetEv100[i],
      ...setting,
      ...(bracket && { bracketS: exposingS(shutterS, { darkFrame: false, bracket }) - shutterS }),
      settingEv100: frame.settingEv100,
      errorEv: frame.errorEv,
      affected: frame.affected,
    };
  });
}

function summaryOf(
  shoot: Shoot,
  frames: readonly PlanFrame[],
  cueCount: number,
  objective: number,
  reserve: Reserve,
): Omit<PlanSummary, 'eveningsHeldShare'> {
  const [first, last] = [frames[0], frames[frames.length - 1]];
  const judged = frames.filter(({ affected }) => !affected).map(({ errorEv }) => errorEv);
  const targets = frames.map(({ targetEv100 }) => targetEv100);
  return {
    frameCount: frames.length,
    setUpAt: setUpAt(first.at),
    startAt: first.at,
    endAt: last.at,
    clipS: clipLengthS(frames.length, exactFps(shoot.clipFps)),
    ...suppliesFor(frames.length, suppliesByFrame(shoot.camera)),
    ...runOut(shoot.camera, frames),
    sceneFromEv100: first.sceneEv100,
    sceneToEv100: last.sceneEv100,
    rampStops: largest(targets) + largest(targets.map((ev) => -ev)),
    worstErrorEv: largest(judged.map(Math.abs)),
    reserveDarkEv: reserve.darkEv,
    reserveBrightEv: reserve.brightEv,
    rmsErrorEv: Math.sqrt(judged.reduce((sum, ev) => sum + ev * ev, 0) / judged.length),
    cueCount,
    objective,
  };
}

/** When the first frame comes that finds no room on the card, or no charge; empty where both last. */
function runOut(
  camera: Camera,
  frames: readonly PlanFrame[],
): Pick<PlanSummary, 'cardFullAt' | 'batteryOutAt'> {
  const { onCard: card = frames.length, onCharge: charge = frames.length } = framesHeld(camera);
  return {
    ...(card < frames.length ? { cardFullAt: frames[card].at } : {}),
    ...(charge < frames.length ? { batteryOutAt: frames[charge].at } : {}),
  };
}

/** Spreading into Math.max would overflow the stack on long shoots. */
function largest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}
