// When the sun stands in the frame, and how far it pulls a meter that takes the mean.

import { discInFrame } from '../light/disc.js';
import { sceneIn } from '../light/words.js';
import { fieldsOfView } from '../move/angle.js';
import { turned } from '../move/pointing.js';
import type { Forecast } from './forecast.js';
import type { Note } from './note-context.js';
import type { Lens } from './notes-stars.js';
import type { PlanMade } from './types.js';

/** Less is lost in what a meter shows. Our choice. */
const LEAST_PULL_EV = 0.05;

/** None where the sun stays outside. */
export function sunInFrameNotes(
  { shoot, frames }: Pick<PlanMade, 'shoot' | 'frames'>,
  forecast: Forecast,
  { optics, start }: Lens,
): Note[] {
  const scene = sceneIn(shoot.scene, start.azimuthDeg);
  const field = fieldsOfView(optics);
  const pulls = frames.map(({ panDeg = 0, tiltDeg = 0 }, i) => {
    const { azimuthDeg, altitudeDeg } = turned(start, panDeg, tiltDeg);
    const view = { viewAzimuthDeg: azimuthDeg, viewAltitudeDeg: altitudeDeg };
    return Math.log2(1 + discInFrame(scene, field, view, forecast.sky[i]) / forecast.light[i].luminanceCdM2);
  });
  const inside = frames.filter((_, i) => pulls[i]! >= LEAST_PULL_EV);
  if (inside.length === 0) return [];
  return [
    {
      level: 'caution',
      kind: 'sun-in-frame',
      fromAt: inside[0]!.at,
      toAt: inside[inside.length - 1]!.at,
      pullEv: pulls.reduce((most, ev) => Math.max(most, ev), 0),
    },
  ];
}
