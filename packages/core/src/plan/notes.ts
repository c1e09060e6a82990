// What a person should know about a plan beyond its numbers.

import { dialStep, timeOfStep } from '../exposure/dial.js';
import { exposingS } from '../footage/bracket.js';
import { longestTimeInside } from '../footage/frames.js';
import { opticsOf, shootGap } from '../shoot/time-left.js';
import { type ClocksBack, clockOver } from '../words/clock.js';
import { sentenceOf } from '../words/sentences.js';
import { englishExposureNotes } from './english-notes.js';
import type { Forecast } from './forecast.js';
import type { Note, NoteContext } from './note-context.js';
import { bracketNotes } from './notes-bracket.js';
import { clockNotes, eclipseNotes } from './notes-sky.js';
import { starNotes, startView } from './notes-stars.js';
import { sunInFrameNotes } from './notes-sun.js';
import { supplyNotes } from './notes-supplies.js';
import { tightNotes } from './notes-tight.js';
import type { PlanMade, PlanNote } from './types.js';

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
  'tight-interval',
  'sun-in-frame',
  'clocks-change',
  'shutter-cut',
  'bracket',
  'stars',
  'one-direction',
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
    ...supplyNotes(context),
    ...eclipseNotes(context.forecast),
    ...clockNotes(context.forecast),
    ...shutter(context),
    ...tight(context),
    ...bracketNotes(context),
    ...oneDirection(context),
    ...moon(context),
    ...affected(context),
    ...sun(context),
  ];
  return inOrderOfNotes(inWords(notes, context.clocksBack));
}

/** A plan with what is to be said of the stars and the sun in a known frame, which may move. */
export function withLensNotes(plan: PlanMade, forecast: Forecast): PlanMade {
  const optics = opticsOf(plan.shoot.camera);
  if (optics === undefined) return plan;
  const lens = { optics, start: startView(plan.shoot, forecast) };
  const notes = [...sunInFrameNotes(plan, forecast, lens), ...starNotes(plan, lens)];
  if (notes.length === 0) return plan;
  return { ...plan, notes: inOrderOfNotes([...plan.notes, ...inWords(notes, plan.clocksBack)]) };
}

function inWords(notes: readonly Note[], back: ClocksBack | undefined): PlanNote[] {
  const clock = clockOver(back);
  return notes.map((note) => ({ ...note, text: sentenceOf(englishExposureNotes, 'kind', note, clock) }));
}

function shutter({ shoot, frames }: NoteContext): Note[] {
  const { camera, intervalS } = shoot;
  const step = dialStep('shutter', camera.shutter.longest, camera.stepsPerStop);
  const shutterS = step === undefined ? 0 : timeOfStep(step, camera.stepsPerStop);
  const { gapS } = shootGap(shoot, frames.length);
  const insideS = longestTimeInside(intervalS, { ...camera, gapS });
  // Of a bracket its own note says where it ends.
  if (shutterS <= insideS || camera.bracket !== undefined) return [];
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

/** With moves each frame's step counts, which is theirs to add: moves.ts. */
function tight({ shoot: { moves, intervalS, camera }, frames }: NoteContext): Note[] {
  if (moves.length > 0) return [];
  let frame = 0;
  frames.forEach(({ shutterS }, i) => {
    if (shutterS > frames[frame].shutterS) frame = i;
  });
  const slackS = intervalS - camera.gapS - exposingS(frames[frame].shutterS, camera);
  return tightNotes({ frame, slackS }, frames, intervalS);
}

function oneDirection({ shoot: { camera, scene } }: NoteContext): Note[] {
  if (opticsOf(camera) !== undefined || scene.skyShare === 0) return [];
  return [{ level: 'info', kind: 'one-direction', viewAltitudeDeg: scene.viewAltitudeDeg }];
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
