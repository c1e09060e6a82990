// A shoot under way, or its rehearsal: what has been done, kept so that a dead page comes back where it was.

import type { PlanMade, readShoot, Shoot } from '@evenfall/core';
import { batch, effect, signal } from '@preact/signals-core';
import { frameAtMs } from '../chart/time-ticks.js';
import { hush } from '../parts/message.js';
import { planner } from '../plan/planner.js';
import { isGroup } from '../state/path.js';
import { loadReader, reader } from '../state/reader.js';
import { keep, kept, whenKeptElsewhere } from '../state/store.js';
import { standing } from '../state/tab.js';
import { type FieldEvent, isFrame, readEvents } from './events.js';

export interface Run {
  readonly shoot: Shoot; // as it was when the run began
  readonly mode: 'live' | 'rehearsal';
  readonly from: number; // frame under way when it began: 0 unless somebody came late
  readonly events: readonly FieldEvent[]; // what happened so far
  readonly meterEv: number | undefined; // by how much readings differ under the same light, where it was stated
  readonly atMs: number; // a rehearsal's own clock, UTC epoch milliseconds
  readonly paused: boolean; // a rehearsal's clock stands
}

export const run = signal<Run | undefined>(undefined);

/** The run that another took the place of, or that was ended: it can be brought back. */
const givenUp = signal<Run | undefined>(undefined);

/** The plan of the run, as it was before anything happened. */
export const runPlan = signal<PlanMade | undefined>(undefined);

/** Which view is on: a run that was open comes back by itself. */
export const inField = signal(false);

const was = { run: kept('run'), inField: kept('inField') };
/** Whether an evening was under way when the page came. */
export const runWasKept = was.run !== undefined;
let restored = !runWasKept;

/** The page is black from its first moment where it comes back into the field (public/early.js), the status bar too. */
function markField(): void {
  const field = inField.peek();
  document.documentElement.toggleAttribute('data-field', field);
  const bar = document.querySelector('meta[name="theme-color"]:not([media])');
  if (!field) bar?.remove();
  else if (bar === null) {
    const black = Object.assign(document.createElement('meta'), { name: 'theme-color', content: '#000000' });
    document.head.prepend(black);
  }
}

async function restore(): Promise<void> {
  if (!restored) await loadReader();
  if (!restored && reader.value !== undefined) {
    restored = true;
    const before = readRun(was.run, reader.value);
    batch(() => {
      run.value = before;
      inField.value = before !== undefined && was.inField === true;
    });
  }
  markField();
}
void restore();

function readRun(value: unknown, readFile: typeof readShoot): Run | undefined {
  if (!isGroup(value)) return undefined;
  const read = readFile(value.shoot);
  if (read.kind === 'wrong') return undefined;
  return {
    shoot: read.shoot,
    mode: value.mode === 'live' ? 'live' : 'rehearsal',
    from: isFrame(value.from) ? value.from : 0,
    events: readEvents(value.events),
    meterEv: isSpread(value.meterEv) ? value.meterEv : undefined,
    atMs: typeof value.atMs === 'number' && Math.abs(value.atMs) < 8e15 ? value.atMs : 0,
    paused: value.paused === true,
  };
}

const isSpread = (value: unknown): value is number => typeof value === 'number' && value > 0 && value <= 2;

const plans = planner((plan, { shoot }) => {
  if (run.peek()?.shoot === shoot && plan.kind === 'ok') runPlan.value = plan;
});

let asked: Shoot | undefined;
effect(() => {
  const now = run.value;
  if (restored) keep('run', now);
  if (now === undefined) {
    runPlan.value = asked = undefined;
  } else if (now.shoot !== asked) {
    asked = now.shoot;
    plans.ask({ shoot: asked });
  }
});
effect(() => {
  const now = inField.value;
  if (!restored) return;
  keep('inField', now);
  markField();
});

// A second tab shows the evening that the first one keeps.
whenKeptElsewhere('run', (value) => {
  if (reader.value === undefined || standing.peek() !== 'second') return;
  const shown = readRun(value, reader.value);
  batch(() => {
    run.value = shown;
    if (shown === undefined) inField.value = false;
  });
});

export function changeRun(change: Partial<Run>): void {
  const now = run.peek();
  if (now !== undefined) run.value = { ...now, ...change };
}

/** One more thing that happened. */
export function happened(event: FieldEvent): void {
  hush();
  changeRun({ events: [...(run.peek()?.events ?? []), event] });
}

/** Takes the last of them back. */
export function undoLast(): void {
  changeRun({ events: run.peek()?.events.slice(0, -1) ?? [] });
}

// A rehearsal begins a little before its first frame, so that there is time to look.
const LEAD_MS = 90_000;

/** Begins an evening, or a rehearsal of it, in the place of any that is under way. */
export function startRun(plan: PlanMade, mode: Run['mode']): void {
  givenUp.value = run.peek();
  run.value = {
    shoot: plan.shoot,
    mode,
    from: mode === 'live' ? frameAtMs(plan.frames, Date.now(), plan.shoot.intervalS) : 0,
    events: [],
    meterEv: undefined,
    atMs: Date.parse(plan.summary.startAt) - LEAD_MS,
    paused: false,
  };
  runPlan.value = plan;
  inField.value = true;
}

export function endRun(): void {
  givenUp.value = run.peek();
  inField.value = false;
  run.value = undefined;
}

/** The run that was given up last comes back; one under way meanwhile takes its place as the one given up. */
export function bringBack(): void {
  const back = givenUp.peek();
  if (back === undefined) return;
  givenUp.value = run.peek();
  run.value = back;
}
