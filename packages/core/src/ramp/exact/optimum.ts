// The optimum over dial steps, of a plan or ahead of a camera.

import type { State } from '../moves.js';
import { type Way, withinLimit } from '../way.js';
import { costToGo } from './cost-to-go.js';
import type { Course } from './course.js';
import { type CostToGo, giveBack } from './table.js';
import { caughtUpWay, cheapestWay } from './traceback.js';

/**
 * The cheapest way with so many filter changes at most; undefined where none exists.
 *
 * @param present what stands in segment 0; undefined where any setting may
 * @param limit most filter changes; Infinity where there is none
 * @param waits share of its price that a cue of dials must save at segment k, or it waits
 * @param toldStack where the first cue comes at once and goes anywhere: the filters that were told last and not put on
 */
export function dialWay(
  course: Course,
  present: State | undefined,
  limit: number,
  waits: (k: number) => number = () => 0,
  toldStack?: number,
): Way | undefined {
  return withinLimit<CostToGo>(
    limit,
    (afterFilter) => costToGo(course, afterFilter),
    (costs) => {
      const way =
        present !== undefined && toldStack !== undefined
          ? caughtUpWay(course, present, toldStack, costs, waits)
          : cheapestWay(course, present, costs, waits);
      giveBack(costs(0)!);
      return way;
    },
  );
}
