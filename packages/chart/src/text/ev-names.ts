// Names along the edges of an exposure-value panel: twilights at the top, events at the foot.

import type { EvPanelSpec } from '../plot/ev-spec.js';
import { twilightBands } from '../plot/twilight.js';
import { TYPE } from '../svg/ink.js';
import type { LabelRoom } from '../svg/label-room.js';
import { element, rectOf, textAt } from '../svg/svg.js';
import { textWidth } from '../svg/text-width.js';
import type { ChartEvent } from './chart-events.js';
import { clockText } from './local-time.js';
import type { Words } from './words.js';

/** Events between the ends of the axis, in order of time. */
export function eventsInside({ events, axis }: EvPanelSpec): ChartEvent[] {
  return events
    .filter((event) => axis.xAt(event.at) >= axis.left && axis.xAt(event.at) <= axis.right)
    .sort((a, b) => axis.xAt(a.at) - axis.xAt(b.at));
}

/** Shades of day, twilights and night over the whole panel, with their names along its top. */
export function twilightShades(spec: EvPanelSpec, room: LabelRoom, rowHeight: number) {
  const { moments, axis, box, look, words, events } = spec;
  const { unit: u, ink } = look;
  const dayEnd = events.find(({ name }) => name === 'sunset' || name === 'sunrise');
  const style = { size: TYPE.body * u, anchor: 'middle', fill: ink.text } as const;
  const shades: string[] = [];
  const names: string[] = [];
  for (const { name, fromMs, toMs } of twilightBands(moments, dayEnd?.sunAltitudeDeg)) {
    const left = fromMs === toMs ? axis.left : axis.x(fromMs);
    const right = fromMs === toMs ? axis.right : axis.x(toMs);
    shades.push(element('rect', { ...rectOf({ ...box, left, right }), fill: ink.twilight[name] }));
    const text = words.twilights[name].find((t) => textWidth(t, style.size) <= right - left - 6 * u);
    if (text === undefined) continue;
    const place = room.place([{ x: (left + right) / 2, y: box.top + rowHeight - 3 * u, text, style }], 0);
    if (place !== undefined) names.push(textAt(place.x, place.y, place.text, place.style));
  }
  // Shades first, so that none covers a name.
  return [...shades, ...names].join('');
}

function eventText(event: ChartEvent, words: Words): string {
  return `${words.events[event.name]} ${clockText(event.at, false, words)}`;
}

/** Rows the events' names need: one where every name ends before the next event's post; two where they must be staggered. */
export function rowsFor(events: readonly ChartEvent[], { axis, look, words }: EvPanelSpec): number {
  if (events.length === 0) return 0;
  const u = look.unit;
  const fits = events.every((event, i) => {
    const end = axis.xAt(event.at) + textWidth(eventText(event, words), TYPE.body * u) + 8 * u;
    const next = events[i + 1];
    return end <= (next === undefined ? axis.right : axis.xAt(next.at));
  });
  return fits ? 1 : 2;
}

/** The names beside the events' posts; one that finds no room is left out. */
export function eventLabels(
  { axis, words, look, box }: EvPanelSpec,
  events: readonly ChartEvent[],
  room: LabelRoom,
  rows: number,
): string {
  const { unit: u, ink } = look;
  const labels: string[] = [];
  for (const event of events) {
    const text = eventText(event, words);
    const places = [];
    for (let row = 0; row < rows; row++) {
      const y = box.bottom - (5 + row * (TYPE.body + 4)) * u;
      for (const anchor of ['start', 'end'] as const) {
        const x = axis.xAt(event.at) + (anchor === 'start' ? 4 : -4) * u;
        places.push({ x, y, text, style: { size: TYPE.body * u, anchor, fill: ink.text } });
      }
    }
    const place = room.place(places, 1.5 * u);
    if (place !== undefined) labels.push(textAt(place.x, place.y, place.text, place.style));
  }
  return labels.join('');
}
