// How far the picture may follow the light down. A night that meters as day looks wrong: the look says by
// how many EV each moment should lie off metered level. Source: docs/sources.md#look.

import { finite } from '../check.js';
import { aNumber, either, groupWith, hold, listOf } from '../hold.js';

/**
 * How far the picture may darken as the light goes: `nightEv`, EV off metered level once it is night,
 * negative is darker; or a table of `offsetEv` by `sunAltitudeDeg`, degrees, its rows rising, one or more.
 */
export type Look =
  | { readonly nightEv: number }
  | readonly { readonly sunAltitudeDeg: number; readonly offsetEv: number }[];
/** Sun altitude at which the night's offset is reached: the end of nautical twilight. */
const NIGHT_FROM_DEG = -12;

const LOOK = either((value) =>
  Array.isArray(value)
    ? listOf(groupWith({ sunAltitudeDeg: aNumber, offsetEv: aNumber }), 1)
    : groupWith({ nightEv: aNumber }),
);

/**
 * Offset from metered level at a sun altitude; negative is darker. `{ nightEv }`: 0 with the sun at the
 * horizon or above, `nightEv` at -12° and below, smoothstep between, so half of it at -6°. A table: linear
 * between its rows, level beyond its ends. Source: common practice, that a night should come out one to two stops below metered level; the curve is ours.
 *
 * @param look of a shoot
 * @param sunAltitudeDeg true altitude, finite
 * @returns stops
 * @throws RangeError unless sunAltitudeDeg is finite, or on a table with no row
 */
export function lookOffsetEv(look: Look, sunAltitudeDeg: number): number {
  hold('look', look, LOOK);
  finite('sunAltitudeDeg', sunAltitudeDeg);
  if ('nightEv' in look) {
    const dark = Math.min(1, Math.max(0, sunAltitudeDeg / NIGHT_FROM_DEG));
    return look.nightEv * dark * dark * (3 - 2 * dark);
  }
  const above = look.findIndex((row) => row.sunAltitudeDeg >= sunAltitudeDeg);
  if (above === 0) return look[0].offsetEv;
  if (above < 0) return look[look.length - 1].offsetEv;
  const [low, high] = [look[above - 1], look[above]];
  const share = (sunAltitudeDeg - low.sunAltitudeDeg) / (high.sunAltitudeDeg - low.sunAltitudeDeg);
  return low.offsetEv + share * (high.offsetEv - low.offsetEv);
}
