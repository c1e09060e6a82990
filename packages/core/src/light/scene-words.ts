// What the lens sees, as a shoot file says it. What each word stands for: words.ts.

import type { SkylinePoint } from './skyline.js';

/**
 * Which way the lens looks: counted from the sun on the horizon, "side" 90° clockwise of it; or `azimuthDeg`,
 * clockwise from north.
 */
export type Facing = 'toward-sun' | 'side' | 'away' | { readonly azimuthDeg: number };
/** Cloud in a word; {@link sceneOf} gives the numbers. */
export type CloudWord = 'clear' | 'thin' | 'broken' | 'overcast' | 'heavy';
/** The place after dark in a word; {@link sceneOf} gives the numbers. */
export type NightWord = 'remote' | 'rural' | 'suburb' | 'town' | 'city';
/** Lamps in the frame in a word; {@link sceneOf} gives the numbers. */
export type LampsWord = 'none' | 'street' | 'floodlit' | 'skyline';
/** The ground in a word; {@link sceneOf} gives the numbers. */
export type SurfaceWord = 'grass' | 'sand' | 'snow' | 'water' | 'rock' | 'city';

/**
 * When lamps come on, at dawn the other way: by the sun's altitude, from the first lamp to the last; or by the clock, RFC
 * 3339 with offset, over minutes; or not at all, for they are always lit.
 */
export type LampsOn = 'always' | LampsOnBySun | LampsOnByClock;

/** Lamps that light as it gets dark. */
export interface LampsOnBySun {
  /** The first of them, degrees. */
  readonly fromSunAltitudeDeg: number;
  /** The last, degrees. */
  readonly toSunAltitudeDeg: number;
}

/** Lamps that light at a time. */
export interface LampsOnByClock {
  /** The first of them, RFC 3339. */
  readonly fromAt: string;
  /** Minutes until all are lit, 0 to 240. */
  readonly overMin: number;
}

/** What the lens sees, as the shoot file says it. */
export interface SceneWords {
  /** Which way the lens looks. */
  readonly facing: Facing;
  /** Of the piece of sky in the frame, 0 to 90. */
  readonly viewAltitudeDeg: number;
  /** Of the frame, 0 to 1. */
  readonly skyShare: number;
  /** What the ground is; absent where `reflectance` says it. */
  readonly surface?: SurfaceWord | undefined;
  /** Of the ground, 0 to 1. */
  readonly reflectance?: number | undefined;
  /** Of what is not sky: walls and faces turned to the lens, 0 to 1; absent: none. */
  readonly uprightShare?: number | undefined;
  /** In a word, or by the `eighths` of the sky it covers, 0 to 8. */
  readonly cloud: CloudWord | { readonly eighths: number };
  /**
   * In a word; by `zenithMagArcsec2`, magnitudes in a square arcsecond of the zenith, 14 to 23; or by
   * `groundLx`, metered lux on level ground, above 0 to 200.
   */
  readonly night: NightWord | { readonly zenithMagArcsec2: number } | { readonly groundLx: number };
  /**
   * In a word; or the `ev100` a spot meter reads off them, and the `share` of the frame they fill, 0 to 1; either with
   * when they are switched `on`: absent, in civil twilight.
   */
  readonly lamps:
    | LampsWord
    | { readonly word: LampsWord; readonly on: LampsOn }
    | { readonly ev100: number; readonly share: number; readonly on?: LampsOn | undefined };
  /**
   * How high hills or houses stand before sun and moon, degrees as the eye sees them, -10 to 89: one angle all round, or
   * by direction; absent: a level horizon.
   */
  readonly skylineDeg?: number | readonly SkylinePoint[] | undefined;
}
