// What a shoot was, evenfall-review/1, as a schema.

import * as v from 'valibot';
import { MOST_FRAMES } from '../shoot/work.js';
import {
  aboveZero,
  finite,
  flag,
  format,
  instant,
  list,
  number,
  phrase,
  text,
  whole,
  wholeFromZero,
  word,
} from './parts.js';
import { byWord } from './said-schema.js';

/** Files that are read at once; more than a plan has, for whoever gives a whole card. */
const MOST_FILES = 10 * MOST_FRAMES;

const at = instant();
const ev100 = finite('ev100');
const stops = finite('stops');
const seconds = finite('seconds');
const label = text('label', 120, 0, phrase('dial-mark'));
const names = list(label, 'names', 12);
const file = text('name of a file', 4000, 1);
const frame = wholeFromZero('frame', MOST_FRAMES);
const count = wholeFromZero('number', MOST_FILES);
const cue = wholeFromZero('cue', MOST_FRAMES);
const isSo = v.exactOptional(v.literal(true));

const summary = v.strictObject({
  plannedFrames: count,
  takenFrames: count,
  intervalS: v.exactOptional(seconds),
  clockFastS: seconds,
  rmsErrorEv: stops,
  largestOffsetEv: stops,
  mostEv: stops,
  stepBeforeEv: stops,
  stepAfterEv: stops,
  justNoticeableEv: stops,
  whiteCdM2: finite('cd-per-m2'),
  lightFrom: word(['forecast', 'readings', 'levels']),
});

const reviewFrame = v.strictObject({
  file,
  frame: v.nullable(frame),
  at,
  shutter: label,
  shutterS: aboveZero('time', 'seconds'),
  iso: aboveZero('ISO', 'marked-iso', undefined, { give: 'number', unit: 'marked-iso' }),
  isoExact: aboveZero('ISO', 'exact-iso', undefined, { give: 'number', unit: 'exact-iso' }),
  aperture: label,
  fNumber: aboveZero('f-number', 'exact-f-number', 1000, { give: 'number', unit: 'exact-f-number' }),
  filters: names,
  filterStops: stops,
  settingEv100: ev100,
  plannedEv100: v.exactOptional(ev100),
  sceneEv100: ev100,
  targetEv100: ev100,
  offsetEv: stops,
  flickerEv: v.exactOptional(stops),
  beyondEv: v.exactOptional(stops),
  readEv100: v.exactOptional(ev100),
  clipped: isSo,
  spoilt: isSo,
  doubled: isSo,
  unplanned: isSo,
  ranOver: isSo,
  shows: v.exactOptional(file),
  exposures: v.exactOptional(list(v.strictObject({ file, byEv: stops }), 'exposures', 9, 1)),
  missingEv: v.exactOptional(list(stops, 'exposures', 9, 1)),
});

const reviewCue = v.strictObject({
  cue,
  frame,
  at,
  controls: list(word(['shutter', 'iso', 'aperture', 'filter']), 'names', 4, 1),
  lateS: v.nullable(seconds),
  doneFrame: v.exactOptional(whole('frame', -MOST_FILES, MOST_FILES)),
  seen: flag(),
});

const runs = list(v.strictObject({ from: frame, to: frame }), 'frames', MOST_FRAMES);
const which = { count, frames: runs };

const note = byWord(
  'kind',
  {
    'clock-off': { fastS: seconds },
    'other-camera': { count, camera: text('camera', 400) },
    copies: { count },
    outside: { before: count, after: count },
    'missing-frames': which,
    'brackets-incomplete': { ...which, missing: count },
    'doubled-frames': which,
    slipped: { count, worstS: seconds, frame },
    'other-interval': { intervalS: seconds, plannedS: seconds },
    'cues-off-time': { count, cue, lateS: seconds },
    'cues-missed': { cues: list(cue, 'cues', MOST_FRAMES) },
    'filter-stayed': { cue, filters: names },
    'filters-assumed': {},
    unplanned: which,
    'ran-over': which,
    spoilt: { ...which, isSeen: flag() },
    clipped: which,
    beyond: { ...which, mostEv: stops },
    'off-forecast': { byEv: stops },
  },
  { level: word(['info', 'caution', 'warning']), text: text('text', 2000, 0, phrase('line')) },
);

export const reviewSchema = v.strictObject({
  format: format('evenfall-review/1'),
  title: text('title', 200),
  summary,
  frames: list(reviewFrame, 'frames', MOST_FILES),
  cues: list(reviewCue, 'cues', MOST_FRAMES),
  missingFrames: list(frame, 'frames', MOST_FRAMES),
  forecast: v.exactOptional(
    v.strictObject({
      count,
      offsetEv: stops,
      spreadEv: stops,
      worstEv: stops,
      inRangeShare: number('share', 'number', 0, 1),
    }),
  ),
  light: list(
    v.strictObject({
      at,
      sunAltitudeDeg: number('sun altitude', 'degrees-of-true-sun', -90, 90),
      ev100,
      forecastEv100: ev100,
    }),
    'rows',
    MOST_FRAMES,
  ),
  notes: list(note, 'notes', 1000),
});
