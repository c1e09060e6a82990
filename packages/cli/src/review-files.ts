// A review in each form it can take on disk.

import { type PlanMade, type Review, writeReview, writeReviewCsv } from '@evenfall/core';
import { reviewChartMakers } from './chart-files.js';
import { clipRecipe } from './clip-recipe.js';
import type { Makers } from './output.js';
import { type PrintOptions, refuse } from './print-options.js';

/** A review, and where its frames lie. */
export interface Reviewed {
  readonly plan: PlanMade;
  readonly review: Review;
  /** By the name in the review. */
  readonly pathOf: (file: string) => string;
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
    ...reviewChartMakers(look),
  };
}
