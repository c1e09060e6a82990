// What falls between the cues and is none of them: a battery or card to change, the clocks put forward, the sun behind the
// skyline. Each has a row of its own at its time.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { type ChartEvent, chartEvents } from '../text/chart-events.js';
import { instantMs } from '../text/local-time.js';
import type { Words } from '../text/words.js';

export interface Mark {
  readonly at: string; // RFC 3339
  readonly text: string;
  readonly toDo: boolean; // whether hands have something to do
  readonly before: PlanFrame; // that stands until then
}

const EVENTS: readonly ChartEvent['name'][] = [
  'clocks-forward',
  'clocks-back',
  'sun-behind-skyline',
  'sun-over-skyline',
  'moon-behind-skyline',
  'moon-over-skyline',
];

/** In order of time, none or more. */
export function marksOf(plan: PlanMade, words: Words): Mark[] {
  const { summary, frames } = plan;
  const { card } = words;
  const [startMs, endMs] = [instantMs(summary.startAt), instantMs(summary.endAt)];
  const swaps = (firstAt: string | undefined, text: string): Mark[] => {
    if (firstAt === undefined) return [];
    // The next one lasts as long.
    const holds = frames.findIndex(({ at }) => instantMs(at) >= instantMs(firstAt));
    if (holds < 1) return [];
    return frames
      .filter(({ frame }) => frame > 0 && frame % holds === 0)
      .map(({ at, frame }) => ({ at, text, toDo: true, before: frames[frame - 1]! }));
  };
  const told = chartEvents(plan.events, frames)
    .filter(({ name, at }) => EVENTS.includes(name) && instantMs(at) > startMs && instantMs(at) < endMs)
    .map(({ name, at }): Mark => {
      const after = frames.findIndex((frame) => instantMs(frame.at) >= instantMs(at));
      return { at, text: words.events[name], toDo: false, before: frames[Math.max(0, after - 1)]! };
    });
  return [
    ...swaps(summary.cardFullAt, card.newCard),
    ...swaps(summary.batteryOutAt, card.newBattery),
    ...told,
  ].sort((a, b) => instantMs(a.at) - instantMs(b.at));
}
