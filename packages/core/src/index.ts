export { writeCalendar } from './files/calendar.js';
export { writeCuesCsv, writeFramesCsv } from './files/csv.js';
export type { FileError, Locate } from './files/file-error.js';
export { type PlanRead, readPlan, writeLight, writePlan } from './files/plan-file.js';
export { readShoot, type ShootRead, writeShoot } from './files/shoot-file.js';
export type {
  Control,
  LightRow,
  LightTable,
  Plan,
  PlanChange,
  PlanCue,
  PlanEvent,
  PlanFrame,
  PlanInfeasible,
  PlanMade,
  PlanNote,
  PlanSummary,
  Remedy,
} from './plan.js';
export type {
  Camera,
  CloudWord,
  Crew,
  Direction,
  Facing,
  LampsWord,
  Limits,
  Look,
  NightWord,
  Place,
  ReadingEntry,
  SceneWords,
  Shoot,
  Span,
  SurfaceWord,
} from './shoot.js';
export type { SkyEvent } from './sun.js';
