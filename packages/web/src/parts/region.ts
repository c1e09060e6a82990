// A region of the page: drawn anew when something that it reads changes, and nothing else with it.

import { effect } from '@preact/signals-core';
import { noChange } from 'lit-html';
import { AsyncDirective } from 'lit-html/async-directive.js';
import { directive } from 'lit-html/directive.js';

type View = () => unknown;

class Region extends AsyncDirective {
  #view: View | undefined;
  #stop: (() => void) | undefined;

  render(view: View) {
    return view === this.#view ? noChange : this.#follow(view);
  }

  #follow(view: View): unknown {
    this.#stop?.();
    this.#view = view;
    let drawn: { readonly first: unknown } | undefined;
    this.#stop = effect(() => {
      const now = view();
      if (drawn === undefined) drawn = { first: now };
      else this.setValue(now);
    });
    return drawn?.first;
  }

  override disconnected(): void {
    this.#stop?.();
    this.#stop = this.#view = undefined;
  }
}

/** @param view reads signals; the same function each time it is drawn from outside */
export const region = directive(Region);
