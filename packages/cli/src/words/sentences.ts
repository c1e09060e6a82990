// What a language must have a sentence for, of all that the command says by itself.

import type { ClockOfZone, Sentences } from '@evenfall/core';
import type { PassedOver } from '../passed-over.js';
import type { RefusalFacts } from '../refusal-facts.js';
import type { SlipFacts } from '../slips.js';
import type { SystemCode } from '../system-error.js';

export interface CommandSentences {
  /** Why the command does not do what was asked. */
  readonly refusals: Sentences<RefusalFacts>;
  /** Slips of YAML. */
  readonly slips: Sentences<SlipFacts, 'slip'>;
  /** Why a file is passed over. */
  readonly passedOver: (path: string, because: PassedOver) => string;
  /** That a file cannot show some characters. */
  readonly unshown: (path: string, characters: readonly string[]) => string;
  /** What the system's codes mean. */
  readonly system: Readonly<Record<SystemCode, string>>;
  /** That the clock may show another zone's time, of those within 25 km. */
  readonly border: (here: ClockOfZone, others: readonly ClockOfZone[]) => string;
}
