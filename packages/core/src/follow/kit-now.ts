// The kit as it is now, where it is not the plan's any more: a filter lost, a limit changed.

import { given } from '../check.js';
import { type DialControl, dialStep } from '../exposure/dial.js';
import { shutterEnds } from '../ramp/problem.js';
import { kitOf } from '../shoot/kit.js';
import type { Shoot } from '../shoot/shoot.js';
import { shootGap, shutterFits } from '../shoot/time-left.js';
import { shown, shownNames } from './setting.js';
import type { KitReport } from './types.js';
import type { FollowWarningFacts, UnknownMark } from './warning.js';

/** What may differ from the plan's kit, whole. */
export interface KitNow {
  readonly shutter: Shoot['camera']['shutter'];
  readonly iso: Shoot['camera']['iso'];
  /** Names of those at hand. */
  readonly filters: readonly string[];
  /** Most filter changes of the whole evening; absent: no limit. */
  readonly maxFilterChanges?: number;
}

/** The plan's own. */
export function plannedKit({ camera, filters, limits }: Shoot): KitNow {
  const { shutter, iso } = camera;
  const { maxFilterChanges } = limits;
  return {
    shutter,
    iso,
    filters: filters.map(({ name }) => name),
    ...(maxFilterChanges === undefined ? {} : { maxFilterChanges }),
  };
}

/** A shoot with another kit. */
export function shootWithKit(
  shoot: Shoot,
  { shutter, iso, filters: names, maxFilterChanges }: KitNow,
): Shoot {
  const { startFilter, ...rest } = shoot;
  const { maxFilterChanges: _, ...limits } = shoot.limits;
  return {
    ...rest,
    camera: { ...shoot.camera, shutter, iso },
    filters: shoot.filters.filter(({ name }) => names.includes(name)),
    ...(startFilter === undefined || !names.includes(startFilter) ? {} : { startFilter }),
    limits: { ...limits, ...(maxFilterChanges === undefined ? {} : { maxFilterChanges }) },
  };
}

/** What was said of the kit, applied; or what is wrong with it. */
export type KitRead =
  | { readonly kind: 'ok'; readonly now: KitNow }
  | { readonly kind: 'wrong'; readonly warning: FollowWarningFacts };

/**
 * @param shoot as it was planned
 * @param frameCount of the shoot
 * @param changesMade filter changes so far
 */
export function kitAfter(
  shoot: Shoot,
  frameCount: number,
  before: KitNow,
  { lost, kit = {} }: { readonly lost?: string | undefined; readonly kit?: KitReport | undefined },
  changesMade: number,
): KitRead {
  const asked: readonly string[] = kit.filters ?? before.filters;
  const shutter = { ...before.shutter, ...given(kit.shutter) };
  const iso = { ...before.iso, ...given(kit.iso) };
  const unknown = [
    ...unknownFilters(shoot, lost === undefined ? asked : [...asked, lost]),
    ...unknownMarks(shoot, 'shutter', [shutter.shortest, shutter.longest]),
    ...unknownMarks(shoot, 'iso', [iso.lowest, iso.highest]),
  ];
  if (unknown.length > 0) return { kind: 'wrong', warning: { kind: 'kit-unknown', unknown } };
  const { maxFilterChanges: more } = kit;
  const limit = more === undefined ? before.maxFilterChanges : changesMade + more;
  const now: KitNow = {
    shutter,
    iso,
    filters: shoot.filters.map(({ name }) => name).filter((name) => asked.includes(name) && name !== lost),
    ...(limit === undefined ? {} : { maxFilterChanges: limit }),
  };
  const { camera, intervalS } = shoot;
  const { gapS } = shootGap(shoot, frameCount);
  const ramp = kitOf(shootWithKit(shoot, now)).ramp;
  const exposed = { ...camera, kit: ramp, intervalS, gapS };
  const { longestStep, shortestStep } = shutterEnds(exposed);
  if (longestStep > shortestStep || !shutterFits(exposed))
    return { kind: 'wrong', warning: { kind: 'kit-empty', control: 'shutter' } };
  if (ramp.iso.lowestStep > ramp.iso.highestStep)
    return { kind: 'wrong', warning: { kind: 'kit-empty', control: 'iso' } };
  return { kind: 'ok', now };
}

function unknownFilters(shoot: Shoot, names: readonly string[]): UnknownMark[] {
  const strange = names.filter((name) => !shoot.filters.some((owned) => owned.name === name));
  if (strange.length === 0) return [];
  return [
    {
      control: 'filter',
      given: shownNames(strange),
      stacks: kitOf(shoot).stacks.map((stack) => stack.names),
    },
  ];
}

function unknownMarks(
  { camera }: Shoot,
  control: DialControl,
  labels: readonly (string | number)[],
): UnknownMark[] {
  return labels
    .filter((label) => dialStep(control, String(label), camera.stepsPerStop) === undefined)
    .map((label) => ({ control, given: shown(label) }));
}
