// What the plan for a person says of time in the interval, and of moves.

import { type PlanMade, tightestOf } from '@evenfall/core';

/** The tightest frame and what its interval holds; then each move, and how fast the picture passes. */
export function moveFacts(plan: PlanMade): [string, string][] {
  const { move, shoot } = plan;
  const { frame, slackS, ...parts } = tightestOf(plan);
  const held = (
    [
      ['shutter', parts.shutterS],
      ['dark frame', parts.darkS],
      ['writing', parts.writeS],
      ['moving', parts.moveS],
      ['rest', parts.settleS],
    ] as const
  ).filter(([, timeS]) => timeS > 0);
  const list = held.map(([what, timeS]) => `${what} ${short(timeS)} s`).join(', ');
  // Sums that differ in their last bits leave nothing.
  const spare = slackS < 5e-4 ? 'nothing' : `${short(slackS)} s`;
  return [
    ['Tightest', `frame ${frame + 1}: ${list}; ${spare} to spare of ${shoot.intervalS} s`],
    ...(move?.lines ?? []).map(({ whole }): [string, string] => ['Move', whole]),
    ...(move?.fastest === undefined
      ? []
      : ([
          [
            'On screen',
            `at its fastest, frame ${move.fastest.frame + 1}, the picture passes its own width in ${short(move.fastest.crossingS)} s of clip`,
          ],
        ] as [string, string][])),
  ];
}

function short(seconds: number): string {
  return seconds < 0.001 ? '0.001' : String(Number(seconds.toPrecision(3)));
}
