// Whether the kit may fall short, on how many evenings, and which one thing more would help most.

import type { RampProblem } from '../ramp/problem.js';
import type { Forecast } from './forecast.js';
import type { MoveNote } from './note-context.js';
import type { RemedyChange } from './remedies/change.js';
import { raisingMost } from './remedies/raise.js';
import { eveningsHeldShare, frameReserves, HELD_ENOUGH } from './reserve.js';
import type { PlanMade } from './types.js';

/** A note on a kit that holds too few evenings; none where it holds enough. */
export function reserveNotes(
  { shoot, summary }: Pick<PlanMade, 'shoot' | 'summary'>,
  forecast: Forecast,
  problem: RampProblem,
): MoveNote[] {
  const held = summary.eveningsHeldShare;
  if (held >= HELD_ENOUGH) return [];
  const raising = raisingMost(shoot, forecast, held);
  const end = endHelped(raising.change) ?? endShort(forecast, problem);
  return [
    {
      level: 'caution',
      kind: 'little-reserve',
      direction: shoot.direction,
      share: 1 - held,
      end,
      reserveEv: end === 'dark' ? summary.reserveDarkEv : summary.reserveBrightEv,
      ...raising,
    },
  ];
}

/** Where both ends are short, the one is named at which a change gains most. */
function endHelped(change: RemedyChange | undefined): 'dark' | 'bright' | undefined {
  if (change === undefined) return undefined;
  return change.change === 'another-filter' || change.change === 'narrower-aperture' ? 'bright' : 'dark';
}

function endShort(forecast: Forecast, problem: RampProblem): 'dark' | 'bright' {
  const kept = frameReserves(problem);
  const heldDark = eveningsHeldShare({ ...kept, brightEv: Number.POSITIVE_INFINITY }, forecast);
  const heldBright = eveningsHeldShare({ ...kept, darkEv: Number.POSITIVE_INFINITY }, forecast);
  return heldDark < heldBright ? 'dark' : 'bright';
}
