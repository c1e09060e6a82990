// The shoot being designed: what has been typed, sound or not, and what it reads as.

import type { FileError, Shoot, ShootRead } from '@evenfall/core';
import { batch, computed, effect, signal } from '@preact/signals-core';
import { words } from '../words/words.js';
import { firstShoot, today } from './first-shoot.js';
import { changedKeys, type Path, startsWith, valueAt, withValue } from './path.js';
import { loadReader, reader } from './reader.js';
import { salvageShoot } from './salvage.js';
import { keep, kept } from './store.js';
import { stillTyping } from './typing.js';

const start = firstShoot(today());
const was = kept('shoot');
/** Whether this device had a shoot when the page came. */
export const shootWasKept = was !== undefined;
let restored = !shootWasKept;

/** What stands in the controls: a shoot file's value, at times with a fault in it. */
export const draft = signal<unknown>(start);

/** Whether this is the evening that the page opens with, untouched. */
export const isFirst = computed(() => draft.value === start);

/** One shoot of this device; its id is what it is kept under. */
interface Work {
  readonly id: string;
}

export const newWork = (id: string = crypto.randomUUID?.() ?? String(Math.random())): Work => ({ id });

const keptId = kept('shootId');

/**
 * Which piece of work the draft is, by identity: another with every shoot that comes from elsewhere. Nothing worked
 * out for one is shown with the next.
 */
export const work = signal(newWork(typeof keptId === 'string' ? keptId : undefined));

export const reading = computed<ShootRead>(() =>
  isFirst.value || reader.value === undefined ? { kind: 'ok', shoot: start } : reader.value(draft.value),
);

if (!restored) {
  void loadReader().then(() => {
    if (reader.value === undefined) return;
    restored = true;
    const kept = salvageShoot(was, start, reader.value);
    batch(() => {
      work.value = newWork(work.value.id);
      draft.value = kept;
    });
  });
}

// Whoever changes something before it has come of itself need not wait longer.
effect(() => {
  if (!isFirst.value) void loadReader();
});

/** The last sound shoot, and the draft that it was read from. */
let sound: { readonly shoot: Shoot; readonly draft: unknown } = { shoot: start, draft: start };

/** The last sound shoot. */
export const shoot = computed<Shoot>(() => {
  if (reading.value.kind === 'ok') sound = { shoot: reading.value.shoot, draft: draft.value };
  return sound.shoot;
});

interface Stand {
  readonly draft: unknown;
  readonly work: Work;
}

const before = signal<readonly Stand[]>([]);
const after = signal<readonly Stand[]>([]);

const MOST_STEPS = 100;
/** What is changed at one place within this time is one step, and what one press changes at once. Our choice. */
const ONE_STEP_MS = 1200;
const AT_ONCE_MS = 40;

let lastChange = { where: '', atMs: Number.NEGATIVE_INFINITY };

/** Remembers how things stand before they change. */
function remember(where: string): void {
  const atMs = performance.now();
  const agoMs = atMs - lastChange.atMs;
  const goesOn = agoMs < AT_ONCE_MS || (where === lastChange.where && agoMs < ONE_STEP_MS);
  lastChange = { where, atMs };
  if (goesOn) return;
  before.value = [...before.peek().slice(1 - MOST_STEPS), { draft: draft.peek(), work: work.peek() }];
  after.value = [];
}

effect(() => {
  const now = draft.value;
  const { id } = work.value;
  if (!restored) return;
  keep('shoot', now);
  keep('shootId', id);
});

/** What a control shows: as typed, else the default that holds. */
export function shown(path: Path): unknown {
  const value = valueAt(draft.value, path) ?? valueAt(shoot.value, path);
  // What has been emptied since the last sound shoot was no default: it is not put back under the fingers.
  const emptied = valueAt(draft.value, path) === undefined && valueAt(sound.draft, path) !== undefined;
  return emptied && typeof value !== 'object' ? undefined : value;
}

/** Changes one value; undefined leaves it to its default. What stands there already changes nothing: no step, no plan. */
export function put(path: Path, value: unknown): void {
  if (standsAlready(path, value)) return;
  batch(() => {
    remember(path.join('.'));
    putAlong(path, value);
  });
}

const standsAlready = (path: Path, value: unknown) =>
  changedKeys(valueAt(draft.peek(), path), value).length === 0;

/** Changes what follows from another change, and goes back with it. */
export function putAlong(path: Path, value: unknown): void {
  if (standsAlready(path, value)) return;
  draft.value = withValue(draft.value, path, value);
}

export function putAll(changes: readonly (readonly [Path, unknown])[]): void {
  batch(() => {
    for (const [path, value] of changes) put(path, value);
  });
}

/** Takes a changed shoot whole; `undo` brings back what stood there. */
export function replaceShoot(next: Shoot): void {
  batch(() => {
    lastChange = { where: '', atMs: Number.NEGATIVE_INFINITY }; // a step of its own
    remember('');
    draft.value = next;
  });
}

/** Takes a shoot that comes from elsewhere; `undo` brings back what stood there. */
export function openShoot(next: Shoot, as = newWork()): void {
  batch(() => {
    replaceShoot(next);
    work.value = as;
  });
}

/** Takes one stand off a list, and puts the present one on the other. */
function turn(from: typeof before, to: typeof before): void {
  const stand = from.peek().at(-1);
  if (stand === undefined) return;
  batch(() => {
    to.value = [...to.peek(), { draft: draft.peek(), work: work.peek() }];
    from.value = from.peek().slice(0, -1);
    draft.value = stand.draft;
    work.value = stand.work;
    lastChange = { where: '', atMs: Number.NEGATIVE_INFINITY };
  });
}

export const canUndo = computed(() => before.value.length > 0);
export const canRedo = computed(() => after.value.length > 0);
export const undo = () => turn(before, after);
export const redo = () => turn(after, before);

/** What is wrong, where nobody is typing. */
export const faults = computed<readonly FileError[]>(() =>
  reading.value.kind === 'ok' ? [] : reading.value.errors.filter(({ path }) => !stillTyping(path)),
);

/** What is wrong at a path or inside it. */
export function faultsAt(path: Path): readonly FileError[] {
  return faults.value.filter((error) => startsWith(error.path, path)).map(inWords);
}

/** A fault as the page's language tells it. */
export function inWords(error: FileError): FileError {
  const text = words().library.fault(error);
  return { ...error, text, message: error.where === '' ? text : `${error.where}: ${text}` };
}
