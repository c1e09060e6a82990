// The design view: controls on one side, what comes of them on the other.

import { signal } from '@preact/signals-core';
import { html, nothing, type TemplateResult } from 'lit-html';
import { chartView, geometry } from '../chart/chart-view.js';
import { choicesSection } from '../choices/section.js';
import { daysSection } from '../days/section.js';
import { toFieldSection } from '../field/to-field.js';
import { loadMoves, moving } from '../moves/load.js';
import { gaveUp, impossible, made, nothingToShow, pending } from '../state/plan.js';
import { reading } from '../state/shoot.js';
import { words } from '../words/words.js';
import { cueList } from './cue-list.js';
import { filesSection } from './files-section.js';
import { kitPanel } from './kit.js';
import { lookPanel } from './look.js';
import { placePanel } from './place.js';
import { notesView, problemView } from './problem.js';
import { readingsSection } from './readings-list.js';
import { rhythmPanel } from './rhythm.js';
import { scenePanel } from './scene.js';
import { summaryStrip } from './summary.js';
import { tableView } from './table.js';

type PanelName = 'place' | 'rhythm' | 'kit' | 'moves' | 'scene' | 'look';

/** Panels folded by hand. On a small screen only the first is open at the start. */
const folded = signal<ReadonlySet<PanelName>>(
  new Set(
    matchMedia('(min-width: 60rem)').matches
      ? ['moves', 'look']
      : ['rhythm', 'kit', 'moves', 'scene', 'look'],
  ),
);

const CURES: Readonly<Record<PanelName, readonly string[]>> = {
  place: ['shorter-span'],
  rhythm: ['longer-interval', 'no-dark-frame', 'shorter-write'],
  kit: [
    'longer-shutter',
    'higher-iso',
    'wider-aperture',
    'narrower-aperture',
    'another-filter',
    'faster-shutter',
    'start-filter',
  ],
  moves: ['shorter-settle', 'shorter-move'],
  scene: [],
  look: ['darker-look', 'looser-tolerance', 'larger-steps', 'closer-cues'],
};

function panel(name: PanelName, content: () => TemplateResult) {
  const cures = impossible.value?.remedies.some(({ change }) => CURES[name].includes(change)) ?? false;
  const open = !folded.value.has(name) || cures;
  return html`<details
    class="panel"
    .open=${open}
    @toggle=${(event: Event) => {
      const isOpen = (event.target as HTMLDetailsElement).open;
      if (isOpen === !folded.value.has(name) || cures) return;
      const next = new Set(folded.value);
      if (isOpen) next.delete(name);
      else next.add(name);
      folded.value = next;
    }}
  >
    <summary><h2>${words()[name].title}</h2></summary>
    ${open ? html`<div class="fields">${content()}</div>` : nothing}
  </details>`;
}

function movesPanel() {
  loadMoves();
  return moving.value?.movePanel() ?? html`<p class="help">…</p>`;
}

export function designView() {
  const stale =
    impossible.value !== undefined || gaveUp.value !== undefined || reading.value.kind === 'wrong';
  const busy = pending.value || (made.value !== undefined && geometry.value === undefined);
  return html`<main class="design">
    <form class="controls" @submit=${(event: Event) => event.preventDefault()}>
      ${panel('place', placePanel)} ${panel('kit', kitPanel)} ${panel('rhythm', rhythmPanel)}
      ${panel('moves', movesPanel)} ${panel('scene', scenePanel)} ${panel('look', lookPanel)}
    </form>
    <div class="result" id="plan" tabindex="-1">
      ${summaryStrip()} ${problemView()}
      <section class="picture ${stale ? 'stale' : ''}" aria-busy=${busy}>
        <h2 class="unseen">${words().chart.title}</h2>
        ${nothingToShow.value ? html`<p class="help">${words().problem.nothing}</p>` : chartView()}
      </section>
      ${toFieldSection()} ${notesView()} ${moving.value?.moveNotes()} ${daysSection()} ${choicesSection()}
      <div class="columns">
        ${cueList()}
        <div>${readingsSection()} ${filesSection()}</div>
      </div>
      ${nothingToShow.value ? nothing : tableView()}
    </div>
  </main>`;
}
