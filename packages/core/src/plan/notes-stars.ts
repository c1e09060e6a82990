// The longest shutters before stars trail, beside what the plan opens for.

import { sceneIn } from '../light/words.js';
import type { Optics } from '../move/angle.js';
import { turned } from '../move/pointing.js';
import type { SkyView } from '../move/sky-view.js';
import { starAdvice } from '../move/stars.js';
import { sceneAtStart } from '../shoot/pointing.js';
import type { Shoot } from '../shoot/shoot.js';
import { civilDay } from '../sky/clock.js';
import { horizonAzimuthDeg } from '../sky/sun.js';
import type { Forecast } from './forecast.js';
import type { Note } from './note-context.js';
import type { PlanMade } from './types.js';

/** Sun altitude below which stars come into a picture: between civil and nautical dusk's ends. Our own choice. */
const STARS_BELOW_SUN_DEG = -10;

/** A known lens, and where the camera looks at the first frame. */
export interface Lens {
  readonly optics: Optics;
  readonly start: SkyView;
}

/** The longest shutters before stars trail, where night comes into the span. */
export function starNotes({ shoot, frames }: PlanMade, { optics, start }: Lens): Note[] {
  const dark = frames.filter(({ sunAltitudeDeg }) => sunAltitudeDeg < STARS_BELOW_SUN_DEG);
  if (dark.length === 0) return [];
  const views = dark.map(({ panDeg = 0, tiltDeg = 0 }) => turned(start, panDeg, tiltDeg));
  // A wider opening asks for smaller stars.
  const fNumber = dark.reduce((least, frame) => Math.min(least, frame.fNumber), Number.POSITIVE_INFINITY);
  const advice = starAdvice(optics, fNumber, views, shoot.place.latitudeDeg);
  if (advice === undefined) return [];
  const { rule500S, npfSimpleS, npfFullS, declinationDeg, trailPxPerS } = advice;
  const longestS = dark.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
  const most = Math.max(rule500S, npfSimpleS ?? 0, npfFullS ?? 0);
  return [
    {
      level: longestS > most ? 'caution' : 'info',
      kind: 'stars',
      rule500S,
      ...(npfSimpleS === undefined ? {} : { npfSimpleS }),
      ...(npfFullS === undefined || !Number.isFinite(npfFullS) ? {} : { npfFullS }),
      declinationDeg,
      longestS,
      ...(trailPxPerS === undefined ? {} : { trailPx: trailPxPerS * longestS }),
    },
  ];
}

/** Where the camera looks at the first frame; `viewAltitudeDeg` is the middle of the sky it sees. */
export function startView(shoot: Shoot, { zone }: Forecast): SkyView {
  const day = civilDay(shoot.date, zone);
  const horizonDeg = horizonAzimuthDeg(shoot.direction, day.startMs, day.endMs, shoot.place);
  const { viewAzimuthDeg, viewAltitudeDeg } = sceneIn(sceneAtStart(shoot), horizonDeg);
  return { azimuthDeg: viewAzimuthDeg, altitudeDeg: viewAltitudeDeg };
}
