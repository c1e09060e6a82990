// Where moves start and end, in words: on the card and in the chart's lanes.

import type { PlanFrame, PlanMade, Travel } from '@evenfall/core';
import { checkGiven, givenWords } from './given.js';
import type { Words } from './words.js';

/** Position of an axis at a frame, from the start, in degrees or metres. */
export function positionOf({ axis }: Travel, frame: PlanFrame): number {
  return (axis === 'slide' ? frame.slideM : axis === 'tilt' ? frame.tiltDeg : frame.panDeg) ?? 0;
}

/** "60°", "0.0022°", "1.2 m": two figures at least, one decimal of a degree, two of a metre. */
export function lengthText(length: number, { unit }: Travel, words: Words): string {
  const size = Math.abs(length);
  const least = unit === 'deg' ? 1 : 2;
  const digits = size === 0 ? least : Math.min(9, Math.max(least, 1 - Math.floor(Math.log10(size))));
  return `${words.upTo(size, digits)}${unit === 'deg' ? '°' : ' m'}`;
}

/** "60° right". */
export function goneText(travel: Travel, words: Words): string {
  const { axis, length, toward } = travel;
  const { ways } = words.move;
  const [on, back] =
    axis === 'tilt'
      ? [ways.up, ways.down]
      : toward === 'forward'
        ? [ways.forward, ways.back]
        : [ways.right, ways.left];
  return `${lengthText(length, travel, words)} ${length < 0 ? back : on}`;
}

/**
 * A move in words: what moves, how far, which way.
 *
 * @param travel one of a plan's `move.travels`
 * @param words language, from {@link wordsFor}
 * @returns "Pan 60° right"
 * @throws RangeError on what is no travel or no words
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { english, travelText } from '@evenfall/chart';
 *
 * (plan.move?.travels ?? []).map((travel) => travelText(travel, english)); // → []
 * ```
 */
export function travelText(travel: Travel, words: Words): string {
  checkGiven('travel', travel, 'axis', 'one of the travels of a plan');
  return `${givenWords(words).move.axes[travel.axis]} ${goneText(travel, words)}`;
}

/** What each move does at the start, a text each; none without moves. */
export function moveStarts({ move, frames }: PlanMade, words: Words): string[] {
  return (move?.travels ?? []).map((travel) => {
    const { starts, stopped, continuous } = words.move;
    const steps = frames
      .slice(1)
      .map((frame, i) => Math.abs(positionOf(travel, frame) - positionOf(travel, frames[i]!)));
    const longest = steps.reduce((most, step) => Math.max(most, step), 0);
    return starts(
      travelText(travel, words),
      travel.mode === 'stopped' ? stopped : continuous,
      lengthText(steps[0] ?? 0, travel, words),
      lengthText(longest, travel, words),
    );
  });
}

/** Where each move stands at the end, a text each. */
export function moveEnds({ move }: PlanMade, words: Words): string[] {
  return (move?.travels ?? []).map((travel) =>
    words.move.ends(words.move.axes[travel.axis], goneText(travel, words)),
  );
}
