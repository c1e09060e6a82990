// A shoot inside a link: its file, without what the defaults say, after the # that browsers send nowhere.

import type { Shoot } from '@evenfall/core';
import { isGroup, type Path, valueAt, withValue } from './state/path.js';
import { reader } from './state/reader.js';

const KEY = 'shoot=';
const LONGEST = 64_000;

/** The shoot's file without the keys that reading it would fill in anyway. */
function smallest(shoot: Shoot): unknown {
  const readShoot = reader.peek();
  if (readShoot === undefined) return shoot;
  const whole = JSON.stringify(shoot, sorted);
  const means = (value: unknown) => {
    const read = readShoot(value);
    return read.kind === 'ok' && JSON.stringify(read.shoot, sorted) === whole;
  };
  let small: unknown = shoot;
  const paths: Path[] = Object.entries(shoot).flatMap(([key, value]) => [
    ...(isGroup(value) ? Object.keys(value).map((inner) => [key, inner]) : []),
    [key],
  ]);
  for (const path of paths) {
    if (valueAt(small, path) === undefined) continue;
    const without = withValue(small, path, undefined);
    if (means(without)) small = without;
  }
  return small;
}

/** Keys in one order, so that the same content is the same text. */
function sorted(_key: string, value: unknown): unknown {
  return isGroup(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;
}

/** `#shoot=…`, the JSON in base64url. */
export function fragmentOf(shoot: Shoot): string {
  const bytes = new TextEncoder().encode(JSON.stringify(smallest(shoot)));
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return `#${KEY}${btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')}`;
}

/** The value in a fragment, not yet checked; undefined where the fragment holds none at all. */
export function valueInFragment(fragment: string): { readonly value: unknown } | undefined {
  const text = fragment.replace(/^#/, '');
  if (!text.startsWith(KEY)) return undefined;
  try {
    if (text.length > LONGEST) return { value: undefined };
    const binary = atob(text.slice(KEY.length).replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(binary, (character) => character.charCodeAt(0));
    return { value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) };
  } catch {
    return { value: undefined };
  }
}
