// What a person should know about a plan beyond its numbers.

import { dialStep, timeOfStep } from '../exposure/dial.js';
import { longestTimeInside } from '../footage/frames.js';
import type { RampProblem } from '../ramp/problem.js';
import type { Shoot } from '../shoot/shoot.js';
import { instant } from '../shoot/span.js';
import { shootGap } from '../shoot/time-left.js';
import { rfc3339 } from '../sky/clock.js';
import type { Forecast } from './forecast.js';
import { supplyNotes } from './notes-supplies.js';
import { eveningsHeldShare, frameReserves } from './reserve.js';
import type { PlanEvent, PlanFrame, PlanNote, PlanSummary } from './types.js';

/** What is to be said of moves and stars, by where it is said. */
export interface MovingNotes {
  readonly moves: readonly PlanNote[];
  readonly stars: readonly PlanNote[];
  readonly cautions: readonly PlanNote[];
}

interface Told {
  readonly shoot: Shoot;
  readonly forecast: Forecast;
  readonly problem: RampProblem;
  readonly frames: readonly PlanFrame[];
  readonly summary: PlanSummary;
  readonly events: readonly PlanEvent[];
  readonly moving: MovingNotes;
}

/** Notes on a plan, warnings first. */
export function notesOf(told: Told): PlanNote[] {
  const { shoot, forecast, summary, moving } = told;
  const notes = [
    ...underWay(told),
    ...supplyNotes(shoot, summary, forecast.zone),
    ...readings(told),
    ...moving.moves,
    ...reserve(told),
    ...shutter(told),
    ...moving.stars,
    ...moon(told),
    ...spoilt(told),
    ...sun(told),
    ...moving.cautions,
  ];
  const order = ['warning', 'caution', 'info'];
  return notes.sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
}

/** A reading taken after the start: the plan changes a past that has been shot, and says so before all else. */
function underWay({ shoot, forecast, summary }: Told): PlanNote[] {
  const startMs = instant(summary.startAt);
  const after = shoot.readings.map(({ at }) => instant(at)).filter((atMs) => atMs > startMs);
  if (after.length === 0) return [];
  const clock = (atMs: number) => rfc3339(atMs, forecast.zone).slice(11, 16);
  return [
    {
      level: 'warning',
      text: `This plans the shoot from its start at ${clock(startMs)}, with a reading taken at ${clock(Math.min(...after))}: settings before the reading change too. Once the shoot has begun, use evenfall follow or the field view of the page, which go on from where the camera stands.`,
    },
  ];
}

function readings({ forecast }: Told): PlanNote[] {
  return forecast.correction.refused.map(({ reading, text }) => ({
    level: 'warning',
    text: `The reading of EV ${reading.ev100} was not used. ${text}`,
  }));
}

/** Below this share of evenings a person should know before leaving that the kit may fall short. */
const HELD_ENOUGH = 0.8;

function reserve({ shoot, summary, forecast, problem }: Told): PlanNote[] {
  const { reserveDarkEv: darkEv, reserveBrightEv: brightEv, eveningsHeldShare: held } = summary;
  if (held >= HELD_ENOUGH) return [];
  const kept = frameReserves(problem);
  const heldDark = eveningsHeldShare({ ...kept, brightEv: Number.POSITIVE_INFINITY }, forecast);
  const heldBright = eveningsHeldShare({ ...kept, darkEv: Number.POSITIVE_INFINITY }, forecast);
  const more =
    heldDark < heldBright
      ? `light at the dark end: ${darkEv.toFixed(1)} stops are in reserve there. A higher ISO, a wider aperture or a longer shutter gives more`
      : `room at the bright end: ${brightEv.toFixed(1)} stops are in reserve there. A stronger filter, a shorter shutter or a narrower aperture gives more`;
  return [
    {
      level: 'caution',
      text: `On about ${Math.round((1 - held) * 100)} ${shoot.direction === 'dawn' ? 'mornings' : 'evenings'} in 100 this kit runs out of ${more}.`,
    },
  ];
}

function shutter({ shoot, frames }: Told): PlanNote[] {
  const { camera, intervalS } = shoot;
  const step = dialStep('shutter', camera.shutter.longest, camera.stepsPerStop);
  const longestS = step === undefined ? 0 : timeOfStep(step, camera.stepsPerStop);
  const { gapS } = shootGap(shoot, frames.length);
  const insideS = longestTimeInside(intervalS, { ...camera, gapS });
  if (longestS <= insideS) return [];
  const truth = String(Number(longestS.toPrecision(4)));
  const marked = camera.shutter.longest;
  const what = truth === marked ? `${marked} s` : `${marked} s (${truth} s in truth)`;
  return [
    {
      level: 'info',
      text: `A shutter of ${what} does not fit: an interval of ${intervalS} s leaves ${Number(insideS.toPrecision(4))} s${
        camera.darkFrame ? ', each dark frame counted' : ''
      }${gapS > camera.gapS ? ', beside the move and its rest' : ''}. The plan stays below it.`,
    },
  ];
}

function moon({ summary, events }: Told): PlanNote[] {
  const inside = ({ at }: PlanEvent) =>
    Date.parse(at) >= Date.parse(summary.startAt) && Date.parse(at) <= Date.parse(summary.endAt);
  return events
    .filter(({ name }) => name === 'moonrise' || name === 'moonset')
    .filter(inside)
    .map(({ name, at }) => ({
      level: 'info',
      text: `The moon ${name === 'moonrise' ? 'rises' : 'sets'} at ${at.slice(11, 16)}, during the shoot.`,
    }));
}

function spoilt({ frames }: Told): PlanNote[] {
  const count = frames.filter(({ affected }) => affected).length;
  if (count === 0) return [];
  return [
    { level: 'info', text: `Changing filters may spoil ${count} frames; they are marked in the plan.` },
  ];
}

function sun({ forecast }: Told): PlanNote[] {
  if (!forecast.sky.some(({ sunAltitudeDeg }) => sunAltitudeDeg > -1)) return [];
  return [
    {
      level: 'caution',
      text: 'Never look at the sun through an optical finder: a photographic ND filter is no solar viewer.',
    },
  ];
}
