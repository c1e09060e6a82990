// Moves in sentences for people: on the card, and in advice.

import type { Ease } from './ease.js';
import type { Travel } from './resolve.js';
import { largestStep, stepAfter } from './steps.js';

/** Digits that show a value to two figures at least: one decimal for degrees, two for metres and more for less. */
export function decimalsFor(value: number, unit: Travel['unit']): number {
  const least = unit === 'deg' ? 1 : 2;
  return value === 0 ? least : Math.min(9, Math.max(least, 1 - Math.floor(Math.log10(Math.abs(value)))));
}

/**
 * A length of a move with the digits that a person reads. Never throws.
 *
 * @param length degrees or metres; its sign is left out
 * @param unit which of them
 * @returns two figures at least, one decimal of a degree, two of a metre
 */
export function lengthText(length: number, unit: Travel['unit']): string {
  const text = String(Number(Math.abs(length).toFixed(decimalsFor(length, unit))));
  return unit === 'deg' ? `${text}°` : `${text} m`;
}

/** Which way a signed length goes: "right", "down", "forward". */
export function wayText({ axis, length, toward }: Travel): string {
  const back = length < 0;
  if (axis === 'tilt') return back ? 'down' : 'up';
  if (axis === 'slide' && toward === 'forward') return back ? 'back' : 'forward';
  return back ? 'left' : 'right';
}

/** "linear", "smoothstep", "trapezoid 0.25". */
export function easeText(ease: Ease): string {
  return typeof ease === 'string' ? ease : `trapezoid ${ease.trapezoid}`;
}

/**
 * A stretch of time as a person reads it. Never throws.
 *
 * @param seconds any finite number
 * @returns three figures, from two minutes on in minutes
 */
export function secondsText(seconds: number): string {
  if (seconds < 120) return `${Number(seconds.toPrecision(3))} s`;
  return `${Number((seconds / 60).toPrecision(3))} min`;
}

/** What one move does, as three lines for the card: the whole, at the start, at the end. */
export interface MoveLines {
  /** "Pan 60° right, stopped at every frame, ease smoothstep". */
  readonly whole: string;
  /** "Pan: from 0°, first step 0.0022°, longest 0.31° in the middle". */
  readonly start: string;
  /** "Pan: stands at 60° right". */
  readonly end: string;
}

/** A move in words. */
export function moveLines(travel: Travel, frameCount: number): MoveLines {
  const { axis, unit, length, mode, ease } = travel;
  const name = `${axis.charAt(0).toUpperCase()}${axis.slice(1)}`;
  const gone = `${lengthText(length, unit)} ${wayText(travel)}`;
  const step = (way: number) => lengthText(way, unit);
  return {
    whole: `${name} ${gone}, ${mode === 'stopped' ? 'stopped at every frame' : 'without a stop'}, ease ${easeText(ease)}`,
    start: `${name}: from ${step(0)}, first step ${step(stepAfter(travel, 0, frameCount))}, longest ${step(largestStep(travel, frameCount))} in the middle`,
    end: `${name}: stands at ${gone}`,
  };
}
