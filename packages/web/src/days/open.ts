// Whether somebody looks at the days to come.

import { signal } from '@preact/signals-core';

export const opened = signal(false);
