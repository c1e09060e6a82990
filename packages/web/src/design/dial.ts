// Choosing marks of a dial, and moving a whole kit from a dial in thirds to one in halves and back.

import {
  type Camera,
  type DialControl,
  dialLabel,
  dialLabels,
  dialStep,
  type StepsPerStop,
} from '@evenfall/core';
import type { Choice } from '../parts/controls.js';

/** Marks of a dial for a list; one in use that no dial shows (a long time in doubled steps) comes with them. */
export function marks(
  control: DialControl,
  stepsPerStop: StepsPerStop,
  inUse: string,
  text: (label: string) => string,
): Choice<string>[] {
  const labels = dialLabels(control, stepsPerStop);
  const all = labels.includes(inUse) ? labels : [inUse, ...labels];
  return all.map((label) => [label, text(label)]);
}

/** The mark of the other dial that is nearest in stops; the nearest end where it stops short. */
function moved(control: DialControl, label: string, from: StepsPerStop, to: StepsPerStop): string {
  const step = dialStep(control, label, from);
  if (step === undefined) return label;
  const wanted = Math.round((step * to) / from);
  for (const way of [0, -1, 1, -2, 2]) {
    try {
      return dialLabel(control, wanted + way, to);
    } catch {
      // Off the end of that dial: the neighbour inside will do.
    }
  }
  return label;
}

/** The camera with its limits read off the other dial. */
export function onDial(camera: Camera, to: StepsPerStop): Camera {
  const from = camera.stepsPerStop;
  const { shutter, iso, aperture, bracket } = camera;
  const isoMark = (value: number) => Number(moved('iso', String(value), from, to));
  const stop = (label: string) => moved('aperture', label, from, to);
  return {
    ...camera,
    stepsPerStop: to,
    shutter: {
      shortest: moved('shutter', shutter.shortest, from, to),
      longest: moved('shutter', shutter.longest, from, to),
    },
    iso: { lowest: isoMark(iso.lowest), highest: isoMark(iso.highest) },
    aperture:
      typeof aperture === 'string'
        ? stop(aperture)
        : { widest: stop(aperture.widest), narrowest: stop(aperture.narrowest) },
    ...(bracket && { bracket: { ...bracket, stepEv: Math.max(1, Math.round(bracket.stepEv * to)) / to } }),
  };
}
