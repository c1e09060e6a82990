// Parts of the page that are loaded when they are needed. One that does not come, because the network is gone or the
// page has been replaced on its server, is said: nothing is worse in the field than a button that does nothing.

import { signal } from '@preact/signals-core';

/** Whether a part that was needed did not come. */
export const partMissing = signal(false);

/** What has been loaded; undefined where it could not be, which the page then says. */
export async function part<T>(loading: Promise<T>): Promise<T | undefined> {
  try {
    return await loading;
  } catch {
    partMissing.value = true;
    return undefined;
  }
}
