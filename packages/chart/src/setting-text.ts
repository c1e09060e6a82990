// Settings as a photographer writes them: "1/60 · ISO 400 · f/8 · ND 3".

import type { Control, PlanFrame } from '@evenfall/core';
import type { Words } from './words.js';

/** A shutter label with its unit where the dial leaves it out: "1/60" stays, "2" is "2 s". */
export function shutterText(label: string): string {
  return label.includes('/') ? label : `${label} s`;
}

/** Names of the filters on the lens, "ND 3 + ND 6", or the word for none. */
export function filterText(names: readonly string[], words: Words): string {
  return names.length === 0 ? words.noFilter : names.join(' + ');
}

/** Shutter, ISO and aperture of a frame: "1/60 · ISO 400 · f/8". */
export function exposureText(frame: PlanFrame, between = ' · '): string {
  return [shutterText(frame.shutter), `ISO ${frame.iso}`, `f/${frame.aperture}`].join(between);
}

/** The whole setting: "1/60 · ISO 400 · f/8 · ND 3". */
export function settingText(frame: PlanFrame, words: Words, between = ' · '): string {
  return `${exposureText(frame, between)}${between}${filterText(frame.filters, words)}`;
}

/** A label of a change as the dial or the lens says it, with its unit: "2" of the shutter is "2 s". */
export function labelText(control: Control, label: string, words: Words): string {
  if (control === 'shutter') return shutterText(label);
  if (control === 'aperture') return `f/${label}`;
  return control === 'filter' && label === 'none' ? words.noFilter : label;
}

/** What a frame's dial says on one control, with its unit. */
export function controlText(control: Control, frame: PlanFrame, words: Words): string {
  if (control === 'filter') return filterText(frame.filters, words);
  return labelText(control, String(frame[control]), words);
}
