// A build step: writes the service worker that keeps every file of the built page.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Everything under a folder, paths relative to it, in order. */
function filesUnder(folder: string, within = ''): string[] {
  return readdirSync(join(folder, within), { withFileTypes: true })
    .flatMap((entry) => {
      const path = within === '' ? entry.name : `${within}/${entry.name}`;
      return entry.isDirectory() ? filesUnder(folder, path) : [path];
    })
    .sort();
}

/**
 * The worker's text. All files come from the cache: what was seen once is there for good. A newer build waits, as workers
 * do by themselves, until no page of the older one is left, or until the only one there is asks for it as it opens: a page
 * that is open finds every part of its own build, whatever the server has by then.
 */
function workerText(files: readonly string[], version: string): string {
  return `const KEPT = 'evenfall-${version}';
const FILES = ${JSON.stringify(['./', ...files])};
addEventListener('install', (event) => {
  event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))));
});
addEventListener('activate', (event) => {
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith('evenfall-') && name !== KEPT).map((name) => caches.delete(name))))
      .then(() => clients.claim()),
  );
});
addEventListener('message', (event) => {
  if (event.data !== 'take-over') return;
  event.waitUntil(
    clients.matchAll({ type: 'window', includeUncontrolled: true }).then((pages) => pages.length === 1 && skipWaiting()),
  );
});
addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== location.origin) return;
  const wanted = event.request.mode === 'navigate' ? './' : event.request;
  const kept = caches.match(wanted, { cacheName: KEPT, ignoreVary: true, ignoreSearch: true });
  event.respondWith(kept.then((answer) => answer ?? fetch(event.request)));
});
`;
}

export function offlineWorker(): Plugin {
  let folder = '';
  return {
    name: 'offline-worker',
    apply: 'build',
    configResolved(config) {
      folder = join(config.root, config.build.outDir);
    },
    writeBundle() {
      // The page itself is kept as './'; the licences go with the files but are no part of the page.
      const files = filesUnder(folder).filter(
        (file) => !['index.html', 'offline.js', 'licences.md'].includes(file),
      );
      const hash = createHash('sha256');
      for (const file of ['index.html', ...files]) hash.update(readFileSync(join(folder, file)));
      writeFileSync(join(folder, 'offline.js'), workerText(files, hash.digest('hex').slice(0, 12)));
    },
  };
}
