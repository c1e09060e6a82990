// What can be wrong with a file, as data: one record a kind, with the values it speaks of. The English sentences stand in
// english-faults.ts.

import type { DialControl, StepsPerStop } from '../exposure/dial.js';
import type { MoveFaultFacts } from '../move/fault.js';

/** A value of a file as a fault shows it: text cut short, a number, or what sort of thing it is. */
export type Given = string | number | boolean | { readonly sort: 'nothing' | 'list' | 'keys' | 'function' };

/** What a number counts. */
export type Unit =
  | 'number'
  | 'whole'
  | 'degrees'
  | 'degrees-from-north'
  | 'degrees-of-true-sun'
  | 'degrees-per-s'
  | 'degrees-per-s2'
  | 'metres'
  | 'metres-per-s'
  | 'metres-per-s2'
  | 'degrees-or-metres'
  | 'degrees-or-metres-per-s'
  | 'degrees-or-metres-per-s2'
  | 'millimetres'
  | 'pixels'
  | 'seconds'
  | 'minutes'
  | 'stops'
  | 'ev'
  | 'ev-darker-below-0'
  | 'ev100'
  | 'ev-per-min'
  | 'density'
  | 'factor'
  | 'megabytes'
  | 'gigabytes'
  | 'eighths'
  | 'lux'
  | 'cd-per-m2'
  | 'mag-per-arcsec2'
  | 'frames-per-s'
  | 'widths-per-s'
  | 'share-of-time'
  | 'share-of-disc'
  | 'price'
  | 'sum-of-costs'
  | 'marked-iso'
  | 'exact-iso'
  | 'exact-f-number';

/** What a list holds. */
export type Entries =
  | 'filters'
  | 'moves'
  | 'readings'
  | 'look-rows'
  | 'skyline-points'
  | 'events'
  | 'missing'
  | 'rows'
  | 'names'
  | 'changes'
  | 'frames'
  | 'cues'
  | 'shutter-times'
  | 'exposures'
  | 'notes'
  | 'travels'
  | 'findings'
  | 'lines'
  | 'remedies'
  | 'lengths'
  | 'changed-lengths'
  | 'evenings';

/** What would be right, where no rule of numbers or words says it. */
export type Phrase =
  | 'value'
  | 'true-or-false'
  | 'whether-it-lasts'
  | 'date'
  | 'plain-date'
  | 'time'
  | 'zone'
  | 'line'
  | 'plan-file'
  | 'steps-per-stop'
  | 'bracket-frames'
  | 'shortest-shutter'
  | 'longest-shutter'
  | 'f-number'
  | 'f-number-or-range'
  | 'iso'
  | 'dial-mark'
  | 'filter'
  | 'skyline'
  | 'look'
  | 'track-or-metres'
  | 'move'
  | 'lamps-on'
  | 'curve';

/**
 * What to give instead, told apart by `give`. Numbers of a `unit` go from `from` to `to`, ends included; text has from
 * `least` to `most` characters; a list is one `of` entries; `words` are those that may stand there, `keys` those of a
 * group, `groups` the keys of every group that may stand there, `key` the one whose word tells groups apart; a `phrase`
 * names what no rule says.
 */
export type Give =
  | { readonly give: 'range'; readonly unit: Unit; readonly from: number; readonly to: number }
  /** Above 0; at most `to`, where there is a most. */
  | { readonly give: 'above-zero'; readonly unit: Unit; readonly to?: number | undefined }
  | { readonly give: 'at-least'; readonly unit: Unit; readonly from: number }
  | { readonly give: 'number'; readonly unit: Unit }
  /** One line of so many characters. */
  | { readonly give: 'text'; readonly least: number; readonly most: number }
  | { readonly give: 'list'; readonly of: Entries }
  | { readonly give: 'word'; readonly words: readonly string[] }
  /** One of the words, or all keys of one of the groups. */
  | {
      readonly give: 'shapes';
      readonly words: readonly string[];
      readonly groups: readonly (readonly string[])[];
    }
  /** All of these keys. */
  | { readonly give: 'keys'; readonly keys: readonly string[] }
  /** A group told apart by the word under this key. */
  | { readonly give: 'keys-by'; readonly key: string }
  | { readonly give: 'phrase'; readonly phrase: Phrase };

/** What is likely to be wrong with text that was meant as a number. */
export type NumberHint =
  | { readonly hint: 'no-quotes' }
  | { readonly hint: 'no-unit' }
  /** `number` is what was meant, with its point. */
  | { readonly hint: 'point'; readonly number: string };

/**
 * What is wrong with a shoot or plan file, told apart by `kind`. In all kinds alike:
 *
 * - `given` is the value that stands there; `what` it should have been, in English; `give` what would be right, with a
 *   `hint` where it is text that was meant as a number.
 * - `words` and `keys` are those that may stand there, `nearest` the one most likely meant (of marks, one or the two
 *   around it), `right` what would be right, `ours` the format that is read, `of` what is counted.
 * - `least`, `most` and `leastS` (seconds) are limits that would have to be kept, `count` and `got` what was counted.
 * - `control` is the dial, in `stepsPerStop`, whose marks go from `first` to `last`; `mark` is the one on the wrong side
 *   of `other`.
 * - `fromYear` and `toYear` are the years allowed, `zone` the time zone, `day` the civil day that it falls on, `date`
 *   the shoot's, `startAt` its start; `direction`, `from` and `to` (degrees) its span.
 * - `intervalS`, `gapS`, `shutter` and `darkFrame` are the shoot's; `frameCount`, `stacks` (of filters), `apertures` and
 *   `isos` what it comes to; `byChanges`, whether its limit on filter changes adds to that.
 * - `altitudeDeg` is a row's sun altitude, `beforeDeg` that of the row before; a reading lies on one `side` of the frame
 *   that starts at `frameAt`, where `mostHours` before the first are allowed.
 * - `frame` is not `after` the one before it, or not `before` the end.
 */
export type FaultFacts =
  | MoveFaultFacts
  /** `what` names in English what the value should have been: "latitude". */
  | {
      readonly kind: 'wrong-value';
      readonly given: Given;
      readonly what: string;
      readonly give: Give;
      readonly hint?: NumberHint | undefined;
    }
  | { readonly kind: 'not-text'; readonly given: Given }
  | {
      readonly kind: 'unknown-word';
      readonly given: Given;
      readonly words: readonly string[];
      readonly nearest?: string | undefined;
    }
  | { readonly kind: 'later-format'; readonly given: Given; readonly ours: string }
  | { readonly kind: 'empty-list'; readonly of: Entries; readonly least: number }
  | { readonly kind: 'long-list'; readonly count: number; readonly most: number }
  | { readonly kind: 'missing-key'; readonly give: Give }
  | { readonly kind: 'unknown-key'; readonly nearest: string }
  /** A key with its value behind a colon and no space; `right` has the space. */
  | { readonly kind: 'key-without-space'; readonly right: Given }
  | { readonly kind: 'number-cut-at-comma' }
  | { readonly kind: 'not-together'; readonly keys: readonly string[] }
  | { readonly kind: 'no-group'; readonly given: Given; readonly keys: readonly string[] }
  | { readonly kind: 'too-deep'; readonly most: number }
  | { readonly kind: 'too-large'; readonly most: number }
  /** `nearest`: one mark or two; none where the text is no number. */
  | {
      readonly kind: 'not-on-dial';
      readonly given: Given;
      readonly control: DialControl;
      readonly stepsPerStop: StepsPerStop;
      readonly nearest: readonly string[];
      readonly first: string;
      readonly last: string;
    }
  /** The longest, highest or narrowest `mark` lies on the wrong side of `other`, the other end. */
  | {
      readonly kind: 'range-reversed';
      readonly control: DialControl;
      readonly mark: string;
      readonly other: string;
    }
  | { readonly kind: 'unknown-zone'; readonly given: Given }
  | { readonly kind: 'no-such-date'; readonly given: Given }
  | {
      readonly kind: 'no-such-time';
      readonly given: Given;
      readonly fromYear: number;
      readonly toYear: number;
    }
  | {
      readonly kind: 'year-out-of-reach';
      readonly given: Given;
      readonly fromYear: number;
      readonly toYear: number;
    }
  | { readonly kind: 'date-skipped'; readonly given: Given; readonly zone: string }
  | {
      readonly kind: 'sun-goes-the-other-way';
      readonly direction: 'dusk' | 'dawn';
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'end-before-start'; readonly given: Given; readonly startAt: Given }
  | { readonly kind: 'another-day'; readonly given: Given; readonly day: string; readonly date: string }
  | {
      readonly kind: 'too-many-frames';
      readonly intervalS: number;
      readonly most: number;
      readonly of: 'day' | 'span';
      readonly leastS: number;
    }
  | {
      readonly kind: 'interval-too-short';
      readonly intervalS: number;
      readonly shutter: string;
      readonly darkFrame: boolean;
      /** In an interval; of a bracket `shutter` is the shortest. */
      readonly exposures: number;
      /** Seconds of all pauses between them. */
      readonly pausesS: number;
      readonly gapS: number;
      readonly leastS: number;
    }
  /** `leastS` where a longer interval would do; `byChanges` where a limit on filter changes makes it more work. */
  | {
      readonly kind: 'too-much-work';
      readonly intervalS: number;
      readonly frameCount: number;
      readonly stacks: number;
      readonly apertures: number;
      readonly isos: number;
      readonly leastS?: number | undefined;
      readonly byChanges: boolean;
    }
  | { readonly kind: 'bulb-needs-rig' }
  | {
      readonly kind: 'bracket-off-dial';
      /** From one exposure of the bracket to the next, stops. */
      readonly stepEv: number;
      readonly stepsPerStop: number;
    }
  | {
      readonly kind: 'bracket-too-wide';
      /** From the bracket's longest exposure to its shortest, stops. */
      readonly wideEv: number;
      /** From the camera's longest shutter to its shortest, stops. */
      readonly kitEv: number;
    }
  | { readonly kind: 'filter-named-twice'; readonly given: Given }
  | { readonly kind: 'filter-misread'; readonly given: Given }
  | { readonly kind: 'unknown-start-filter'; readonly given: Given; readonly nearest?: Given | undefined }
  | { readonly kind: 'lamps-on-by-rising-sun'; readonly from: number; readonly to: number }
  | { readonly kind: 'look-not-rising'; readonly altitudeDeg: number; readonly beforeDeg: number }
  | {
      readonly kind: 'reading-of-another-time';
      readonly given: Given;
      readonly side: 'after-last' | 'before-first';
      readonly frameAt: string;
      readonly mostHours: number;
    }
  | { readonly kind: 'count-differs'; readonly got: number; readonly right: number }
  /** A frame's start does not follow from the first frame's and the interval. */
  | { readonly kind: 'frame-at-another-time'; readonly given: Given; readonly intervalS: number }
  | {
      readonly kind: 'frame-out-of-order';
      readonly frame: number;
      readonly after: number;
      readonly before: number;
    };

/** Longest piece of a file that a fault repeats, in characters. */
const LONGEST_SHOWN = 40;

/** A value as a fault shows it. */
export function givenOf(value: unknown): Given {
  if (typeof value === 'string') {
    return value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value;
  }
  if (typeof value === 'number' || typeof value === 'boolean') return value;
  if (value === null || value === undefined) return { sort: 'nothing' };
  if (Array.isArray(value)) return { sort: 'list' };
  if (typeof value === 'object') return { sort: 'keys' };
  return typeof value === 'function' ? { sort: 'function' } : String(value);
}
