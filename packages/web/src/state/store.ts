// Local storage: a convenience that may be full, forbidden or tampered with. Nothing here ever throws.

import { mayWrite, storageWorks } from './tab.js';

const PREFIX = 'evenfall.';
const LARGEST = 1_000_000;

/** What was kept under a name, parsed; undefined where there is nothing that can be read. */
export function kept(name: string): unknown {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null || text.length > LARGEST ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Keeps a plain value; undefined removes it. An effect that keeps something keeps it again where this tab takes over. */
export function keep(name: string, value: unknown): void {
  try {
    if (!mayWrite()) return;
    if (value === undefined) localStorage.removeItem(PREFIX + name);
    else localStorage.setItem(PREFIX + name, JSON.stringify(value));
    storageWorks.value = true;
  } catch {
    // The page works without; the work is then gone with the tab, and the field view says so.
    storageWorks.value = false;
  }
}

/** Calls back with what another tab keeps under a name, whenever it does. */
export function whenKeptElsewhere(name: string, changed: (value: unknown) => void): void {
  addEventListener('storage', ({ key }) => {
    if (key === PREFIX + name) changed(kept(name));
  });
}
