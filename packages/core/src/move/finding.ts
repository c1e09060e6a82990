// What is found in moves and what would fix it, in numbers. In words: english.ts.

import type { MoveAxis } from './moves.js';
import type { Travel } from './resolve.js';
import type { FrameBudget } from './time-budget.js';

/** The frame count, interval and clip that a change of pace comes to. */
export interface Pace {
  /** Whole, 2 or more. */
  readonly frameCount: number;
  /** Seconds, > 0. */
  readonly intervalS: number;
  /** From the first frame to the last, seconds. */
  readonly recordingS: number;
  /** Seconds of clip. */
  readonly clipS: number;
}

/** One move made longer or shorter. */
export interface LengthChange {
  /** Which. */
  readonly axis: MoveAxis;
  /** Of its lengths. */
  readonly unit: Travel['unit'];
  /** Its whole way now, signed. */
  readonly from: number;
  /** Its whole way then, signed. */
  readonly to: number;
}

/** A change that fixes a move, in numbers. */
export type MoveChange =
  | ({
      readonly change: 'more-frames';
      /** Seconds left for the shutter, where that is less than the plan's longest. */
      readonly shutterS?: number | undefined;
      /** The plan's longest shutter then. */
      readonly longestS?: number | undefined;
    } & Pace)
  | ({ readonly change: 'fewer-frames' } & Pace)
  | ({
      readonly change: 'longer-recording';
      /** From the first frame to the last as it is, seconds. */
      readonly fromRecordingS: number;
    } & Pace)
  | ({
      readonly change: 'longer-interval';
      /** As it is, seconds. */
      readonly fromIntervalS: number;
      /** From the first frame to the last as it is, seconds; absent with the rest where only the interval is said. */
      readonly fromRecordingS?: number | undefined;
    } & Partial<Pace> &
      Pick<Pace, 'intervalS'>)
  | {
      readonly change: 'shorter-shutter';
      /** Longest shutter, exact seconds. */
      readonly shutterS: number;
    }
  | { readonly change: 'no-dark-frame' }
  | {
      readonly change: 'shorter-write';
      /** Seconds of each interval for writing, >= 0. */
      readonly writeS: number;
      /** As it is, where that is said. */
      readonly fromWriteS?: number | undefined;
    }
  | {
      readonly change: 'shorter-settle';
      /** Rest after a step, seconds, >= 0. */
      readonly settleS: number;
      /** As it is, where that is said. */
      readonly fromSettleS?: number | undefined;
    }
  | {
      readonly change: 'shorter-move' | 'longer-move';
      /** Whole way of each move, degrees or metres, signed. */
      readonly lengths: readonly number[];
      /** Those that change. */
      readonly changed: readonly LengthChange[];
    }
  | {
      /** Of a continuous move: at rest while the shutter is open. */
      readonly change: 'stop';
    };

/** One change that cures a finding, in numbers and in words. */
export type MoveRemedy = MoveChange & {
  /** For a person, one sentence. */
  readonly text: string;
};

/** What is found, in numbers. */
export type MoveFound =
  | ({
      readonly kind: 'no-time';
      /** From 0; the one that lacks most. */
      readonly frame: number;
      /** Seconds. */
      readonly intervalS: number;
      /** Frames that do not fit. */
      readonly failing: number;
      /** Of how many. */
      readonly frameCount: number;
    } & FrameBudget)
  | {
      readonly kind: 'gear-too-slow';
      /** Which. */
      readonly axis: MoveAxis;
      /** Of the speeds, a second. */
      readonly unit: Travel['unit'];
      /** Speed that is needed. */
      readonly speed: number;
      /** Of the motor. */
      readonly topSpeed: number;
    }
  | {
      readonly kind: 'steps-too-small';
      /** Which. */
      readonly axis: MoveAxis;
      /** Of the step. */
      readonly unit: Travel['unit'];
      /** Of the motor. */
      readonly smallestStep: number;
      /** Steps below it. */
      readonly count: number;
      /** Of how many. */
      readonly steps: number;
      /** Whether even the longest step is below it. */
      readonly all: boolean;
    }
  | {
      /** Which of the two. */
      readonly kind: 'too-fast' | 'too-slow';
      /** From 0; where it is fastest. */
      readonly frame: number;
      /** Seconds of clip in which the picture passes its own width there. */
      readonly crossingS: number;
      /** At least, or at most, for a move that is good to watch. */
      readonly limitS: number;
    }
  | {
      readonly kind: 'blur';
      /** From 0; where it is most. */
      readonly frame: number;
      /** Smear while the shutter is open, pixels. */
      readonly blurPx: number;
    };

/** Something about the moves that a person should know, with every single change that cures it. */
export type MoveFinding<Cure = MoveRemedy> = MoveFound & {
  /** How much it matters. */
  readonly level: 'info' | 'caution' | 'warning';
  /** For a person, one or more sentences. */
  readonly text: string;
  /** None or more; each alone cures it. */
  readonly remedies: readonly Cure[];
};
