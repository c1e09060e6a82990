// What would fix a plan that could be better, beside the controls that could do it. Whoever finds such advice puts it
// here; the controls need not know who that is.

import type { Remedy } from '@evenfall/core';
import { type ReadonlySignal, signal } from '@preact/signals-core';

/** What would fix something that is no reason against the plan, and what that is. */
export type Advice = Remedy & { readonly why: string };

/** Where advice comes from; none until a part that gives some is loaded. */
export const advisor = signal<ReadonlySignal<readonly Advice[]> | undefined>(undefined);
