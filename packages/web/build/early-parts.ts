// A build step: names in the page every file that the first plan needs, the planner's too, so that all of them come at
// once and not each when the one before it has been read.

import type { Plugin } from 'vite';

export function earlyParts(): Plugin {
  return {
    name: 'early-parts',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(_page, { bundle = {} }) {
        const parts = new Set<string>();
        const add = (name: string) => {
          const file = bundle[name];
          if (file?.type !== 'chunk') return;
          for (const part of file.imports) {
            if (parts.has(part)) continue;
            parts.add(part);
            add(part);
          }
        };
        for (const file of Object.values(bundle)) {
          if (file.type === 'chunk' && file.isEntry) add(file.fileName);
        }
        return [...parts].map((part) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', crossorigin: true, href: `./${part}` },
          injectTo: 'head' as const,
        }));
      },
    },
  };
}
