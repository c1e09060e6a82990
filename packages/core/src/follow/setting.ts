// Between what a person or a rig says of the camera, by labels and names, and the ramp's indices.

import { type DialControl, dialStep } from '../exposure/dial.js';
import { englishGiven } from '../files/english-given.js';
import { givenOf } from '../files/fault.js';
import type { PlanFrame } from '../plan/types.js';
import { bulbEv, bulbStep } from '../ramp/bulb/model.js';
import type { LiveKit } from '../ramp/live/live.js';
import { exposureEv, type State, shutterOf } from '../ramp/moves.js';
import { type NamedKit, settingOf, stackOfNames } from '../shoot/kit.js';
import type { FollowSetting, ReportedSetting } from './types.js';
import type { ReportedMark, UnknownMark } from './warning.js';

/** The camera's dials and filters, and the ramp's count of them. */
interface Dials {
  readonly kit: NamedKit;
  readonly live: LiveKit;
}

/** A state as the dials say it. Under `bulb` the shutter takes the time that the target asks for. */
export function settingAt({ kit, live }: Dials, state: State, targetEv100: number): FollowSetting {
  const { lattice, bulb } = live;
  const shutterStep =
    bulb === undefined ? shutterOf(lattice, state) : bulbStep(lattice, bulb, state, targetEv100);
  const settingEv100 = bulb === undefined ? exposureEv(lattice, state) : bulbEv(lattice, state, shutterStep);
  const steps = {
    shutterStep,
    isoStep: lattice.isoMin + state.iso,
    apertureStep: lattice.apertureMin + state.aperture,
    stack: state.stack,
  };
  return {
    ...settingOf(kit, { ...steps, settingEv100, errorEv: settingEv100 - targetEv100, affected: false }),
    settingEv100,
  };
}

/** What a frame of a plan and a setting say beside the marks: an answer's own setting may be given back as it is. */
export const OF_A_FRAME = [
  'frame',
  'at',
  'sunAltitudeDeg',
  'sceneEv100',
  'lowEv100',
  'highEv100',
  'targetEv100',
  'shutterS',
  'bracketS',
  'bracketShortest',
  'bracketLongest',
  'isoExact',
  'fNumber',
  'filterStops',
  'settingEv100',
  'errorEv',
  'affected',
] as const satisfies readonly (keyof PlanFrame)[];

/** Whether two states are the same setting. */
export function sameState(a: State, b: State): boolean {
  return a.stack === b.stack && a.aperture === b.aperture && a.level === b.level && a.iso === b.iso;
}

/** Dial steps and filters, of whichever kit; no shutter where it is timed freely. */
interface Marks {
  readonly shutter: number | undefined;
  readonly iso: number;
  readonly aperture: number;
  readonly filters: readonly string[];
}

/** The state nearest to marks that the kit may stand at; of the filters those that are there. */
export function nearestState(
  { kit, live }: Dials,
  marks: Marks,
): { readonly state: State; readonly outside: boolean } {
  const { isoMin, isoCount, apertureMin, apertureCount, shutterMin, shutterMax } = live.lattice;
  const iso = Math.min(isoMin + isoCount - 1, Math.max(isoMin, marks.iso));
  const aperture = Math.min(apertureMin + apertureCount - 1, Math.max(apertureMin, marks.aperture));
  const wanted = marks.shutter ?? 0;
  const shutter = marks.shutter === undefined ? 0 : Math.min(shutterMax, Math.max(shutterMin, wanted));
  const owned = marks.filters.filter((name) =>
    [...kit.stacks, ...kit.equals].some(({ names }) => names.includes(name)),
  );
  const stack = stackOf({ kit }, owned) ?? 0;
  const level = marks.shutter === undefined ? 0 : aperture + shutter - iso;
  return {
    state: { stack, aperture: aperture - apertureMin, level, iso: iso - isoMin },
    outside:
      iso !== marks.iso ||
      aperture !== marks.aperture ||
      shutter !== wanted ||
      owned.length < marks.filters.length,
  };
}

/** What was reported, and the nearest to it that the kit may stand at. */
export interface Reported {
  readonly state: State;
  /** What has to be turned back; none where the setting is one of the kit's. */
  readonly outside: readonly ReportedMark[];
  /** What no camera of the shoot says; where there is any, `state` is that of before. */
  readonly unknown: readonly UnknownMark[];
}

/** The state of a reported setting; what is not reported is as in `before`. */
export function reportedState(evening: Dials, before: State, reported: ReportedSetting): Reported {
  const { kit, live } = evening;
  const { lattice, bulb } = live;
  const { isoMin, isoCount, apertureMin, apertureCount, shutterMin, shutterMax } = lattice;
  const outside: ReportedMark[] = [];
  const unknown: UnknownMark[] = [];
  const isoLabel = reported.iso === undefined ? undefined : String(reported.iso);
  const labels = { shutter: reported.shutter, iso: isoLabel, aperture: reported.aperture };
  const clipped = (control: DialControl, value: number, from: number, to: number): number => {
    if (value < from || value > to) outside.push({ control, mark: String(labels[control]) });
    return Math.min(to, Math.max(from, value));
  };
  const step = (control: DialControl, otherwise: number): number => {
    const label = labels[control];
    if (label === undefined) return otherwise;
    const found = dialStep(control, label, kit.ramp.stepsPerStop);
    if (found !== undefined) return found;
    unknown.push({ control, given: shown(label) });
    return otherwise;
  };

  const isoStep = step('iso', isoMin + before.iso);
  const apertureStep = step('aperture', apertureMin + before.aperture);
  const iso = clipped('iso', isoStep - isoMin, 0, isoCount - 1);
  const aperture = clipped('aperture', apertureStep - apertureMin, 0, apertureCount - 1);
  const stack = reported.filters === undefined ? before.stack : stackOf(evening, reported.filters);
  if (stack === undefined) {
    const stacks = kit.stacks.map(({ names }) => names);
    unknown.push({ control: 'filter', given: shownNames(reported.filters), stacks });
  }
  let level = 0;
  if (bulb === undefined) {
    const shutterStep = step('shutter', shutterOf(lattice, before));
    const shutter = clipped('shutter', shutterStep, shutterMin, shutterMax);
    level = apertureMin + aperture + shutter - isoMin - iso;
  }
  if (unknown.length > 0 || stack === undefined) return { state: before, outside: [], unknown };
  return { state: { stack, aperture, level, iso }, outside, unknown };
}

function stackOf({ kit }: Pick<Dials, 'kit'>, names: unknown): number | undefined {
  return Array.isArray(names) ? stackOfNames(kit, names) : undefined;
}

export function shownNames(names: unknown): string {
  return Array.isArray(names)
    ? `[${names.slice(0, 4).map(shown).join(', ')}${names.length > 4 ? ', …' : ''}]`
    : shown(names);
}

/** What was given, as text cut short. */
export function shown(value: unknown): string {
  return englishGiven(givenOf(value));
}
