// What a plan file holds of the moves: in every frame, and once for all. Keys and meaning: docs/moves.md.

import * as v from 'valibot';
import { MOST_FRAMES } from '../shoot/work.js';
import {
  aboveZero,
  choice,
  finite,
  isGroup,
  list,
  phrase,
  text,
  whole,
  wholeFromZero,
  word,
} from './parts.js';
import { findingSchema, gap } from './said-schema.js';

const seconds = finite('seconds');
const degrees = finite('degrees');
const metres = finite('metres');
const steps = v.exactOptional(
  whole('number of steps', Number.MIN_SAFE_INTEGER, Number.MAX_SAFE_INTEGER, {
    give: 'number',
    unit: 'whole',
  }),
);
const widthsPerS = finite('widths-per-s');
const frame = wholeFromZero('frame', MOST_FRAMES);
const line = text('text', 2000, 0, phrase('line'));

/** Keys of a frame where the shoot has moves. */
export const movedFrame = {
  panDeg: v.exactOptional(degrees),
  tiltDeg: v.exactOptional(degrees),
  slideM: v.exactOptional(metres),
  panSteps: steps,
  tiltSteps: steps,
  slideSteps: steps,
  bracketS: v.exactOptional(seconds),
  darkS: v.exactOptional(seconds),
  writeS: v.exactOptional(seconds),
  moveS: v.exactOptional(seconds),
  settleS: v.exactOptional(seconds),
  slackS: v.exactOptional(seconds),
  widthsPerS: v.exactOptional(widthsPerS),
  blurPx: v.exactOptional(finite('pixels')),
};

const slope = v.strictObject({ trapezoid: finite('share-of-time') });
const easeWord = word(['linear', 'smoothstep', 'quintic']);

const travel = v.strictObject({
  axis: word(['pan', 'tilt', 'slide']),
  unit: word(['deg', 'm']),
  length: finite('degrees-or-metres'),
  mode: word(['stopped', 'continuous']),
  ease: choice([easeWord, slope], { what: 'ease', give: phrase('curve') }, (input) =>
    isGroup(input) ? slope : easeWord,
  ),
  motor: v.strictObject({
    settleS: seconds,
    moveS: v.exactOptional(seconds),
    topSpeed: v.exactOptional(finite('degrees-or-metres-per-s')),
    acceleration: v.exactOptional(finite('degrees-or-metres-per-s2')),
    smallestStep: v.exactOptional(finite('degrees-or-metres')),
  }),
  toward: v.exactOptional(word(['side', 'forward'])),
  nearestM: v.exactOptional(metres),
});

/** The moves of a plan. */
export const planMove = v.strictObject({
  travels: list(travel, 'travels', 3),
  gap,
  tightest: v.strictObject({ frame, slackS: seconds }),
  fastest: v.exactOptional(
    v.strictObject({
      frame,
      widthsPerS,
      crossingS: aboveZero('time', 'seconds'),
    }),
  ),
  findings: list(findingSchema, 'findings', 100),
  lines: list(v.strictObject({ whole: line, start: line, end: line }), 'lines', 3),
});
