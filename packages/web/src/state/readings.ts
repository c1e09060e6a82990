// The readings of the shoot on the page.

import type { ReadingEntry } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { cursorFrame } from './cursor.js';
import { put, shoot, shown } from './shoot.js';

export interface Listed extends ReadingEntry {
  readonly index: number;
  readonly atMs: number;
}

export const readingsList = computed<readonly Listed[]>(() =>
  shoot.value.readings.map((entry, index) => ({ ...entry, index, atMs: Date.parse(entry.at) })),
);

const clamp = (ev100: number) => Math.max(-15, Math.min(25, ev100));

export function setReading(index: number, change: Partial<ReadingEntry>): void {
  const entry = shoot.peek().readings[index];
  if (entry === undefined) return;
  const next = { ...entry, ...change };
  put(['readings', index], { ...next, ev100: clamp(next.ev100) });
}

export function removeReading(index: number): void {
  put(['readings', index], undefined);
}

/** A reading at a frame's time. */
export function addReading(at: string, ev100: number): void {
  const readings = (shown(['readings']) ?? []) as readonly ReadingEntry[];
  put(['readings'], [...readings, { at, ev100: Math.round(clamp(ev100) * 10) / 10 }]);
}

/** One under the cursor, at first as forecast. */
export function addReadingAtCursor(): void {
  const frame = cursorFrame.peek();
  if (frame !== undefined) addReading(frame.at, frame.sceneEv100);
}
