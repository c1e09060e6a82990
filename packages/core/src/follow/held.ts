// What the light has been in the last half hour, against the forecast: a cloud that leaves brings back what was there.

/** Lowest and highest offset of some minutes. */
export interface Held {
  readonly sinceMs: number;
  readonly lowEv: number;
  readonly highEv: number;
}

// Our choices.
const PART_MS = 5 * 60_000;
const PARTS_MS = 30 * 60_000 + PART_MS;
const WITHIN_EV = 0.4;

/** With one more offset; what is older than half an hour is left out. */
export function withHeld(held: readonly Held[], atMs: number, offsetEv: number): readonly Held[] {
  const recent = held.filter(({ sinceMs }) => sinceMs > atMs - PARTS_MS);
  const last = recent[recent.length - 1];
  if (last === undefined || atMs - last.sinceMs > PART_MS) {
    return [...recent, { sinceMs: atMs, lowEv: offsetEv, highEv: offsetEv }];
  }
  const { sinceMs, lowEv, highEv } = last;
  const wider = { sinceMs, lowEv: Math.min(lowEv, offsetEv), highEv: Math.max(highEv, offsetEv) };
  return [...recent.slice(0, -1), wider];
}

/** Whether an offset lies within what was held. */
export function wasHeld(held: readonly Held[], atMs: number, offsetEv: number): boolean {
  const recent = held.filter(({ sinceMs }) => sinceMs > atMs - PARTS_MS);
  const lowEv = Math.min(...recent.map((each) => each.lowEv));
  const highEv = Math.max(...recent.map((each) => each.highEv));
  return offsetEv >= lowEv - WITHIN_EV && offsetEv <= highEv + WITHIN_EV;
}
