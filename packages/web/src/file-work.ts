// Opening and saving files, loaded when it is first asked for. Everything stays on the device.

import { calendarTexts, languages, wordsFor } from '@evenfall/chart';
import { readPlan, readShoot, writeCalendar, writeCuesCsv, writePlan, writeShoot } from '@evenfall/core';
import { download, plainName } from './parts/download.js';
import { say } from './parts/message.js';
import { part } from './state/part.js';
import { isGroup } from './state/path.js';
import { made } from './state/plan.js';
import { putAside } from './state/shelf.js';
import { inWords, openShoot, shoot } from './state/shoot.js';
import { words } from './words/words.js';
import { lookUpZone } from './zone.js';

/** The limits of docs/formats.md: of a plan, and of a shoot. */
const LARGEST_BYTES = 60_000_000;
const LARGEST_SHOOT_BYTES = 250_000;

export type SaveKind = 'shootYaml' | 'shootJson' | 'plan' | 'calendar' | 'csv';

/** @param options `travelS`: so early a calendar rings for setting up */
export async function save(kind: SaveKind, { travelS }: { readonly travelS: number }): Promise<void> {
  const { title = '', date, direction } = shoot.peek();
  const base = `${plainName(title) || words().files.fileName}-${date}-${direction}`;
  if (kind === 'shootJson') return download(`${base}.json`, 'application/json', writeShoot(shoot.peek()));
  if (kind === 'shootYaml') {
    const yaml = await part(import('./yaml.js'));
    if (yaml !== undefined)
      download(`${base}.yaml`, 'application/yaml', yaml.yamlOf(writeShoot(shoot.peek())));
    return;
  }
  const plan = made.peek();
  if (plan === undefined) return say(words().files.noPlan);
  if (kind === 'plan') download(`${base}-plan.json`, 'application/json', writePlan(plan));
  if (kind === 'calendar') {
    const language = languages.find((code) => code === words().language) ?? 'en';
    const texts = calendarTexts(plan, wordsFor({ language }));
    download(`${base}.ics`, 'text/calendar', writeCalendar(plan, { texts, travelS }));
  }
  if (kind === 'csv') download(`${base}-cues.csv`, 'text/csv', writeCuesCsv(plan));
}

export async function open(file: File): Promise<void> {
  const w = words().files;
  if (file.size > LARGEST_BYTES) return say(w.tooLarge(file.name));
  const text = await file.text();
  const yaml = file.size > LARGEST_SHOOT_BYTES ? undefined : await part(import('./yaml.js'));
  if (yaml === undefined && file.size <= LARGEST_SHOOT_BYTES) return;
  const parsed = yaml === undefined ? json(text) : yaml.parse(text);
  if (parsed === undefined) return say(w.unreadable(file.name));
  const { value, where } = parsed;
  const isPlan = isGroup(value) && String(value.format).startsWith('evenfall-plan/');
  if (!isPlan && file.size > LARGEST_SHOOT_BYTES) return say(w.tooLarge(file.name));
  const read = isPlan ? readPlan(value, where) : readShoot(await withZone(value), where);
  if (read.kind === 'wrong') {
    return say(w.fileWrong(file.name), { lines: read.errors.slice(0, 6).map(inWords).map(lineOf) });
  }
  putAside();
  openShoot('plan' in read ? read.plan.shoot : read.shoot);
  say(isPlan ? w.openedPlan(file.name) : w.opened(file.name), { undo: true });
}

/** Large files are plans, which are JSON: its parser is quick and needs little room. */
function json(text: string): { readonly value: unknown; readonly where?: undefined } | undefined {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
}

const lineOf = ({ line, message }: { line?: number | undefined; message: string }) =>
  line === undefined ? message : `${line}: ${message}`;

/** The zone of the coordinates where a file names none. */
async function withZone(value: unknown): Promise<unknown> {
  if (!isGroup(value) || !isGroup(value.place) || Object.hasOwn(value.place, 'timeZone')) return value;
  const { latitudeDeg, longitudeDeg } = value.place;
  if (typeof latitudeDeg !== 'number' || typeof longitudeDeg !== 'number') return value;
  const timeZone = await lookUpZone(latitudeDeg, longitudeDeg);
  return timeZone === undefined ? value : { ...value, place: { ...value.place, timeZone } };
}
