// What plans and light tables say, each by the word that tells its kind and with the values that it speaks of.

import * as v from 'valibot';
import type { RefusalReason } from '../light/refusal.js';
import type { MoveFinding, MoveFound } from '../move/finding.js';
import type { EveningInfeasible } from '../plan/evenings.js';
import type { CueNote } from '../plan/note.js';
import type { RemedyChange } from '../plan/remedies/change.js';
import type { PlanInfeasible, PlanNote, Remedy, WhyInfeasible } from '../plan/types.js';
import type { MissingEvent } from '../sky/events.js';
import type { WhyNoPass } from '../sky/missing.js';
import { eventName } from './event-schema.js';
import {
  choice,
  finite,
  flag,
  instant,
  isGroup,
  list,
  phrase,
  text,
  wholeFromZero,
  word,
  wordMessage,
} from './parts.js';
import { shootChangeSchema } from './shoot-schema.js';

/** Groups of keys told apart by the word under one key; `common` stands in all. */
export function byWord<
  const Key extends string,
  const Shapes extends Readonly<Record<string, v.ObjectEntries>>,
  const Common extends v.ObjectEntries,
>(key: Key, shapes: Shapes, common: Common) {
  type Any = {
    [Name in keyof Shapes & string]: { [K in Key]: Name } & KeysOf<Shapes[Name]> & KeysOf<Common>;
  }[keyof Shapes & string];
  const known = new Map(
    Object.entries(shapes).map(([name, entries]) => [
      name,
      v.strictObject({ [key]: word([name]), ...entries, ...common }),
    ]),
  );
  // Of an unknown word, the fault is the word's.
  const ofUnknown = v.variant(key, [...known.values()], wordMessage([...known.keys()]));
  const any = choice(
    [...known.values()] as v.GenericSchema[],
    { what: 'group of keys', give: { give: 'keys-by', key } },
    (input) =>
      isGroup(input) ? ((known.get(String(input[key])) ?? ofUnknown) as v.GenericSchema) : undefined,
  );
  return any as unknown as v.GenericSchema<Any, Any>;
}

type KeysOf<Entries extends v.ObjectEntries> = v.InferOutput<v.StrictObjectSchema<Entries, undefined>>;

/** That no kind of a union lacks its shape. */
type EveryKind<Kind extends string> = Readonly<Record<Kind, v.ObjectEntries>>;

const line = text('text', 2000, 0, phrase('line'));
const label = text('label', 120, 0, phrase('dial-mark'));
const seconds = finite('seconds');
const degrees = finite('degrees');
const stops = finite('stops');
const ev100 = finite('ev100');
const share = finite('number', { give: 'range', unit: 'number', from: 0, to: 1 });
const pixels = finite('pixels');
const count = wholeFromZero('number', Number.MAX_SAFE_INTEGER);
const yes = flag();
const at = instant();
const direction = word(['dusk', 'dawn']);
const axis = word(['pan', 'tilt', 'slide']);
const unit = word(['deg', 'm']);
const length = finite('degrees-or-metres');
const level = word(['info', 'caution', 'warning']);
const optional = v.exactOptional;

/** What every interval holds beside the shutter. */
export const gap = v.strictObject({ writeS: seconds, moveS: seconds, settleS: seconds, gapS: seconds });

const because = byWord(
  'kind',
  {
    'sun-does-not-turn': { direction, altitudeDeg: degrees },
    'sun-passes-another-day': { direction, altitudeDeg: degrees },
    'sun-falls-short': {
      direction,
      fromDeg: degrees,
      toDeg: degrees,
      wantedFromDeg: degrees,
      wantedToDeg: degrees,
    },
  } satisfies EveryKind<WhyNoPass['kind']>,
  {},
);

const sunLevel = { horizon: yes, reachedDeg: degrees, levelDeg: degrees };

/** An event of the sky that does not come. */
export const missingSchema: v.GenericSchema<MissingEvent> = byWord(
  'kind',
  {
    'sun-stays-above': sunLevel,
    'sun-stays-below': sunLevel,
    'sun-does-not-pass': { rises: yes, levelDeg: degrees },
    'moon-stays-up': {},
    'moon-stays-down': {},
    'moon-does-not-pass': { rises: yes },
  } satisfies EveryKind<MissingEvent['kind']>,
  { name: eventName, why: line },
);

const pace = { frameCount: count, intervalS: seconds, recordingS: seconds, clipS: seconds };
const changed = list(v.strictObject({ axis, unit, from: length, to: length }), 'changed-lengths', 3);
const lengths = list(length, 'lengths', 3);
const span = shootChangeSchema.entries.span.wrapped;

const CHANGES = {
  'longer-shutter': {
    shutter: label,
    fromShutter: label,
    intervalS: optional(seconds),
    fromIntervalS: seconds,
  },
  'faster-shutter': { shutter: label, fromShutter: label },
  'higher-iso': { iso: count, fromIso: count },
  'wider-aperture': { aperture: label },
  'narrower-aperture': { aperture: label },
  'another-filter': { stops },
  'start-filter': { filter: line, fromFilter: line },
  'more-filter-changes': { maxFilterChanges: count, fromFilterChanges: count },
  'darker-look': { nightEv: stops, fromNightEv: stops },
  'looser-tolerance': { toleranceEv: stops, fromToleranceEv: stops },
  'larger-steps': { largestStepEv: stops, fromStepEv: stops },
  'closer-cues': { secondsBetweenCues: seconds, fromSeconds: seconds },
  'fewer-exposures': { exposures: count, fromExposures: count },
  'closer-exposures': { stepEv: stops, fromStepEv: stops },
  'shorter-span': { span },
  'more-frames': { ...pace, shutterS: optional(seconds), longestS: optional(seconds) },
  'fewer-frames': pace,
  'longer-recording': { ...pace, fromRecordingS: seconds },
  'longer-interval': {
    intervalS: seconds,
    fromIntervalS: seconds,
    frameCount: optional(count),
    recordingS: optional(seconds),
    fromRecordingS: optional(seconds),
    clipS: optional(seconds),
  },
  'shorter-shutter': { shutterS: seconds },
  'no-dark-frame': {},
  'shorter-write': { writeS: seconds, fromWriteS: optional(seconds) },
  'shorter-settle': { settleS: seconds, fromSettleS: optional(seconds) },
  'shorter-move': { lengths, changed },
  'longer-move': { lengths, changed },
  stop: {},
} satisfies EveryKind<RemedyChange['change']>;
const remedies = list(
  byWord('change', CHANGES, {
    text: line,
    apply: shootChangeSchema,
    reserveEv: optional(stops),
    spareS: optional(seconds),
    clip: optional(v.strictObject({ clipS: seconds, fromClipS: seconds })),
    reserveText: optional(line),
  }),
  'remedies',
  1000,
);

const speed = { frame: count, crossingS: seconds, limitS: seconds };
const FOUND = {
  'no-time': {
    frame: count,
    intervalS: seconds,
    failing: count,
    frameCount: count,
    shutterS: seconds,
    darkS: seconds,
    writeS: seconds,
    moveS: seconds,
    settleS: seconds,
    slackS: seconds,
  },
  'gear-too-slow': { axis, unit, speed: length, topSpeed: length },
  'steps-too-small': { axis, unit, smallestStep: length, count, steps: count, all: yes },
  'too-fast': speed,
  'too-slow': speed,
  blur: { frame: count, blurPx: pixels },
} satisfies EveryKind<MoveFound['kind']>;

/** Something found in the moves, with what would fix it. */
export const findingSchema: v.GenericSchema<MoveFinding<Remedy>> = byWord('kind', FOUND, {
  level,
  text: line,
  remedies,
});

const refusal = byWord(
  'reason',
  {
    impossible: { ev100, sunAltitudeDeg: degrees, limitEv100: ev100 },
    contradictory: { movedEv: stops, otherEv100: ev100, minutes: finite('minutes'), allowedEv: stops },
    superseded: {},
  } satisfies EveryKind<RefusalReason['reason']>,
  {},
);

/** A note at a cue. */
export const cueNoteSchema: v.GenericSchema<CueNote> = byWord(
  'kind',
  { 'blur-jump': { stops }, 'both-filters': {}, 'one-filter': {} } satisfies EveryKind<CueNote['kind']>,
  { text: line },
);

/** A note on a plan. */
export const noteSchema: v.GenericSchema<PlanNote> = byWord(
  'kind',
  {
    'under-way': { startAt: at, readingAt: at },
    'card-full': {
      holds: count,
      frameCount: count,
      neededGB: finite('gigabytes'),
      at,
      fitIntervalS: optional(seconds),
    },
    'card-nearly-full': { share },
    'battery-spent': { holds: count, frameCount: count, cold: yes, at, needed: optional(count) },
    'battery-nearly-spent': { share, cold: yes },
    'reading-refused': { ev100, because: refusal },
    move: {
      found: byWord('kind', FOUND, {}),
      changes: list(byWord('change', CHANGES, {}), 'changes', 1000),
    },
    'little-reserve': {
      direction,
      share,
      end: word(['dark', 'bright']),
      reserveEv: stops,
      change: optional(byWord('change', CHANGES, {})),
      moreShare: optional(share),
    },
    eclipse: { body: word(['sun', 'moon']), magnitude: finite('share-of-disc'), fromAt: at, toAt: at },
    'clocks-change': { byMin: finite('minutes'), frame: count, at },
    'sun-in-frame': { fromAt: at, toAt: at, pullEv: stops },
    'one-direction': { viewAltitudeDeg: degrees },
    'shutter-cut': {
      shutter: label,
      shutterS: seconds,
      intervalS: seconds,
      insideS: seconds,
      darkFrame: yes,
      moving: yes,
    },
    bracket: {
      exposures: count,
      stepEv: stops,
      count,
      longestS: seconds,
      end: word(['longest', 'interval']),
      shortestS: seconds,
    },
    'tight-interval': { frame: count, at, spareS: seconds, intervalS: seconds },
    stars: {
      rule500S: seconds,
      npfSimpleS: optional(seconds),
      npfFullS: optional(seconds),
      declinationDeg: degrees,
      longestS: seconds,
      trailPx: optional(pixels),
    },
    moonrise: { at },
    moonset: { at },
    'frames-affected': { count },
    sun: {},
    'move-caution': {
      caution: word(['pinch', 'drop', 'overhead', 'trip', 'wind', 'law', 'track-ends', 'rigging']),
    },
  } satisfies EveryKind<PlanNote['kind']>,
  { level, text: line },
);

const frameShort = { frame: count, at, shortfallEv: stops, worstShortfallEv: stops };

const REASONS = {
  'too-dark': { ...frameShort, gap: optional(gap) },
  'too-bright': frameShort,
  'too-fast': {
    ...frameShort,
    belowHalfClick: optional(v.strictObject({ toleranceEv: stops, halfClickEv: stops })),
  },
  'no-time': {
    gap,
    intervalS: seconds,
    darkFrame: yes,
    exposures: optional(count),
    pausesS: optional(seconds),
  },
  'no-span': { date: line, because },
} satisfies EveryKind<WhyInfeasible['reason']>;

/** Why a shoot has no plan, and what would give it one. */
export const infeasibleSchema: v.GenericSchema<PlanInfeasible['infeasible']> = byWord('reason', REASONS, {
  text: line,
  remedies,
});

/** Why an evening has no plan. */
export const reasonSchema: v.GenericSchema<EveningInfeasible['infeasible']> = byWord('reason', REASONS, {
  text: line,
});
