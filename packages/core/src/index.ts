export { type PlanChoice, planChoices } from './choices.js';
export {
  civilDay,
  frameTimes,
  parseRfc3339,
  rfc3339,
  wallToMs,
  type Zone,
  zoneOf,
} from './clock.js';
export { cuesOf, stackText } from './cues.js';
export {
  type DialControl,
  dialLabel,
  dialLabels,
  dialStep,
  fNumberOfStep,
  isoOfStep,
  type StepsPerStop,
  timeOfStep,
} from './dial.js';
export {
  apertureAv,
  type Exposure,
  ev100Of,
  ev100ToLuminance,
  fitTime,
  INCIDENT_C,
  illuminanceToEv100,
  isoSv,
  luminanceToEv100,
  REFLECTED_K,
  type TimeFit,
  timeTv,
} from './exposure.js';
export { type CalendarText, type CalendarTexts, writeCalendar } from './files/calendar.js';
export { writeCuesCsv, writeFramesCsv } from './files/csv.js';
export type { FileError, Locate } from './files/file-error.js';
export { type PlanRead, readPlan, writeLight, writePlan } from './files/plan-file.js';
export { readShoot, type ShootRead, writeShoot } from './files/shoot-file.js';
export { type FilterSpec, type FilterStack, filterStacks, filterStops } from './filter.js';
export { type FollowState, followFrame, startFollow } from './follow/follow.js';
export { type FollowLines, followLines, type LinesState, type LinesStep } from './follow/lines.js';
export type {
  FollowAnswer,
  FollowCue,
  FollowInput,
  FollowOptions,
  FollowSetting,
  FollowWarning,
  FollowWarningKind,
  ReportedSetting,
} from './follow/types.js';
export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  type Subject,
} from './footage/interval-advice.js';
export { coldFactorAt, framesOnCard, framesOnCharge, type Lasting, lastingOf } from './footage/supplies.js';
export {
  exactFps,
  type Footage,
  type FootageGiven,
  FRAME_RATES,
  footageOf,
  longestMarkedShutter,
  type MarkedTime,
  wholeSeconds,
} from './footage.js';
export { type Forecast, forecastLight, type ShootSpan, shootSpan } from './forecast.js';
export {
  bandAfterReading,
  type EvBand,
  forecastBand,
  type Known,
  METER_EV,
  NOTHING_KNOWN,
} from './light/band.js';
export { type CieSkyType, cieGradation, cieIndicatrix, cieSky } from './light/cie-sky.js';
export { type Cloud, cloudOfEighths, overcastSkyToward } from './light/cloud.js';
export { driftEv } from './light/drift.js';
export { shareOfEvenings } from './light/evenings.js';
export { MEAN_DISTANCE_KM, type Moon, moonIlluminanceLx, moonlitSkyCdM2 } from './light/moon.js';
export { magToLuminanceCdM2, type Night, nightOfGroundLx, nightOfZenith } from './light/night.js';
export {
  addReading,
  type Correction,
  correctedBandAt,
  correctedEv100At,
  correctForecast,
  type Forecast as LightForecast,
  type Reading,
  type Refusal,
  startCorrection,
} from './light/reading.js';
export { type Lamps, type Scene, type SceneLight, type Sky, sceneLight } from './light/scene.js';
export { clearSkyLuminanceCdM2 } from './light/sky.js';
export { clearIlluminanceLx, sunIlluminanceLx } from './light/sunlight.js';
export { CLOUDS, GREY_REFLECTANCE, knownOf, LAMPS, NIGHTS, SURFACES, sceneOf } from './light/words.js';
export { lookOffsetEv } from './look.js';
export { angleOfSizeDeg, fieldOfViewDeg, turnBetweenBearings, turnBetweenPoints } from './move/angle.js';
export { easeAt } from './move/ease.js';
export type { SkyView } from './move/sky-view.js';
export { starAdvice } from './move/stars.js';
export type {
  Ease,
  FrameBudget,
  Lens,
  Move,
  MoveAxis,
  MoveFault,
  MoveFinding,
  MoveFrame,
  MoveLines,
  MoveMode,
  MovePlan,
  MoveRemedy,
  MoveRequest,
  Optics,
  PicturePoint,
  Sensor,
  SlideBy,
  SlideGear,
  SlideMove,
  StarAdvice,
  Travel,
  TurnBy,
  TurnGear,
  TurnMove,
  Way,
} from './move.js';
export { movePlan } from './move.js';
export { lightTable, planShoot } from './plan.js';
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
  PlanMove,
  PlanNote,
  PlanSummary,
  Remedy,
  ShootChange,
} from './plan-format.js';
export type {
  RampFrame,
  RampKit,
  RampProblem,
  RampResult,
} from './ramp/problem.js';
export { rampExists, solveRamp } from './ramp/solve.js';
export { type RampWeights, rampWeights } from './ramp/weights.js';
export { eveningsHeldShare, type Reserve, reserveOf } from './reserve.js';
export { opticsOf, shootGap, tightestOf } from './room.js';
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
export { clipLengthS, frameCountOf, longestTimeInside, type Supplies, suppliesFor } from './shoot.js';
export { skyTrack } from './sky-track.js';
export type { SkyEvent } from './sun.js';
export {
  type Crossing,
  crossings,
  type EventTime,
  horizonAzimuth,
  type MissingEvent,
  type SkyPosition,
  type SunPass,
  skyEvents,
  sunAndMoon,
  sunPass,
  sunPosition,
} from './sun.js';
export { rampProblemOf, targetsOf } from './targets.js';
