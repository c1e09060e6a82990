// Whether somebody looks at the review, and what was dropped for it before it was there.

import { signal } from '@preact/signals-core';

export const opened = signal(false);

/** Files, or folders and files as the browser hands them over when they are dropped. */
export const given = signal<readonly (File | FileSystemEntry)[]>([]);
