// What the commands that begin with a shoot file are told beside it.

import type { Language } from '@evenfall/chart';
import type { PrintOptions } from '../print-options.js';

export interface Options {
  readonly language?: Language;
  readonly json?: boolean;
  readonly output?: string;
}

/** An answer that goes into a file, and how it should look there. */
export interface Written extends PrintOptions {
  readonly json?: boolean;
  readonly output: string;
}

/** Seconds from 0 to 86400, each where it was given. */
export interface CueOptions extends Options, PrintOptions {
  readonly ahead?: readonly number[]; // by which alarms come before their cue
  readonly travel?: number; // to the place
}
