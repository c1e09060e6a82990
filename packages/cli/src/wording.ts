// How times, places, settings and changes read on the screen.

import type { PlanCue, PlanFrame, Shoot } from '@evenfall/core';

/** "19:04:12" of a time as the plan writes it: the place's own clock. */
export function clock(at: string): string {
  return at.slice(11, 19);
}

const SET_UP_MINUTES = 20;

/** "18:35": twenty minutes before a time on the same clock, down to whole five minutes, as the card says it. */
export function setUpBy(at: string): string {
  const minutes = Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16)) - SET_UP_MINUTES;
  const local = (Math.floor(minutes / 5) * 5 + 1440) % 1440;
  return [Math.floor(local / 60), local % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

/** A number with fixed digits, never "-0.0". */
export function ev(value: number, digits = 1): string {
  // Rounding may leave a minus on zero.
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** "38.6970° N, 9.4210° W, Europe/Lisbon". */
export function placeText({ latitudeDeg, longitudeDeg, timeZone }: Shoot['place']): string {
  const side = (value: number, plus: string, minus: string) =>
    `${Math.abs(value).toFixed(4)}° ${value < 0 ? minus : plus}`;
  const where = `${side(latitudeDeg, 'N', 'S')}, ${side(longitudeDeg, 'E', 'W')}`;
  return `${where}, ${timeZone ?? 'mean solar time'}`;
}

function shutterText(label: string): string {
  return label.includes('/') ? label : `${label} s`;
}

/** "1/60, ISO 400, f/8, ND 3"; the bare lens is said only where `bare` gives it a word. */
export function settingText({ shutter, iso, aperture, filters }: PlanFrame, bare = ''): string {
  const glass = filters.length === 0 ? bare : filters.join(' + ');
  return `${shutterText(shutter)}, ISO ${iso}, f/${aperture}${glass === '' ? '' : `, ${glass}`}`;
}

/** "shutter 1/250 → 1/200, ISO 100 → 200". */
export function changesText({ changes }: PlanCue): string {
  return changes
    .map(({ control, from, to }) => {
      if (control === 'shutter') return `shutter ${shutterText(from)} → ${shutterText(to)}`;
      if (control === 'aperture') return `f/${from} → f/${to}`;
      return `${control === 'iso' ? 'ISO' : 'filter'} ${from} → ${to}`;
    })
    .join(', ');
}

/** Names of events as people say them: "civil-dusk" is "civil dusk". */
export function eventText(name: string): string {
  return name.replace('-', ' ');
}
