// A shoot file as one writes it: what may be left out is optional, and a mark of a dial may be a number. The schema decides;
// a test holds this against it. Apart from the schema, so that the types a program imports do not lead to its library.

import type { FilterSpec } from '../exposure/filter.js';
import type { Bracket } from '../footage/bracket.js';
import type { Look } from '../light/look.js';
import type { LampsOnByClock, LampsOnBySun, SceneWords } from '../light/scene-words.js';
import type { PicturePoint } from '../move/angle.js';
import type { SlideGear, SlideMove, TurnBy, TurnByPoints, TurnGear, TurnMove } from '../move/moves.js';
import type { Crew, Limits } from '../ramp/problem.js';
import type { SomeWeights } from '../ramp/weights.js';
import type { Camera, ReadingEntry, Span } from '../shoot/shoot.js';
import type { Direction } from '../sky/direction.js';
import type { Place } from '../sky/place.js';

/** The same group with these keys optional. */
export type WithOptional<Group, Key extends keyof Group> = Omit<Group, Key> & {
  readonly [Each in Key]?: Group[Each] | undefined;
};
/** The same group with every key optional. */
export type AllOptional<Group> = WithOptional<Group, keyof Group>;

/** A mark of a dial as written: text, or a number whose text is the mark. */
export type MarkFile = string | number;

/** The camera of a shoot file, as one writes it. */
export type CameraFile = WithOptional<
  Omit<Camera, 'shutter' | 'aperture' | 'bracket'>,
  'stepsPerStop' | 'bulb' | 'gapS' | 'darkFrame'
> & {
  /** Marks of its dial that may be used. */
  readonly shutter: {
    /** The shortest. */
    readonly shortest: MarkFile;
    /** The longest. */
    readonly longest: MarkFile;
  };
  /** The mark that is held, or those between which it may be turned. */
  readonly aperture:
    | MarkFile
    | {
        /** Smallest f-number. */
        readonly widest: MarkFile;
        /** Largest f-number. */
        readonly narrowest: MarkFile;
      };
  /** Several exposures in every interval. */
  readonly bracket?: WithOptional<Bracket, 'betweenS'> | undefined;
};

/** When lamps come on. */
export type LampsOnFile = 'always' | LampsOnBySun | WithOptional<LampsOnByClock, 'overMin'>;

/** Lamps in the frame. */
export type LampsFile =
  | Extract<SceneWords['lamps'], string>
  | {
      /** Which lamps. */
      readonly word: Extract<SceneWords['lamps'], string>;
      /** When they come on. */
      readonly on: LampsOnFile;
    }
  | {
      /** Of what they light, EV at ISO 100. */
      readonly ev100: number;
      /** Share of the frame that they light, 0 to 1. */
      readonly share: number;
      /** When they come on; by default as it gets dark. */
      readonly on?: LampsOnFile | undefined;
    };

/** The scene. */
export type SceneFile = AllOptional<Omit<SceneWords, 'lamps'>> & {
  /** Lamps in the frame. */
  readonly lamps?: LampsFile | undefined;
};

/** How far a pan or a tilt goes. */
export type TurnByFile =
  | Exclude<TurnBy, TurnByPoints>
  | (Omit<TurnByPoints, 'fromPoint' | 'toPoint'> & {
      /** In the middle at first. */
      readonly fromPoint: AllOptional<PicturePoint>;
      /** In the middle at the end. */
      readonly toPoint: AllOptional<PicturePoint>;
    });

/** A move. */
export type MoveFile =
  | (WithOptional<Omit<TurnMove, 'by' | 'gear'>, 'mode' | 'ease'> & {
      /** How far. */
      readonly by: TurnByFile;
      /** What its motor can do. */
      readonly gear?: WithOptional<TurnGear, 'settleS'> | undefined;
    })
  | (WithOptional<Omit<SlideMove, 'gear'>, 'mode' | 'ease' | 'toward'> & {
      /** What its motor can do. */
      readonly gear?: WithOptional<SlideGear, 'settleS'> | undefined;
    });

/**
 * A shoot file, `evenfall-shoot/1`, as one writes it; {@link readShoot} checks it and fills in what is left out. Keys,
 * ranges and defaults: `schema/evenfall-shoot-1.schema.json` in this package.
 */
export interface ShootFile {
  readonly format: 'evenfall-shoot/1';
  /** For people. */
  readonly title?: string | undefined;
  /** Where the camera stands. */
  readonly place: Place;
  /** Local civil date, YYYY-MM-DD. */
  readonly date: string;
  /** Which way the light goes; default dusk. */
  readonly direction?: Direction | undefined;
  /** From where to where; default 6° to -12° of the sun's altitude at dusk, the other way at dawn. */
  readonly span?: Span | undefined;
  /** Seconds from one frame's start to the next, above 0 to 86400. */
  readonly intervalS: number;
  /** Frames a second of the clip; default 24. */
  readonly clipFps?: number | undefined;
  /** What the dials can do. */
  readonly camera: CameraFile;
  /** Those owned; default none. */
  readonly filters?: readonly FilterSpec[] | undefined;
  /** Whether two may be on the lens at once; default not. */
  readonly stackFilters?: boolean | undefined;
  /** Name of the filter that must be on the lens at first; absent: free. */
  readonly startFilter?: string | undefined;
  /** What the lens sees. */
  readonly scene?: SceneFile | undefined;
  /** How far the picture may darken; default -1.5 stops at night. */
  readonly look?: Look | undefined;
  /** Meter readings taken so far, in any order. */
  readonly readings?: readonly ReadingEntry[] | undefined;
  /** Who turns the dials; default a hand. */
  readonly crew?: Crew | undefined;
  /** What the schedule may ask. */
  readonly limits?: AllOptional<Limits> | undefined;
  /** Prices of the ramp that differ from those of the crew, {@link rampWeights}. */
  readonly weights?: SomeWeights | undefined;
  /** At most one an axis. */
  readonly moves?: readonly MoveFile[] | undefined;
}
