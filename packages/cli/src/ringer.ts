// Rings at cues: so many seconds before each, and when it is due.

import type { FollowCue } from '@evenfall/core';

export interface Ringer {
  /** Forgets what was set, and rings for these. */
  readonly set: (cues: readonly FollowCue[]) => void;
  readonly stop: () => void;
}

/** Cues are told twenty minutes ahead: where there are none, it is asked again before that. */
const QUIET_MS = 10 * 60_000;

/** A timer of the system takes no more. */
const LONGEST_MS = 2 ** 31 - 1;

/** What happens. */
export interface Rung {
  readonly soon: (cue: FollowCue) => void;
  readonly due: (cue: FollowCue) => void;
  /** No cue was told for a while. */
  readonly quiet: () => void;
}

/** @param aheadS seconds, >= 0; undefined: never rings */
export function ringer(aheadS: number | undefined, nowMs: () => number, { soon, due, quiet }: Rung): Ringer {
  let timers: NodeJS.Timeout[] = [];
  const stop = () => {
    for (const timer of timers) clearTimeout(timer);
    timers = [];
  };
  const at = (ms: number, act: () => void) => {
    const inMs = ms - nowMs();
    if (inMs > 0 && inMs <= LONGEST_MS) timers.push(setTimeout(act, inMs));
  };
  return {
    set(cues) {
      stop();
      if (aheadS === undefined) return;
      if (cues.length === 0) at(nowMs() + QUIET_MS, quiet);
      for (const cue of cues) {
        const dueMs = Date.parse(cue.at);
        if (aheadS > 0) at(dueMs - aheadS * 1000, () => soon(cue));
        at(dueMs, () => due(cue));
      }
    },
    stop,
  };
}
