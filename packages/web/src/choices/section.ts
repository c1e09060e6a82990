// What other weights would give: a part of its own, loaded when its section is opened.

import { nothing } from 'lit-html';
import { lateSection } from '../parts/late-section.js';
import { words } from '../words/words.js';
import { opened, possible } from './open.js';

const section = lateSection(
  'choices',
  opened,
  () => words().choices.title,
  async () => (await import('./view.js')).choicesView,
);

export const choicesSection = () => (possible.value ? section() : nothing);
