// Times and settings as the page writes them.

import type { Control, FollowSetting, PlanChange } from '@evenfall/core';
import { words } from '../words/words.js';

/** Local clock of an RFC 3339 time: "18:42:13", or "18:42" without seconds. */
export function clock(at: string, withSeconds = true): string {
  return at.slice(11, withSeconds ? 19 : 16);
}

type Marks = Pick<FollowSetting, 'shutter' | 'iso' | 'aperture' | 'filters'>;

/** "1/60 · ISO 400 · f/8 · no filter". */
export function settingText({ shutter, iso, aperture, filters }: Marks, withFilter = true): string {
  const filter = filters.length === 0 ? words().chart.noFilter : filters.join(' + ');
  const exposure = `${words().kit.seconds(shutter)} · ISO ${iso} · f/${aperture}`;
  return withFilter ? `${exposure} · ${filter}` : exposure;
}

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

/** "1:02:03", "2:31", "0:09". */
export function countdown(ms: number): string {
  const total = Math.max(0, Math.round(ms / 1000));
  const two = (value: number) => String(value).padStart(2, '0');
  const [h, m, s] = [Math.floor(total / 3600), Math.floor(total / 60) % 60, total % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
