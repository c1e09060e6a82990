// Times and settings as the page writes them.

import type { Control, FollowSetting, PlanChange } from '@evenfall/core';
import { words } from '../words/words.js';

type Marks = Pick<FollowSetting, 'shutter' | 'iso' | 'aperture' | 'filters'>;

/** "1/60", "ISO 400", "f/8", "no filter". */
export function settingMarks({ shutter, iso, aperture, filters }: Marks, withFilter = true): string[] {
  const filter = filters.length === 0 ? words().chart.noFilter : filters.join(' + ');
  const exposure = [words().kit.seconds(shutter), `ISO ${iso}`, `f/${aperture}`];
  return withFilter ? [...exposure, filter] : exposure;
}

/** "1/60 · ISO 400 · f/8 · no filter". */
export const settingText = (marks: Marks, withFilter = true) => settingMarks(marks, withFilter).join(' · ');

/** What one control's mark says, with its unit. */
export function markText(control: Control, label: string): string {
  if (control === 'shutter') return words().kit.seconds(label);
  if (control === 'aperture') return `f/${label}`;
  return control === 'filter' && label === 'none' ? words().chart.noFilter : label;
}

/** "Shutter 1/60 → 1/50". */
export function changeText({ control, from, to }: PlanChange): string {
  const name = words().cues.controls[control];
  return `${name} ${markText(control, from)} ${words().field.arrow} ${markText(control, to)}`;
}

/** The same for a voice: "Shutter 1/60 to 1/50". */
export function changeSpoken({ control, from, to }: PlanChange): string {
  return `${words().cues.controls[control]} ${markText(control, from)} ${words().field.to} ${markText(control, to)}`;
}

const DAY_MS = 86_400_000;

/** "1:02:03", "2:31", "0:09"; from two days on "14 days". */
export function countdown(ms: number, days: (count: number) => string): string {
  if (ms >= 2 * DAY_MS) return days(Math.floor(ms / DAY_MS));
  const total = Math.max(0, Math.round(ms / 1000));
  const two = (value: number) => String(value).padStart(2, '0');
  const [h, m, s] = [Math.floor(total / 3600), Math.floor(total / 60) % 60, total % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

/** "52.10° N, 4.30° E". */
export function coordinatesText(latitudeDeg: number, longitudeDeg: number): string {
  const w = words();
  const side = (deg: number, [plus, minus]: readonly [string, string]) =>
    `${w.number(Math.abs(deg), 2)}° ${deg < 0 ? minus : plus}`;
  return `${side(latitudeDeg, w.place.northSouth)}, ${side(longitudeDeg, w.place.eastWest)}`;
}
