// After the shoot: a part of its own, loaded when its section is opened or frames are dropped on the page.

import { lateSection } from '../parts/late-section.js';
import { words } from '../words/words.js';
import { opened } from './open.js';

export const reviewSection = lateSection(
  'review',
  opened,
  () => words().review,
  async () => (await import('./view.js')).reviewView,
);
