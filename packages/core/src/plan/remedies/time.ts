// Changes that leave the shutter more of its interval: what else is in there takes less.

import { dialStep, timeOfStep } from '../../exposure/dial.js';
import { bracketReachEv } from '../../footage/bracket.js';
import { longestTimeInside } from '../../footage/frames.js';
import { otherLengths } from '../../move/lengths.js';
import { leastIntervalS } from '../../move/time-budget.js';
import type { Camera, Shoot } from '../../shoot/shoot.js';
import { shootGap, shootTravels } from '../../shoot/time-left.js';
import type { Kind } from './kind.js';

/** A move is cut by so many hundredths at most: less of it is another move. */
const MOST_CUT = 95;

/** Each interval to try has light of its own to compute. */
const MOST_INTERVALS = 40;

const WITHOUT_DARK_FRAME: Kind = { amounts: 1, rising: true, at: () => ({ change: 'no-dark-frame' }) };

/** Whether the interval cuts the longest shutter short, so that more time in it would help. */
export function isCutShort(shoot: Shoot, frameCount: number): boolean {
  const { gapS } = shootGap(shoot, frameCount);
  const insideS = longestTimeInside(shoot.intervalS, { ...shoot.camera, gapS });
  return longestShutterS(shoot) > insideS + 1e-9;
}

/** Whole seconds of interval that a shutter needs, its moves' longer steps counted; undefined where none is enough. */
export function intervalFor(shoot: Shoot, frameCount: number, shutterS: number): number | undefined {
  const { camera, intervalS } = shoot;
  const recordingS = (frameCount - 1) * intervalS;
  const travels = shootTravels(shoot);
  // Without a move to fit in, an interval may be longer than the shoot: it has a single frame then.
  const mostS = travels.length === 0 ? Number.MAX_SAFE_INTEGER : recordingS;
  return leastIntervalS(travels, mostS, shutterS, { writeS: camera.gapS, ...camera });
}

/** No dark frame, a shorter rest, a shorter move, faster writing; those that the shoot has no use for are left out. */
export function timeKinds(shoot: Shoot): Kind[] {
  const stopped = shoot.moves.some(({ mode }) => mode === 'stopped');
  return [
    ...(shoot.camera.darkFrame ? [WITHOUT_DARK_FRAME] : []),
    ...(stopped ? [shorterSettle(shoot), shorterMove(shoot), shorterWrite(shoot)] : []),
  ];
}

/** Whole seconds of interval, from the least that holds the shortest shutter to what the longest needs. */
export function longerInterval(shoot: Shoot, frameCount: number): Kind {
  const { intervalS: now, camera } = shoot;
  const least = Math.max(
    Math.floor(now) + 1,
    intervalFor(
      shoot,
      frameCount,
      shutterS(camera, camera.shutter.shortest) * 2 ** bracketReachEv(camera.bracket),
    ) ?? Number.POSITIVE_INFINITY,
  );
  const most = intervalFor(shoot, frameCount, longestShutterS(shoot)) ?? least + MOST_INTERVALS;
  return {
    amounts: least === Number.POSITIVE_INFINITY ? 0 : Math.min(MOST_INTERVALS, most - least + 1),
    rising: false, // fewer frames have more light to follow from one to the next
    at: (amount) => {
      const intervalS = least + amount - 1;
      return { change: 'longer-interval', intervalS, fromIntervalS: now };
    },
  };
}

/** Of a bracket the middle one. */
function longestShutterS({ camera }: Shoot): number {
  return shutterS(camera, camera.shutter.longest) / 2 ** bracketReachEv(camera.bracket);
}

function shutterS({ stepsPerStop }: Camera, label: string): number {
  return timeOfStep(dialStep('shutter', label, stepsPerStop) as number, stepsPerStop); // the shoot was checked
}

function shorterSettle(shoot: Shoot): Kind {
  const fromSettleS = shoot.moves
    .filter(({ mode }) => mode === 'stopped')
    .reduce((most, { gear }) => Math.max(most, gear.settleS), 0);
  const tenths = Math.ceil(fromSettleS * 10 - 1e-9);
  return {
    amounts: tenths,
    rising: true,
    at: (amount) => ({ change: 'shorter-settle', settleS: (tenths - amount) / 10, fromSettleS }),
  };
}

function shorterMove(shoot: Shoot): Kind {
  const travels = shootTravels(shoot);
  return {
    amounts: MOST_CUT,
    rising: true,
    at: (amount) => otherLengths(travels, 1 - amount / 100, ({ mode }) => mode === 'stopped'),
  };
}

function shorterWrite({ camera }: Shoot): Kind {
  const tenths = Math.ceil(camera.gapS * 10 - 1e-9);
  return {
    amounts: tenths,
    rising: true,
    at: (amount) => ({
      change: 'shorter-write',
      writeS: (tenths - amount) / 10,
      fromWriteS: camera.gapS,
    }),
  };
}
