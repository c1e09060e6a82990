// The design view: the evening first, the controls beside it, what else there is to know below.

import { html, nothing } from 'lit-html';
import { chartView, meanings, underCursor } from '../chart/chart-view.js';
import { geometry } from '../chart/layout.js';
import { choicesSection } from '../choices/section.js';
import { daysSection } from '../days/section.js';
import { toFieldSection } from '../field/to-field.js';
import { loadMoves, moving } from '../moves/load.js';
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

export function designView() {
  const stale = impossible.value !== undefined || gaveUp.value !== undefined || faults.value.length > 0;
  const busy = pending.value || (made.value !== undefined && geometry.value === undefined);
  return html`<main class="design">
    ${miniView()}
    <div class="beside"><div class="stage" id="plan" tabindex="-1">
      ${headline()} ${problemView()}
      <section class="picture ${stale ? 'stale' : ''}" aria-busy=${busy} ${watchPicture}>
        <h2 class="unseen">${words().chart.title}</h2>
        ${
          nothingToShow.value
            ? html`<p class="help">${words().problem.nothing}</p>`
            : html`${chartView()} ${stripView()}`
        }
      </section>
      ${nothingToShow.value ? nothing : html`${underCursor()} ${meanings()}`} ${summaryStrip()} ${toFieldSection()}
    </div></div>
    <form class="controls" @submit=${(event: Event) => event.preventDefault()}>
      ${shootsSection()}
      ${panel('place', placePanel)} ${panel('kit', kitPanel)} ${panel('rhythm', rhythmPanel)}
      ${panel('moves', movesPanel)} ${panel('scene', scenePanel)} ${panel('look', lookPanel)}
      ${fileSection()}
    </form>
    <div class="more-of-it">
      ${notesView()} ${moving.value?.moveNotes()}
      <div class="columns">
        ${cueList()}
        <div>${readingsSection()} ${filesSection()}</div>
      </div>
      ${daysSection()} ${choicesSection()} ${reviewSection()} ${nothingToShow.value ? nothing : tableView()}
    </div>
  </main>`;
}
