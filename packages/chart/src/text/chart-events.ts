// What is named on a chart at its time: events of sun and moon, and where the clocks change.

import type { PlanEvent } from '@evenfall/core';
import type { Moment } from '../plot/time-axis.js';
import { offsetMs } from './local-time.js';

export interface ChartEvent extends Moment {
  readonly name: PlanEvent['name'] | 'clocks-forward' | 'clocks-back';
}

/** The events, and the first of the moments at which clocks show another offset than at the first of all. */
export function chartEvents(events: readonly PlanEvent[], moments: readonly Moment[]): ChartEvent[] {
  const offset = ({ at }: Moment) => at.slice(-6);
  const first = moments[0]!;
  const changed = moments.find((moment) => offset(moment) !== offset(first));
  if (changed === undefined) return [...events];
  const { at, sunAltitudeDeg } = changed;
  const name = offsetMs(at) > offsetMs(first.at) ? 'clocks-forward' : 'clocks-back';
  return [...events, { name, at, sunAltitudeDeg }];
}
