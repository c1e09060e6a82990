// Reading a shoot that nobody vouches for: what is sound is kept, the rest falls back key by key.

import type { readShoot, Shoot } from '@evenfall/core';
import { isGroup, type Path, valueAt, withValue } from './path.js';

const MOST_ROUNDS = 100;

/**
 * A sound shoot from any value: each fault is taken out, or replaced by the fallback's value where the key is
 * needed.
 */
export function salvageShoot(value: unknown, fallback: Shoot, read: typeof readShoot): Shoot {
  let candidate: unknown = isGroup(value) ? { ...value, format: fallback.format } : fallback;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const found = read(candidate);
    if (found.kind === 'ok') return found.shoot;
    for (const { path } of found.errors) candidate = cured(candidate, path, fallback);
  }
  return fallback;
}

function cured(candidate: unknown, path: Path, fallback: Shoot): unknown {
  if (path.length === 0) return fallback;
  if (valueAt(candidate, path) !== undefined) return withValue(candidate, path, undefined);
  const known = valueAt(fallback, path);
  if (known !== undefined) return withValue(candidate, path, known);
  // The fallback has no such key either: the whole group takes its shape.
  const head = path.slice(0, 1);
  return withValue(candidate, head, valueAt(fallback, head));
}
