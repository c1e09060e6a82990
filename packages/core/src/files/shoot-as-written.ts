// A shoot file as one writes it: what may be left out is optional, and a mark of a dial may be a number. The schema decides;
// a test holds this against it. Apart from the schema, so that the types a program imports do not lead to its library.

import type { FilterSpec } from '../exposure/filter.js';
import type { Bracket } from '../footage/bracket.js';
import type { Look } from '../light/look.js';
import type { LampsOn, SceneWords } from '../light/scene-words.js';
import type { PicturePoint } from '../move/angle.js';
import type { SlideGear, SlideMove, TurnBy, TurnGear, TurnMove } from '../move/moves.js';
import type { Crew, Limits } from '../ramp/problem.js';
import type { SomeWeights } from '../ramp/weights.js';
import type { Camera, ReadingEntry, Span } from '../shoot/shoot.js';
import type { Direction } from '../sky/direction.js';
import type { Place } from '../sky/place.js';

/** The same group with these keys optional. */
type Less<Group, Key extends keyof Group> = Omit<Group, Key> & {
  readonly [Each in Key]?: Group[Each] | undefined;
};
/** All of them optional. */
type Some<Group> = Less<Group, keyof Group>;

/** A mark of a dial as written: text, or a number whose text is the mark. */
type Mark = string | number;

type CameraFile = Less<
  Omit<Camera, 'shutter' | 'aperture' | 'bracket'>,
  'stepsPerStop' | 'bulb' | 'gapS' | 'darkFrame'
> & {
  readonly shutter: { readonly shortest: Mark; readonly longest: Mark };
  readonly aperture: Mark | { readonly widest: Mark; readonly narrowest: Mark };
  readonly bracket?: Less<Bracket, 'betweenS'> | undefined;
};

type LampsOnFile =
  | Exclude<LampsOn, { fromAt: string }>
  | { readonly fromAt: string; readonly overMin?: number | undefined };

type LampsFile =
  | Extract<SceneWords['lamps'], string>
  | { readonly word: Extract<SceneWords['lamps'], string>; readonly on: LampsOnFile }
  | { readonly ev100: number; readonly share: number; readonly on?: LampsOnFile | undefined };

type SceneFile = Some<Omit<SceneWords, 'lamps'>> & { readonly lamps?: LampsFile | undefined };

type TurnByFile =
  | Exclude<TurnBy, { fromPoint: PicturePoint }>
  | (Omit<Extract<TurnBy, { fromPoint: PicturePoint }>, 'fromPoint' | 'toPoint'> & {
      readonly fromPoint: Some<PicturePoint>;
      readonly toPoint: Some<PicturePoint>;
    });

type MoveFile =
  | (Less<Omit<TurnMove, 'by' | 'gear'>, 'mode' | 'ease'> & {
      readonly by: TurnByFile;
      readonly gear?: Less<TurnGear, 'settleS'> | undefined;
    })
  | (Less<Omit<SlideMove, 'gear'>, 'mode' | 'ease' | 'toward'> & {
      readonly gear?: Less<SlideGear, 'settleS'> | undefined;
    });

/**
 * A shoot file, `evenfall-shoot/1`, as one writes it; {@link readShoot} checks it and fills in what is left out. Keys, ranges
 * and defaults: docs/formats.md.
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
  readonly limits?: Some<Limits> | undefined;
  /** Prices that differ from the defaults of docs/ramp.md. */
  readonly weights?: SomeWeights | undefined;
  /** At most one an axis. */
  readonly moves?: readonly MoveFile[] | undefined;
}
