// What a review has to tell, in numbers. In words: english.ts.

import type { FrameRun } from './frame-run.js';

/** What a note of a review says, by its `kind`; frames count from 0. */
export type ReviewNoteFacts =
  | {
      readonly kind: 'clock-off';
      /** Seconds by which the camera's clock was fast; slow where negative. */
      readonly fastS: number;
    }
  | {
      readonly kind: 'other-camera';
      /** Frames that are left out. */
      readonly count: number;
      /** The camera whose frames they are, in its own words. */
      readonly camera: string;
    }
  | {
      readonly kind: 'copies';
      /** Files that show a frame once more and are left out. */
      readonly count: number;
    }
  | {
      readonly kind: 'outside';
      /** Frames before the plan's first. */
      readonly before: number;
      /** Frames after its last. */
      readonly after: number;
    }
  | {
      readonly kind: 'missing-frames';
      /** How many. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
    }
  | {
      readonly kind: 'brackets-incomplete';
      /** Brackets of which an exposure or more is missing. */
      readonly count: number;
      /** Whose frames they are. */
      readonly frames: readonly FrameRun[];
      /** Exposures that are missing, all together. */
      readonly missing: number;
    }
  | {
      readonly kind: 'doubled-frames';
      /** Files beyond one a frame. */
      readonly count: number;
      /** Whose places they have. */
      readonly frames: readonly FrameRun[];
    }
  | {
      readonly kind: 'slipped';
      /** Intervals that were longer or shorter than planned. */
      readonly count: number;
      /** The worst, seconds; shorter where negative. */
      readonly worstS: number;
      /** After this frame. */
      readonly frame: number;
    }
  | {
      readonly kind: 'other-interval';
      /** As it was, seconds. */
      readonly intervalS: number;
      /** As planned, seconds. */
      readonly plannedS: number;
    }
  | {
      readonly kind: 'cues-off-time';
      /** Cues that came an interval or more late or early. */
      readonly count: number;
      /** The worst, by number, from 1. */
      readonly cue: number;
      /** Seconds that it was late. */
      readonly lateS: number;
    }
  | {
      readonly kind: 'cues-missed';
      /** Numbers of the cues that were never done, from 1. */
      readonly cues: readonly number[];
    }
  | {
      readonly kind: 'filter-stayed';
      /** Cue at which it should have changed, from 1. */
      readonly cue: number;
      /** What stayed on the lens; none: it stayed bare. */
      readonly filters: readonly string[];
    }
  | {
      readonly kind: 'filters-assumed';
    }
  | {
      readonly kind: 'unplanned';
      /** Frames with a setting nobody planned. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
    }
  | {
      readonly kind: 'ran-over';
      /** Frames whose exposure did not fit the interval. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
    }
  | {
      readonly kind: 'spoilt';
      /** Frames that a filter change spoilt, or may have. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
      /** Whether that was seen; else it is the plan's guess. */
      readonly isSeen: boolean;
    }
  | {
      readonly kind: 'clipped';
      /** Frames that white or black hides. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
    }
  | {
      readonly kind: 'beyond';
      /** Frames that the largest correction does not cure. */
      readonly count: number;
      /** Which. */
      readonly frames: readonly FrameRun[];
      /** That correction, stops. */
      readonly mostEv: number;
    }
  | {
      readonly kind: 'off-forecast';
      /** Stops by which the settings lie off the forecast, the median; positive is darker. */
      readonly byEv: number;
    };

/** A note of a review. */
export type ReviewNote = ReviewNoteFacts & {
  /** How much it matters; a warning may cost the clip. */
  readonly level: 'info' | 'caution' | 'warning';
  /** One or more sentences in English. */
  readonly text: string;
};
