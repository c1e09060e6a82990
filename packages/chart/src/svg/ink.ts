// Ink and paper of the charts. Lines differ by weight and dash first; colour only adds, and only on screens.

import type { TwilightName } from '../plot/twilight.js';

/** Black on white, colours on white, or red on black for eyes that must stay used to the dark. */
export type Variant = 'print' | 'screen' | 'dark';

/** Colours of a picture, each `#rrggbb`. */
export interface Ink {
  /** Behind everything. */
  readonly paper: string;
  /** Letters. */
  readonly text: string;
  /** Axes and frames. */
  readonly frame: string;
  /** Lines across a panel. */
  readonly grid: string;
  /** Of the likely range. */
  readonly edge: string; // of the likely range
  /** The scene's curve. */
  readonly scene: string;
  /** The target's curve. */
  readonly target: string;
  /** The settings' steps. */
  readonly settings: string;
  /** Bands behind a panel, by how dark the sky is. */
  readonly twilight: Readonly<Record<TwilightName, string>>;
}

/**
 * The three inks. Red alone on black: green and blue would undo an eye's adaptation.
 *
 * @example
 * ```ts
 * import { INKS } from '@evenfall/chart';
 *
 * INKS.dark; // → { paper: '#000000', text: '#ff0000' }
 * ```
 */
export const INKS: Readonly<Record<Variant, Ink>> = {
  print: {
    paper: '#ffffff',
    text: '#000000',
    frame: '#000000',
    grid: '#bcbcbc',
    edge: '#505050',
    scene: '#000000',
    target: '#000000',
    settings: '#000000',
    twilight: {
      day: '#ffffff',
      civil: '#f1f1f1',
      nautical: '#e2e2e2',
      astronomical: '#d3d3d3',
      night: '#c4c4c4',
    },
  },
  screen: {
    paper: '#fdfcf9',
    text: '#1c1b19',
    frame: '#4a4843',
    grid: '#bfbcb4',
    edge: '#57544d',
    scene: '#0b4a80',
    target: '#1c1b19',
    settings: '#7d2200',
    twilight: {
      day: '#fdfcf9',
      civil: '#f1efea',
      nautical: '#e4e2dd',
      astronomical: '#d7d5d0',
      night: '#cac8c4',
    },
  },
  // Red alone: green and blue would undo an eye's adaptation. Pure red on black has a contrast of 5.25.
  dark: {
    paper: '#000000',
    text: '#ff0000',
    frame: '#ff0000',
    grid: '#7a0000',
    edge: '#c80000',
    scene: '#ff0000',
    target: '#ff0000',
    settings: '#ff0000',
    twilight: {
      day: '#320000',
      civil: '#260000',
      nautical: '#1a0000',
      astronomical: '#0d0000',
      night: '#000000',
    },
  },
};

/** Size and ink of one picture: every length below is multiplied by `unit`. */
export interface Look {
  readonly ink: Ink;
  readonly unit: number;
}

/** Look of a picture so many points wide; below 432 pt the type shrinks no further. */
export function lookFor(variant: Variant, width: number): Look {
  if (!Object.hasOwn(INKS, variant)) {
    throw new RangeError(`variant must be one of ${Object.keys(INKS).join(', ')}, got ${variant}`);
  }
  return { ink: INKS[variant], unit: Math.min(1, Math.max(0.6, width / 720)) };
}

export const TYPE = { title: 17, body: 12, label: 12.5 };
export const LINE = { fine: 1.35, line: 1.8, heavy: 2.6, hollow: 5.4 };
