// Which one thing more in the bag would let a kit hold most evenings more. What it holds follows from what it reaches, so
// that no ramp need be solved for it.

import { type DialControl, dialLabel, dialStep } from '../../exposure/dial.js';
import { bracketReachEv } from '../../footage/bracket.js';
import { longestTimeInside } from '../../footage/frames.js';
import { rampExists } from '../../ramp/solve.js';
import type { Shoot } from '../../shoot/shoot.js';
import { shootGap } from '../../shoot/time-left.js';
import { MOST_WORK, planWork } from '../../shoot/work.js';
import type { Forecast } from '../forecast.js';
import { eveningsHeldShare, frameReserves } from '../reserve.js';
import { problemOver } from '../targets.js';
import { appliedTo } from './apply.js';
import type { RemedyChange } from './change.js';

/** Strengths that neutral filters are commonly sold in, stops: common practice. */
const FILTER_STOPS = [3, 6, 10];
/** Less is not worth carrying anything for. Our choice. */
const LEAST_RAISE = 0.05;

/**
 * The change to the kit that raises the share of evenings held most, with that share: the shutter, the ISO or the aperture
 * by a stop (our choice, so that they compare), or another filter. Of equals the first, as a photographer would try them.
 *
 * @param held share of evenings that the kit holds as it is
 * @returns nothing where no change raises it by a twentieth
 */
export function raisingMost(
  shoot: Shoot,
  forecast: Forecast,
  held: number,
): { readonly change?: RemedyChange; readonly moreShare?: number } {
  const count = forecast.times.length;
  const tried = changesOf(shoot, count).flatMap((change) => {
    const changed = { ...shoot, ...appliedTo(shoot, forecast, change) };
    if (planWork(changed, count) > MOST_WORK) return [];
    const { problem } = problemOver(changed, forecast);
    const moreShare = eveningsHeldShare(frameReserves(problem), forecast);
    // To a thousandth, so that equals are equal.
    return [{ change, problem, moreShare, rank: Math.round(1000 * moreShare) }];
  });
  const best = tried
    .filter(({ moreShare }) => moreShare >= held + LEAST_RAISE)
    .sort((a, b) => b.rank - a.rank)
    .find(({ problem }) => rampExists(problem));
  return best === undefined ? {} : { change: best.change, moreShare: best.moreShare };
}

function changesOf(shoot: Shoot, count: number): RemedyChange[] {
  const { camera, intervalS } = shoot;
  const { stepsPerStop, shutter, iso, aperture } = camera;
  const step = (control: DialControl, label: string) => dialStep(control, label, stepsPerStop) as number; // was checked
  const label = (control: DialControl, at: number) => dialLabel(control, at, stepsPerStop);
  const longest = step('shutter', shutter.longest);
  const insideS = longestTimeInside(intervalS, { ...camera, gapS: shootGap(shoot, count).gapS });
  const reach = Math.round(bracketReachEv(camera.bracket) * stepsPerStop);
  const longer = Math.max(
    longest - stepsPerStop,
    Math.ceil(-stepsPerStop * Math.log2(insideS) - 1e-9) - reach,
  );
  const highest = step('iso', String(iso.highest));
  const higher = Math.min(highest + stepsPerStop, step('iso', '102400'));
  const [widest, narrowest] =
    typeof aperture === 'string' ? [aperture, aperture] : [aperture.widest, aperture.narrowest];
  const opened = step('aperture', widest) - stepsPerStop;
  const closed = step('aperture', narrowest) + stepsPerStop;
  return [
    ...(longer < longest
      ? [
          {
            change: 'longer-shutter',
            shutter: label('shutter', longer),
            fromShutter: label('shutter', longest),
            fromIntervalS: intervalS,
          } as const,
        ]
      : []),
    ...(higher > highest
      ? [{ change: 'higher-iso', iso: Number(label('iso', higher)), fromIso: iso.highest } as const]
      : []),
    ...(opened < 0 ? [] : [{ change: 'wider-aperture', aperture: label('aperture', opened) } as const]),
    ...(closed > 10 * stepsPerStop
      ? []
      : [{ change: 'narrower-aperture', aperture: label('aperture', closed) } as const]),
    ...FILTER_STOPS.map((stops) => ({ change: 'another-filter', stops }) as const),
  ];
}
