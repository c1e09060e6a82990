// A line as a person types it in the dark, "17:31 9.9", "1/15", "done", "lost nd6", to the line a program would send.

import {
  dialLabels,
  dialStep,
  ev100Of,
  type FilterSpec,
  filterStops,
  type ReportedSetting,
  rfc3339,
  type Shoot,
  type StepsPerStop,
  valueOfStep,
  type Zone,
} from '@evenfall/core';
import { timeTyped } from './typed-time.js';

/** What following is told, as docs/follow.md has it. */
export interface Told {
  readonly at?: string; // RFC 3339
  readonly frame?: number;
  readonly ev100?: number;
  readonly sure?: true;
  readonly jump?: true;
  readonly setting?: ReportedSetting;
  readonly lost?: string;
  readonly kit?: { readonly filters: readonly string[] };
  readonly done?: number;
  readonly missed?: number | string;
}

/** Why a line is not understood. */
export type TypedFault =
  | { readonly wrong: 'unknown'; readonly given: string }
  /** The clock is not that of the shoot. */
  | { readonly wrong: 'time-needed' }
  | { readonly wrong: 'no-such-filter'; readonly given: string; readonly filters: readonly string[] }
  /** None was told that could be done or missed. */
  | { readonly wrong: 'no-cue' };

/** What a line asks for. */
export type Typed =
  | { readonly kind: 'tell'; readonly told: Told }
  | { readonly kind: 'help' | 'ahead' | 'undo' | 'sure' | 'end' }
  | { readonly kind: 'wrong'; readonly fault: TypedFault };

/** What is known when a line is typed. */
export interface Known {
  readonly shoot: Shoot;
  readonly zone: Zone;
  /** UTC epoch milliseconds; undefined where the clock is not that of the shoot, as in a rehearsal. */
  readonly nowMs: number | undefined;
  /** UTC epoch milliseconds near which a time of day is meant. */
  readonly nearMs: number;
  /** Answered last, from 0. */
  readonly frame: number;
  /** What the camera stands at, as marked. */
  readonly setting: { readonly [Key in keyof ReportedSetting]-?: NonNullable<ReportedSetting[Key]> };
  /** Cues that may be due, the earliest first. */
  readonly cues: readonly { readonly cue: number; readonly atMs: number }[];
  /** Number of the last cue that was taken as done. */
  readonly lastCue: number | undefined;
  /** Names of filters at hand. */
  readonly filters: readonly string[];
}

type Verb = 'help' | 'ahead' | 'undo' | 'sure' | 'end' | 'done' | 'missed' | 'lost' | 'found' | 'set';

/** In every language, so that nobody has to remember which one was asked for. */
const VERBS: Readonly<Record<string, Verb>> = {
  '?': 'help',
  help: 'help',
  hilfe: 'help',
  next: 'ahead',
  weiter: 'ahead',
  undo: 'undo',
  zurück: 'undo',
  zurueck: 'undo',
  sure: 'sure',
  sicher: 'sure',
  quit: 'end',
  exit: 'end',
  end: 'end',
  ende: 'end',
  q: 'end',
  done: 'done',
  fertig: 'done',
  missed: 'missed',
  verpasst: 'missed',
  lost: 'lost',
  verloren: 'lost',
  found: 'found',
  gefunden: 'found',
  set: 'set',
  steht: 'set',
};

/** Reads a line. Never throws. */
export function readTyped(text: string, known: Known): Typed {
  const line = text.trim().replaceAll(/\s+/g, ' ');
  const given = line.length > 40 ? `${line.slice(0, 40)}…` : line;
  if (line === '') return { kind: 'tell', told: whenOf(undefined, known) };
  const unknown = wrong({ wrong: 'unknown', given });
  const asked = verbIn(line);
  if (asked !== undefined) return ofVerb(asked.verb, asked.rest, known) ?? unknown;
  const { atMs, rest } = timeTyped(line, known);
  // "18:14 done": a report of that time.
  const then = atMs === undefined ? undefined : verbIn(rest);
  if (then !== undefined) {
    const typed = ofVerb(then.verb, then.rest, { ...known, nowMs: atMs });
    return typed?.kind === 'tell' ? typed : unknown;
  }
  // A typed time is a report, which can be taken back; the next look at the clock is none.
  if (rest === '') return { kind: 'tell', told: { ...whenOf(atMs, known), sure: true } };
  const ev100 = evOf(rest, known);
  if (ev100 === undefined) return unknown;
  if (atMs === undefined && known.nowMs === undefined) return wrong({ wrong: 'time-needed' });
  return { kind: 'tell', told: { ...whenOf(atMs, known), ev100 } };
}

/** The word a line begins with, or the beginning of one that is no other; what may end the evening is typed whole. */
function verbIn(line: string): { readonly verb: Verb; readonly rest: string } | undefined {
  const [first = '', ...others] = line.split(' ');
  const [word, rest] = [first.toLowerCase(), others.join(' ')];
  if (Object.hasOwn(VERBS, word)) return { verb: VERBS[word]!, rest };
  const begun = Object.entries(VERBS)
    .filter(([whole, verb]) => word !== '' && whole.startsWith(word) && verb !== 'end')
    // "s" is "sure", and with something behind it "set".
    .filter(([, verb]) => (verb !== 'set' || rest !== '') && (verb !== 'sure' || rest === ''));
  const verbs = new Set(begun.map(([, verb]) => verb));
  return verbs.size === 1 ? { verb: begun[0]![1], rest } : undefined;
}

function ofVerb(verb: Verb, rest: string, known: Known): Typed | undefined {
  const when = whenOf(undefined, known);
  switch (verb) {
    case 'done':
    case 'missed': {
      const { atMs, rest: after } = timeTyped(rest, known);
      if (verb === 'missed' && atMs !== undefined && after === '') {
        return { kind: 'tell', told: { ...when, missed: rfc3339(atMs, known.zone) } };
      }
      if (rest !== '' && !/^\d{1,4}$/.test(rest)) return undefined;
      const cue = rest === '' ? cueMeant(verb, known) : Number(rest);
      if (cue === undefined || cue < 1) return wrong({ wrong: 'no-cue' });
      return { kind: 'tell', told: { ...when, [verb]: cue } };
    }
    case 'lost':
    case 'found': {
      const name = filterNamed(rest, known.shoot.filters);
      if (name === undefined) {
        const filters = known.shoot.filters.map((filter) => filter.name);
        return wrong({ wrong: 'no-such-filter', given: rest, filters });
      }
      if (verb === 'lost') return { kind: 'tell', told: { ...when, lost: name } };
      const filters = known.shoot.filters
        .map((filter) => filter.name)
        .filter((each) => each === name || known.filters.includes(each));
      return { kind: 'tell', told: { ...when, kit: { filters } } };
    }
    case 'set': {
      const setting = settingTyped(rest, known.shoot);
      return setting && { kind: 'tell', told: { ...when, setting } };
    }
    default:
      return rest === '' ? { kind: verb } : undefined;
  }
}

function wrong(fault: TypedFault): Typed {
  return { kind: 'wrong', fault };
}

/**
 * When a line is of: the time typed, else now; in a rehearsal the frame answered last. A person means the time as it is,
 * however long the last line was ago, and can take back a slip.
 */
function whenOf(atMs: number | undefined, { nowMs, zone, frame }: Known): Told {
  const ms = atMs ?? nowMs;
  return ms === undefined ? { frame } : { at: rfc3339(Math.floor(ms / 1000) * 1000, zone), jump: true };
}

/** The cue that "done" or "missed" alone is about: the last that is due by now; to be done, else the next. */
function cueMeant(verb: 'done' | 'missed', { cues, nowMs, lastCue }: Known): number | undefined {
  const due = cues.filter(({ atMs }) => nowMs !== undefined && atMs <= nowMs).at(-1)?.cue;
  return due ?? (verb === 'done' ? cues[0]?.cue : lastCue);
}

/** A filter by its name, or as much of it as says which: "ND 6", "nd6", "6"; "nd" where there is one. */
function filterNamed(text: string, filters: readonly FilterSpec[]): string | undefined {
  const plain = (name: string) =>
    name
      .toLowerCase()
      .replaceAll(/[\s_-]/g, '')
      .replaceAll(',', '.');
  const asked = plain(text);
  if (asked === '') return filters.length === 1 ? filters[0]!.name : undefined;
  const named = filters.filter(({ name }) => plain(name) === asked);
  const ending = filters.filter(({ name }) => plain(name).replace(/^\D+/, '') === asked);
  const beginning = filters.filter(({ name }) => plain(name).startsWith(asked));
  const [found] = [named, ending, beginning].find(({ length }) => length === 1) ?? named;
  return found?.name;
}

interface Marks {
  readonly shutter?: string;
  readonly iso?: number;
  readonly aperture?: string;
}

/** "1/15", "2 s", "f/8", "ISO 400" out of a text, and what is left of it. */
function marksIn(text: string): { readonly marks: Marks; readonly rest: string } {
  let rest = ` ${text.replaceAll(/(\d),(\d)/g, '$1.$2')} `;
  const take = (pattern: RegExp): string | undefined => {
    const found = pattern.exec(rest)?.[1];
    if (found !== undefined) rest = rest.replace(pattern, ' ');
    return found;
  };
  const iso = take(/\siso\s?(\d{1,7})(?=\s)/i);
  const aperture = take(/\sf\s?\/?\s?(\d{1,3}(?:\.\d)?)(?=\s)/i);
  const shutter =
    take(/\s(1\/\d{1,5}(?:\.\d)?)\s?s?(?=\s)/i) ?? take(/\s(\d{1,3}(?:\.\d{1,2})?)\s?(?:s|")(?=\s)/i);
  const marks = {
    ...(shutter === undefined ? {} : { shutter }),
    ...(iso === undefined ? {} : { iso: Number(iso) }),
    ...(aperture === undefined ? {} : { aperture }),
  };
  return { marks, rest: rest.trim() };
}

/** EV at ISO 100: as typed, or what the camera would meter, whatever is left out being as on the camera. */
function evOf(text: string, { shoot, setting }: Known): number | undefined {
  const ev = /^(?:ev ?)?([-−]?\d{1,2}(?:[.,]\d{1,3})?)(?: ?ev)?$/i.exec(text)?.[1];
  if (ev !== undefined) return Number(ev.replace('−', '-').replace(',', '.'));
  const { marks, rest } = marksIn(text);
  // ISO alone is no reading: it is likelier what somebody has set, and would be taken for a change of the light.
  if (rest !== '' || (marks.shutter === undefined && marks.aperture === undefined)) return undefined;
  const { shutter, iso, aperture } = { ...setting, ...marks };
  const { stepsPerStop } = shoot.camera;
  const step = (control: 'shutter' | 'iso' | 'aperture', label: string) =>
    dialStep(control, label, stepsPerStop);
  const [t, s, a] = [step('shutter', shutter), step('iso', String(iso)), step('aperture', aperture)];
  // What a dial of another make says is taken as it reads.
  const exact = {
    timeS: t === undefined ? secondsOf(shutter) : valueOfStep('shutter', t, stepsPerStop),
    iso: s === undefined ? iso : valueOfStep('iso', s, stepsPerStop),
    fNumber: a === undefined ? Number(aperture) : valueOfStep('aperture', a, stepsPerStop),
  };
  if (!Object.values(exact).every((value) => value > 0 && Number.isFinite(value))) return undefined;
  const stops = setting.filters.reduce((sum, name) => {
    const filter = shoot.filters.find((each) => each.name === name);
    return sum + (filter === undefined ? 0 : filterStops(filter));
  }, 0);
  return Math.round((ev100Of(exact) + stops) * 1000) / 1000;
}

function secondsOf(label: string): number {
  const [whole, part] = label.split('/').map(Number);
  return part === undefined ? whole! : whole! / part;
}

/** Cameras do not agree on how they mark a time: "1/2" is "0.5" here, "1/3" is "0.3". A time between marks stays as typed. */
function markOf(shutter: string, stepsPerStop: StepsPerStop): string {
  const tv = -Math.log2(secondsOf(shutter)) * stepsPerStop;
  const isMeant = (label: string) => Math.abs(dialStep('shutter', label, stepsPerStop)! - tv) < 0.3;
  const isMark = dialStep('shutter', shutter, stepsPerStop) !== undefined;
  return isMark ? shutter : (dialLabels('shutter', stepsPerStop).find(isMeant) ?? shutter);
}

/** What stands on the camera: marks, filters, "bare" for none. */
function settingTyped(text: string, { filters, camera }: Shoot): ReportedSetting | undefined {
  const { marks: typed, rest } = marksIn(text);
  const { shutter } = typed;
  const marks = shutter === undefined ? typed : { ...typed, shutter: markOf(shutter, camera.stepsPerStop) };
  if (rest === '') return Object.keys(marks).length === 0 ? undefined : marks;
  if (/^(bare|no filter|ohne( filter)?)$/i.test(rest)) return { ...marks, filters: [] };
  const names = rest.split(/ ?\+ ?/).map((name) => filterNamed(name, filters));
  return names.every((name) => name !== undefined) ? { ...marks, filters: names } : undefined;
}
