// What a language must have a sentence for.

import type {
  CueNoteFacts,
  FaultFacts,
  FollowWarningFacts,
  MoveFound,
  NoteFacts,
  RefusalReason,
  RemedyChange,
  RemedyLeaves,
  SavedFaultFacts,
  Sentences,
  WhyInfeasible,
  WhyMissing,
} from '@evenfall/core';

/** A sentence for everything that the library says, in one language. */
export interface LibrarySentences {
  /** Notes on a plan. */
  readonly notes: Sentences<NoteFacts>;
  /** Notes at a cue. */
  readonly cueNotes: Sentences<CueNoteFacts>;
  /** Findings of a move. */
  readonly findings: Sentences<MoveFound>;
  /** Changes that would cure something. */
  readonly remedies: Sentences<RemedyChange, 'change'>;
  /** What a remedy leaves to spare: stops, and seconds of its tightest interval where they are few, a clip cut short. */
  readonly reserve: (leaves: RemedyLeaves) => string;
  /** Why a shoot has no plan. */
  readonly reasons: Sentences<WhyInfeasible, 'reason'>;
  /** Why an event of the sky does not come. */
  readonly missing: Sentences<WhyMissing>;
  /** Why a reading is not used. */
  readonly refusals: Sentences<RefusalReason, 'reason'>;
  /** What following warns of. */
  readonly warnings: Sentences<FollowWarningFacts>;
  /** What is wrong with a file or a saved evening. */
  readonly faults: Sentences<FaultFacts | SavedFaultFacts>;
}
