// A cue as the card says it: everything a person needs at that moment, as plain values.

import type { Control, PlanChange, PlanCue, PlanFrame, PlanMade } from '@evenfall/core';
import { instantMs } from '../text/local-time.js';
import { cueNoteText } from '../text/sentences.js';
import { labelText } from '../text/setting.js';
import type { Words } from '../text/words.js';

export interface CueFacts {
  readonly cue: PlanCue;
  readonly frameNumber: number; // from 1
  readonly minutesSince: number; // since the cue before, or the start
  readonly before: PlanFrame;
  readonly after: PlanFrame;
  readonly steps: readonly CueStep[]; // in the order of work
  readonly filterChange: boolean;
  readonly number: number; // of the cue, from 1; of a row of the rig, of the cue before it
  readonly cueCount: number;
  readonly clicks: Readonly<Record<Control, number>>; // marks of its dial by which each control moves
  readonly byRig: boolean; // nothing to do: the rig has its shutter there by itself
  readonly mayCost?: { readonly first: number; readonly last: number }; // frame numbers, from 1
  readonly notes: readonly string[]; // what to know beside what to turn
}

/** One thing to do: a filter to take off or put on, or a dial to turn. */
export type CueStep =
  | { readonly kind: 'filter-off' | 'filter-on'; readonly names: readonly string[] }
  | { readonly kind: 'dial'; readonly control: Control; readonly from: string; readonly to: string };

/** The cues of a plan in order, ready for paper. */
export function cueFacts(plan: PlanMade, words: Words): CueFacts[] {
  return factsOf(plan, plan.cues, words);
}

/** The rows of a card in order: the cues and, where a rig times the shutter freely, where that stands between them. */
export function rowFacts(plan: PlanMade, words: Words): CueFacts[] {
  const rows = [...plan.cues, ...(plan.shutterTimes ?? [])].sort((a, b) => a.frame - b.frame);
  return factsOf(plan, rows, words);
}

function factsOf(plan: PlanMade, rows: readonly PlanCue[], words: Words): CueFacts[] {
  const { stepsPerStop } = plan.shoot.camera;
  let number = 0;
  return rows.map((cue, i) => {
    const sinceAt = rows[i - 1]?.at ?? plan.summary.startAt;
    const after = plan.frames[cue.frame]!;
    const before = plan.frames[Math.max(0, cue.frame - 1)]!;
    const filterChange = cue.changes.some((change) => change.control === 'filter');
    const byRig = plan.shutterTimes?.includes(cue) === true;
    if (!byRig) number++;
    const spoiled = filterChange ? spoiledFrom(plan, cue.frame) : undefined;
    return {
      cue,
      frameNumber: cue.frame + 1,
      minutesSince: (instantMs(cue.at) - instantMs(sinceAt)) / 60_000,
      before,
      after,
      steps: stepsOf(cue.changes, before, after, words),
      clicks: clicksOf(before, after, stepsPerStop),
      number,
      cueCount: plan.cues.length,
      filterChange,
      notes: (cue.notes ?? []).map((note) => cueNoteText(note, words)),
      byRig,
      ...(spoiled === undefined ? {} : { mayCost: spoiled }),
    };
  });
}

/** Stops of APEX, in marks of the dial. Source: ASA PH2.5-1960, the additive (APEX) system of photographic exposure. */
function clicksOf(before: PlanFrame, after: PlanFrame, stepsPerStop: number): Record<Control, number> {
  const marks = (stops: number) => Math.round(Math.abs(stops) * stepsPerStop);
  return {
    filter: 0,
    aperture: marks(2 * Math.log2(after.fNumber / before.fNumber)),
    shutter: marks(Math.log2(after.shutterS / before.shutterS)),
    iso: marks(Math.log2(after.isoExact / before.isoExact)),
  };
}

function spoiledFrom(plan: PlanMade, frame: number) {
  let end = frame;
  while (plan.frames[end]?.affected === true) end++;
  return end === frame ? undefined : { first: frame + 1, last: end };
}

const ORDER: readonly Control[] = ['filter', 'aperture', 'shutter', 'iso'];

function stepsOf(
  changes: readonly PlanChange[],
  before: PlanFrame,
  after: PlanFrame,
  words: Words,
): CueStep[] {
  const inOrder = [...changes].sort((a, b) => ORDER.indexOf(a.control) - ORDER.indexOf(b.control));
  return inOrder.flatMap((change): CueStep[] => {
    if (change.control !== 'filter') return [dialStep(change, words)];
    const off = without(before.filters, after.filters);
    const on = without(after.filters, before.filters);
    return [
      ...(off.length > 0 ? [{ kind: 'filter-off' as const, names: off }] : []),
      ...(on.length > 0 ? [{ kind: 'filter-on' as const, names: on }] : []),
      // Two filters may share a name; then only the change itself tells them apart.
      ...(off.length + on.length === 0 ? [dialStep(change, words)] : []),
    ];
  });
}

function dialStep({ control, from, to }: PlanChange, words: Words): CueStep {
  return {
    kind: 'dial',
    control,
    from: labelText(control, from, words),
    to: labelText(control, to, words),
  };
}

function without(names: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return names.filter((name) => {
    const found = left.indexOf(name);
    if (found >= 0) left.splice(found, 1);
    return found < 0;
  });
}

/** A step in one line: "Take off ND 3", "Shutter 1/60 → 1/50". */
export function stepText(step: CueStep, words: Words): string {
  if (step.kind === 'dial') return `${words.controls[step.control]} ${step.from} → ${step.to}`;
  const names = step.names.join(' + ');
  return step.kind === 'filter-off' ? words.card.takeOff(names) : words.card.putOn(names);
}
