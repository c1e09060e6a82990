// What `follow` may be told beside the plan.

import type { Language } from '@evenfall/chart';

/** What the command may be told beside the plan. */
export interface FollowFlags {
  /** Set the journal aside and begin a new one. */
  readonly startOver?: boolean;
  /** `false`: read no journal and write none. */
  readonly journal?: boolean;
  /** Standard deviation of one reading, stops, > 0; absent: a steady meter's. */
  readonly meter?: number;
  /** Lines as a program has them, at a terminal too. */
  readonly json?: boolean;
  /** Rings so many seconds before each cue, >= 0, and at it. */
  readonly ring?: number;
  /** Of what is said to a person. */
  readonly language?: Language;
  readonly clock?: '12' | '24';
  /** Red letters. */
  readonly dark?: boolean;
}
