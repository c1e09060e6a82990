// The cues in order; the one that holds under the cursor is marked, and a press takes the cursor to it.

import { changesByClock, type PlanCue, type PlanMade } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { clock } from '../parts/clock.js';
import { changeSpoken, markText, settingText } from '../parts/text.js';
import { cursorCue, moveCursor } from '../state/cursor.js';
import { made } from '../state/plan.js';
import { words } from '../words/words.js';

export function cueList() {
  const plan = made.value;
  if (plan === undefined) return nothing;
  const w = words();
  const first = plan.frames[0];
  const owned = plan.shoot.filters.length > 0;
  const rows = [
    row(
      -1,
      0,
      plan.summary.startAt,
      html`<b>${w.cues.first}</b> ${first ? settingText(first, owned) : ''}`,
      '',
    ),
    ...changesByClock(plan).map((cue, i) => {
      const after = plan.frames[cue.frame];
      return row(i, cue.frame, cue.at, changesOf(cue), after ? settingText(after, owned) : '');
    }),
  ];
  return html`<section class="cues">
    <h2>${w.cues.title}</h2>
    ${howToRead(plan)}
    <ol tabindex="-1">${rows}</ol>
  </section>`;
}

function howToRead({ shoot, cues, frames }: PlanMade) {
  const w = words().cues;
  if (shoot.camera.bulb) {
    const byTime = frames.toSorted((a, b) => a.shutterS - b.shutterS);
    const [shortest, longest] = [byTime[0], byTime.at(-1)].map((frame) =>
      markText('shutter', frame?.shutter ?? ''),
    );
    return html`<p class="help">${w.rig(shortest!, longest!)}</p>`;
  }
  return html`<p class="help">${cues.length === 0 ? w.none : w.means}</p>`;
}

function row(index: number, frame: number, at: string, what: unknown, after: string) {
  const here = cursorCue.value === index;
  return html`<li>
    <button
      type="button"
      class="cue"
      aria-current=${here ? 'true' : nothing}
      @click=${() => moveCursor(frame)}
    >
      <span class="when">${clock(at)}</span>
      <span class="what">${what}</span>
      <span class="after">${after}</span>
    </button>
  </li>`;
}

function changesOf({ changes, notes = [] }: PlanCue) {
  const w = words();
  return html`<span class="unseen">${changes.map(changeSpoken).join(', ')}</span>
    <span aria-hidden="true"
      >${changes.map(
        ({ control, from, to }) =>
          html`<span class="change ${control}"
            ><span class="which">${w.cues.controls[control]}</span> ${markText(control, from)}
            ${w.field.arrow} <b>${markText(control, to)}</b></span
          >`,
      )}</span
    >${notes.map((note) => html`<small>${w.library.cueNote(note)}</small>`)}`;
}
