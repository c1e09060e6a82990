// The best that anyone could have set who knew the evening beforehand: the least sum of squared errors over all ways to
// turn a dial one step at a time, no sooner than the spacing allows. A table over every exposure and every wait, no bound, no
// price on turning. No program that decides on what it has seen can come out better.

import type { StepperDial } from './meter-stepper.js';

/** Root of the mean squared error in stops. */
export function hindsightRms(
  wanted: ArrayLike<number>,
  { stepsPerStop, darkEv100, brightEv100, spacing }: Omit<StepperDial, 'thresholdEv'>,
): number {
  const lowest = Math.ceil(darkEv100 * stepsPerStop - 1e-9);
  const count = Math.floor(brightEv100 * stepsPerStop + 1e-9) - lowest + 1;
  const error = (level: number, frame: number) => ((lowest + level) / stepsPerStop - wanted[frame]!) ** 2;
  // Cost up to a frame by exposure, the dial free to turn at the next frame; and the same as it was `spacing` frames ago.
  let free = Float64Array.from({ length: count }, (_, level) => error(level, 0));
  // turned[w]: cost by exposure where the dial was turned w + 1 frames ago.
  let turned = Array.from({ length: spacing - 1 }, () =>
    new Float64Array(count).fill(Number.POSITIVE_INFINITY),
  );
  for (let frame = 1; frame < wanted.length; frame++) {
    const came = new Float64Array(count);
    const stayed = new Float64Array(count);
    const ripe = turned.at(-1);
    for (let level = 0; level < count; level++) {
      const here = error(level, frame);
      came[level] =
        here +
        Math.min(free[level - 1] ?? Number.POSITIVE_INFINITY, free[level + 1] ?? Number.POSITIVE_INFINITY);
      stayed[level] = here + Math.min(free[level]!, ripe?.[level] ?? Number.POSITIVE_INFINITY);
    }
    if (spacing === 1) {
      free = stayed.map((cost, level) => Math.min(cost, came[level]!));
      continue;
    }
    turned = [
      came,
      ...turned.slice(0, -1).map((costs) => costs.map((cost, level) => cost + error(level, frame))),
    ];
    free = stayed;
  }
  const least = Math.min(...free, ...turned.flatMap((costs) => [...costs]));
  return Math.sqrt(least / wanted.length);
}
