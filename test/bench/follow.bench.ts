// One step of following, as times and as ratios within one run: 3,000 frames, 2.4 s apart. What it should stay under
// stands in each group's title. Nothing here fails a build: timings on a shared machine are for reading.

import type { PlanMade } from '@evenfall/core';
import { bench, describe } from 'vitest';
import { readShoot } from '../../packages/core/dist/files/shoot-file.js';
import { eveningOf } from '../../packages/core/dist/follow/evening.js';
import { followFrame, startFollow } from '../../packages/core/dist/follow/follow.js';
import { forecastLight } from '../../packages/core/dist/plan/forecast.js';
import { rampProblemOf } from '../../packages/core/dist/plan/targets.js';
import { planAhead } from '../../packages/core/dist/ramp/live/live.js';
import { solveRamp } from '../../packages/core/dist/ramp/solve.js';
import { shootSpan } from '../../packages/core/dist/shoot/span.js';
import { EVENING_SHOOT, planOf } from '../reference/evening-shoot.js';

const time = { time: 400, warmupTime: 200 };
const AHEAD = 1200 / 2.4;

function shootWith(filterStops: readonly number[]) {
  return {
    ...EVENING_SHOOT,
    span: { startAt: '2026-09-22T18:50:00+02:00', endAt: '2026-09-22T20:49:57.6+02:00' },
    intervalS: 2.4,
    camera: {
      shutter: { shortest: '1/4000', longest: '1.3' },
      iso: { lowest: 100, highest: 12800 },
      aperture: '2.8',
    },
    filters: filterStops.map((stops) => ({ name: `ND ${stops}`, stops })),
  };
}

function exactProblem(shootFile: unknown) {
  const read = readShoot(shootFile);
  if (read.kind === 'wrong') throw new Error(read.errors[0]!.message);
  const span = shootSpan(read.shoot);
  if (span.kind !== 'ok') throw new Error(span.why);
  return rampProblemOf(read.shoot, forecastLight(read.shoot, span.times)).problem;
}

/** A setting that stands on the camera, at the frame before the one asked for, by turns over the evening. */
function steps(plan: PlanMade, aheadFrames: number) {
  const evening = eveningOf(plan, {});
  const target = Float64Array.from(plan.frames, ({ targetEv100 }) => targetEv100 - 0.1);
  let turn = 0;
  return () => {
    turn = (turn + 37) % 2000;
    const from = aheadFrames > 2000 ? 0 : turn;
    planAhead(evening.live, {
      target: target.subarray(from, from + aheadFrames),
      framesLeft: target.length - from,
      present: evening.planned[Math.max(0, from - 1)],
      waitFrames: 0,
      filterChangesLeft: Number.POSITIVE_INFINITY,
    });
  };
}

for (const [name, filters] of [
  ['no filter', []],
  ['one filter', [6]],
  ['filters of 3, 6, 10 stops', [3, 6, 10]],
] as const) {
  const plan = planOf(shootWith(filters));
  const problem = exactProblem(shootWith(filters));

  describe(`${name}: 20 minutes ahead under 0.5 ms, 3,000 frames under 5 ms`, () => {
    bench('planned again, 20 minutes ahead', steps(plan, AHEAD), time);
    bench(`planned again, all ${plan.frames.length} frames to go`, steps(plan, plan.frames.length), time);
    bench('the exact plan, for comparison', () => void solveRamp(problem), time);
  });

  describe(`${name}: one whole step, reading and answer`, () => {
    let state = startFollow(plan);
    const startMs = Date.parse(plan.frames[0]!.at);
    let frame = 0;
    bench(
      'followFrame',
      () => {
        if (++frame >= plan.frames.length) {
          frame = 0;
          state = startFollow(plan);
        }
        const { sceneEv100 } = plan.frames[frame]!;
        const reading = { atMs: startMs + frame * 2400, ev100: sceneEv100 - 0.3 + 0.05 * Math.sin(frame) };
        state = followFrame(state, { frame, reading }).state;
      },
      time,
    );
  });
}

/** A step by turns over an evening, begun again at its end. */
function wholeSteps(plan: PlanMade, everyFrames: number) {
  const startMs = Date.parse(plan.frames[0]!.at);
  let state = startFollow(plan);
  let frame = 0;
  return () => {
    frame += everyFrames;
    if (frame >= plan.frames.length) {
      frame = 0;
      state = startFollow(plan);
    }
    const { sceneEv100 } = plan.frames[frame]!;
    const reading = { atMs: startMs + frame * 2400, ev100: sceneEv100 - 0.3 + 0.05 * Math.sin(frame) };
    state = followFrame(state, { frame, jump: true, reading }).state;
  };
}

describe('a limit on filter changes: at most twice a free step; the longest at most ten times its own median', () => {
  const filters = [3, 6, 10];
  const free = planOf(shootWith(filters));
  bench('no limit', wholeSteps(free, 7), time);
  for (const maxFilterChanges of [0, 1, 2, 3]) {
    const plan = planOf({ ...shootWith(filters), limits: { maxFilterChanges } });
    bench(`at most ${maxFilterChanges}`, wholeSteps(plan, 7), time);
  }
  const limited = planOf({ ...shootWith(filters), limits: { maxFilterChanges: 2 } });
  const { at, sceneEv100 } = limited.frames[0]!;
  const begun = startFollow(limited);
  bench(
    'at most 2, the first step',
    () => void followFrame(begun, { frame: 0, reading: { atMs: Date.parse(at), ev100: sceneEv100 - 0.3 } }),
    time,
  );
});
