// The plan file, evenfall-plan/1, as a schema. Its shoot is a shoot file.

import * as v from 'valibot';
import { MOST_FRAMES } from '../shoot/work.js';
import { clocksBackSchema, eventSchema } from './event-schema.js';
import {
  aboveZero,
  choice,
  finite,
  flag,
  format,
  holds,
  instant,
  isGroup,
  kindOf,
  list,
  number,
  phrase,
  text,
  wholeFromZero,
  word,
} from './parts.js';
import { movedFrame, planMove } from './plan-move-schema.js';
import { cueNoteSchema, infeasibleSchema, noteSchema } from './said-schema.js';
import { shootFileSchema } from './shoot-schema.js';

const MOST_LINES = 1000;

const planFormat = format('evenfall-plan/1');
const at = instant();
const degrees = number('sun altitude', 'degrees-of-true-sun', -90, 90);
// Beyond any light and any kit: twelve filters of 30 stops on one another are 360.
const ev100 = number('EV', 'ev100', -1000, 1000);
const stops = number('number of stops', 'stops', -1000, 1000);
const label = text('label', 120, 0, phrase('dial-mark'));
const frame = wholeFromZero('frame', MOST_FRAMES);
const count = frame;
const fits = flag('whether-it-lasts');
const seconds = aboveZero('time', 'seconds');

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
  eveningsHeldShare: number('share', 'number', 0, 1),
  worstErrorEv: stops,
  rmsErrorEv: stops,
  cueCount: count,
  objective: finite('sum-of-costs'),
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
  bracketShortest: v.exactOptional(label),
  bracketLongest: v.exactOptional(label),
  iso: aboveZero('ISO', 'marked-iso', undefined, { give: 'number', unit: 'marked-iso' }),
  isoExact: aboveZero('ISO', 'exact-iso', undefined, { give: 'number', unit: 'exact-iso' }),
  aperture: label,
  fNumber: aboveZero('f-number', 'exact-f-number', 1000, { give: 'number', unit: 'exact-f-number' }),
  filters: list(label, 'names', 12),
  filterStops: stops,
  settingEv100: ev100,
  errorEv: stops,
  affected: flag(),
  ...movedFrame,
});

const change = v.strictObject({
  control: word(['shutter', 'iso', 'aperture', 'filter']),
  from: label,
  to: label,
});

const cue = v.strictObject({
  frame,
  at,
  sunAltitudeDeg: degrees,
  changes: list(change, 'changes', 4, 1),
  notes: v.exactOptional(list(cueNoteSchema, 'notes', 4, 1)),
});

const made = v.strictObject({
  format: planFormat,
  kind: kindOf('ok'),
  shoot: shootFileSchema,
  summary,
  events: list(eventSchema, 'events', MOST_LINES),
  frames: list(planFrame, 'frames', MOST_FRAMES, 1),
  cues: list(cue, 'cues', MOST_FRAMES),
  shutterTimes: v.exactOptional(list(cue, 'shutter-times', MOST_FRAMES)),
  move: v.exactOptional(planMove),
  notes: list(noteSchema, 'notes', MOST_LINES),
  clocksBack: v.exactOptional(clocksBackSchema),
});

const infeasible = v.strictObject({
  format: planFormat,
  kind: kindOf('infeasible'),
  shoot: shootFileSchema,
  infeasible: infeasibleSchema,
  clocksBack: v.exactOptional(clocksBackSchema),
});

export const planSchema = choice([made, infeasible], { what: 'plan', give: phrase('plan-file') }, (input) =>
  isGroup(input) ? (holds(input, 'infeasible') ? infeasible : made) : undefined,
);
