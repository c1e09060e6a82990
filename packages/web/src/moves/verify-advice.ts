// Advice is kept only where it keeps its word: each change is planned, in a worker of its own, and must leave a plan
// in which what it was offered for is gone. More frames, say, may leave too little time for the night's shutter.

import type { MoveFinding, PlanMade, ShootChange } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { planner } from '../plan/planner.js';

interface Offer {
  readonly change: ShootChange;
  readonly against: MoveFinding['kind'];
}

interface Checked {
  readonly plan: PlanMade;
  readonly sound: ReadonlySet<string>;
  readonly done: boolean;
}

const checked = signal<Checked | undefined>(undefined);

const keyOf = (offer: Offer) => JSON.stringify(offer);

/** Whether an offer to fix a plan has been found to do so. */
export function isSound(plan: PlanMade, offer: Offer): boolean {
  const now = checked.value;
  return now?.plan === plan && now.sound.has(keyOf(offer));
}

/** Whether every offer has been looked at. */
export function isChecked(plan: PlanMade): boolean {
  const now = checked.value;
  return now?.plan === plan && now.done;
}

// Typing goes first.
const SETTLED_MS = 250;

let timer: ReturnType<typeof setTimeout> | undefined;
let queue: Offer[] = [];
let asking: ReturnType<typeof planner> | undefined;

/** Looks at offers one after the other; those of an earlier plan are given up. */
export function check(plan: PlanMade, offers: readonly Offer[]): void {
  queue = [...offers];
  checked.value = { plan, sound: new Set(), done: offers.length === 0 };
  clearTimeout(timer);
  timer = setTimeout(next, SETTLED_MS);
}

function next(): void {
  const [offer] = queue;
  const now = checked.peek();
  if (offer === undefined || now === undefined) return;
  asking ??= planner((answer, { shoot }) => {
    const [asked] = queue;
    const held = checked.peek();
    // An answer to what has been given up meanwhile.
    if (asked === undefined || held === undefined || shoot !== sent) return;
    const fixes = answer.kind === 'ok' && !answer.move?.findings.some(({ kind }) => kind === asked.against);
    queue.shift();
    checked.value = {
      ...held,
      sound: fixes ? new Set([...held.sound, keyOf(asked)]) : held.sound,
      done: queue.length === 0,
    };
    next();
  });
  sent = { ...now.plan.shoot, ...offer.change };
  asking.ask({ shoot: sent });
}

let sent: PlanMade['shoot'] | undefined;
