// Keeping the screen on while the field view is open, where the browser can.

import { effect, signal } from '@preact/signals-core';
import { inField } from './run.js';

export const awake = signal(false);

let lock: WakeLockSentinel | undefined;

async function ask(): Promise<void> {
  if (!('wakeLock' in navigator) || document.visibilityState !== 'visible' || lock !== undefined) return;
  try {
    lock = await navigator.wakeLock.request('screen');
    awake.value = true;
    lock.addEventListener('release', () => {
      lock = undefined;
      awake.value = false;
    });
    if (!inField.peek()) await lock.release();
  } catch {
    // Low battery, say: the page tells that the screen may sleep.
  }
}

effect(() => {
  if (!inField.value) {
    void lock?.release();
    return undefined;
  }
  void ask();
  // The lock is lost whenever the page is hidden.
  document.addEventListener('visibilitychange', ask);
  return () => document.removeEventListener('visibilitychange', ask);
});
