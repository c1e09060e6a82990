// Frames as their files have them, as shots in the order they were taken: of one camera, each once.

import { positive } from '../check.js';
import { ev100Of } from '../exposure/exposure.js';
import type { PlanMade } from '../plan/types.js';
import { parseRfc3339, wallToMs, type Zone } from '../sky/clock.js';
import { markReader } from './marks.js';
import type { BracketExposure, TakenFrame } from './types.js';

/** One frame, its setting as the dials have it. */
export interface Shot {
  readonly taken: TakenFrame;
  /** By the camera's clock, UTC epoch milliseconds as far as its zone is right. */
  readonly clockMs: number;
  /** Whether its time has a part of a second. */
  readonly isFine: boolean;
  readonly shutter: string;
  readonly shutterS: number;
  readonly iso: number;
  readonly isoExact: number;
  readonly aperture: string;
  readonly fNumber: number;
  /** Without filters, EV at ISO 100. */
  readonly bareEv100: number;
  /** Of a bracket: its exposures, the brightest first; the setting is the middle one's. */
  readonly exposures?: readonly BracketExposure[];
  /** Which are missing, as stops by which they are brighter than the middle one. */
  readonly missingEv?: readonly number[];
}

/** What is reviewed, and what is left out. */
export interface Taken {
  readonly shots: readonly Shot[];
  readonly others: readonly { readonly camera: string; readonly count: number }[];
  readonly copies: number;
}

/**
 * Shots of the camera that took most, in order.
 *
 * @throws RangeError on a time that is none, or a number that is not positive
 */
export function shotsOf(frames: readonly TakenFrame[], plan: PlanMade, zone: Zone): Taken {
  const { main, others } = byCamera(frames);
  const mark = markReader(plan.shoot.camera.stepsPerStop);
  const held = plan.frames[0]!;
  const shots = main.map((taken): Shot => {
    const shutter = mark('shutter', positive('shutterS', taken.shutterS));
    const iso = mark('iso', positive('iso', taken.iso));
    const aperture =
      taken.fNumber === undefined
        ? { label: held.aperture, exact: held.fNumber }
        : mark('aperture', positive('fNumber', taken.fNumber));
    // A shutter that a rig times freely is no mark: it is what the file says.
    const shutterS = plan.shoot.camera.bulb ? taken.shutterS : shutter.exact;
    return {
      taken,
      ...clockOf(taken, zone),
      shutter: shutter.label,
      shutterS,
      iso: Number(iso.label),
      isoExact: iso.exact,
      aperture: aperture.label,
      fNumber: aperture.exact,
      bareEv100: ev100Of({ timeS: shutterS, fNumber: aperture.exact, iso: iso.exact }),
    };
  });
  const inOrder = shots.sort(byTime);
  const kept = inOrder.filter(
    (shot, i) => !inOrder.slice(Math.max(0, i - 4), i).some((o) => isCopy(o, shot)),
  );
  return { shots: kept, others, copies: inOrder.length - kept.length };
}

function byCamera(frames: readonly TakenFrame[]) {
  const counts = new Map<string, number>();
  for (const { camera = '' } of frames) counts.set(camera, (counts.get(camera) ?? 0) + 1);
  const all = [...counts].map(([camera, count]) => ({ camera, count }));
  // Of as many frames, the first by name: the order of the files must not matter.
  all.sort((a, b) => b.count - a.count || (a.camera < b.camera ? -1 : 1));
  const [first, ...others] = all;
  return { main: frames.filter(({ camera = '' }) => camera === first?.camera), others };
}

const TIME = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2}:\d{2})(\.\d+)?(Z|[+-]\d{2}:\d{2})?$/i;

/** A time without an offset is taken by the place's clock: where that shows it twice, the first; where never, an hour on. */
function clockOf(
  { at, file }: TakenFrame,
  zone: Zone,
): { readonly clockMs: number; readonly isFine: boolean } {
  const [, date, time, fraction, offset] = TIME.exec(at) ?? [];
  const none = () =>
    new RangeError(`at must be a time such as "2026-10-14T18:07:31", got "${at}" of ${file}`);
  if (date === undefined || time === undefined) throw none();
  const isFine = fraction !== undefined && Number(fraction) > 0;
  if (offset !== undefined) {
    const clockMs = parseRfc3339(at);
    if (clockMs === undefined) throw none();
    return { clockMs, isFine };
  }
  const utcMs = parseRfc3339(`${date}T${time}Z`);
  if (utcMs === undefined) throw none();
  const [first = utcMs - zone.offsetMin(utcMs) * 60_000] = wallToMs(date, time, zone);
  return { clockMs: first + Math.round(1000 * Number(fraction ?? 0)), isFine };
}

/** By time, then by the camera's counter, a JPEG before its raw file, then by name; a counter that starts over goes on. */
function byTime(a: Shot, b: Shot): number {
  if (a.clockMs !== b.clockMs) return a.clockMs - b.clockMs;
  const [first, second] = [counterOf(a), counterOf(b)];
  const ahead = first - second;
  if (ahead !== 0) return Math.abs(ahead) > 5000 ? -ahead : ahead;
  const isJpeg = ({ taken }: Shot) => /\.jpe?g$/i.test(taken.file);
  if (isJpeg(a) !== isJpeg(b)) return isJpeg(a) ? -1 : 1;
  return a.taken.file < b.taken.file ? -1 : a.taken.file > b.taken.file ? 1 : 0;
}

function counterOf({ taken }: Shot): number {
  return Number(/(\d+)\D*$/.exec(stemOf(taken.file))?.[1]?.slice(-4) ?? 0);
}

function stemOf(file: string): string {
  return file.replace(/^.*[/\\]/, '').replace(/\.[^.]*$/, '');
}

/** Raw and JPEG of one frame, or the same file in two folders. */
function isCopy(a: Shot, b: Shot): boolean {
  return (
    a.clockMs === b.clockMs &&
    a.bareEv100 === b.bareEv100 &&
    stemOf(a.taken.file).toLowerCase() === stemOf(b.taken.file).toLowerCase()
  );
}
