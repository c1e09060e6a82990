// The review under way: files are read when they come, and held against the plan again whenever something they are
// held by has changed.

import { type PlanMade, type Review, type ReviewOptions, readPlan, reviewFrames } from '@evenfall/core';
import { effect, signal } from '@preact/signals-core';
import { part } from '../state/part.js';
import { made } from '../state/plan.js';
import { type PhotoFile, photoFiles } from './files.js';
import { given, opened } from './open.js';
import type { FramesRead } from './read.js';

/** How files are read and frames held against the plan. */
interface How extends Pick<ReviewOptions, 'clockFastS' | 'evenFlicker' | 'replaceSpoilt'> {
  readonly levels: boolean;
  readonly mostEv: number;
}

export const how = signal<How>({ levels: false, mostEv: 3 });

interface OwnPlan {
  readonly name: string;
  readonly plan?: PlanMade; // absent: it cannot be read
}

const files = signal<readonly PhotoFile[]>([]);
export const ownPlan = signal<OwnPlan | undefined>(undefined);
export const progress = signal<{ readonly done: number; readonly all: number } | undefined>(undefined);
export const taken = signal<FramesRead | undefined>(undefined);
export const reviewed = signal<{ readonly plan: PlanMade; readonly review: Review } | undefined>(undefined);

const isPlan = ({ name }: PhotoFile) => /\.json$/i.test(name);

/** What was dropped or chosen last; it takes the place of what was there before. */
effect(() => {
  const now = given.value;
  if (now.length === 0) return;
  void photoFiles(now).then(async (found) => {
    const plan = found.find(isPlan);
    ownPlan.value = plan && { name: plan.name, ...(await planIn(plan.file)) };
    files.value = found.filter((file) => !isPlan(file));
  });
});

async function planIn(file: File): Promise<{ readonly plan?: PlanMade }> {
  try {
    const read = readPlan(JSON.parse(await file.text()));
    return read.kind === 'ok' && read.plan.kind === 'ok' ? { plan: read.plan } : {};
  } catch {
    return {};
  }
}

/** How often the page says how far it is. */
const TOLD_EVERY_MS = 100;
let asked = 0;

async function read(list: readonly PhotoFile[], levels: boolean): Promise<void> {
  const id = ++asked;
  progress.value = { done: 0, all: list.length };
  let toldMs = performance.now();
  const reader = await part(import('./read.js'));
  const found = await reader?.readFrames(list, levels, (done) => {
    const nowMs = performance.now();
    if (id === asked && nowMs - toldMs > TOLD_EVERY_MS) {
      toldMs = nowMs;
      progress.value = { done, all: list.length };
    }
    return id === asked;
  });
  if (id !== asked) return;
  progress.value = undefined;
  taken.value = found;
}

let lastRead: readonly [readonly PhotoFile[], boolean] = [[], false];
effect(() => {
  const [list, levels] = [files.value, how.value.levels];
  if (list.length === 0 || (lastRead[0] === list && lastRead[1] === levels)) return;
  lastRead = [list, levels];
  void read(list, levels);
});

/** A plan that is being dragged about goes first. */
const SETTLED_MS = 300;
let timer: ReturnType<typeof setTimeout> | undefined;

effect(() => {
  clearTimeout(timer);
  const [frames, plan, { levels: _, ...options }] = [
    taken.value?.frames ?? [],
    ownPlan.value === undefined ? made.value : ownPlan.value.plan,
    how.value,
  ];
  if (!opened.value) return;
  if (frames.length === 0 || plan === undefined) {
    reviewed.value = undefined;
    return;
  }
  const hold = () => {
    reviewed.value = { plan, review: reviewFrames(plan, frames, options) };
  };
  timer = setTimeout(hold, reviewed.peek() === undefined ? 0 : SETTLED_MS);
});
