import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { cityList } from './build/city-list.js';
import { earlyParts } from './build/early-parts.js';
import { land } from './build/land.js';
import { offlineWorker } from './build/offline-worker.js';
import { oneFile } from './build/one-file.js';
import { plainImports } from './build/plain-imports.js';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

const SHARED =
  /preload-helper|core\/src\/(check|exposure\/|footage\/(frames|footage|supplies)|words\/|sky\/(?!border)|light\/|shoot\/(kit|span|time-left|shoot|pointing)|plan\/cues|ramp\/weights)/;

/** What only a worker plans with: the page can be drawn without it. */
const PLANNING =
  /core\/src\/(plan\/(english-notes|exposures|forecast|made|notes\.|notes-sky|notes-supplies|prepare|reserve|set-up|targets)|ramp\/(problem|by-dials|swaps|cost|lattice|exact\/(?!reach)))/;

/** The library's English, in one record: a file of its own, for neither the first plan nor the page's own words ask for it. */
const SENTENCES = /core\/src\/(index|[a-z]+\/english)/;

/** What the page shares with the parts that are loaded later, beside the library. */
const PAGE_SHARED =
  /node_modules\/(lit-html|@preact)\/|web\/src\/(words\/(en|words)\.|plan\/planner|state\/plan\.|parts\/(message|text|clock|typed|part-view|percent|controls|ask)\.|chart\/(time-ticks|paths|text-px)\.)/;

// `vite build` makes the page that is served; `vite build --mode one-file` one HTML file that is opened from disk.
export default defineConfig(({ mode }) => {
  const single = mode === 'one-file';
  return {
    root: at('.'),
    base: './',
    publicDir: single ? false : 'public',
    resolve: {
      alias: {
        '@evenfall/core': at('../core/src/index.ts'),
        '@evenfall/chart': at('../chart/src/index.ts'),
        '#new-worker': at(single ? 'src/plan/new-worker-inline.ts' : 'src/plan/new-worker.ts'),
      },
    },
    build: {
      target: 'es2022',
      outDir: single ? 'dist/one-file' : 'dist/page',
      emptyOutDir: true,
      assetsInlineLimit: 0,
      cssCodeSplit: !single,
      modulePreload: false,
      // The licences of what is built in ask to go with it.
      license: single ? false : { fileName: 'licences.md' },
      reportCompressedSize: false,
      rolldownOptions: single
        ? {
            checks: { bundlerTimings: false },
            // The address of a chunk means nothing where there are no chunks.
            transform: { define: { 'import.meta': '{}' } },
            output: { format: 'iife' as const, codeSplitting: false },
          }
        : {
            checks: { bundlerTimings: false },
            input: { page: at('index.html'), planner: at('src/plan/worker.ts') },
            output: {
              // What page, worker and parts share of the library, in one file: in ten of them it would be larger.
              codeSplitting: {
                groups: [
                  { name: 'shared', test: SHARED, priority: 2 },
                  { name: 'planning', test: PLANNING, priority: 2 },
                  { name: 'sentences', test: SENTENCES, priority: 1.5 },
                  { name: 'common', test: PAGE_SHARED, priority: 1 },
                ],
              },
              entryFileNames: ({ name }: { name: string }) =>
                name === 'planner' ? 'planner.js' : 'assets/[name]-[hash].js',
            },
          },
    },
    plugins: [
      cityList(),
      land(),
      plainImports(),
      ...(single ? [oneFile()] : [earlyParts(), offlineWorker()]),
    ],
  };
});
