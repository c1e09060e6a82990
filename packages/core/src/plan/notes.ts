// What a person should know about a plan beyond its numbers.

import { dialStep, timeOfStep } from '../exposure/dial.js';
import { longestTimeInside } from '../footage/frames.js';
import { instant } from '../shoot/span.js';
import { shootGap } from '../shoot/time-left.js';
import { rfc3339 } from '../sky/clock.js';
import { sentenceOf } from '../words/sentences.js';
import { englishExposureNotes } from './english-notes.js';
import type { Note, NoteContext } from './note-context.js';
import { clockNotes, eclipseNotes } from './notes-sky.js';
import { supplyNotes } from './notes-supplies.js';
import { eveningsHeldShare, frameReserves } from './reserve.js';
import type { PlanNote } from './types.js';

/** Where notes of a level stand, by their kind. */
const ORDER: readonly PlanNote['kind'][] = [
  'under-way',
  'card-full',
  'card-nearly-full',
  'battery-spent',
  'battery-nearly-spent',
  'reading-refused',
  'move',
  'eclipse',
  'little-reserve',
  'clocks-change',
  'shutter-cut',
  'stars',
  'moonrise',
  'moonset',
  'frames-affected',
  'sun',
  'move-caution',
];
const LEVELS = ['warning', 'caution', 'info'];

/** Warnings first; of one kind, as they come. */
export function inOrderOfNotes(notes: readonly PlanNote[]): PlanNote[] {
  const rank = ({ level, kind }: PlanNote) => LEVELS.indexOf(level) * ORDER.length + ORDER.indexOf(kind);
  return [...notes].sort((a, b) => rank(a) - rank(b));
}

/** Notes on what the camera exposes. */
export function exposureNotes(context: NoteContext): PlanNote[] {
  const notes: Note[] = [
    ...underWay(context),
    ...supplyNotes(context),
    ...readings(context),
    ...eclipseNotes(context.forecast),
    ...reserve(context),
    ...clockNotes(context.forecast),
    ...shutter(context),
    ...moon(context),
    ...affected(context),
    ...sun(context),
  ];
  return inOrderOfNotes(
    notes.map((note) => ({ ...note, text: sentenceOf(englishExposureNotes, 'kind', note) })),
  );
}

/** A reading taken after the start: the plan changes a past that has been shot, and says so before all else. */
function underWay({ shoot, forecast, summary }: NoteContext): Note[] {
  const startMs = instant(summary.startAt);
  const after = shoot.readings.map(({ at }) => instant(at)).filter((atMs) => atMs > startMs);
  if (after.length === 0) return [];
  const readingAt = rfc3339(Math.min(...after), forecast.zone);
  return [{ level: 'warning', kind: 'under-way', startAt: summary.startAt, readingAt }];
}

function readings({ forecast }: NoteContext): Note[] {
  return forecast.correction.refused.map(({ reading, text: _, ...because }) => ({
    level: 'warning',
    kind: 'reading-refused',
    ev100: reading.ev100,
    because,
  }));
}

/** Below this share of evenings a person should know before leaving that the kit may fall short. */
const HELD_ENOUGH = 0.8;

function reserve({ shoot, summary, forecast, problem }: NoteContext): Note[] {
  const { reserveDarkEv: darkEv, reserveBrightEv: brightEv, eveningsHeldShare: held } = summary;
  if (held >= HELD_ENOUGH) return [];
  const kept = frameReserves(problem);
  const heldDark = eveningsHeldShare({ ...kept, brightEv: Number.POSITIVE_INFINITY }, forecast);
  const heldBright = eveningsHeldShare({ ...kept, darkEv: Number.POSITIVE_INFINITY }, forecast);
  const end = heldDark < heldBright ? 'dark' : 'bright';
  const more =
    end === 'dark'
      ? { ...kept, darkEv: kept.darkEv.map((ev) => ev + 1) }
      : { ...kept, brightEv: kept.brightEv.map((ev) => ev + 3) };
  return [
    {
      level: 'caution',
      kind: 'little-reserve',
      direction: shoot.direction,
      share: 1 - held,
      end,
      reserveEv: end === 'dark' ? darkEv : brightEv,
      moreShare: eveningsHeldShare(more, forecast),
    },
  ];
}

function shutter({ shoot, frames }: NoteContext): Note[] {
  const { camera, intervalS } = shoot;
  const step = dialStep('shutter', camera.shutter.longest, camera.stepsPerStop);
  const shutterS = step === undefined ? 0 : timeOfStep(step, camera.stepsPerStop);
  const { gapS } = shootGap(shoot, frames.length);
  const insideS = longestTimeInside(intervalS, { ...camera, gapS });
  if (shutterS <= insideS) return [];
  return [
    {
      level: 'info',
      kind: 'shutter-cut',
      shutter: camera.shutter.longest,
      shutterS,
      intervalS,
      insideS,
      darkFrame: camera.darkFrame,
      moving: gapS > camera.gapS,
    },
  ];
}

function moon({ summary, events }: NoteContext): Note[] {
  const inside = (at: string) =>
    Date.parse(at) >= Date.parse(summary.startAt) && Date.parse(at) <= Date.parse(summary.endAt);
  return events.flatMap(({ name, at }): Note[] =>
    (name === 'moonrise' || name === 'moonset') && inside(at) ? [{ level: 'info', kind: name, at }] : [],
  );
}

function affected({ frames }: NoteContext): Note[] {
  const count = frames.filter(({ affected }) => affected).length;
  return count === 0 ? [] : [{ level: 'info', kind: 'frames-affected', count }];
}

function sun({ forecast }: NoteContext): Note[] {
  const seen = forecast.sky.some(({ sunAltitudeDeg }) => sunAltitudeDeg > -1);
  return seen ? [{ level: 'caution', kind: 'sun' }] : [];
}
