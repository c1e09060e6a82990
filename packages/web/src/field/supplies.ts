// Frames, clip, card and battery as they stand at the frame under way.

import { framesHeld, type PlanMade } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { words } from '../words/words.js';
import type { FieldState } from './state.js';
import { fieldWords } from './words.js';

export function suppliesLine({ shoot, summary }: PlanMade, { frameNow, order }: FieldState) {
  const w = fieldWords();
  const number = (value: number) => words().number(value, 1);
  const taken = order === 'start' ? 0 : frameNow + 1;
  const { onCard, onCharge } = framesHeld(shoot.camera);
  const { cardNeededGB = 0 } = summary;
  const parts = [
    w.frameOf(taken, summary.frameCount),
    w.clip(number(taken / shoot.clipFps), number(summary.clipS)),
  ];
  const short: string[] = [];
  if (onCard !== undefined) {
    const takenGB = (cardNeededGB * taken) / summary.frameCount;
    parts.push(w.card(number(takenGB), words().plain(shoot.camera.cardGB ?? 0)));
    if (summary.cardFits === false) short.push(w.cardShort(onCard));
  }
  if (onCharge !== undefined) {
    parts.push(w.battery(Math.min(taken, onCharge), onCharge));
    if (summary.batteryFits === false) short.push(w.batteryShort(onCharge));
  }
  return html`<p class="field-supplies">
    ${parts.join(' · ')} ${order === 'over' ? nothing : short.map((text) => html`<strong>${text}</strong>`)}
  </p>`;
}
