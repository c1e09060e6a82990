// Which readings are believed: those near what the readings so far say, whatever the forecast said. A torch across the
// lens, a lamp in the frame or a slip of the finger is a reading far from it; so is a real step of the light. Time tells:
// the farther off, the longer it must last.

import { type Expected, mayDifferEv, whyImpossible } from '../light/reading.js';
import { refusalOf } from '../light/refusal.js';
import { learn, loosen, type OffsetState, offsetAt, startOffset } from './offset-state.js';
import { carriedOffsetEv, skyOffsetEv } from './own-light.js';
import type { FollowWarning, SureReading } from './types.js';

/** What the readings so far have taught. */
export interface Trust {
  readonly offset: OffsetState;
  /** The forecast at its time; undefined before the first reading. */
  readonly forecastEv100: number | undefined;
  /** What the sky alone was brighter by when it was last seen by day. */
  readonly skyEv: number;
  readonly lastUsedMs: number | undefined; // time of the last reading used
  readonly doubt: Doubt | undefined;
}

/** Readings that agree with each other and not with what was expected. */
interface Doubt {
  readonly sinceMs: number;
  readonly offsetEv: number; // of the last of them
  readonly atMs: number;
}

/** Our choice: a step of one stop must be borne out for this long, two stops for twice as long. */
const PATIENCE_S_PER_STOP = 20;

export function startTrust(atMs: number): Trust {
  return {
    offset: startOffset(atMs),
    forecastEv100: undefined,
    skyEv: 0,
    lastUsedMs: undefined,
    doubt: undefined,
  };
}

/** The offset expected at a time whose forecast is known. */
export function expectedOffsetEv(
  { offset, forecastEv100, skyEv }: Trust,
  atMs: number,
  ev100: number,
): number {
  const offsetEv = offsetAt(offset, atMs);
  return forecastEv100 === undefined ? offsetEv : carriedOffsetEv(offsetEv, skyEv, forecastEv100, ev100);
}

/**
 * What was learnt from a reading, and what is to be said about it.
 *
 * @param lightAt the plan's light at any time
 */
export function takeReading(
  trust: Trust,
  reading: SureReading,
  lightAt: (atMs: number) => Expected,
  meterEv: number,
): { readonly trust: Trust; readonly warning?: FollowWarning } {
  const { atMs, ev100, sure = false } = reading;
  const expected = lightAt(atMs);
  const offsetEv = ev100 - expected.sceneEv100;
  const { lastUsedMs, doubt } = trust;
  const expectedEv = expectedOffsetEv(trust, atMs, expected.sceneEv100);
  const carriedEv = expectedEv - offsetAt(trust.offset, atMs);
  const offset = { ...trust.offset, lastingEv: trust.offset.lastingEv + carriedEv };
  const believe = (from: OffsetState): Trust => {
    const learnt = learn(from, atMs, offsetEv, meterEv);
    return {
      offset: learnt,
      forecastEv100: expected.sceneEv100,
      skyEv: skyOffsetEv(trust.skyEv, offsetAt(learnt, atMs), ev100),
      lastUsedMs: atMs,
      doubt: undefined,
    };
  };
  const sunDeg = expected.sunAltitudeDeg;
  const minutesFrom = (otherMs: number) => Math.abs(atMs - otherMs) / 60_000;
  const sunDegAt = (otherMs: number) => lightAt(otherMs).sunAltitudeDeg;
  const isFirst = lastUsedMs === undefined;
  const jumpEv = isFirst ? 0 : offsetEv - expectedEv;
  // Readings that came in since and were doubted would have shown wrong words for the scene as they take hold.
  const wordsFromDeg = isFirst || doubt !== undefined ? sunDeg : sunDegAt(lastUsedMs);
  const near = !isFirst && Math.abs(jumpEv) <= mayDifferEv(minutesFrom(lastUsedMs), sunDeg, wordsFromDeg);
  // What somebody is sure of, or what goes on as it was, needs no scene to explain it.
  const impossible = sure || near ? undefined : whyImpossible(reading, expected);
  if (impossible !== undefined)
    return { trust, warning: { kind: 'reading-impossible', text: refusalOf(impossible).text } };
  // What is known begins with the first reading, which may come before the first frame.
  if (isFirst) return { trust: believe({ ...offset, atMs }) };
  if (near) return { trust: believe(offset) };
  if (sure) return { trust: believe(loosen(offset, jumpEv)) };

  const goesOn =
    doubt !== undefined &&
    Math.abs(offsetEv - doubt.offsetEv) <= mayDifferEv(minutesFrom(doubt.atMs), sunDeg, sunDegAt(doubt.atMs));
  const sinceMs = goesOn ? doubt.sinceMs : atMs;
  const stops = `${Math.abs(jumpEv).toFixed(1)} stops ${jumpEv > 0 ? 'brighter' : 'darker'} than expected`;
  if (goesOn && atMs - sinceMs >= 1000 * PATIENCE_S_PER_STOP * Math.abs(jumpEv)) {
    const text = `The light stays ${stops}: it is believed from now on.`;
    return { trust: believe(loosen(offset, jumpEv)), warning: { kind: 'reading-believed', text } };
  }
  const text = `EV ${ev100.toFixed(1)} is ${stops}: not used unless the next readings bear it out.`;
  return {
    trust: { ...trust, doubt: { sinceMs, offsetEv, atMs } },
    warning: { kind: 'reading-doubted', text },
  };
}
