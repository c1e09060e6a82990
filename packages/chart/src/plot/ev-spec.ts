// What a panel of exposure values is drawn from.

import type { EvBand } from '@evenfall/core';
import type { Look } from '../svg/ink.js';
import type { Box } from '../svg/svg.js';
import type { ChartEvent } from '../text/chart-events.js';
import type { Words } from '../text/words.js';
import type { Moment, TimeAxis } from './time-axis.js';

export interface EvPoint {
  readonly ms: number;
  readonly ev: number;
}

export interface EvSeries {
  readonly points: readonly EvPoint[];
  readonly stepped: boolean;
  readonly weight: number;
  readonly stroke: string;
  readonly dash?: string;
  readonly core?: string; // colour of the inside, where the line is drawn hollow
}

export interface BandPoint extends EvBand {
  readonly ms: number;
}

export interface EvPanelSpec {
  readonly moments: readonly Moment[];
  readonly axis: TimeAxis;
  readonly box: Box;
  readonly series: readonly EvSeries[];
  readonly band: readonly BandPoint[]; // empty where nothing is known of it
  readonly events: readonly ChartEvent[];
  readonly look: Look;
  readonly words: Words;
}
