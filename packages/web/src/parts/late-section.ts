// A folded section that is a part of its own, loaded when it is opened.

import { type Signal, signal } from '@preact/signals-core';
import { html, nothing, type TemplateResult } from 'lit-html';
import { part } from '../state/part.js';

type View = () => TemplateResult;

/** @param load the part's view; where it does not come, opening the section again asks again */
export function lateSection(
  name: string,
  opened: Signal<boolean>,
  title: () => string,
  load: () => Promise<View>,
) {
  const view = signal<View | undefined>(undefined);
  return () =>
    html`<details
      class="table ${name}"
      .open=${opened.value}
      @toggle=${async ({ target }: Event) => {
        opened.value = (target as HTMLDetailsElement).open;
        if (opened.value) view.value ??= await part(load());
      }}
    >
      <summary><h2>${title()}</h2></summary>
      ${opened.value ? (view.value?.() ?? html`<p class="help">…</p>`) : nothing}
    </details>`;
}
