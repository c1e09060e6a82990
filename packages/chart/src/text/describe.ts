// What a chart says to those who do not see it.

import type { LightTable, PlanMade } from '@evenfall/core';
import { cueFacts } from '../card/cue-facts.js';
import { type ChartEvent, chartEvents } from './chart-events.js';
import { clockText } from './local-time.js';
import { filterText, settingText } from './setting.js';
import type { Words } from './words.js';

/** The plan's light, settings, filter changes and events in sentences. */
export function describePlan(plan: PlanMade, words: Words): string {
  const first = plan.frames[0]!;
  const last = plan.frames.at(-1)!;
  const changes = cueFacts(plan, words)
    .filter((facts) => facts.filterChange)
    .map(({ before, after }) => {
      const [from, to] = [filterText(before.filters, words), filterText(after.filters, words)];
      return `${clockText(after.at, false, words)} ${from} → ${to}`;
    });
  return [
    words.describe.plan({
      from: clockText(first.at, false, words),
      to: clockText(last.at, false, words),
      fromEv: words.number(first.sceneEv100, 1),
      toEv: words.number(last.sceneEv100, 1),
      frames: plan.frames.length,
      cues: plan.cues.length,
    }),
    words.describe.settings(settingText(first, words), settingText(last, words)),
    changes.length > 0 ? words.describe.filterChanges(changes.join('; ')) : words.describe.noFilterChanges,
    ...eventSentence(chartEvents(plan.events, plan.frames), first.at, last.at, words),
  ].join(' ');
}

/** The light table's fall and events in sentences. */
export function describeLight(table: LightTable, words: Words): string {
  const first = table.rows[0]!;
  const last = table.rows.at(-1)!;
  const steepest = steepestRow(table);
  return [
    words.describe.light({
      from: clockText(first.at, false, words),
      to: clockText(last.at, false, words),
      fromEv: words.number(first.sceneEv100, 1),
      toEv: words.number(last.sceneEv100, 1),
    }),
    words.describe.steepest(words.number(steepest.slopeEvPerMin, 2), clockText(steepest.at, false, words)),
    ...eventSentence(chartEvents(table.events, table.rows), first.at, last.at, words),
  ].join(' ');
}

/** The row at which the scene changes fastest, the first of equals. */
export function steepestRow(table: LightTable): LightTable['rows'][number] {
  return table.rows.reduce((a, b) => (Math.abs(b.slopeEvPerMin) > Math.abs(a.slopeEvPerMin) ? b : a));
}

function eventSentence(events: readonly ChartEvent[], from: string, to: string, words: Words): string[] {
  const inside = events.filter(
    (e) => Date.parse(e.at) >= Date.parse(from) && Date.parse(e.at) <= Date.parse(to),
  );
  if (inside.length === 0) return [];
  return [
    words.describe.events(
      inside.map((e) => `${words.events[e.name]} ${clockText(e.at, false, words)}`).join(', '),
    ),
  ];
}
