// The part of the page that moves need, as it is asked for by later.ts.

import { wearStyle } from './style.js';

export { clipFields } from './clip.js';
export { advice, findingsView } from './findings.js';
export { moveLanes } from './lanes.js';
export { moveNotes, otherNotes, starAdvice } from './notes.js';
export { movePanel } from './panel.js';
export { moveColumns, moveFacts, moveFigures, moveSpoken } from './tell.js';

wearStyle();
