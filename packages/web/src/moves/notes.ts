// What a plan says of its move beside findings: what the move does, the stars, and what to take care of. The cautions
// are eight long sentences: each has a few words that always show, the whole of it one press away.

import { moveCautions, type PlanMade, type PlanNote } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { clock } from '../parts/clock.js';
import { impossible, made } from '../state/plan.js';
import { words } from '../words/words.js';
import { goneText, lengthText, positionOf } from './tell.js';
import { moveWords } from './words.js';

const isOfStars = ({ kind }: PlanNote) => kind === 'stars';

/** The notes that are told elsewhere on the page are left out. */
export function otherNotes(plan: PlanMade): readonly PlanNote[] {
  return plan.notes.filter(
    (note) =>
      note.kind !== 'move' && note.kind !== 'move-caution' && !(isOfStars(note) && plan.move !== undefined),
  );
}

/** The longest shutters for stars, to stand beside the longest of the kit. */
export function starAdvice() {
  const note = impossible.value === undefined ? made.value?.notes.find(isOfStars) : undefined;
  if (note === undefined) return nothing;
  return html`<p class=${note.level === 'caution' ? 'cure' : 'help'}>${words().library.note(note)}</p>`;
}

export function moveNotes() {
  const plan = made.value;
  if (plan?.move === undefined) return nothing;
  const w = moveWords();
  const told = plan.move.findings.filter(({ level }) => level === 'info');
  const stars = plan.notes.find(isOfStars);
  return html`<section class="notes move-notes">
    <h2>${w.notes.title}</h2>
    <ul>
      ${courses.value.map((line) => html`<li>${line}</li>`)}
      ${told.map((finding) => html`<li>${words().library.finding(finding)}</li>`)}
      ${stars === undefined ? nothing : html`<li class=${stars.level}>${words().library.note(stars)}</li>`}
    </ul>
    ${safety(plan.shoot.moves)}
  </section>`;
}

/** A line a move: where it starts, how it steps, where and when it ends. */
const courses = computed(() => (made.value === undefined ? [] : coursesOf(made.value)));

function coursesOf({ move, frames, summary }: PlanMade): string[] {
  const w = moveWords();
  return (move?.travels ?? []).map((travel) => {
    const steps = frames
      .slice(1)
      .map((frame, i) => Math.abs(positionOf(travel, frame) - positionOf(travel, frames[i] ?? frame)));
    const longest = steps.reduce((most, step) => Math.max(most, step), 0);
    const start = w.startsAt(clock(summary.startAt));
    const size = w.steps(lengthText(steps[0] ?? 0, travel.unit), lengthText(longest, travel.unit));
    return `${w.axes[travel.axis]}: ${start}, ${size}, ${w.endsAt(clock(summary.endAt), goneText(travel.length, travel))}.`;
  });
}

/** What moving gear can do to people: the words that count, and the sentences behind them. */
export function safety(moves: PlanMade['shoot']['moves']) {
  const cautions = moveCautions(moves);
  if (cautions.length === 0) return nothing;
  const w = moveWords().notes;
  const brief = cautions.map(({ kind }) => w.short[kind]);
  return html`<div class="safety">
    <p><strong>${w.safety}:</strong> ${brief.join(' · ')}.</p>
    <details>
      <summary>${w.full}</summary>
      <ul>
        ${cautions.map((caution) => html`<li>${words().library.caution(caution)}</li>`)}
      </ul>
    </details>
  </div>`;
}
