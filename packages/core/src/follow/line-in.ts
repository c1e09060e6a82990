// One line of input, read. Anything may come down the pipe; a line that is not understood is told, not thrown.

import { nearestWord } from '../check.js';
import { parseRfc3339 } from '../sky/clock.js';
import { OF_A_FRAME } from './setting.js';
import type { FollowInput, KitReport, ReportedSetting } from './types.js';

export type LineRead =
  | { readonly kind: 'ok'; readonly input: FollowInput }
  | { readonly kind: 'blank' }
  | { readonly kind: 'wrong'; readonly text: string };

const KEYS = ['at', 'frame', 'ev100', 'bound', 'sure', 'setting', 'lost', 'kit', 'done', 'missed', 'jump'];
const SETTING_KEYS = ['shutter', 'iso', 'aperture', 'filters'];
const KIT_KEYS = ['shutter', 'iso', 'filters', 'maxFilterChanges'];

/** Our choice: thirty times the longest line that says something. */
const MOST_CHARACTERS = 16_000;
/** Deepest nesting that is parsed: a line needs three levels. As in the files. */
const DEEPEST = 32;

class Wrong extends Error {}

/**
 * Reads `{"at" or "frame", "ev100", "bound", "sure", "setting", "lost", "kit", "done", "missed", "jump"}`, every key optional
 * but one needed. A reading needs a time: `at`, or the start of `frame`.
 *
 * @param startOfFrameMs when a frame starts, UTC epoch milliseconds
 */
export function readLine(line: string, startOfFrameMs: (frame: number) => number): LineRead {
  // A file written elsewhere may begin with a byte order mark.
  const text = line.length > MOST_CHARACTERS ? line : line.replace(/^\uFEFF/, '').trim();
  if (text === '') return { kind: 'blank' };
  try {
    return { kind: 'ok', input: inputOf(group(parsed(text), 'the line', KEYS), startOfFrameMs) };
  } catch (error) {
    if (error instanceof Wrong) return { kind: 'wrong', text: error.message };
    throw error;
  }
}

type Group = Readonly<Record<string, unknown>>;

function parsed(text: string): unknown {
  if (text.length > MOST_CHARACTERS) throw new Wrong(`more than ${MOST_CHARACTERS} characters`);
  if (isNestedTooDeep(text)) throw new Wrong(`nested more than ${DEEPEST} deep`);
  try {
    return JSON.parse(text);
  } catch {
    const shown = text.length > 40 ? `${text.slice(0, 40)} …` : text;
    throw new Wrong(`not one JSON object: ${shown}`);
  }
}

/** A parser, and whatever shows a value, goes as deep as the text does: the system may end it, which nothing can catch. */
function isNestedTooDeep(text: string): boolean {
  let open = 0;
  for (const [mark] of text.matchAll(/[[\]{}]/g)) {
    open += mark === '[' || mark === '{' ? 1 : -1;
    if (open > DEEPEST) return true;
  }
  return false;
}

function group(value: unknown, what: string, keys: readonly string[]): Group {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Wrong(`${what} must be a JSON object, got ${shown(value)}`);
  }
  for (const key of Object.keys(value)) {
    if (!keys.includes(key)) {
      throw new Wrong(`${shown(key)} is not a key of ${what}; the nearest is "${nearestWord(key, keys)}"`);
    }
  }
  if (Object.keys(value).length === 0) throw new Wrong(`${what} is empty; give one of ${keys.join(', ')}`);
  return { ...value };
}

function inputOf(line: Group, startOfFrameMs: (frame: number) => number): FollowInput {
  const frame = line.frame === undefined ? undefined : whole('frame', line.frame, 0);
  const atMs = line.at === undefined ? undefined : instant('at', line.at);
  const readAtMs = atMs ?? (frame === undefined ? undefined : startOfFrameMs(frame));
  const done = line.done === undefined ? undefined : whole('done', line.done, 1);
  const missed = line.missed === undefined ? undefined : missedOf(line.missed);
  // A meter that failed may say so with null: the line then only asks.
  const ev100 = line.ev100 === undefined || line.ev100 === null ? undefined : number('ev100', line.ev100);
  if (ev100 !== undefined && readAtMs === undefined) {
    throw new Wrong('"ev100" needs to know when: give "at" or "frame" beside it');
  }
  const jump = line.jump === undefined ? {} : { jump: yesOrNo('jump', line.jump) };
  const bound = line.bound === undefined ? {} : { bound: boundOf(line.bound) };
  const sure = line.sure === undefined ? {} : { sure: yesOrNo('sure', line.sure) };
  return {
    ...(frame === undefined ? {} : { frame }),
    ...(atMs === undefined ? {} : { atMs }),
    ...(ev100 === undefined || readAtMs === undefined
      ? {}
      : { reading: { atMs: readAtMs, ev100, ...bound, ...sure } }),
    ...(line.setting === undefined ? {} : { setting: settingOf(line.setting) }),
    ...(line.lost === undefined ? {} : { lost: nameOf(line.lost) }),
    ...(line.kit === undefined ? {} : { kit: kitOf(line.kit) }),
    ...(done === undefined ? {} : { done }),
    ...(missed === undefined ? {} : { missed }),
    ...jump,
  };
}

function settingOf(value: unknown): ReportedSetting {
  const { shutter, iso, aperture, filters } = group(value, '"setting"', [...SETTING_KEYS, ...OF_A_FRAME]);
  return {
    ...(shutter === undefined ? {} : { shutter: label('shutter', shutter) }),
    ...(iso === undefined ? {} : { iso: number('iso', iso) }),
    ...(aperture === undefined ? {} : { aperture: label('aperture', aperture) }),
    ...(filters === undefined ? {} : { filters: names(filters) }),
  };
}

function kitOf(value: unknown): KitReport {
  const { shutter, iso, filters, maxFilterChanges } = group(value, '"kit"', KIT_KEYS);
  return {
    ...(shutter === undefined ? {} : { shutter: rangeOf(shutter, 'shutter', 'shortest', 'longest', label) }),
    ...(iso === undefined ? {} : { iso: rangeOf(iso, 'iso', 'lowest', 'highest', number) }),
    ...(filters === undefined ? {} : { filters: names(filters) }),
    ...(maxFilterChanges === undefined
      ? {}
      : { maxFilterChanges: whole('maxFilterChanges', maxFilterChanges, 0) }),
  };
}

function rangeOf<Key extends string, Mark>(
  value: unknown,
  what: string,
  from: Key,
  to: Key,
  mark: (key: string, given: unknown) => Mark,
): { [end in Key]?: Mark } {
  const given = group(value, `"${what}"`, [from, to]);
  const ends: { [end in Key]?: Mark } = {};
  for (const key of [from, to]) if (given[key] !== undefined) ends[key] = mark(key, given[key]);
  return ends;
}

function nameOf(value: unknown): string {
  if (typeof value === 'string') return value;
  throw new Wrong(`"lost" must be the name of a filter, got ${shown(value)}`);
}

function instant(key: string, value: unknown): number {
  const ms = typeof value === 'string' ? parseRfc3339(value) : undefined;
  if (ms !== undefined) return ms;
  throw new Wrong(`"${key}" must be a time such as "2026-11-25T17:03:20+01:00", got ${shown(value)}`);
}

function number(key: string, value: unknown): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new Wrong(`"${key}" must be a number, got ${shown(value)}`);
}

function yesOrNo(key: string, value: unknown): boolean {
  if (typeof value === 'boolean') return value;
  throw new Wrong(`"${key}" must be true or false, got ${shown(value)}`);
}

/** A cue's number, or when it was due. */
function missedOf(value: unknown): number | { readonly atMs: number } {
  return typeof value === 'string' ? { atMs: instant('missed', value) } : whole('missed', value, 1);
}

function boundOf(value: unknown): 'atLeast' | 'atMost' {
  if (value === 'atLeast' || value === 'atMost') return value;
  throw new Wrong(`"bound" must be "atLeast" or "atMost", got ${shown(value)}`);
}

function whole(key: string, value: unknown, from: number): number {
  const given = number(key, value);
  if (Number.isSafeInteger(given) && given >= from) return given;
  throw new Wrong(`"${key}" must be a whole number from ${from}, got ${shown(value)}`);
}

/** A mark of the dial; "4" and 4 are the same one. */
function label(key: string, value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  throw new Wrong(`"${key}" must be a mark of the dial as text, got ${shown(value)}`);
}

function names(value: unknown): string[] {
  if (Array.isArray(value) && value.every((name): name is string => typeof name === 'string')) return value;
  throw new Wrong(`"filters" must be a list of filter names, empty for the bare lens, got ${shown(value)}`);
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 40)} …` : text;
}
