// The shoots of this device beside the one at work, and kits by name. What is kept is read as untrusted.

import type { Camera, FilterSpec, Shoot } from '@evenfall/core';
import { effect, signal } from '@preact/signals-core';
import { firstShoot, today } from './first-shoot.js';
import { isGroup } from './path.js';
import { reader } from './reader.js';
import { salvageShoot } from './salvage.js';
import { draft, isFirst, newWork, openShoot, replaceShoot, shoot, work } from './shoot.js';
import { keep, kept, whenKeptElsewhere } from './store.js';

interface Shelved {
  readonly id: string;
  readonly draft: unknown; // as it was typed
}

export interface Kit {
  readonly name: string;
  readonly camera: Camera;
  readonly filters: readonly FilterSpec[];
  readonly stackFilters: boolean;
}

const MOST = 60;

const listed = <T>(value: unknown, is: (entry: unknown) => entry is T): T[] =>
  Array.isArray(value) ? value.filter(is).slice(0, MOST) : [];

const isShelved = (entry: unknown): entry is Shelved =>
  isGroup(entry) && typeof entry.id === 'string' && isGroup(entry.draft);

// What is inside is checked where it is used: a kit only ever becomes part of a shoot, which is read as a file is.
const isKit = (entry: unknown): entry is Kit =>
  isGroup(entry) && typeof entry.name === 'string' && isGroup(entry.camera) && Array.isArray(entry.filters);

export const shelf = signal(listed(kept('shoots'), isShelved));
export const kits = signal(listed(kept('kits'), isKit));

effect(() => keep('shoots', shelf.value.length === 0 ? undefined : shelf.value));
effect(() => keep('kits', kits.value.length === 0 ? undefined : kits.value));
whenKeptElsewhere('shoots', (value) => {
  shelf.value = listed(value, isShelved);
});
whenKeptElsewhere('kits', (value) => {
  kits.value = listed(value, isKit);
});

/** Puts the shoot at work on the shelf; one that nobody has touched is no loss. */
export function putAside(): void {
  if (isFirst.peek()) return;
  const { id } = work.peek();
  const others = shelf.peek().filter((entry) => entry.id !== id);
  shelf.value = [{ id, draft: draft.peek() }, ...others].slice(0, MOST);
}

/** Another evening with the same place and kit. */
export function newShoot(): void {
  const { title: _, date: __, span: ___, readings: ____, ...rest } = shoot.peek();
  const first = firstShoot(today());
  putAside();
  openShoot({ ...first, ...rest, title: '', date: first.date, span: first.span, readings: [] });
}

/** The same once more; the one before stays as it is. */
export function duplicate(copyOf: (title: string) => string): void {
  putAside();
  openShoot({ ...shoot.peek(), title: copyOf(shoot.peek().title ?? '') });
}

/** Those on the shelf without the one at work. */
export const others = () => shelf.value.filter(({ id }) => id !== work.value.id);

export function takeUp({ id, draft: value }: Shelved): void {
  const read = reader.peek();
  if (read === undefined) return;
  putAside();
  openShoot(salvageShoot(value, firstShoot(today()), read), newWork(id));
}

/** @returns how to put it back */
export function takeOff(id: string): () => void {
  const before = shelf.peek();
  shelf.value = before.filter((entry) => entry.id !== id);
  return () => {
    shelf.value = before;
  };
}

export function keepKit(name: string): void {
  const { camera, filters, stackFilters } = shoot.peek();
  const rest = kits.peek().filter((kit) => kit.name !== name);
  kits.value = [...rest, { name, camera, filters, stackFilters }].slice(-MOST);
}

export function useKit({ camera, filters, stackFilters }: Kit): void {
  const { startFilter: _, ...rest } = shoot.peek();
  replaceShoot({ ...rest, camera, filters, stackFilters } as Shoot);
}

export function dropKit(name: string): () => void {
  const before = kits.peek();
  kits.value = before.filter((kit) => kit.name !== name);
  return () => {
    kits.value = before;
  };
}
