// What the plan for a person says of time in the interval, and of moves.

import { travelText } from '@evenfall/chart';
import { type PlanMade, tightestOf } from '@evenfall/core';
import type { CommandWords } from './words/words.js';

const PARTS = ['shutterS', 'bracketS', 'darkS', 'writeS', 'moveS', 'settleS'] as const;

/** The tightest frame and what its interval holds; then each move, and how fast the picture passes. */
export function moveFacts(plan: PlanMade, words: CommandWords): [string, string][] {
  const { move, shoot } = plan;
  const { frame, slackS, ...parts } = tightestOf(plan);
  const short = (seconds: number) =>
    seconds < 0.001 ? words.plain(0.001) : words.plain(Number(seconds.toPrecision(3)));
  const held = PARTS.flatMap((part) => {
    const timeS = parts[part] ?? 0;
    return timeS > 0 ? [`${words.plan.held[part]} ${short(timeS)} s`] : [];
  }).join(', ');
  // Sums that differ in their last bits leave nothing.
  const spare = slackS < 5e-4 ? undefined : `${short(slackS)} s`;
  return [
    [
      words.plan.tightest,
      words.plan.tightestText({ frame: frame + 1, held, spare, intervalS: shoot.intervalS }),
    ],
    ...(move?.travels ?? []).map((travel): [string, string] => {
      const { ease, mode } = travel;
      const curve = typeof ease === 'string' ? ease : `trapezoid ${ease.trapezoid}`;
      const way = travelText(travel, words.card);
      return [words.plan.move, words.plan.moveText({ way, stopped: mode === 'stopped', ease: curve })];
    }),
    ...(move?.fastest === undefined
      ? []
      : [
          [
            words.plan.onScreen,
            words.plan.onScreenText(move.fastest.frame + 1, short(move.fastest.crossingS)),
          ] as [string, string],
        ]),
  ];
}
