// How times, places, settings and changes read on the screen.

import { english, exposureText, labelText, placeTexts } from '@evenfall/chart';
import type { PlanCue, PlanFrame, Shoot } from '@evenfall/core';

/** A number with fixed digits, never "-0.0". */
export function ev(value: number, digits = 1): string {
  // Rounding may leave a minus on zero.
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** "38.6970° N, 9.4210° W, Europe/Lisbon". */
export function placeText(place: Shoot['place']): string {
  return placeTexts(place, english).join(', ');
}

/** "1/60, ISO 400, f/8, ND 3"; the bare lens goes without saying. */
export function shortSettingText(frame: PlanFrame): string {
  return [exposureText(frame, ', '), ...(frame.filters.length > 0 ? [frame.filters.join(' + ')] : [])].join(
    ', ',
  );
}

/** "shutter 1/250 → 1/200, ISO 100 → 200". */
export function changesText({ changes }: PlanCue): string {
  return changes
    .map(({ control, from, to }) => {
      const [old, next] = [from, to].map((label) => labelText(control, label, english));
      // The f of "f/8" says which control it is.
      return control === 'aperture' ? `${old} → ${next}` : `${english.lanes[control]} ${old} → ${next}`;
    })
    .join(', ');
}

/** Names of events as people say them: "civil-dusk" is "civil dusk", "sun-behind-skyline" is "sun behind the skyline". */
export function eventText(name: string): string {
  return name.replaceAll('-', ' ').replace(/ skyline$/, ' the skyline');
}
