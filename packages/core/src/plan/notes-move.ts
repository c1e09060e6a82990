// What a person should know about the moves and the stars of a plan.

import { sceneOf } from '../light/words.js';
import type { MovePlan } from '../move/move.js';
import { turned } from '../move/pointing.js';
import type { SkyView } from '../move/sky-view.js';
import { type StarAdvice, starAdvice } from '../move/stars.js';
import { sceneAtStart } from '../shoot/pointing.js';
import type { Shoot } from '../shoot/shoot.js';
import { opticsOf } from '../shoot/time-left.js';
import { civilDay } from '../sky/clock.js';
import { horizonAzimuthDeg } from '../sky/sun.js';
import type { Forecast } from './forecast.js';
import type { PlanFrame, PlanNote } from './types.js';

/** Findings of a move, each with every single change that cures it. */
export function moveNotes(move: MovePlan | undefined): PlanNote[] {
  if (move === undefined) return [];
  return move.findings.map(({ level, text, remedies }): PlanNote => {
    const cures = remedies.map((remedy) => remedy.text).join(' Or: ');
    return { level, text: cures === '' ? text : `${text} ${cures}` };
  });
}

/** What a camera that moves by itself can do to people and gear. */
export function cautionNotes(move: MovePlan | undefined): PlanNote[] {
  return (move?.cautions ?? []).map(({ text }) => ({ level: 'caution', text }));
}

/** Sun altitude below which stars come into a picture: between civil and nautical dusk's ends. Our own choice. */
const STARS_BELOW_SUN_DEG = -10;

/** The longest shutters before stars trail, where night comes into the span and the lens is known. */
export function starNotes(shoot: Shoot, forecast: Forecast, frames: readonly PlanFrame[]): PlanNote[] {
  const optics = opticsOf(shoot.camera);
  const dark = frames.filter(({ sunAltitudeDeg }) => sunAltitudeDeg < STARS_BELOW_SUN_DEG);
  if (optics === undefined || dark.length === 0) return [];
  const start = startView(shoot, forecast);
  const views = dark.map(({ panDeg = 0, tiltDeg = 0 }) => turned(start, panDeg, tiltDeg));
  // A wider opening asks for smaller stars.
  const fNumber = dark.reduce((least, frame) => Math.min(least, frame.fNumber), Number.POSITIVE_INFINITY);
  const advice = starAdvice(optics, fNumber, views, shoot.place.latitudeDeg);
  if (advice === undefined) return [];
  const longestS = dark.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
  const most = Math.max(advice.rule500S, advice.npfSimpleS ?? 0, advice.npfFullS ?? 0);
  return [{ level: longestS > most ? 'caution' : 'info', text: starText(advice, longestS) }];
}

/** Where the camera looks at the first frame; `viewAltitudeDeg` is the middle of the sky it sees. */
function startView(shoot: Shoot, { zone }: Forecast): SkyView {
  const day = civilDay(shoot.date, zone);
  const horizonDeg = horizonAzimuthDeg(shoot.direction, day.startMs, day.endMs, shoot.place);
  const { viewAzimuthDeg, viewAltitudeDeg } = sceneOf(sceneAtStart(shoot), horizonDeg);
  return { azimuthDeg: viewAzimuthDeg, altitudeDeg: viewAltitudeDeg };
}

function starText(
  { rule500S, npfSimpleS, npfFullS, declinationDeg, trailPxPerS }: StarAdvice,
  longestS: number,
): string {
  const seconds = (timeS: number) =>
    Number.isFinite(timeS) ? `${Number(timeS.toPrecision(3))} s` : 'any time';
  const rules = [
    `${seconds(rule500S)} by the 500 rule`,
    ...(npfSimpleS === undefined ? [] : [`${seconds(npfSimpleS)} by the simplified NPF rule`]),
    ...(npfFullS === undefined
      ? []
      : [`${seconds(npfFullS)} by the full one at declination ${Math.round(declinationDeg) + 0}°`]),
  ];
  const trail =
    trailPxPerS === undefined ? '' : `, a trail of ${Number((trailPxPerS * longestS).toPrecision(2))} pixels`;
  return `Stars stay points up to ${rules.join(', ')}. At night this plan opens for ${seconds(longestS)} at most${trail}.`;
}
