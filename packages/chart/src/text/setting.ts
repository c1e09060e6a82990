// Settings as a photographer writes them: "1/60 · ISO 400 · f/8 · ND 3".

import type { Control, PlanFrame } from '@evenfall/core';
import { checkGiven, givenWords } from './given.js';
import type { Words } from './words.js';

/** What a camera shows of a setting. */
export type Exposed = Pick<PlanFrame, 'shutter' | 'iso' | 'aperture'>;

/** A shutter label with its unit where the dial leaves it out: "1/60" stays, "2" is "2 s". */
export function shutterText(label: string): string {
  return label.includes('/') ? label : `${label} s`;
}

/**
 * The shortest and the longest shutter of frames, as text.
 *
 * @param frames of a plan, one or more
 * @returns "1/338" and "3.8 s"
 * @throws RangeError where there is no frame
 * @example
 * ```ts
 * import { shutterEnds } from '@evenfall/chart';
 *
 * const frames = [{ shutter: '1/338', shutterS: 1 / 338 }, { shutter: '3.8', shutterS: 3.8 }];
 * shutterEnds(frames); // → ['1/338', '3.8 s']
 * ```
 */
export function shutterEnds(
  frames: readonly Pick<PlanFrame, 'shutter' | 'shutterS'>[],
): readonly [shortest: string, longest: string] {
  checkGiven('frames', frames, '0', 'one frame of a plan or more');
  const first = frames[0]!;
  const shortest = frames.reduce((least, frame) => (frame.shutterS < least.shutterS ? frame : least), first);
  const longest = frames.reduce((most, frame) => (frame.shutterS > most.shutterS ? frame : most), first);
  return [shutterText(shortest.shutter), shutterText(longest.shutter)];
}

/** Names of the filters on the lens, "ND 3 + ND 6", or the word for none. */
export function filterText(names: readonly string[], words: Words): string {
  return names.length === 0 ? words.noFilter : names.join(' + ');
}

/**
 * Shutter, ISO and aperture of a frame as a photographer writes them.
 *
 * @param frame of a plan
 * @param between what parts them
 * @returns "1/60 · ISO 400 · f/8"
 * @throws RangeError on what is no frame
 * @example
 * ```ts
 * import { exposureText } from '@evenfall/chart';
 *
 * exposureText({ shutter: '1/60', iso: 400, aperture: '8' }); // → '1/60 · ISO 400 · f/8'
 * exposureText({ shutter: '2', iso: 400, aperture: '8' }, ', '); // → '2 s, ISO 400, f/8'
 * ```
 */
export function exposureText(frame: Exposed, between = ' · '): string {
  checkGiven('frame', frame, 'shutter', 'a frame of a plan');
  return [shutterText(frame.shutter), `ISO ${frame.iso}`, `f/${frame.aperture}`].join(between);
}

/**
 * The whole setting of a frame, filters too.
 *
 * @param frame of a plan
 * @param words language, from {@link wordsFor}
 * @param between what parts them
 * @returns "1/60 · ISO 400 · f/8 · ND 8"
 * @throws RangeError on what is no frame or no words
 * @example
 * ```ts
 * import { english, settingText } from '@evenfall/chart';
 *
 * const frame = { shutter: '1/60', iso: 400, aperture: '8', filters: ['ND 8'] };
 * settingText(frame, english); // → '1/60 · ISO 400 · f/8 · ND 8'
 * settingText({ ...frame, filters: [] }, english); // → '1/60 · ISO 400 · f/8 · no filter'
 * ```
 */
export function settingText(
  frame: Exposed & Pick<PlanFrame, 'filters'>,
  words: Words,
  between = ' · ',
): string {
  return `${exposureText(frame, between)}${between}${filterText(frame.filters, givenWords(words))}`;
}

/**
 * A label of a change as the dial or the lens says it, with its unit.
 *
 * @param control whose label
 * @param label as in a plan's change
 * @param words language, from {@link wordsFor}
 * @returns "2 s", "f/8", "400", "no filter"
 * @example
 * ```ts
 * import { english, labelText } from '@evenfall/chart';
 *
 * labelText('shutter', '2', english); // → '2 s'
 * labelText('filter', 'none', english); // → 'no filter'
 * ```
 */
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
