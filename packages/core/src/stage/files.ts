/**
 * Shoot and plan files, light tables, CSV, calendars. Values and text, no disk.
 *
 * @module @evenfall/core/files
 */

export {
  type CalendarOptions,
  type CalendarText,
  type CalendarTexts,
  writeCalendar,
} from '../files/calendar.js';
export { writeCuesCsv, writeFramesCsv } from '../files/csv.js';
export type { Fault, FileError, Locate, Path } from '../files/file-error.js';
export { type PlanRead, readPlan, writeLight, writePlan } from '../files/plan-file.js';
export { readShoot, type ShootRead, writeShoot } from '../files/shoot-file.js';
export type { LightTable, Plan, PlanMade } from '../plan-format.js';
export type { Shoot } from '../shoot.js';
