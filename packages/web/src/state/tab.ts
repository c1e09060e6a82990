// Which tab of this browser keeps its work: the first that was opened. Another would write over an evening that it
// knows nothing of, so it shows what is kept and writes nothing until somebody takes over there. Tabs talk through
// storage, which also works from disk and without a network; its events come in tabs whose timers are slowed down too.

import { effect, signal } from '@preact/signals-core';

const OWNER = 'evenfall.tab'; // the tab that writes
const ASK = 'evenfall.ask'; // is it still there?
const HERE = 'evenfall.here'; // it is

/** How long to wait for a tab that may have died without a word. Our choice: a slow phone answers in a tenth of it. */
const ANSWER_MS = 700;

const me = Math.random().toString(36).slice(2);

type Standing = 'asking' | 'first' | 'second';

export const standing = signal<Standing>('first');

/** Whether anything can be kept at all. */
export const storageWorks = signal(true);

/** Makes this tab the one that writes. */
export function takeOver(): void {
  try {
    localStorage.setItem(OWNER, me);
  } catch {
    storageWorks.value = false;
  }
  standing.value = 'first';
}

/** Whether this tab may write now; one that has been replaced while it slept finds out here. */
export function mayWrite(): boolean {
  if (standing.value !== 'first') return false;
  const owner = localStorage.getItem(OWNER);
  if (owner === null) localStorage.setItem(OWNER, me);
  else if (owner !== me) standing.value = 'second';
  return owner === null || owner === me;
}

function begin(): void {
  try {
    const owner = localStorage.getItem(OWNER);
    if (owner === null || owner === me) {
      takeOver();
      return;
    }
    standing.value = 'asking';
    localStorage.setItem(ASK, me);
    setTimeout(() => {
      if (standing.peek() === 'asking') takeOver();
    }, ANSWER_MS);
  } catch {
    storageWorks.value = false;
  }
}

begin();

addEventListener('storage', ({ key, newValue }) => {
  if (newValue === null || newValue === me) {
    if (key === HERE && newValue === me && standing.peek() === 'asking') standing.value = 'second';
  } else if (key === OWNER) standing.value = 'second';
  else if (key === ASK && standing.peek() === 'first') localStorage.setItem(HERE, newValue);
});

// Leaving makes room. The other tab does not move up by itself: this one may be reloading.
addEventListener('pagehide', () => {
  try {
    if (localStorage.getItem(OWNER) === me) localStorage.removeItem(OWNER);
  } catch {
    // Nothing was kept.
  }
});
addEventListener('pageshow', ({ persisted }) => {
  if (persisted) begin();
});
document.addEventListener('visibilitychange', () => {
  try {
    if (document.visibilityState === 'visible') mayWrite();
  } catch {
    // Nothing is kept.
  }
});

// Asked once: who comes next asks again.
effect(() => {
  if (standing.value === 'asking') return;
  try {
    for (const key of [ASK, HERE]) if (localStorage.getItem(key) === me) localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
});
