// Hills and houses that stand before the sun or the moon: how much of the disc still shines over them.

import { refractionDeg } from './air.js';
import { smoothstep } from './smooth.js';

/** How high the skyline stands in one direction. */
export interface SkylinePoint {
  /** Clockwise from north, any turn. */
  readonly azimuthDeg: number;
  /** As the eye sees it, -10 to 89. */
  readonly altitudeDeg: number;
}

const RADIUS_DEG = 16 / 60; // of sun and moon alike

/** Altitude of the skyline in any direction, straight between the points and right round. */
export function skylineToward(points: readonly SkylinePoint[]): (azimuthDeg: number) => number {
  const round = (azimuthDeg: number) => ((azimuthDeg % 360) + 360) % 360;
  const sorted = points
    .map(({ azimuthDeg, altitudeDeg }) => ({ at: round(azimuthDeg), altitudeDeg }))
    .sort((a, b) => a.at - b.at);
  return (azimuthDeg) => {
    const at = round(azimuthDeg);
    const next = sorted.findIndex((point) => point.at > at);
    const after = sorted[Math.max(0, next)]!;
    const before = sorted[(next <= 0 ? sorted.length : next) - 1]!;
    const width = round(after.at - before.at);
    const share = width === 0 ? 0 : round(at - before.at) / width;
    return before.altitudeDeg + share * (after.altitudeDeg - before.altitudeDeg);
  };
}

/** How far the body's centre stands over the skyline, degrees, as the eye sees it. */
export function overSkylineDeg(trueAltitudeDeg: number, skylineDeg: number): number {
  return trueAltitudeDeg + refractionDeg(trueAltitudeDeg) - skylineDeg;
}

/** Share of the disc that shines over the skyline: 0 below it, 1 above, over the minutes that the disc needs. */
export function shownShare(trueAltitudeDeg: number, skylineDeg: number): number {
  return smoothstep(-RADIUS_DEG, RADIUS_DEG, overSkylineDeg(trueAltitudeDeg, skylineDeg));
}
