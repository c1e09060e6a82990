// The part of the page that moves need, as load.ts loads it.

import { adoptStyles } from '../parts/adopt-styles.js';
import { clipFields } from './clip.js';
import { findingsView } from './findings.js';
import { lanesView, movesDrawn } from './lanes-view.js';
import css from './moves.css?inline';
import { moveNotes, otherNotes, starAdvice } from './notes.js';
import { opticsFields } from './optics.js';
import { movePanel } from './panel.js';
import { sceneFields, sceneMeanings } from './scene-fields.js';
import { moveColumns, moveFacts, moveFigures, moveSpoken } from './tell.js';

export { advice } from './findings.js';

adoptStyles(css);

export const movePart = {
  clipFields,
  findingsView,
  lanesView,
  moveColumns,
  moveFacts,
  moveFigures,
  moveNotes,
  movePanel,
  movesDrawn,
  moveSpoken,
  opticsFields,
  otherNotes,
  sceneFields,
  sceneMeanings,
  starAdvice,
};
