// A change that would make an impossible shoot possible, in numbers. In words: english.ts.

import type { MoveChange } from '../../move/finding.js';

/** A change of kit, look or limits. */
export type KitChange =
  | {
      readonly change: 'longer-shutter';
      /** The longest, as marked. */
      readonly shutter: string;
      /** As it is. */
      readonly fromShutter: string;
      /** The interval it needs, seconds, where that is longer. */
      readonly intervalS?: number | undefined;
      /** As it is, seconds. */
      readonly fromIntervalS: number;
    }
  | {
      readonly change: 'faster-shutter';
      /** The shortest, as marked. */
      readonly shutter: string;
      /** As it is. */
      readonly fromShutter: string;
    }
  | {
      readonly change: 'higher-iso';
      /** The highest, as marked. */
      readonly iso: number;
      /** As it is. */
      readonly fromIso: number;
    }
  | {
      readonly change: 'wider-aperture' | 'narrower-aperture';
      /** As marked. */
      readonly aperture: string;
    }
  | {
      readonly change: 'another-filter';
      /** By halves, 1 or more. */
      readonly stops: number;
    }
  | {
      readonly change: 'start-filter';
      /** The one to begin with, `none` for the bare lens. */
      readonly filter: string;
      /** As it is. */
      readonly fromFilter: string;
    }
  | {
      readonly change: 'more-filter-changes';
      /** The most. */
      readonly maxFilterChanges: number;
      /** As it is. */
      readonly fromFilterChanges: number;
    }
  | {
      readonly change: 'darker-look';
      /** Stops against metered. */
      readonly nightEv: number;
      /** As it is. */
      readonly fromNightEv: number;
    }
  | {
      readonly change: 'looser-tolerance';
      /** Stops. */
      readonly toleranceEv: number;
      /** As it is. */
      readonly fromToleranceEv: number;
    }
  | {
      readonly change: 'larger-steps';
      /** Stops. */
      readonly largestStepEv: number;
      /** As it is, down to whole steps of the dial. */
      readonly fromStepEv: number;
    }
  | {
      readonly change: 'closer-cues';
      /** Seconds. */
      readonly secondsBetweenCues: number;
      /** As it is. */
      readonly fromSeconds: number;
    }
  | {
      readonly change: 'fewer-exposures';
      /** In every interval, 1 for no bracket at all. */
      readonly exposures: number;
      /** As it is. */
      readonly fromExposures: number;
    }
  | {
      readonly change: 'closer-exposures';
      /** From one exposure of the bracket to the next, stops. */
      readonly stepEv: number;
      /** As it is. */
      readonly fromStepEv: number;
    }
  | {
      readonly change: 'shorter-span';
      /**
       * By the sun, its true altitudes `fromSunAltitudeDeg` and `toSunAltitudeDeg`, or by the clock, `startAt` and
       * `endAt`, RFC 3339.
       */
      readonly span:
        | { readonly fromSunAltitudeDeg: number; readonly toSunAltitudeDeg: number }
        | { readonly startAt: string; readonly endAt: string };
    };

/** A change to a shoot by one thing alone. */
export type RemedyChange = KitChange | MoveChange;
