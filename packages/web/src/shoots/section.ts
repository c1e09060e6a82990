// The other shoots of this device, and this one as its file: parts of their own, loaded when they are opened.

import { signal } from '@preact/signals-core';
import { lateSection } from '../parts/late-section.js';
import { words } from '../words/words.js';

export const shoots = signal(false);
const asFile = signal(false);

export const shootsSection = lateSection(
  'shoots',
  shoots,
  () => words().shoots.title,
  async () => (await import('./view.js')).shootsView,
);

export const fileSection = lateSection(
  'as-file',
  asFile,
  () => words().shoots.asFile,
  async () => (await import('./as-file.js')).asFileView,
);
