// What else a person should know of a plan, in numbers. In words: english.ts.

import type { RefusalReason } from '../light/refusal.js';
import type { MoveCaution } from '../move/cautions.js';
import type { MoveFound } from '../move/finding.js';
import type { Direction } from '../sky/direction.js';
import type { RemedyChange } from './remedies/change.js';

/** What a note says of what the camera exposes, by its `kind`; times are RFC 3339 with the place's offset. */
export type ExposureNote =
  | {
      readonly kind: 'card-full';
      /** Frames that it holds. */
      readonly holds: number;
      /** Of so many. */
      readonly frameCount: number;
      /** Gigabytes for all of them. */
      readonly neededGB: number;
      /** Start of the first frame that finds no room. */
      readonly at: string;
      /** An interval at which they fit, where there is one, seconds. */
      readonly fitIntervalS?: number | undefined;
    }
  | {
      readonly kind: 'card-nearly-full';
      /** Of the card, 0 to 1. */
      readonly share: number;
    }
  | {
      readonly kind: 'battery-spent';
      /** Frames that one charge gives. */
      readonly holds: number;
      /** Of so many. */
      readonly frameCount: number;
      /** Whether the cold is counted. */
      readonly cold: boolean;
      /** Start of the first frame that finds no charge. */
      readonly at: string;
      /** Charges that the shoot takes, where that is more than two. */
      readonly needed?: number | undefined;
    }
  | {
      readonly kind: 'battery-nearly-spent';
      /** Of one charge, 0 to 1. */
      readonly share: number;
      /** Whether the cold is counted. */
      readonly cold: boolean;
    }
  | {
      /** Of what stands in the sky of the shoot; the plan's light does not follow it. */
      readonly kind: 'eclipse';
      /** Of which. */
      readonly body: 'sun' | 'moon';
      /** Share of the disc's width that is covered at the most; 1 and more in a total one. */
      readonly magnitude: number;
      /** Start of the first frame in it. */
      readonly fromAt: string;
      /** Of the last. */
      readonly toAt: string;
    }
  | {
      readonly kind: 'clocks-change';
      /** Minutes that the clocks go forward; negative back. */
      readonly byMin: number;
      /** First frame in the new time, from 1. */
      readonly frame: number;
      /** Its start, in that time. */
      readonly at: string;
    }
  | {
      /** Without lens and sensor one direction stands for the sky of the frame. */
      readonly kind: 'one-direction';
      /** Its altitude. */
      readonly viewAltitudeDeg: number;
    }
  | {
      readonly kind: 'shutter-cut';
      /** The longest, as marked. */
      readonly shutter: string;
      /** The same in true time, seconds. */
      readonly shutterS: number;
      /** Seconds. */
      readonly intervalS: number;
      /** What it leaves for a shutter, seconds. */
      readonly insideS: number;
      /** Whether each has a dark frame. */
      readonly darkFrame: boolean;
      /** Whether a move and its rest take part of it. */
      readonly moving: boolean;
    }
  | {
      readonly kind: 'bracket';
      /** Exposures in every interval. */
      readonly exposures: number;
      /** From one to the next, stops. */
      readonly stepEv: number;
      /** Exposures of the whole plan. */
      readonly count: number;
      /** The longest that the middle one may be, seconds, in true time. */
      readonly longestS: number;
      /** What ends it at night: the longest exposure at the end of the dial, or the interval that holds all. */
      readonly end: 'longest' | 'interval';
      /** The shortest that the middle one may be, seconds: the shortest exposure is at the end of the dial then. */
      readonly shortestS: number;
    }
  | {
      /** The interval with the least time to spare has less than a twentieth. */
      readonly kind: 'tight-interval';
      /** The first such frame, from 0. */
      readonly frame: number;
      /** Its start. */
      readonly at: string;
      /** Seconds, >= 0. */
      readonly spareS: number;
      /** Seconds. */
      readonly intervalS: number;
    }
  | {
      readonly kind: 'moonrise' | 'moonset';
      /** When. */
      readonly at: string;
    }
  | {
      readonly kind: 'frames-affected';
      /** Frames that a filter change may spoil. */
      readonly count: number;
    }
  | {
      readonly kind: 'stars';
      /** Longest shutters by the rules, seconds. */
      readonly rule500S: number;
      /** Absent where pixels are not known. */
      readonly npfSimpleS?: number | undefined;
      /** Absent where pixels are not known, or stars stand still. */
      readonly npfFullS?: number | undefined;
      /** Of the star that trails most, -90 to 90. */
      readonly declinationDeg: number;
      /** The plan's longest at night, seconds. */
      readonly longestS: number;
      /** Trail in that time, pixels; absent where pixels are not known. */
      readonly trailPx?: number | undefined;
    }
  | {
      readonly kind: 'sun-in-frame';
      /** Start of the first frame that it stands in. */
      readonly fromAt: string;
      /** Of the last. */
      readonly toAt: string;
      /** By how much it pulls a meter that takes the mean of the frame, at the most, stops. */
      readonly pullEv: number;
    }
  | { readonly kind: 'sun' };

/** What a note says, by its `kind`. */
export type NoteFacts =
  | ExposureNote
  | {
      /** The plan goes from the start, though a reading was taken after it. */
      readonly kind: 'under-way';
      /** Of the first frame. */
      readonly startAt: string;
      /** Of the first such reading. */
      readonly readingAt: string;
    }
  | {
      readonly kind: 'reading-refused';
      /** As metered, EV at ISO 100. */
      readonly ev100: number;
      /** Why it was not used. */
      readonly because: RefusalReason;
    }
  | {
      readonly kind: 'little-reserve';
      /** Evenings or mornings. */
      readonly direction: Direction;
      /** Of them, 0 to 1, on which the kit runs out. */
      readonly share: number;
      /** Where it does most often. */
      readonly end: 'dark' | 'bright';
      /** Stops in reserve there. */
      readonly reserveEv: number;
      /** The one change to the kit that raises the share of those held most; absent where none raises it by a twentieth. */
      readonly change?: RemedyChange | undefined;
      /** Share held with it. */
      readonly moreShare?: number | undefined;
    }
  | {
      readonly kind: 'move';
      /** What is found in the moves. */
      readonly found: MoveFound;
      /** Each alone fixes it, none or more. */
      readonly changes: readonly RemedyChange[];
    }
  | {
      readonly kind: 'move-caution';
      /** Which. */
      readonly caution: MoveCaution['kind'];
    };

/** What a note at a cue says, by its `kind`. */
export type CueNoteFacts =
  | {
      /** Where filters change: moving water and cloud look otherwise from here on. */
      readonly kind: 'blur-jump';
      /** By how much the exposure is longer than before, stops, 1 or more; negative: shorter. */
      readonly stops: number;
    }
  /** Two filters come off, or go on, at once: one after the other is no better a ramp, or none. */
  | { readonly kind: 'both-filters' }
  /** One filter comes off another that stays, or goes on it: both at once is no better a ramp, or none. */
  | { readonly kind: 'one-filter' };

/** What to know at a cue: values, and the same in English. */
export type CueNote = CueNoteFacts & {
  /** For a person, one sentence. */
  readonly text: string;
};
