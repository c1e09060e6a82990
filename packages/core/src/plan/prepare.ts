// What plan, light table and choices begin with: a shoot's span, its light, and the problem that its ramp must solve.

import type { RampProblem } from '../ramp/problem.js';
import type { NamedKit } from '../shoot/kit.js';
import type { Shoot } from '../shoot/shoot.js';
import { type ShootSpan, spanOf } from '../shoot/span.js';
import { checkWork } from '../shoot/work.js';
import { type Forecast, forecastOver } from './forecast.js';
import { problemOver } from './targets.js';

/** A shoot whose span the sun passes through. */
export interface Prepared {
  readonly kind: 'ready';
  readonly forecast: Forecast;
  readonly problem: RampProblem;
  readonly kit: NamedKit;
}

/** Span, light and problem; or why the sun does not pass through the span. */
export function prepare(shoot: Shoot): Prepared | Extract<ShootSpan, { kind: 'no-span' }> {
  const span = spanOf(shoot);
  if (span.kind === 'no-span') return span;
  checkWork(shoot, span.times.length);
  const forecast = forecastOver(shoot, span.times);
  return { kind: 'ready', forecast, ...problemOver(shoot, forecast) };
}
