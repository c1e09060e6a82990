// Several exposures in an interval, as the plan has them: which shots are one frame, and which of its exposures are missing.
// A frame has the setting of its middle exposure, as in the plan, also where that is the one that is missing.

import { ev100Of } from '../exposure/exposure.js';
import type { Bracket } from '../footage/bracket.js';
import type { PlanMade } from '../plan/types.js';
import { type MarkReader, markReader } from './marks.js';
import type { Shot } from './taken.js';

// Our choices, held by frames made in the tests.
/** Prints of a shutter may lie so many stops off the step that they mean. */
const SAME_EV = 0.15;
/** Seconds by which times to the whole second may be off against one another; and times that have parts of one. */
const WHOLE_S = 1.05;
const FINE_S = 0.3;

/** Shots of a plan with a bracket, one a frame; as they are where the plan has none. */
export function framesOfShots(shots: readonly Shot[], plan: PlanMade): readonly Shot[] {
  const { bracket } = plan.shoot.camera;
  if (bracket === undefined) return shots;
  const whole = groupsOf(shots, bracket, plan).filter(({ shots: group }) => group.length === bracket.frames);
  const usual = usualOrder(whole);
  // What comes before the first whole bracket has the middle that stands in that.
  const from = whole[0] && middleOf(whole[0]);
  const mark = markReader(plan.shoot.camera.stepsPerStop);
  return groupsOf(shots, bracket, plan, { usual, from }).map((group) =>
    asFrame(group, bracket, (shot, byEv) => atMiddle(shot, byEv, mark, plan)),
  );
}

/** Shots of one bracket in the order they were taken, and by how many stops each is brighter than the middle one. */
interface Group {
  readonly shots: readonly Shot[];
  readonly byEv: readonly number[];
}

/**
 * Shots as brackets. A camera takes its exposures in one order: where that is known, an exposure that comes before the last one in
 * it begins the next bracket.
 *
 * @param known `usual`: that order, by stops from the middle one; `from`: EV of the first middle one; absent: the plan's
 */
function groupsOf(
  shots: readonly Shot[],
  bracket: Bracket,
  plan: PlanMade,
  known: { readonly usual?: readonly number[] | undefined; readonly from?: number | undefined } = {},
): Group[] {
  const [first] = plan.frames;
  let aboutEv = known.from ?? first!.settingEv100 - first!.filterStops;
  const groups: Group[] = [];
  let open: Group | undefined;
  const close = () => {
    if (open === undefined) return;
    groups.push(open);
    aboutEv = middleOf(open);
  };
  for (const shot of shots) {
    const more = open && groupFrom([...open.shots, shot], bracket, aboutEv);
    if (
      open &&
      more &&
      belongs(shot, open.shots, bracket, plan) &&
      (known.usual === undefined || isInOrder(more, middleOf(more) - aboutEv, bracket, known.usual))
    ) {
      open = more;
      continue;
    }
    close();
    open = groupFrom([shot], bracket, aboutEv);
  }
  close();
  return groups;
}

/** Stops within which the setting is that of the bracket before: no cue came between. */
const UNTURNED_EV = 0.4;

/** Whether the exposures can have come in the usual order: after a cue, wherever the middle one may be. */
function isInOrder(
  { byEv }: Group,
  middleOffEv: number,
  { frames, stepEv }: Bracket,
  usual: readonly number[],
): boolean {
  const shifts =
    Math.abs(middleOffEv) < UNTURNED_EV
      ? [0]
      : Array.from({ length: 2 * frames - 1 }, (_, i) => i + 1 - frames);
  return shifts.some((shift) => {
    const places = byEv.map((ev) =>
      usual.findIndex((each) => Math.abs(ev + shift * stepEv - each) < stepEv / 2),
    );
    return places.every((place, i) => place >= 0 && (i === 0 || place > places[i - 1]!));
  });
}

/** The order in which most brackets were taken; undefined where there are none. */
function usualOrder(whole: readonly Group[]): readonly number[] | undefined {
  const counts = new Map<string, number>();
  for (const { byEv } of whole) counts.set(byEv.join(), (counts.get(byEv.join()) ?? 0) + 1);
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  return whole.find(({ byEv }) => byEv.join() === most?.[0])?.byEv;
}

/** Whether a shot is one more exposure of a bracket that has begun. */
function belongs(shot: Shot, group: readonly Shot[], bracket: Bracket, { shoot }: PlanMade): boolean {
  const { intervalS, camera } = shoot;
  const [first, last] = [group[0]!, group[group.length - 1]!];
  if (group.length >= bracket.frames) return false;
  if (shot.iso !== first.iso || shot.aperture !== first.aperture) return false;
  const apart = group.map(({ bareEv100 }) => Math.abs(shot.bareEv100 - bareEv100) / bracket.stepEv);
  const isStep = apart.every(
    (steps) => steps > 0.5 && Math.abs(steps - Math.round(steps)) * bracket.stepEv <= SAME_EV,
  );
  if (!isStep || Math.max(...apart) > bracket.frames - 0.5) return false;
  const offS = shot.isFine && last.isFine ? FINE_S : WHOLE_S;
  const sinceS = (shot.clockMs - first.clockMs) / 1000;
  const idleS =
    (shot.clockMs - last.clockMs) / 1000 - last.shutterS * (camera.darkFrame ? 2 : 1) - bracket.betweenS;
  return sinceS < Math.max(intervalS / 2, intervalS - offS) && idleS <= Math.max(offS, intervalS / 4);
}

/** Without filters, EV at ISO 100. */
function middleOf({ shots, byEv }: Group): number {
  return shots[0]!.bareEv100 + byEv[0]!;
}

/** @param aboutEv what the middle one is likely to have: that of the bracket before */
function groupFrom(shots: readonly Shot[], { frames: count, stepEv }: Bracket, aboutEv: number): Group {
  const reach = (count - 1) / 2;
  const evs = shots.map(({ bareEv100 }) => bareEv100);
  const longestEv = Math.min(...evs);
  const spanned = Math.round((Math.max(...evs) - longestEv) / stepEv);
  // Steps from the longest that is there to the middle one: where some are missing, those that make the middle one likely.
  const likely = Math.round((aboutEv - longestEv) / stepEv);
  const up = Math.min(reach, Math.max(spanned - reach, likely));
  return { shots, byEv: evs.map((ev) => (up - Math.round((ev - longestEv) / stepEv)) * stepEv + 0) };
}

/** @param middleBy the setting of the middle one, from a shot that is so many stops brighter */
function asFrame(
  { shots, byEv }: Group,
  { frames: count, stepEv }: Bracket,
  middleBy: (shot: Shot, byEv: number) => Shot,
): Shot {
  const reach = (count - 1) / 2;
  const exposures = shots
    .map(({ taken }, i) => ({ file: taken.file, byEv: byEv[i]! }))
    .sort((a, b) => b.byEv - a.byEv);
  const missingEv = Array.from({ length: count }, (_, i) => (reach - i) * stepEv + 0).filter(
    (ev) => !byEv.some((taken) => Math.abs(taken - ev) < stepEv / 2),
  );
  const nearest = byEv.reduce((best, ev, i) => (Math.abs(ev) < Math.abs(byEv[best]!) ? i : best), 0);
  const middle = middleBy(shots[nearest]!, byEv[nearest]!);
  const { clockMs, isFine } = shots[0]!;
  return { ...middle, clockMs, isFine, exposures, missingEv };
}

/** A shot that is so many stops brighter than the middle one, with the setting of that one. */
function atMiddle(shot: Shot, byEv: number, mark: MarkReader, { shoot }: PlanMade): Shot {
  if (byEv === 0) return shot;
  const { label, exact } = mark('shutter', shot.shutterS / 2 ** byEv);
  const shutterS = shoot.camera.bulb ? shot.shutterS / 2 ** byEv : exact;
  const { level: _, ...taken } = shot.taken;
  return {
    ...shot,
    // How bright another exposure came out tells nothing of this setting.
    taken,
    shutter: label,
    shutterS,
    bareEv100: ev100Of({ timeS: shutterS, fNumber: shot.fNumber, iso: shot.isoExact }),
  };
}
