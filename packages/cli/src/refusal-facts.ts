// Why the command does not do what was asked, as data; each language has a record of sentences over the kinds.

import type { FaultFacts, WhyInfeasible } from '@evenfall/core';
import type { FrameColumn } from './photo-columns.js';
import type { SlipFacts } from './slips.js';
import type { SystemFault } from './system-error.js';

/** One line's worth, told apart by `kind`. */
export type RefusalFacts =
  /** A fault of a file; `where` is its file, line and key, or an option. */
  | { readonly kind: 'fault'; readonly where: string; readonly fault: FaultFacts }
  | {
      readonly kind: 'not-yaml';
      readonly source: string;
      readonly line?: number;
      /** The line as it stands in the file, perhaps cut short. */
      readonly shown?: string;
      readonly slip: SlipFacts;
    }
  | { readonly kind: 'not-plan-json'; readonly source: string }
  | { readonly kind: 'not-utf8'; readonly source: string }
  | { readonly kind: 'too-long'; readonly source: string; readonly of: 'shoot' | 'plan' }
  | { readonly kind: 'cannot-read' | 'cannot-write'; readonly path: string; readonly because: SystemFault }
  | { readonly kind: 'plan-of-nothing'; readonly source: string; readonly why: WhyInfeasible }
  | { readonly kind: 'nothing-written'; readonly why: WhyInfeasible }
  | { readonly kind: 'not-together'; readonly options: readonly [string, string] }
  /** `path`: the file asked for; without one the answer goes to the screen. */
  | { readonly kind: 'changes-nothing'; readonly options: readonly string[]; readonly path?: string }
  | {
      readonly kind: 'unknown-ending';
      readonly path: string;
      readonly ending: string;
      readonly known: readonly string[];
    }
  | { readonly kind: 'no-shoot' | 'no-output' }
  /** For standard output, which holds one. */
  | { readonly kind: 'several-files'; readonly path: string; readonly count: number }
  | { readonly kind: 'shoot-file-itself'; readonly where: string }
  | { readonly kind: 'followed-already'; readonly path: string }
  | { readonly kind: 'two-of-three' }
  | { readonly kind: 'clip-too-short' }
  /** Nothing among these is a frame. */
  | { readonly kind: 'no-frames'; readonly paths: readonly string[] }
  /** A table of frames without a column that it needs. */
  | { readonly kind: 'table-without'; readonly source: string; readonly column: string }
  | {
      readonly kind: 'table-cell';
      readonly source: string;
      /** From 1. */
      readonly line: number;
      readonly column: FrameColumn;
      readonly given: string;
      /** Filters of the shoot. */
      readonly known: readonly string[];
    }
  | { readonly kind: 'not-a-plan-made'; readonly source: string }
  /** No journal of the plan that is reviewed. */
  | { readonly kind: 'journal-of-another'; readonly path: string }
  /** Readings for a shoot to come: nothing was read, it is elsewhere or goes the other way, or its sun stands otherwise. */
  | { readonly kind: 'nothing-learned'; readonly why: 'not-read' | 'elsewhere' | 'other-sun' }
  /** A mistake of ours; `said` is what the program says of it. */
  | { readonly kind: 'unexpected'; readonly said: string };
