// What the place was chosen by: a shoot file has coordinates alone.

import { effect, signal } from '@preact/signals-core';
import { SAMPLE_PLACES } from '../places.js';
import { words } from '../words/words.js';
import { isGroup } from './path.js';
import { keep, kept } from './store.js';

interface Named {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

const MOST = 40;

const isNamed = (value: unknown): value is Named =>
  isGroup(value) &&
  typeof value.name === 'string' &&
  typeof value.latitudeDeg === 'number' &&
  typeof value.longitudeDeg === 'number';

const was = kept('places');
const named = signal<readonly Named[]>(Array.isArray(was) ? was.filter(isNamed).slice(-MOST) : []);

effect(() => keep('places', named.value.length === 0 ? undefined : named.value));

export function rememberName(name: string, latitudeDeg: number, longitudeDeg: number): void {
  named.value = [...named.peek().slice(1 - MOST), { name, latitudeDeg, longitudeDeg }];
}

/** The name of exactly these coordinates, as last chosen. */
export function placeName(latitudeDeg: number, longitudeDeg: number): string | undefined {
  const found = [...SAMPLE_PLACES, ...named.value].findLast(
    (one) => one.latitudeDeg === latitudeDeg && one.longitudeDeg === longitudeDeg,
  )?.name;
  return found && (words().place.sampleNames[found] ?? found);
}
