// Readings taken in the field, and what is planned anew from them.
// The one file that knows how: another way of following the light takes its place here.

import {
  cuesOf,
  type Plan,
  type PlanFrame,
  type PlanMade,
  planShoot,
  type ReadingEntry,
  type Shoot,
} from '@evenfall/core';

/** A reading, and where the camera stood when it was taken. */
export interface FieldReading extends ReadingEntry {
  readonly fromFrame: number; // first frame that may be planned anew
  readonly heldFrame: number; // the camera stands at this frame's setting
}

/** The plan of a shoot with everything that was metered on the way, each reading taken in its turn. */
export function planWith(shoot: Shoot, readings: readonly FieldReading[]): Plan {
  let plan = planShoot(shoot);
  readings.forEach((reading, i) => {
    if (!('frames' in plan)) return;
    const taken = readings.slice(0, i + 1).map(({ at, ev100 }) => ({ at, ev100 }));
    const anew = planShoot({ ...shoot, readings: [...shoot.readings, ...taken] });
    // Where no ramp follows the new light the old plan is still the best there is.
    if ('frames' in anew) plan = joined(plan, anew, reading);
  });
  return plan;
}

/** What was done stays; the camera holds its setting up to the frame from which the new plan is in force. */
function joined(old: PlanMade, anew: PlanMade, { fromFrame, heldFrame }: FieldReading): PlanMade {
  const held = old.frames[heldFrame];
  const frames = anew.frames.map((frame, i): PlanFrame => {
    if (i >= fromFrame) return frame;
    const past = old.frames[i];
    if (i <= heldFrame || held === undefined) return past ?? frame;
    const { shutter, shutterS, iso, isoExact, aperture, fNumber, filters, filterStops, settingEv100 } = held;
    const setting = {
      shutter,
      shutterS,
      iso,
      isoExact,
      aperture,
      fNumber,
      filters,
      filterStops,
      settingEv100,
    };
    return { ...frame, ...setting, errorEv: settingEv100 - frame.targetEv100, affected: false };
  });
  const cues = cuesOf(frames, !anew.shoot.camera.bulb);
  return { ...anew, frames, cues, summary: { ...anew.summary, cueCount: cues.length } };
}
