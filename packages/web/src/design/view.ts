// The design view: the evening first, the controls beside it, what else there is to know below.

import { html, nothing } from 'lit-html';
import { chartView, meanings, underCursor } from '../chart/chart-view.js';
import { geometry } from '../chart/layout.js';
import { choicesSection } from '../choices/section.js';
import { daysSection } from '../days/section.js';
import { toFieldSection } from '../field/to-field.js';
import { loadMoves, moving } from '../moves/load.js';
import { inTurn } from '../parts/in-turn.js';
import { region } from '../parts/region.js';
import { reviewSection } from '../review/section.js';
import { fileSection, shootsSection } from '../shoots/section.js';
import { gaveUp, impossible, made, nothingToShow, pending } from '../state/plan.js';
import { faults } from '../state/shoot.js';
import { stripView } from '../strip/view.js';
import { words } from '../words/words.js';
import { cueList } from './cue-list.js';
import { filesSection } from './files-section.js';
import { headline } from './headline.js';
import { kitPanel } from './kit.js';
import { lookPanel } from './look.js';
import { miniView, watchPicture } from './mini.js';
import { panel } from './panels.js';
import { placePanel } from './place.js';
import { notesView, problemView } from './problem.js';
import { readingsSection } from './readings-list.js';
import { rhythmPanel } from './rhythm.js';
import { scenePanel } from './scene.js';
import { summaryStrip } from './summary.js';
import { tableView } from './table.js';

function movesPanel() {
  loadMoves();
  return moving.value?.movePanel() ?? html`<p class="help">…</p>`;
}

const PANELS = [
  () => panel('place', placePanel),
  () => panel('kit', kitPanel),
  () => panel('rhythm', rhythmPanel),
  () => panel('moves', movesPanel),
  () => panel('scene', scenePanel),
  () => panel('look', lookPanel),
];

function picture() {
  const stale = impossible.value !== undefined || gaveUp.value !== undefined || faults.value.length > 0;
  const busy = pending.value || (made.value !== undefined && geometry.value === undefined);
  return html`<section class="picture ${stale ? 'stale' : ''}" aria-busy=${busy} ${watchPicture}>
    <h2 class="unseen">${words().chart.title}</h2>
    ${
      nothingToShow.value
        ? html`<p class="help">${words().problem.nothing}</p>`
        : html`${region(chartView)} ${region(stripView)}`
    }
  </section>`;
}

const ofPicture = () => (nothingToShow.value ? nothing : html`${region(underCursor)} ${region(meanings)}`);
const moveNotes = () => moving.value?.moveNotes();
const table = () => (nothingToShow.value ? nothing : tableView());

const controls = inTurn(
  1,
  () => html`<form class="controls" @submit=${(event: Event) => event.preventDefault()}>
    ${region(shootsSection)} ${PANELS.map((one) => region(one))} ${region(fileSection)}
  </form>`,
);

const moreOfIt = inTurn(
  2,
  () => html`<div class="more-of-it">
    ${region(notesView)} ${region(moveNotes)}
    <div class="columns">
      ${region(cueList)}
      <div>${region(readingsSection)} ${region(filesSection)}</div>
    </div>
    ${region(daysSection)} ${region(choicesSection)} ${region(reviewSection)} ${region(table)}
  </div>`,
);

/** In regions: a change draws those anew that show it. */
export function designView() {
  return html`<main class="design">
    ${region(miniView)}
    <div class="beside"><div class="stage" id="plan" tabindex="-1">
      ${region(headline)} ${region(problemView)} ${region(picture)} ${region(ofPicture)} ${region(summaryStrip)}
      ${region(toFieldSection)}
    </div></div>
    ${region(controls)} ${region(moreOfIt)}
  </main>`;
}
