// A review in each form it can take on disk.

import {
  learnedReadings,
  type PlanMade,
  type Review,
  type Shoot,
  writeReview,
  writeReviewCsv,
} from '@evenfall/core';
import { reviewChartMakers } from './chart-files.js';
import { clipRecipe } from './clip-recipe.js';
import type { Makers } from './output.js';
import { type PrintOptions, refuse } from './print-options.js';
import { Refusal } from './refusal.js';

/** A review, and where its frames lie. */
export interface Reviewed {
  readonly plan: PlanMade;
  readonly review: Review;
  /** By the name in the review. */
  readonly pathOf: (file: string) => string;
  /** The shoot that readings are for: the same one, or one to come. */
  readonly next: Shoot;
}

export function reviewMakers(look: PrintOptions): Makers<Reviewed> {
  const plain = (path: string) => refuse(look, ['paper', 'clock', 'language', 'dark'], path);
  return {
    '.json': ({ review }, path) => {
      plain(path);
      return [{ path, content: writeReview(review) }];
    },
    '.csv': ({ review }, path) => {
      plain(path);
      return [{ path, content: writeReviewCsv(review) }];
    },
    '.ffconcat': ({ review, plan, pathOf }, path) => {
      plain(path);
      return clipRecipe(review, plan, { path, pathOf });
    },
    '.yaml': (reviewed, path) => {
      plain(path);
      return [{ path, content: readingsText(reviewed) }];
    },
    ...reviewChartMakers(look),
  };
}

/** A place is the same within a kilometre: the sun is, and who knows which tripod. */
const NEAR_DEG = 0.01;

/** `readings` as they stand in a shoot file. */
function readingsText({ plan, review, next }: Reviewed): string {
  const { latitudeDeg, longitudeDeg } = plan.shoot.place;
  const isHere =
    Math.abs(next.place.latitudeDeg - latitudeDeg) < NEAR_DEG &&
    Math.abs(next.place.longitudeDeg - longitudeDeg) < NEAR_DEG;
  const isAlike = isHere && next.direction === plan.shoot.direction;
  const readings = isAlike ? learnedReadings(plan, review, next) : [];
  if (readings.length === 0) {
    const why = !isAlike ? 'elsewhere' : review.light.length === 0 ? 'not-read' : 'other-sun';
    throw new Refusal([{ kind: 'nothing-learned', why }]);
  }
  return [
    `# The light of ${plan.shoot.date}, for the shoot of ${next.date}: put this into its file.`,
    'readings:',
    ...readings.map(({ at, ev100 }) => `  - { at: "${at}", ev100: ${Number(ev100.toFixed(2))} }`),
    '',
  ].join('\n');
}
