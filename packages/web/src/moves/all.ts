// The part of the page that moves need, as later.ts loads it.

import { wear } from '../parts/wear.js';
import { clipFields } from './clip.js';
import { findingsView } from './findings.js';
import { moveLanes } from './lanes.js';
import css from './moves.css?inline';
import { moveNotes, otherNotes, starAdvice } from './notes.js';
import { movePanel } from './panel.js';
import { moveColumns, moveFacts, moveFigures, moveSpoken } from './tell.js';

export { advice } from './findings.js';

wear(css);

export const movePart = {
  clipFields,
  findingsView,
  moveColumns,
  moveFacts,
  moveFigures,
  moveLanes,
  moveNotes,
  movePanel,
  moveSpoken,
  otherNotes,
  starAdvice,
};
