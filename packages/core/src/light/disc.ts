// The sun's disc in a frame. No forecast counts it, but a meter that takes the mean of the frame does.
// Source: docs/sources.md#field-of-view, docs/sources.md#circular-171.

import { clearAir, refractionDeg } from './air.js';
import type { Field } from './field.js';
import type { Scene, Sky, View } from './scene.js';
import { shownShare, skylineToward } from './skyline.js';
import { sunIlluminanceLx } from './sunlight.js';

const DEG = Math.PI / 180;

/** Lux straight from a sun in clear air on a surface that is turned to it. */
function facingSunLx(sunAltitudeDeg: number): number {
  const { beam, scattered } = clearAir(sunAltitudeDeg);
  const { facing } = clearAir(Math.min(90, sunAltitudeDeg + refractionDeg(sunAltitudeDeg)));
  return (sunIlluminanceLx(sunAltitudeDeg) * facing) / (beam + scattered);
}

/**
 * What the sun's disc would add to the mean luminance of a frame, cd/m²: the beam, over the part of the frame's tangent
 * plane that its solid angle takes there. 0 where the disc stands outside the frame's sky, under the skyline or behind a
 * closed deck of cloud.
 *
 * @param view its middle is that of the frame's sky
 */
export function discInFrame(
  { skyShare, cloud, skyline }: Pick<Scene, 'skyShare' | 'cloud' | 'skyline'>,
  field: Field,
  { viewAzimuthDeg, viewAltitudeDeg }: View,
  { sunAltitudeDeg, sunAzimuthDeg }: Pick<Sky, 'sunAltitudeDeg' | 'sunAzimuthDeg'>,
): number {
  const skylineDeg = skyline === undefined ? 0 : Math.max(0, skylineToward(skyline)(sunAzimuthDeg));
  const shown = shownShare(sunAltitudeDeg, skylineDeg);
  if (shown === 0) return 0;
  const altitude = (sunAltitudeDeg + refractionDeg(sunAltitudeDeg)) * DEG;
  const aside = (sunAzimuthDeg - viewAzimuthDeg) * DEG;
  const [sin, cos] = [Math.sin(viewAltitudeDeg * DEG), Math.cos(viewAltitudeDeg * DEG)];
  const level = Math.cos(altitude) * Math.cos(aside);
  const ahead = level * cos + Math.sin(altitude) * sin;
  if (ahead <= 0) return 0;
  const x = (Math.cos(altitude) * Math.sin(aside)) / ahead;
  const y = (Math.sin(altitude) * cos - level * sin) / ahead;
  const halfWidth = Math.tan((field.horizontalDeg / 2) * DEG);
  const halfHeight = Math.tan((field.verticalDeg / 2) * DEG);
  if (Math.abs(x) > halfWidth || Math.abs(y) > skyShare * halfHeight) return 0;
  const beamLx = shown * (1 - cloud.cover) * 2 ** cloud.stops * facingSunLx(sunAltitudeDeg);
  return (beamLx * (1 + x * x + y * y) ** 1.5) / (4 * halfWidth * halfHeight);
}
