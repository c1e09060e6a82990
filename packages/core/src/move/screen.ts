// How fast the picture travels in the finished clip, and how far it smears while the shutter is open.
// Sources: docs/sources.md#pan-speed, docs/sources.md#picture-flow.

import { fieldsOfView, type Optics, pixelPitchUm } from './angle.js';
import type { Travel } from './resolve.js';
import { positionAt, stepAfter } from './steps.js';

/**
 * Seconds of clip in which a picture's width should pass at the fastest: published panning guidance.
 * Source: practice of film cameras, one image width in no less than 7 s.
 *
 * @example
 * ```ts
 * import { COMFORT_CROSSING_S } from '@evenfall/core';
 *
 * COMFORT_CROSSING_S; // → 7
 * ```
 */
export const COMFORT_CROSSING_S = 7;

/** Seconds for a width at which a move is hardly seen: a tenth of the comfortable speed. Our own choice. */
export const UNSEEN_CROSSING_S = 70;

/** More frames than a plan holds are no advice. */
const MOST_FRAMES_ADVISED = 100_000;

const DEG = Math.PI / 180;

/**
 * Frame widths that the picture travels for one unit of a move: an object takes field of view over speed to cross
 * the frame, wherever the tangent hurries it. A tilt is counted in widths too, so that the eye's measure is one.
 * A slide needs the distance of the nearest thing; forward, the edge of the frame counts.
 *
 * @returns undefined for a slide whose `nearestM` is not known
 */
export function widthsPerUnit(
  { axis, toward, nearestM }: Travel,
  { lens, sensor }: Optics,
): number | undefined {
  const { horizontalDeg, verticalDeg } = fieldsOfView({ lens, sensor });
  if (axis === 'pan') return 1 / horizontalDeg;
  if (axis === 'tilt') return sensor.heightMm / sensor.widthMm / verticalDeg;
  if (nearestM === undefined) return undefined;
  return toward === 'forward' ? 0.5 / nearestM : lens.focalMm / (sensor.widthMm * nearestM);
}

/**
 * Frame widths that the picture travels while several moves make a step at once. Across, a slide to the right and a
 * pan to the right carry near things the same way; far things follow the pan alone: the faster of the two counts.
 *
 * @param steps one a move, in its unit, signed
 * @returns undefined where the lens is not known, or no move shows on the picture in a known way
 */
export function widthsOf(
  travels: readonly Travel[],
  steps: readonly number[],
  optics: Optics | undefined,
): number | undefined {
  if (optics === undefined) return undefined;
  const widths = { pan: 0, tilt: 0, side: 0, forward: 0 };
  let seen = false;
  for (const [i, travel] of travels.entries()) {
    const perUnit = widthsPerUnit(travel, optics);
    if (perUnit === undefined) continue;
    widths[travel.axis === 'slide' ? (travel.toward ?? 'side') : travel.axis] = perUnit * steps[i];
    seen = true;
  }
  const across = Math.max(Math.abs(widths.pan), Math.abs(widths.pan + widths.side));
  return seen ? Math.hypot(across, widths.tilt) + Math.abs(widths.forward) : undefined;
}

/** The fastest moment on screen. */
export interface ScreenSpeed {
  /** Before the step, from 0; the middle one of equals. */
  readonly frame: number;
  /** Frame widths a second of clip. */
  readonly widthsPerS: number;
  /** Seconds an object would take across the frame at that speed. */
  readonly crossingS: number;
}

/** The fastest step of a clip on screen, easing included; undefined as for `widthsOf`, and for a single frame. */
export function fastestOnScreen(
  travels: readonly Travel[],
  frameCount: number,
  clipFps: number,
  optics: Optics | undefined,
): ScreenSpeed | undefined {
  const widthsAt = (frame: number) =>
    widthsOf(
      travels,
      travels.map((travel) => stepAfter(travel, frame, frameCount)),
      optics,
    ) ?? 0;
  // Every ease is fastest in the middle, and so are all together, unless one holds another back.
  let frame = Math.max(0, Math.ceil((frameCount - 1) / 2) - 1);
  let most = widthsAt(frame);
  for (const i of slideAgainstPan(travels) ? framesNearFastest(frameCount - 1, widthsAt) : []) {
    const widths = widthsAt(i);
    if (widths > most * (1 + 1e-9)) [frame, most] = [i, widths]; // equals differ in their last bits
  }
  return most === 0 ? undefined : { frame, widthsPerS: most * clipFps, crossingS: 1 / (most * clipFps) };
}

/** Looks at a curve of so few pieces are enough to find where it is highest. */
const LOOKS = 256;

/**
 * The steps among which the fastest is. Of few steps all; of many those around the fastest of a sample: speeds of eases are a few
 * smooth pieces, so nothing is hidden between two looks but what is near the fastest of them.
 */
function framesNearFastest(stepCount: number, widthsAt: (frame: number) => number): number[] {
  if (stepCount <= 8 * LOOKS) return Array.from({ length: stepCount }, (_, i) => i);
  const apart = stepCount / LOOKS;
  const looks = Array.from({ length: LOOKS + 1 }, (_, k) => Math.min(stepCount - 1, Math.round(k * apart)));
  const fastest = looks.sort((a, b) => widthsAt(b) - widthsAt(a) || a - b).slice(0, 4);
  const around = fastest.flatMap((look) => {
    const from = Math.max(0, Math.floor(look - apart));
    const to = Math.min(stepCount - 1, Math.ceil(look + apart));
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
  });
  return [...new Set(around)].sort((a, b) => a - b);
}

function slideAgainstPan(travels: readonly Travel[]): boolean {
  const pan = travels.find(({ axis }) => axis === 'pan');
  const side = travels.find(({ axis, toward }) => axis === 'slide' && toward !== 'forward');
  return pan !== undefined && side !== undefined && pan.length * side.length < 0;
}

/**
 * Fewest frames over which these moves pass a picture's width in no less than `crossingS` at their fastest.
 * One frame fewer is too few. 90° behind 50 mm, at constant speed in 24 frames a second, need 383.
 *
 * @returns undefined where the speed on screen is not known, or no plan holds so many frames
 */
export function fewestFrames(
  travels: readonly Travel[],
  optics: Optics | undefined,
  clipFps: number,
  crossingS: number,
): number | undefined {
  const crossing = (frameCount: number) => fastestOnScreen(travels, frameCount, clipFps, optics)?.crossingS;
  const slow = (seconds: number | undefined) => seconds !== undefined && seconds >= crossingS * (1 - 1e-12);
  const first = crossing(2);
  if (first === undefined) return undefined;
  if (slow(first)) return 2;
  let [fails, works] = [2, 4];
  while (!slow(crossing(works))) {
    if (works >= MOST_FRAMES_ADVISED) return undefined;
    [fails, works] = [works, Math.min(2 * works, MOST_FRAMES_ADVISED)];
  }
  while (works - fails > 1) {
    const middle = Math.floor((fails + works) / 2);
    if (slow(crossing(middle))) works = middle;
    else fails = middle;
  }
  return works;
}

/**
 * How far a point of the picture smears while continuous moves go on under an open shutter, in pixels, at the
 * corner (or the centre) where it is most.
 *
 * @param from frame at which the shutter opens, and `to`, where it closes: fractions of the interval count
 * @returns 0 without continuous moves; undefined where lens or pixels are not known
 */
export function blurPx(
  travels: readonly Travel[],
  from: number,
  to: number,
  frameCount: number,
  optics: Optics | undefined,
): number | undefined {
  const moving = travels.filter(({ mode }) => mode === 'continuous');
  if (moving.length === 0) return 0;
  const pitchUm = optics === undefined ? undefined : pixelPitchUm(optics.sensor);
  if (optics === undefined || pitchUm === undefined) return undefined;
  const way = { pan: 0, tilt: 0, side: 0, forward: 0 };
  for (const travel of moving) {
    const length = positionAt(travel, to, frameCount) - positionAt(travel, from, frameCount);
    if (travel.axis !== 'slide') way[travel.axis] = length * DEG;
    else if (travel.nearestM === undefined) return undefined;
    else way[travel.toward ?? 'side'] = length / travel.nearestM;
  }
  const { lens, sensor } = optics;
  const [x, y] = [sensor.widthMm, sensor.heightMm].map((side) => side / 2 / lens.focalMm);
  const points = [[0, 0], ...[x, -x].flatMap((px) => [y, -y].map((py) => [px, py]))];
  const far = { ...way, side: 0, forward: 0 };
  const most = Math.max(
    ...points.flatMap(([px, py]) => [way, far].map((w) => Math.hypot(...flow(px, py, w)))),
  );
  return (most * lens.focalMm * 1000) / pitchUm;
}

/** Displacement of a picture point, in focal lengths, by small turns (radians) and slides (shares of the distance). */
function flow(
  x: number,
  y: number,
  { pan, tilt, side, forward }: { pan: number; tilt: number; side: number; forward: number },
): [number, number] {
  return [
    -(1 + x * x) * pan - x * y * tilt - side + x * forward,
    -x * y * pan - (1 + y * y) * tilt + y * forward,
  ];
}
