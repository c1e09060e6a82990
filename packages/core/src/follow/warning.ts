// What following warns of, as data.

import type { DialControl } from '../exposure/dial.js';
import type { RefusalReason } from '../light/refusal.js';

/** A mark as it was reported. */
export interface ReportedMark {
  /** Which dial. */
  readonly control: DialControl;
  /** As marked. */
  readonly mark: string;
}

/** What no camera of the shoot says. */
export type UnknownMark =
  | {
      /** Which dial. */
      readonly control: DialControl;
      /** As reported: text in quotes, cut short. */
      readonly given: string;
    }
  | {
      readonly control: 'filter';
      /** As reported, in brackets: text in quotes, cut short. */
      readonly given: string;
      /** Names of what may be on the lens, one list for each choice. */
      readonly stacks: readonly (readonly string[])[];
    };

/** What a warning says, by its `kind`. Frames count from 0; times are RFC 3339 with the place's offset. */
export type FollowWarningFacts =
  | {
      /** A reading far from what was expected; not used unless it goes on. */
      readonly kind: 'reading-doubted';
      /** As metered, EV at ISO 100. */
      readonly ev100: number;
      /** Brighter than expected by, stops; negative: darker. */
      readonly differsEv: number;
    }
  | {
      /** It went on: the light has stepped. */
      readonly kind: 'reading-believed';
      /** Brighter than expected by, stops; negative: darker. */
      readonly differsEv: number;
    }
  | {
      /** No scene gives it. */
      readonly kind: 'reading-impossible';
      /** Why, in numbers. */
      readonly because: RefusalReason;
    }
  | {
      /** Its time is not one that a reading may have now. */
      readonly kind: 'reading-old';
      /** As metered, EV at ISO 100. */
      readonly ev100: number;
      /** `doubtful-time`: it comes with a time that is doubted itself. */
      readonly reason: 'older-than-used' | 'to-come' | 'another-day' | 'doubtful-time';
    }
  | {
      /** The meter gave no number. */
      readonly kind: 'reading-failed';
      /** What is no number. */
      readonly what: 'ev' | 'time';
      /** As given: "-Infinity". */
      readonly given: string;
    }
  | {
      /** None for a while: the forecast is carried on. */
      readonly kind: 'no-reading';
      /** Since the last one used. */
      readonly minutes: number;
    }
  | {
      /** Earlier than what was answered. */
      readonly kind: 'clock-back';
      /** Frames back, >= 1. */
      readonly frames: number;
      /** That the time names. */
      readonly frame: number;
      /** Its start. */
      readonly at: string;
      /** Whether the clock is taken to have been set back; else the setting is held. */
      readonly believed: boolean;
    }
  | {
      /** Frames were passed over, further than cues were told. */
      readonly kind: 'clock-ahead';
      readonly reason: 'past-cues-told';
      /** Frames passed over. */
      readonly frames: number;
      /** The first of them, for which cues were told. */
      readonly toldFrames: number;
    }
  | {
      /** Frames were passed over, and with them cues of a rig. */
      readonly kind: 'clock-ahead';
      readonly reason: 'cues-not-done';
      /** Cues taken as not done, >= 1. */
      readonly cues: number;
    }
  | {
      /** So far ahead that it asks to be confirmed; not believed yet. */
      readonly kind: 'jump-doubted';
      readonly reason: 'far-ahead';
      /** That was asked for. */
      readonly frame: number;
      /** Its start. */
      readonly at: string;
      /** From the frame answered last. */
      readonly minutes: number;
    }
  | {
      /** Past the last frame, long before it; not believed yet. */
      readonly kind: 'jump-doubted';
      readonly reason: 'past-the-last';
      /** That was asked for. */
      readonly frame: number;
      /** Of the shoot. */
      readonly frameCount: number;
    }
  | {
      /** A frame or a time that cannot be. */
      readonly kind: 'time-unknown';
      /** Which of the two. */
      readonly what: 'frame' | 'time';
      /** As given: "1.5". */
      readonly given: string;
    }
  | {
      /** The first frame asked for is not the first of the shoot. */
      readonly kind: 'joined-late';
      /** That was asked for. */
      readonly frame: number;
    }
  | {
      /** After the last frame. */
      readonly kind: 'over';
      /** Of the shoot. */
      readonly frameCount: number;
    }
  | {
      /** A cue was done late. */
      readonly kind: 'cue-late';
      /** From 1. */
      readonly cue: number;
      /** By so many, >= 1. */
      readonly lateFrames: number;
      /** From which it stands. */
      readonly frame: number;
    }
  | {
      /** A cue was not done. */
      readonly kind: 'cue-missed';
      /** From 1. */
      readonly cue: number;
      /** When it was due; absent where the reported setting tells that it was not done. */
      readonly sinceFrame?: number | undefined;
      /** When a later cue turned the same controls, so that they stand as they should; absent where none did. */
      readonly untilFrame?: number | undefined;
    }
  | {
      /** A report of a cue that cannot be meant. */
      readonly kind: 'cue-unknown';
      /** As reported. */
      readonly cue: number;
      /** It was said to be done, or to be missed. */
      readonly reason: 'neither-last-nor-next' | 'not-told';
    }
  | {
      /** A report of a cue by its time, at which none was due. */
      readonly kind: 'cue-unknown';
      readonly reason: 'none-then';
      /** As reported. */
      readonly at: string;
    }
  | {
      /** The reported setting is not one the kit may stand at. */
      readonly kind: 'outside-kit';
      /** One or more. */
      readonly outside: readonly ReportedMark[];
    }
  | {
      /** The reported setting is none of this camera. */
      readonly kind: 'setting-unknown';
      /** One or more. */
      readonly unknown: readonly UnknownMark[];
    }
  | {
      /** A changed kit has marks or filters that this camera does not have: it is left as it was. */
      readonly kind: 'kit-unknown';
      /** One or more. */
      readonly unknown: readonly UnknownMark[];
    }
  | {
      /** A changed kit leaves no mark of a dial, or no time that fits the interval: it is left as it was. */
      readonly kind: 'kit-empty';
      /** Which dial. */
      readonly control: 'shutter' | 'iso';
    }
  | {
      /** A filter change has not been done twice or more in a row. */
      readonly kind: 'filter-refused';
      /** So many, >= 2. */
      readonly times: number;
      /** That was to be on the lens; empty for the bare lens. */
      readonly filters: readonly string[];
      /** That is on it. */
      readonly standing: readonly string[];
    }
  | {
      /** The light will leave what the kit can follow, or has left it. */
      readonly kind: 'out-of-reach';
      /** Whether it is so now. */
      readonly now: boolean;
      /** The first. */
      readonly frame: number;
      /** Its start. */
      readonly at: string;
      /** At which end of the kit. */
      readonly end: 'dark' | 'bright';
      /** At most, beyond tolerance, stops. */
      readonly worstEv: number;
    }
  | {
      /** It was told that the light leaves the kit: it does not any more. */
      readonly kind: 'within-reach';
      /** At which end of the kit. */
      readonly end: 'dark' | 'bright';
    }
  | {
      /** The plan could not keep to tolerance: the light changes faster than the limits on cues let it be followed. */
      readonly kind: 'too-fast';
      /** The first beyond tolerance. */
      readonly frame: number;
      /** Its start. */
      readonly at: string;
      /** At most, beyond tolerance, stops. */
      readonly worstEv: number;
    };

/** Something that a person should know now. */
export type FollowWarning = FollowWarningFacts & {
  /** For a person, one sentence or more in English. */
  readonly text: string;
};

/** What a warning is about. */
export type FollowWarningKind = FollowWarningFacts['kind'];
