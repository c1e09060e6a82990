// Local storage: a convenience that may be full, forbidden or tampered with. Nothing here ever throws.

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

/** Keeps a plain value; undefined removes it. */
export function keep(name: string, value: unknown): void {
  try {
    if (value === undefined) localStorage.removeItem(PREFIX + name);
    else localStorage.setItem(PREFIX + name, JSON.stringify(value));
  } catch {
    // The page works without; the work is then gone with the tab.
  }
}
