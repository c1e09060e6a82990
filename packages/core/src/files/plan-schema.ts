// The plan file, evenfall-plan/1, as a schema. Its shoot is a shoot file.

import * as v from 'valibot';
import { eventSchema } from './event-schema.js';
import {
  aboveZero,
  choice,
  finite,
  flag,
  format,
  holds,
  instant,
  isGroup,
  list,
  number,
  text,
  whole,
  word,
} from './parts.js';
import { movedFrame, planMove } from './plan-move-schema.js';
import { infeasibleSchema, noteSchema } from './said-schema.js';
import { MOST_FRAMES } from './shoot-rules.js';
import { shootFileSchema } from './shoot-schema.js';

const MOST_LINES = 1000;

const planFormat = format('evenfall-plan/1');
const at = instant();
const degrees = finite("degrees of the sun's true altitude");
const ev100 = finite('EV at ISO 100');
const stops = finite('stops');
const label = text('a label', 'a mark of the dial as text', 120);
const frame = whole('a frame', 'a whole number from 0', 0, MOST_FRAMES);
const count = frame;
const fits = flag('whether it lasts, true or false');
const seconds = aboveZero('a time', 'seconds above 0', Number.MAX_SAFE_INTEGER);

const summary = v.strictObject({
  frameCount: count,
  setUpAt: at,
  startAt: at,
  endAt: at,
  clipS: seconds,
  cardNeededGB: v.exactOptional(finite('gigabytes')),
  cardFits: v.exactOptional(fits),
  batteryFits: v.exactOptional(fits),
  cardFullAt: v.exactOptional(at),
  batteryOutAt: v.exactOptional(at),
  sceneFromEv100: ev100,
  sceneToEv100: ev100,
  rampStops: stops,
  reserveDarkEv: stops,
  reserveBrightEv: stops,
  eveningsHeldShare: number('a share', 'a number from 0 to 1', 0, 1),
  worstErrorEv: stops,
  rmsErrorEv: stops,
  cueCount: count,
  objective: finite('the sum of the costs'),
});

const planFrame = v.strictObject({
  frame,
  at,
  sunAltitudeDeg: degrees,
  sceneEv100: ev100,
  lowEv100: ev100,
  highEv100: ev100,
  targetEv100: ev100,
  shutter: label,
  shutterS: seconds,
  iso: aboveZero('an ISO', 'a marked ISO', Number.MAX_SAFE_INTEGER),
  isoExact: aboveZero('an ISO', 'an exact ISO', Number.MAX_SAFE_INTEGER),
  aperture: label,
  fNumber: aboveZero('an f-number', 'an exact f-number', 1000),
  filters: list(label, 'names', 12),
  filterStops: stops,
  settingEv100: ev100,
  errorEv: stops,
  affected: flag('true or false'),
  ...movedFrame,
});

const change = v.strictObject({
  control: word(['shutter', 'iso', 'aperture', 'filter']),
  from: label,
  to: label,
});

const cue = v.strictObject({ frame, at, sunAltitudeDeg: degrees, changes: list(change, 'changes', 4, 1) });

const made = v.strictObject({
  format: planFormat,
  shoot: shootFileSchema,
  summary,
  events: list(eventSchema, 'events', MOST_LINES),
  frames: list(planFrame, 'frames', MOST_FRAMES, 1),
  cues: list(cue, 'cues', MOST_FRAMES),
  shutterTimes: v.exactOptional(list(cue, 'shutter times', MOST_FRAMES)),
  move: v.exactOptional(planMove),
  notes: list(noteSchema, 'notes', MOST_LINES),
});

const infeasible = v.strictObject({
  format: planFormat,
  shoot: shootFileSchema,
  infeasible: infeasibleSchema,
});

export const planSchema = choice([made, infeasible], { what: 'a plan', give: 'a plan file' }, (input) =>
  isGroup(input) ? (holds(input, 'infeasible') ? infeasible : made) : undefined,
);
