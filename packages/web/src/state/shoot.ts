// The shoot being designed: what has been typed, sound or not, and what it reads as.

import type { FileError, Shoot, ShootRead } from '@evenfall/core';
import { batch, computed, effect, signal } from '@preact/signals-core';
import { words } from '../words/words.js';
import { firstShoot, today } from './first-shoot.js';
import { type Path, startsWith, valueAt, withValue } from './path.js';
import { reader, readerReady } from './reader.js';
import { salvageShoot } from './salvage.js';
import { keep, kept } from './store.js';

const start = firstShoot(today());
const was = kept('shoot');
let restored = was === undefined;

/** What stands in the controls: a shoot file's value, at times with a fault in it. */
export const draft = signal<unknown>(start);

/** Whether this is the evening that the page opens with, untouched. */
export const isFirst = computed(() => draft.value === start);

/**
 * Which piece of work the draft is, by identity: another with every shoot that comes from elsewhere. Nothing worked
 * out for one is shown with the next.
 */
export const work = signal<object>({});

export const reading = computed<ShootRead>(() => reader.value?.(draft.value) ?? { kind: 'ok', shoot: start });

void readerReady.then(() => {
  if (restored || reader.value === undefined) return;
  restored = true;
  const kept = salvageShoot(was, start, reader.value);
  batch(() => {
    work.value = {};
    draft.value = kept;
  });
});

/** The last sound shoot, and the draft that it was read from. */
let sound: { readonly shoot: Shoot; readonly draft: unknown } = { shoot: start, draft: start };

/** The last sound shoot. */
export const shoot = computed<Shoot>(() => {
  if (reading.value.kind === 'ok') sound = { shoot: reading.value.shoot, draft: draft.value };
  return sound.shoot;
});

/** Earlier drafts that a press may bring back; only changes that replace much are kept. */
const before = signal<readonly { readonly draft: unknown; readonly work: object }[]>([]);

effect(() => {
  const now = draft.value;
  if (restored) keep('shoot', now);
});

/** What a control shows: as typed, else the default that holds. */
export function shown(path: Path): unknown {
  const value = valueAt(draft.value, path) ?? valueAt(shoot.value, path);
  // What has been emptied since the last sound shoot was no default: it is not put back under the fingers.
  const emptied = valueAt(draft.value, path) === undefined && valueAt(sound.draft, path) !== undefined;
  return emptied && typeof value !== 'object' ? undefined : value;
}

/** Changes one value; undefined leaves it to its default. */
export function put(path: Path, value: unknown): void {
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
    before.value = [...before.value.slice(-19), { draft: draft.value, work: work.value }];
    draft.value = next;
  });
}

/** Takes a shoot that comes from elsewhere; `undo` brings back what stood there. */
export function openShoot(next: Shoot): void {
  batch(() => {
    replaceShoot(next);
    work.value = {};
  });
}

export function undo(): void {
  const last = before.value.at(-1);
  if (last === undefined) return;
  batch(() => {
    before.value = before.value.slice(0, -1);
    draft.value = last.draft;
    work.value = last.work;
  });
}

/** What is wrong at a path or inside it. */
export function faultsAt(path: Path): readonly FileError[] {
  if (reading.value.kind === 'ok') return [];
  return reading.value.errors.filter((error) => startsWith(error.path, path)).map(inWords);
}

/** A fault as the page's language tells it. */
export function inWords(error: FileError): FileError {
  const text = words().library.fault(error);
  return { ...error, text, message: error.where === '' ? text : `${error.where}: ${text}` };
}
