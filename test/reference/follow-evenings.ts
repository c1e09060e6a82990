// The same simulated evenings met in several ways, and how each came out.

import { type PlanMade, planShoot } from '@evenfall/core';
import { followFrame, startFollow } from '../../packages/core/src/follow/follow.js';
import { exposureEv } from '../../packages/core/src/ramp/moves.js';
import { EVENING_SHOOT, planOf } from './evening-shoot.js';
import { type SimulatedEvening, simulateEvening } from './evening-simulator.js';
import { reactiveStepper } from './reactive-stepper.js';

/** How one evening came out. */
export interface Outcome {
  readonly rms: number; // stops, over frames not affected
  readonly worst: number; // largest error in stops of a frame not affected
  readonly cues: number;
  readonly reversals: number; // cues that move the exposure the other way from the cue before
}

/** One frame of a way: what was set, and whether a hand on the lens may have spoilt it. */
interface Set {
  readonly settingEv100: number;
  readonly filterStops: number;
  readonly affected: boolean;
}

/** A way of meeting an evening, and how it is called in the table. */
export interface Way {
  readonly key: string;
  readonly name: string;
  meet(plan: PlanMade, evening: SimulatedEvening): readonly Set[];
}

export const WAYS: readonly Way[] = [
  { key: 'open', name: 'open loop: the plan alone', meet: (plan) => plan.frames },
  { key: 'one', name: 'plan moved by one reading at the start', meet: oneReading },
  {
    key: 'third',
    name: 'reactive, threshold a third of a stop',
    meet: (plan, e) => reactive(plan, e, 1 / 3),
  },
  {
    key: 'sixth',
    name: 'reactive, threshold a sixth of a stop',
    meet: (plan, e) => reactive(plan, e, 1 / 6),
  },
  { key: 'follow5', name: '**follow**, a reading every 5 minutes', meet: (plan, e) => follow(plan, e, 300) },
  {
    key: 'asked1',
    name: '**follow**, asked every minute',
    meet: (plan, e) => followedNowAndThen(plan, e, 60),
  },
  { key: 'follow1', name: '**follow**, a reading every minute', meet: (plan, e) => follow(plan, e, 60) },
  { key: 'follow', name: '**follow**, a reading every frame', meet: (plan, e) => follow(plan, e, 0) },
];

export const EVENINGS = 200;

let made: PlanMade | undefined;

/** The plan that all evenings depart from. */
export function eveningPlan(): PlanMade {
  made ??= planOf(EVENING_SHOOT);
  return made;
}

export function meet(way: Way, seed: number, clouds: boolean): Outcome {
  const plan = eveningPlan();
  return outcomeOf(way, plan, simulateEvening(seed, plan.frames.length, plan.shoot.intervalS, clouds));
}

export function outcomeOf(way: Way, plan: PlanMade, evening: SimulatedEvening): Outcome {
  const frames = way.meet(plan, evening);
  let squares = 0;
  let judged = 0;
  let worst = 0;
  let cues = 0;
  let reversals = 0;
  let heading = 0;
  frames.forEach(({ settingEv100, filterStops, affected }, i) => {
    if (!affected) {
      const errorEv = settingEv100 - plan.frames[i]!.targetEv100 - evening.offsetEv[i]!;
      squares += errorEv ** 2;
      judged++;
      worst = Math.max(worst, Math.abs(errorEv));
    }
    if (i === 0) return;
    const movedEv = settingEv100 - frames[i - 1]!.settingEv100;
    // A filter that its shutter makes up for moves nothing, and is a cue all the same.
    if (movedEv === 0 && filterStops === frames[i - 1]!.filterStops) return;
    cues++;
    if (movedEv === 0) return;
    if (heading !== 0 && Math.sign(movedEv) !== heading) reversals++;
    heading = Math.sign(movedEv);
  });
  return { rms: Math.sqrt(squares / judged), worst, cues, reversals };
}

function oneReading(plan: PlanMade, evening: SimulatedEvening): readonly Set[] {
  const { at, sceneEv100 } = plan.frames[0]!;
  const ev100 = sceneEv100 + evening.offsetEv[0]! + evening.meterEv[0]!;
  const moved = planShoot({ ...plan.shoot, readings: [{ at, ev100 }] });
  if (moved.kind === 'infeasible') throw new Error(moved.infeasible.text);
  return moved.frames;
}

function reactive(plan: PlanMade, evening: SimulatedEvening, thresholdEv: number): readonly Set[] {
  const metered = plan.frames.map(
    ({ targetEv100 }, i) => targetEv100 + evening.offsetEv[i]! + evening.meterEv[i]!,
  );
  return reactiveStepper(metered, thresholdEv, {
    stepsPerStop: 3,
    shutter: [-8, 36], // 6 s to 1/4000 s
    iso: [0, 18],
    apertureStep: 12, // f/4
    filterStops: 6,
    framesLost: 2,
  });
}

/** Each frame is answered from the readings of frames before it; the first from one taken as the shoot begins. */
function follow(plan: PlanMade, evening: SimulatedEvening, everyS: number): readonly Set[] {
  const { intervalS } = plan.shoot;
  const every = Math.max(1, Math.round(everyS / intervalS));
  const startMs = Date.parse(plan.frames[0]!.at);
  let state = startFollow(plan);
  return plan.frames.map((_, frame) => {
    const read = Math.max(0, frame - 1);
    const atMs = startMs + read * intervalS * 1000;
    const ev100 = plan.frames[read]!.sceneEv100 + evening.offsetEv[read]! + evening.meterEv[read]!;
    const step = followFrame(state, {
      frame,
      ...(frame === 0 || read % every === 0 ? { reading: { atMs, ev100 } } : {}),
    });
    state = step.state;
    const { settingEv100, filterStops } = step.setting;
    return { settingEv100, filterStops, affected: step.affected };
  });
}

/**
 * Asked now and then, with a reading each time: between, the cues told are done. As a person does who has the list in
 * the hand and no camera on a cable.
 */
function followedNowAndThen(plan: PlanMade, evening: SimulatedEvening, everyS: number): readonly Set[] {
  const { intervalS, limits } = plan.shoot;
  const every = Math.max(1, Math.round(everyS / intervalS));
  const startMs = Date.parse(plan.frames[0]!.at);
  let state = startFollow(plan);
  const { lattice } = state.evening.live;
  const sets: Set[] = [];
  let judgedFrom = 0;
  for (let asked = 0; asked < plan.frames.length; asked += every) {
    const read = Math.max(0, asked - 1);
    const ev100 = plan.frames[read]!.sceneEv100 + evening.offsetEv[read]! + evening.meterEv[read]!;
    const reading = { atMs: startMs + read * intervalS * 1000, ev100 };
    const step = followFrame(state, { frame: asked, reading });
    state = step.state;
    let { settingEv100, filterStops } = step.setting;
    if (step.cue?.changes.some(({ control }) => control === 'filter')) {
      judgedFrom = asked + limits.framesLostPerFilterChange;
    }
    for (let frame = asked; frame < Math.min(asked + every, plan.frames.length); frame++) {
      const cue = state.told.find((each) => each.frame === frame);
      if (cue !== undefined) {
        settingEv100 = exposureEv(lattice, cue.to);
        filterStops = lattice.stops[cue.to.stack]!;
        if (cue.filter) judgedFrom = frame + limits.framesLostPerFilterChange;
      }
      sets.push({ settingEv100, filterStops, affected: frame < judgedFrom });
    }
  }
  return sets;
}
