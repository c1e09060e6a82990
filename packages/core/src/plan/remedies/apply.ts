// What a change puts in place of the keys of a shoot.

import { longestMarkedShutter } from '../../footage/footage.js';
import { moveOfLength } from '../../move/lengths.js';
import type { Move } from '../../move/moves.js';
import type { Camera, Shoot } from '../../shoot/shoot.js';
import { shootTravels } from '../../shoot/time-left.js';
import { rfc3339 } from '../../sky/clock.js';
import type { Forecast } from '../forecast.js';
import type { ShootChange } from '../types.js';
import type { RemedyChange } from './change.js';

/** Longest ways that a shoot file may hold. */
const FARTHEST = { deg: 3600, m: 10_000 };

/**
 * Keys to put in place of the shoot's own.
 *
 * @param forecast of the shoot as it is, for the clock of its first frame
 * @returns undefined where the dial has no such mark
 */
export function appliedTo(
  shoot: Shoot,
  { times, zone }: Pick<Forecast, 'times' | 'zone'>,
  change: RemedyChange,
): ShootChange | undefined {
  const { camera, limits, moves } = shoot;
  const withCamera = (part: Partial<Camera>) => ({ camera: { ...camera, ...part } });
  const withShutter = (longest: string) => withCamera({ shutter: { ...camera.shutter, longest } });
  const withStopped = (changed: (move: Move) => Move) => ({
    moves: moves.map((move) => (move.mode === 'stopped' ? changed(move) : move)),
  });
  switch (change.change) {
    case 'longer-shutter':
      return {
        ...withShutter(change.shutter),
        ...(change.intervalS === undefined ? {} : { intervalS: change.intervalS }),
      };
    case 'faster-shutter':
      return withCamera({ shutter: { ...camera.shutter, shortest: change.shutter } });
    case 'higher-iso':
      return withCamera({ iso: { ...camera.iso, highest: change.iso } });
    case 'wider-aperture':
    case 'narrower-aperture': {
      const end = change.change === 'wider-aperture' ? 'widest' : 'narrowest';
      const { aperture } = camera;
      return withCamera({
        aperture: typeof aperture === 'string' ? change.aperture : { ...aperture, [end]: change.aperture },
      });
    }
    case 'another-filter': {
      const { stops } = change;
      const name = freeName(shoot, `ND of ${stops} ${stops === 1 ? 'stop' : 'stops'}`);
      return { filters: [...shoot.filters, { name, stops }] };
    }
    case 'start-filter':
      return { startFilter: change.filter };
    case 'more-filter-changes':
      return { limits: { ...limits, maxFilterChanges: change.maxFilterChanges } };
    case 'darker-look':
      return { look: { nightEv: change.nightEv } };
    case 'looser-tolerance':
      return { limits: { ...limits, toleranceEv: change.toleranceEv } };
    case 'larger-steps':
      return { limits: { ...limits, largestStepEv: change.largestStepEv } };
    case 'closer-cues':
      return { limits: { ...limits, secondsBetweenCues: change.secondsBetweenCues } };
    case 'fewer-exposures': {
      const { bracket, ...single } = camera;
      if (bracket === undefined || change.exposures === 1) return { camera: single };
      return withCamera({ bracket: { ...bracket, frames: change.exposures as typeof bracket.frames } });
    }
    case 'closer-exposures':
      return camera.bracket && withCamera({ bracket: { ...camera.bracket, stepEv: change.stepEv } });
    case 'shorter-span':
      return { span: change.span };
    case 'more-frames':
    case 'fewer-frames':
      return { intervalS: change.intervalS };
    case 'longer-recording':
    case 'longer-interval': {
      const { intervalS, recordingS = 0, fromRecordingS = 0 } = change;
      if (recordingS <= fromRecordingS + 1e-6) return { intervalS };
      // By the clock, since the sun would stop short.
      const endMs = Math.ceil(times[0] + recordingS * 1000);
      return { intervalS, span: { startAt: rfc3339(times[0], zone), endAt: rfc3339(endMs, zone) } };
    }
    case 'shorter-shutter': {
      // Beside no gap at all: the longest mark that is no longer than this.
      const { stepsPerStop } = camera;
      const mark = longestMarkedShutter(change.shutterS, { gapS: 0, darkFrame: false, stepsPerStop });
      return mark && withShutter(mark.label);
    }
    case 'no-dark-frame':
      return withCamera({ darkFrame: false });
    case 'shorter-write':
      return withCamera({ gapS: change.writeS });
    case 'shorter-settle':
      return withStopped((move) => withSettle(move, Math.min(change.settleS, move.gear.settleS)));
    case 'shorter-move':
    case 'longer-move': {
      const travels = shootTravels(shoot);
      // No gear goes as far: the reader would refuse it.
      if (travels.some(({ unit }, i) => Math.abs(change.lengths[i]) > FARTHEST[unit])) return undefined;
      return {
        moves: moves.map((move, i) =>
          change.lengths[i] === travels[i].length ? move : moveOfLength(move, change.lengths[i]),
        ),
      };
    }
    case 'stop':
      return { moves: moves.map((move) => ({ ...move, mode: 'stopped' })) };
  }
}

function freeName({ filters }: Pick<Shoot, 'filters'>, name: string): string {
  return filters.some((filter) => filter.name === name) ? freeName({ filters }, `another ${name}`) : name;
}

// One line for both, but the compiler keeps the two kinds of gear apart.
function withSettle(move: Move, settleS: number): Move {
  return move.axis === 'slide'
    ? { ...move, gear: { ...move.gear, settleS } }
    : { ...move, gear: { ...move.gear, settleS } };
}
