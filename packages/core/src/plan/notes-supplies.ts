// Whether card and battery last, when they are out by the clock, and what would fit.

import { suppliesByFrame } from '../footage/bracket.js';
import { framesOnCard, framesOnCharge, lastingOf } from '../footage/supplies.js';
import { rfc3339 } from '../sky/clock.js';
import type { Note, NoteContext } from './note-context.js';

/** More than this share of a card or a charge in use is worth a word before it is too late. Our own choice. */
const NEARLY_ALL = 0.9;

/** Notes on card and battery; none where both last with something to spare, or nothing is known of them. */
export function supplyNotes({ shoot, summary, forecast }: NoteContext): Note[] {
  const { cardGB, frameMB, batteryFrames, coldFactor = 1 } = suppliesByFrame(shoot.camera);
  const { frameCount, startAt, cardNeededGB: neededGB = 0 } = summary;
  const use = { startMs: Date.parse(startAt), frameCount, intervalS: shoot.intervalS };
  const clock = (outAtMs: number | undefined) => rfc3339(outAtMs as number, forecast.zone); // it does not last
  const notes: Note[] = [];

  if (cardGB !== undefined && frameMB !== undefined) {
    const { lasts, frames: holds, outAtMs, fitIntervalS } = lastingOf(framesOnCard(cardGB, frameMB), use);
    const fits = fitIntervalS === undefined ? {} : { fitIntervalS };
    const share = frameCount / holds;
    if (!lasts) {
      const at = clock(outAtMs);
      notes.push({ level: 'warning', kind: 'card-full', holds, frameCount, neededGB, at, ...fits });
    } else if (share > NEARLY_ALL) notes.push({ level: 'caution', kind: 'card-nearly-full', share });
  }
  if (batteryFrames !== undefined) {
    const {
      lasts,
      frames: holds,
      outAtMs,
      needed,
    } = lastingOf(framesOnCharge(batteryFrames, coldFactor), use);
    const more = needed === undefined || needed <= 2 ? {} : { needed };
    const cold = coldFactor < 1;
    const share = frameCount / holds;
    if (!lasts) {
      const at = clock(outAtMs);
      notes.push({ level: 'warning', kind: 'battery-spent', holds, frameCount, cold, at, ...more });
    } else if (share > NEARLY_ALL)
      notes.push({ level: 'caution', kind: 'battery-nearly-spent', share, cold });
  }
  return notes;
}
