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
} from './calendar.js';
export { writeCuesCsv, writeFramesCsv } from './csv.js';
export { writeEvenings, writeEveningsCsv } from './evenings-file.js';
export type { Entries, FaultFacts, Give, Given, NumberHint, Phrase, Unit } from './fault.js';
export type { Fault, FileError, Locate, Path } from './file-error.js';
export { type PlanRead, readPlan, writeLight, writePlan } from './plan-file.js';
export { quotedText } from './quoted.js';
export type {
  AllOptional,
  CameraFile,
  LampsFile,
  LampsOnFile,
  MarkFile,
  MoveFile,
  SceneFile,
  ShootFile,
  TurnByFile,
  WithOptional,
} from './shoot-as-written.js';
export { readShoot, type ShootRead, writeShoot } from './shoot-file.js';
