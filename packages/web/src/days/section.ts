// When to go: a part of its own, loaded when its section is opened.

import { lateSection } from '../parts/late-section.js';
import { words } from '../words/words.js';
import { opened } from './open.js';

export const daysSection = lateSection(
  'days',
  opened,
  () => words().days,
  async () => (await import('./view.js')).daysView,
);
