// The controls in groups that fold. On a small screen only the first is open at the start.

import { signal } from '@preact/signals-core';
import { html, nothing, type TemplateResult } from 'lit-html';
import { afterPaint } from '../parts/after-paint.js';
import { impossible } from '../state/plan.js';
import { words } from '../words/words.js';

type PanelName = 'place' | 'rhythm' | 'kit' | 'moves' | 'scene' | 'look';

const OWN: readonly PanelName[] = ['place', 'kit', 'rhythm'];

/** Those folded by hand. */
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

function fold(name: PanelName, away: boolean): void {
  const next = new Set(folded.peek());
  if (away) next.add(name);
  else next.delete(name);
  folded.value = next;
}

const idOf = (name: PanelName) => `panel-${name}`;

/** Brings a group into sight and goes to its first control. */
function goTo(name: PanelName): void {
  const panel = document.getElementById(idOf(name));
  panel?.scrollIntoView({ block: 'start' });
  panel?.querySelector<HTMLElement>('.fields :is(input, select, button)')?.focus({ preventScroll: true });
}

/** Opens what every evening of one's own is made of, and begins with the place. */
export function begin(): void {
  const placeOpen = !folded.peek().has('place');
  folded.value = new Set([...folded.peek()].filter((name) => !OWN.includes(name)));
  // Within the press, where it can be: some phones show their keys for no focus that comes later.
  if (placeOpen) goTo('place');
  else afterPaint(() => goTo('place'));
}

export function panel(name: PanelName, content: () => TemplateResult) {
  const cures = impossible.value?.remedies.some(({ change }) => CURES[name].includes(change)) ?? false;
  const open = !folded.value.has(name) || cures;
  return html`<details
    class="panel"
    id=${idOf(name)}
    .open=${open}
    @toggle=${(event: Event) => {
      const isOpen = (event.target as HTMLDetailsElement).open;
      if (isOpen !== !folded.value.has(name) && !cures) fold(name, !isOpen);
    }}
  >
    <summary><h2>${words()[name].title}</h2></summary>
    ${open ? html`<div class="fields">${content()}</div>` : nothing}
  </details>`;
}
