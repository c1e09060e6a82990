// How long work is given up: an AbortSignal is one of these, and so is any object that says whether to stop.

/**
 * Says when to give up. An `AbortSignal` is one. A plan is made in one go, during which no event of the program comes: to stop
 * it after a time, give an object whose `aborted` looks at a clock or at shared memory.
 */
export interface StopSignal {
  /** Whether to stop; asked between the parts of the work, some tens of milliseconds apart. */
  readonly aborted: boolean;
  /** What is thrown then; an error named `AbortError` where it is absent. */
  readonly reason?: unknown;
}

/** Throws the signal's reason where work is to stop. */
export function stopIf(signal: StopSignal | undefined): void {
  if (signal?.aborted !== true) return;
  throw signal.reason ?? Object.assign(new Error('stopped by its signal'), { name: 'AbortError' });
}
