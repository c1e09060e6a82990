// A build step: a part that is loaded later is imported plainly. Vite's helper would first load the style sheets of
// that part; every part here brings its styles inside itself.

import type { Plugin } from 'vite';

export function plainImports(): Plugin {
  return {
    name: 'plain-imports',
    apply: 'build',
    transform: {
      filter: { id: /vite\/preload-helper\.js$/ },
      handler() {
        return { code: 'export const __vitePreload = (load) => load();', map: null };
      },
    },
  };
}
