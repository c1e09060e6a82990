// Once seen, always there: the worker that keeps the page is written by the build.

/** Registers the worker of a built page served over the network; a page opened from disk needs none. */
export function keepOffline(): void {
  if (!served()) return;
  // No server's caching holds an old worker back.
  navigator.serviceWorker.register('./offline.js', { updateViaCache: 'none' }).catch(() => {
    // A private window may forbid it; the page works while the network does.
  });
}

/**
 * A newer build that came while the page was last open is taken as it opens again, before there is anything to lose. The
 * worker sees to it that no other page of the older build is open.
 */
export async function takeNewer(): Promise<void> {
  if (!served()) return;
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.getRegistration().catch(() => undefined);
  if (registration?.waiting == null) return;
  serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  registration.waiting.postMessage('take-over');
}

const served = () =>
  import.meta.env.PROD && 'serviceWorker' in navigator && /^https?:$/.test(location.protocol);
