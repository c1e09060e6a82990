// The moves of a plan: where the camera stands at each frame, and what a person should know of it.

import { exactFps } from '../footage/footage.js';
import { type MovePlan, planMoves } from '../move/move.js';
import type { Shoot } from '../shoot/shoot.js';
import { opticsOf } from '../shoot/time-left.js';
import type { Forecast } from './forecast.js';
import type { Moving } from './made.js';
import { cautionNotes, moveNotes, starNotes } from './notes-move.js';
import type { PlanFrame } from './types.js';

/** What the moves of a shoot and its lens add to frames that are exposed. */
export function moving(shoot: Shoot, forecast: Forecast, exposed: readonly PlanFrame[]): Moving {
  const planned = movesOf(shoot, exposed);
  const moved = planned === undefined ? { frames: exposed } : withMoves(exposed, planned);
  return {
    ...moved,
    notes: {
      moves: moveNotes(planned),
      stars: starNotes(shoot, forecast, moved.frames),
      cautions: cautionNotes(planned),
    },
  };
}

/** The moves over frames that are exposed; undefined where the shoot has none. */
function movesOf(shoot: Shoot, frames: readonly PlanFrame[]): MovePlan | undefined {
  const { moves, intervalS, clipFps, camera } = shoot;
  if (moves.length === 0) return undefined;
  const optics = opticsOf(camera);
  return planMoves({
    moves,
    frames,
    intervalS,
    clipFps: exactFps(clipFps),
    writeS: camera.gapS,
    darkFrame: camera.darkFrame,
    ...(optics === undefined ? {} : { optics }),
  });
}

/** Frames with what the moves do in each, and the moves as the plan file holds them. */
function withMoves(
  frames: readonly PlanFrame[],
  { frames: moved, travels, gap, tightest, fastest, findings, lines }: MovePlan,
): Pick<Moving, 'frames'> & Required<Pick<Moving, 'move'>> {
  return {
    // Not spread into a literal: with so many keys that takes twenty times as long, at every keystroke of a page.
    frames: frames.map((frame, i) => Object.assign({}, frame, moved[i])),
    move: { travels, gap, tightest, ...(fastest === undefined ? {} : { fastest }), findings, lines },
  };
}
