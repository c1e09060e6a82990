// Light or dark: as the device has it, or as chosen.

import { computed, effect, signal } from '@preact/signals-core';
import { keep, kept } from './store.js';

export type ThemeChoice = 'system' | 'light' | 'dark';

const CHOICES: readonly ThemeChoice[] = ['system', 'light', 'dark'];

export const themeChoice = signal<ThemeChoice>(
  CHOICES.find((choice) => choice === kept('theme')) ?? 'system',
);

const device = matchMedia('(prefers-color-scheme: dark)');
const deviceDark = signal(device.matches);
device.addEventListener('change', ({ matches }) => {
  deviceDark.value = matches;
});

/** Eyes that come out of the field are used to the dark: the page stays so until other colours are chosen. */
export const darkForEyes = signal(false);

/** The theme that holds. */
export const theme = computed(() =>
  darkForEyes.value
    ? 'dark'
    : themeChoice.value === 'system'
      ? deviceDark.value
        ? 'dark'
        : 'light'
      : themeChoice.value,
);

effect(() => {
  document.documentElement.dataset.theme = theme.value;
});
effect(() => keep('theme', themeChoice.value));
