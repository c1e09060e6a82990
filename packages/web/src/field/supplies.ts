// Frames, clip, card and battery as they stand at the frame under way.

import { framesOnCard, framesOnCharge, type PlanMade, suppliesByFrame } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { words } from '../words/words.js';
import type { FieldState } from './state.js';
import { fieldWords } from './words.js';

export function suppliesLine({ shoot, summary }: PlanMade, { frameNow, order }: FieldState) {
  const w = fieldWords();
  const number = (value: number) => words().number(value, 1);
  const taken = order === 'start' ? 0 : frameNow + 1;
  const { frameMB, cardGB, batteryFrames, coldFactor } = suppliesByFrame(shoot.camera);
  const parts = [
    w.frameOf(taken, summary.frameCount),
    w.clip(number(taken / shoot.clipFps), number(summary.clipS)),
  ];
  const short: string[] = [];
  if (frameMB !== undefined && cardGB !== undefined) {
    parts.push(w.card(number((taken * frameMB) / 1000), words().plain(cardGB)));
    if (summary.cardFits === false) short.push(w.cardShort(framesOnCard(cardGB, frameMB)));
  }
  if (batteryFrames !== undefined) {
    const charge = framesOnCharge(batteryFrames, coldFactor);
    parts.push(w.battery(Math.min(taken, charge), charge));
    if (summary.batteryFits === false) short.push(w.batteryShort(charge));
  }
  return html`<p class="field-supplies">
    ${parts.join(' · ')} ${order === 'over' ? nothing : short.map((text) => html`<strong>${text}</strong>`)}
  </p>`;
}
