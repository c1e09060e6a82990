// What notes are made from.

import type { RampProblem } from '../ramp/problem.js';
import type { Shoot } from '../shoot/shoot.js';
import type { ClocksBack } from '../words/clock.js';
import type { Forecast } from './forecast.js';
import type { ExposureNote, NoteFacts } from './note.js';
import type { PlanEvent, PlanFrame, PlanNote, PlanSummary } from './types.js';

/** A plan but for its notes. */
export interface NoteContext {
  readonly shoot: Shoot;
  readonly forecast: Forecast;
  readonly problem: RampProblem;
  readonly frames: readonly PlanFrame[];
  readonly summary: PlanSummary;
  readonly events: readonly PlanEvent[];
  readonly clocksBack: ClocksBack | undefined;
}

/** A note on moves, readings or a short reserve, before it is put into words. */
export type MoveNote = Exclude<NoteFacts, ExposureNote> & Pick<PlanNote, 'level'>;

/** Another note before it is put into words. */
export type Note = ExposureNote & Pick<PlanNote, 'level'>;
