// Reads shoot files. Nothing else of the page is as heavy, and the first plan can be drawn without it, so it comes
// after: the built-in shoot needs no checking.

import type { readShoot } from '@evenfall/core';
import { signal } from '@preact/signals-core';

/** `readShoot` once it is there. */
export const reader = signal<typeof readShoot | undefined>(undefined);

let loading: Promise<void> | undefined;

/**
 * Anything that was kept, came in an address or is changed waits for this. Where the reader cannot be loaded the page goes
 * on without: it shows its own shoot and leaves what was kept as it is.
 */
export function loadReader(): Promise<void> {
  loading ??= import('./read-shoot.js')
    .then((now) => {
      reader.value = now.readShoot;
    })
    .catch(() => undefined);
  return loading;
}
