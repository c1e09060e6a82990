// How a frame of the clip looks: the sky of its minute, as bright as its exposure makes it.

import type { PlanFrame } from '@evenfall/core';
import { asSeen, atBrightness, brightness, encoded, type Rgb, skyColumn } from '../chart/sky.js';

/**
 * What a metered exposure makes of the sky: a stop over the trade's grey card of 18 %, as most of what it stands over
 * is darker. Our choice.
 */
const SKY = 0.36;

/**
 * Stops by which a frame comes out brighter than metered: its error, with the look taken off, the other way round.
 * Source: settingEv100 is the scene that the setting renders at metered level.
 */
export const brighterEv = ({ sceneEv100, settingEv100 }: PlanFrame) => sceneEv100 - settingEv100;

/** A sky has more range than a picture of it: so much is left, in powers. Our choice, by eye. */
const RANGE_KEPT = 0.35;

/** The frame's sky from the horizon up, 0 to 255 for a screen. */
export function frameColumn(frame: PlanFrame, rows: number): Rgb[] {
  const sky = skyColumn(frame.sunAltitudeDeg, rows);
  const middle = Math.exp(sky.reduce((sum, colour) => sum + Math.log(brightness(colour)), 0) / rows);
  const metered = SKY * 2 ** brighterEv(frame);
  return sky.map((colour) => {
    const wanted = metered * (brightness(colour) / middle) ** RANGE_KEPT;
    const [r, g, b] = atBrightness(asSeen(colour), Math.min(1, wanted));
    return [encoded(r), encoded(g), encoded(b)];
  });
}
