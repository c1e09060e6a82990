// What the page is, whose evening it shows, and how it stands.

import { html, nothing } from 'lit-html';
import { clock } from '../parts/clock.js';
import { daysOffNow } from '../parts/day.js';
import { dayText } from '../parts/day-text.js';
import { coordinatesText } from '../parts/text.js';
import { placeName } from '../state/place-name.js';
import { made } from '../state/plan.js';
import { isFirst, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import { begin } from './panels.js';

/** The title, else the name of the place, else its coordinates. */
export function nameOf({
  title,
  place,
}: {
  title?: string;
  place: { latitudeDeg: number; longitudeDeg: number };
}) {
  if (title !== undefined && title !== '') return title;
  const { latitudeDeg, longitudeDeg } = place;
  return placeName(latitudeDeg, longitudeDeg) ?? coordinatesText(latitudeDeg, longitudeDeg);
}

export function headline() {
  const w = words();
  const now = shoot.value;
  const plan = made.value;
  const date = dayText(now.date, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
  // Before the first plan its words stand unseen, about as long, and its day as it was asked for: nothing jumps.
  const noon = `${now.date}T12:00:00+00:00`;
  const day = daysOffNow(plan ?? { summary: { startAt: noon, endAt: noon } });
  return html`<div class="headline">
    <div>
      <h2>${nameOf(now)}</h2>
      <p>
        <span class="date">${date}</span> · ${w.place.of[now.direction]}
        ${day === undefined ? nothing : html`<b class="other-day">${day}</b>`}
      </p>
      <p class=${plan === undefined ? 'verdict to-come' : 'verdict'}>
        ${w.summary.verdict({
          cues: plan?.summary.cueCount ?? 20,
          errorEv: w.number(plan?.summary.worstErrorEv ?? 0.25, 2),
          from: clock(plan?.summary.startAt ?? noon, false),
          to: clock(plan?.summary.endAt ?? noon, false),
        })}
      </p>
    </div>
    ${
      isFirst.value
        ? html`<button type="button" class="primary" @click=${begin}>${w.begin}</button>`
        : nothing
    }
  </div>`;
}
