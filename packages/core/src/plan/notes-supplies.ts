// Whether card and battery last, when they are out by the clock, and what would fit.

import { framesOnCard, framesOnCharge, type Lasting, lastingOf } from '../footage/supplies.js';
import type { Shoot } from '../shoot/shoot.js';
import { rfc3339, type Zone } from '../sky/clock.js';
import type { PlanNote, PlanSummary } from './types.js';

/** More than this share of a card or a charge in use is worth a word before it is too late. Our own choice. */
const NEARLY_ALL = 0.9;

/** Notes on card and battery; none where both last with something to spare, or nothing is known of them. */
export function supplyNotes(
  shoot: Shoot,
  { frameCount, startAt, cardNeededGB }: PlanSummary,
  zone: Zone,
): PlanNote[] {
  const { cardGB, frameMB, batteryFrames, coldFactor = 1 } = shoot.camera;
  const use = { startMs: Date.parse(startAt), frameCount, intervalS: shoot.intervalS };
  const share = (frames: number) => `${Math.round((100 * frameCount) / frames)} %`;
  const notes: PlanNote[] = [];

  if (cardGB !== undefined && frameMB !== undefined) {
    const card = lastingOf(framesOnCard(cardGB, frameMB), use);
    if (!card.lasts) {
      notes.push({
        level: 'warning',
        text: `The card holds ${card.frames} of the ${frameCount} frames; bring ${cardNeededGB?.toFixed(1)} GB or more. It is full at ${clock(card)}.${fitting(card)}`,
      });
    } else if (frameCount > NEARLY_ALL * card.frames) {
      notes.push({
        level: 'caution',
        text: `The frames take ${share(card.frames)} of the card: start with it empty.`,
      });
    }
  }
  if (batteryFrames !== undefined) {
    const charge = lastingOf(framesOnCharge(batteryFrames, coldFactor), use);
    const cold = coldFactor < 1 ? ' in the cold' : '';
    if (!charge.lasts) {
      notes.push({
        level: 'warning',
        text: `One charge gives ${charge.frames} of the ${frameCount} frames${cold}; bring a second battery or outside power. It is spent at ${clock(charge)}.${several(charge)}`,
      });
    } else if (frameCount > NEARLY_ALL * charge.frames) {
      notes.push({
        level: 'caution',
        text: `The frames take ${share(charge.frames)} of one charge${cold}: start with it full, and have another at hand.`,
      });
    }
  }
  return notes;

  function clock({ outAtMs }: Lasting): string {
    return rfc3339(outAtMs as number, zone).slice(11, 16); // it does not last
  }
}

function fitting({ fitIntervalS }: Lasting): string {
  return fitIntervalS === undefined ? '' : ` An interval of ${fitIntervalS} s or more would fit it.`;
}

function several({ needed }: Lasting): string {
  return needed === undefined || needed <= 2 ? '' : ` The shoot wants ${needed} of them.`;
}
