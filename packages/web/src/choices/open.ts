// Whether somebody looks at the choices.

import { computed, signal } from '@preact/signals-core';
import { impossible, made } from '../state/plan.js';

export const opened = signal(false);

/** Where there is no plan there is nothing to choose from. */
export const possible = computed(() => impossible.value === undefined && made.value !== undefined);

export const wanted = computed(() => opened.value && possible.value);
