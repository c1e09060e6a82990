// The rooms of core that faults are put into, and the tests that know each.

import { readdirSync } from 'node:fs';

/**
 * By folder of core; `check.ts` and `hold.ts`, which serve all of them, go with `exposure`. The quick tests come first, the slow ones
 * for what is left. A test is named by how its path under `test/` begins.
 *
 * @type {Readonly<Record<string, { readonly quick: readonly string[], readonly slow: readonly string[] }>>}
 */
export const ROOMS = {
  words: {
    quick: ['core/plan/notes', 'core/files/bad-shoot'],
    slow: ['chart/text', 'core/plan/plan.test'],
  },
  exposure: {
    quick: ['core/exposure', 'core/check', 'core/shoot', 'core/light/look', 'core/files/bad-shoot'],
    slow: ['core/plan/plan.test', 'core/ramp/reference', 'core/ramp/plan-checker', 'cli/commands'],
  },
  sky: {
    quick: ['core/sky', 'core/plan/set-up'],
    slow: ['core/plan/moonlit', 'core/files/bad-shoot', 'cli/light-text'],
  },
  footage: {
    quick: ['core/footage', 'core/shoot/shoot', 'cli/frames'],
    slow: ['core/plan/plan.test', 'core/move/move.test', 'core/move/plan-move'],
  },
  light: {
    quick: ['core/light'],
    slow: ['core/plan/moonlit', 'core/plan/pan-light', 'core/follow/follow', 'core/plan/plan.test'],
  },
  move: {
    quick: [
      'core/move/advice',
      'core/move/angle',
      'core/move/ease',
      'core/move/gear',
      'core/move/pace',
      'core/move/s',
      'core/move/time',
      'core/move/words',
      'core/files/bad-shoot',
    ],
    slow: ['core/move/move.test', 'core/move/plan-move', 'chart/plot/moves'],
  },
  ramp: {
    quick: [
      'core/ramp/edges',
      'core/ramp/reference',
      'core/ramp/big-steps',
      'core/ramp/behind-filter',
      'core/follow/live',
    ],
    slow: [
      'core/ramp/optimum',
      'core/ramp/proof',
      'core/ramp/plan-checker',
      'core/follow/follow',
      'core/plan/plan.test',
    ],
  },
  shoot: {
    quick: ['core/shoot', 'core/files/limits', 'core/files/bad-shoot'],
    slow: ['core/plan/plan.test', 'core/move/plan-move', 'cli/commands'],
  },
  plan: {
    quick: ['core/plan/edges', 'core/plan/cue', 'core/plan/notes', 'core/plan/re', 'core/plan/set-up'],
    slow: ['core/plan/', 'core/files/bad-shoot', 'core/move/plan-move', 'cli/commands', 'chart/text/words'],
  },
  files: {
    quick: [
      'core/files/limits',
      'core/files/bad-shoot',
      'core/files/plan-file',
      'core/files/csv',
      'core/check',
      'core/files/docs',
    ],
    slow: ['core/files', 'cli/bad-input'],
  },
  follow: {
    quick: [
      'core/follow/edges',
      'core/follow/offset-state',
      'core/follow/meter-noise',
      'core/follow/frame-reading',
      'core/follow/camera',
      'core/follow/lines',
    ],
    slow: ['core/follow/'],
  },
  review: {
    quick: ['core/review/edges', 'core/review/marks', 'core/review/review'],
    slow: ['core/review/'],
  },
};

/**
 * Files of a room, in order, as paths below the sources of core.
 *
 * @param {string} core folder of core's sources
 * @param {string} room
 * @returns {string[]}
 */
export function filesOf(core, room) {
  const files = readdirSync(`${core}/${room}`, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && entry.name !== 'index.ts')
    .map(({ parentPath, name }) => `${parentPath}/${name}`.slice(core.length).replace(/^\/+/, ''));
  return [...files, ...(room === 'exposure' ? ['check.ts', 'hold.ts'] : [])].sort();
}
