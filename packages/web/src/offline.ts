// Once seen, always there: the worker that keeps the page is written by the build.

/** Registers the worker of a built page served over the network; a page opened from disk needs none. */
export function keepOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  if (location.protocol !== 'https:' && location.protocol !== 'http:') return;
  navigator.serviceWorker.register('./offline.js').catch(() => {
    // A private window may forbid it; the page works while the network does.
  });
}
