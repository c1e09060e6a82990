// A shoot file on disk, or on standard input, to a checked shoot with its time zone.

import { basename } from 'node:path';
import { clocksNear, readShoot, type Shoot } from '@evenfall/core';
import lookUpZone from '@photostructure/tz-lookup';
import { asMeant } from './as-meant.js';
import type { Io } from './io.js';
import { parseText } from './parse-text.js';
import { chunksOf, readBytes } from './read-bytes.js';
import { Refusal, refusalOf } from './refusal.js';
import { systemFault } from './system-error.js';
import type { CommandWords } from './words/words.js';

/** The longest look and all the readings a shoot may hold come to half of it. */
const LARGEST_BYTES = 250_000;

/**
 * @param path a YAML or JSON file, or "-" for standard input
 * @throws Refusal with one line a fault
 */
export async function loadShoot(path: string, words: CommandWords, io: Io): Promise<Shoot> {
  const source = path === '-' ? words.standardInput : basename(path);
  const { value, where } = parseText(await readText(path, source, io), source);
  const meant = asMeant(value);
  const zoned = withZone(meant);
  const read = readShoot(zoned, where, source);
  if (read.kind === 'wrong') throw refusalOf(read.errors);
  if (zoned !== meant) doubtZone(read.shoot, source, words, io);
  return read.shoot;
}

/** A zone that was taken from coordinates near a border is doubted aloud. */
export function doubtZone({ place, date }: Shoot, source: string, words: CommandWords, io: Io): void {
  const { here, others } = clocksNear(place, date, lookUpZone);
  if (others.length > 0) io.err(`${source}: ${words.sentences.border(here, others)}\n`);
}

async function readText(path: string, source: string, io: Io): Promise<string> {
  let bytes: Uint8Array | undefined;
  try {
    bytes = await readBytes(path === '-' ? io.stdinBytes() : chunksOf(path), LARGEST_BYTES);
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
  }
  if (bytes === undefined) {
    throw new Refusal([{ kind: 'too-long', source, of: 'shoot' }]);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal([{ kind: 'not-utf8', source }]);
  }
}

/** Fills in the zone of the coordinates where the file names none. Anything wrong is left for the reader to tell. */
export function withZone(value: unknown): unknown {
  if (!isGroup(value) || !isGroup(value.place) || Object.hasOwn(value.place, 'timeZone')) return value;
  const { latitudeDeg, longitudeDeg } = value.place;
  if (typeof latitudeDeg !== 'number' || typeof longitudeDeg !== 'number') return value;
  try {
    return { ...value, place: { ...value.place, timeZone: lookUpZone(latitudeDeg, longitudeDeg) } };
  } catch {
    return value;
  }
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
