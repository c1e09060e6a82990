// Where the lens points at each frame: from where it starts, along with pan and tilt.

import { finite } from '../check.js';
import type { Travel } from './resolve.js';
import type { SkyView } from './sky-view.js';
import { positionAt } from './steps.js';

/**
 * Where the lens points while its head turns; outside the shoot it stands at the end that is nearer.
 *
 * @param start where it points at the first frame
 * @returns by the frame, from 0; fractions lie between frames
 */
export function pointing(
  start: SkyView,
  travels: readonly Travel[],
  frameCount: number,
): (frame: number) => SkyView {
  const gone = (axis: Travel['axis'], frame: number) =>
    travels.reduce((sum, each) => (each.axis === axis ? sum + positionAt(each, frame, frameCount) : sum), 0);
  return (frame) => turned(start, gone('pan', frame), gone('tilt', frame));
}

/** A view after a pan (right positive) and a tilt (up positive); past the zenith it looks down the other side. */
export function turned({ azimuthDeg, altitudeDeg }: SkyView, panDeg: number, tiltDeg: number): SkyView {
  const up = finite('tiltDeg', altitudeDeg + tiltDeg);
  const tilt = up - 360 * Math.round(up / 360);
  const over = Math.abs(tilt) > 90;
  return {
    azimuthDeg: azimuthDeg + panDeg + (over ? 180 : 0),
    altitudeDeg: over ? Math.sign(tilt) * 180 - tilt : tilt,
  };
}
