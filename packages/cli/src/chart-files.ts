// Charts of a plan and of the light alone, in each form they can take on disk.

import {
  type ChartOptions,
  INKS,
  lightChart,
  type Paper,
  planChart,
  reviewChart,
  sheetMm,
} from '@evenfall/chart';
import { type LightTable, type PlanMade, type Review, type Shoot, writeLight } from '@evenfall/core';
import type { Makers } from './output.js';
import { type PrintOptions, refuse, wordsOf } from './print-options.js';
import type { OutputFile } from './write-files.js';

const MARGIN_MM = 6; // most printers leave 4 mm white
const POINTS_PER_MM = 72 / 25.4;

export function planChartMakers(asked: PrintOptions): Makers<PlanMade> {
  return chartMakers(
    asked,
    (plan: PlanMade, options) => planChart(plan, options),
    ({ shoot, summary }) => ({ title: shoot.title, at: summary.startAt }),
  );
}

/** The light table, and the shoot that it is of. */
export interface ShootLight {
  readonly kind: 'ok';
  readonly table: LightTable;
  readonly shoot: Shoot;
}

export function lightChartMakers(asked: PrintOptions): Makers<ShootLight> {
  const words = wordsOf(asked);
  const titleOf = ({ title }: Shoot) => (title === '' ? words.untitledLight : title);
  return {
    ...chartMakers(
      asked,
      ({ table, shoot }: ShootLight, options) =>
        lightChart(table, { ...options, title: titleOf(shoot), place: shoot.place }),
      ({ table, shoot }) => ({ title: titleOf(shoot), at: table.rows[0]!.at }),
    ),
    '.json': ({ table }, path) => {
      refuse(asked, ['paper', 'dark', 'language', 'clock'], path);
      return [{ path, content: writeLight(table) }];
    },
  };
}

export function reviewChartMakers(
  asked: PrintOptions,
): Makers<{ readonly plan: PlanMade; readonly review: Review }> {
  return chartMakers(
    asked,
    ({ plan, review }, options) => reviewChart(plan, review, options),
    ({ plan: { shoot, summary } }) => ({ title: shoot.title, at: summary.startAt }),
  );
}

/** A picture of its own size, or one that fills a sheet laid across. */
function chartMakers<Answer>(
  asked: PrintOptions,
  draw: (answer: Answer, options: ChartOptions) => string,
  about: (answer: Answer) => { readonly title: string; readonly at: string },
): Makers<Answer> {
  const words = wordsOf(asked);
  const variant = asked.dark ? 'dark' : 'print';
  return {
    '.svg': (answer, path) => {
      const size = asked.paper === undefined ? {} : chartSize(asked.paper);
      return [{ path, content: draw(answer, { ...size, variant, words }) }];
    },
    '.pdf': async (answer, path): Promise<OutputFile[]> => {
      // Loaded where a PDF is asked for: it is most of what the command loads.
      const { pdfOf } = await import('./pdf.js');
      const paper = asked.paper ?? 'a4';
      const { title, at } = about(answer);
      const { widthMm, heightMm } = sheetMm(paper);
      const made = await pdfOf([draw(answer, { ...chartSize(paper), variant, words })], {
        widthMm: heightMm,
        heightMm: widthMm,
        marginMm: MARGIN_MM,
        background: INKS[variant].paper,
        title: title === '' ? words.untitled : title,
        language: words.language,
        madeAt: new Date(at),
      });
      return [{ path, ...made }];
    },
  };
}

function chartSize(paper: Paper): { readonly width: number; readonly height: number } {
  const { widthMm, heightMm } = sheetMm(paper);
  return {
    width: (heightMm - 2 * MARGIN_MM) * POINTS_PER_MM,
    height: (widthMm - 2 * MARGIN_MM) * POINTS_PER_MM,
  };
}
