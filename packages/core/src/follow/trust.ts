// Which readings are believed: those near what the readings so far say, whatever the forecast said. A torch across the
// lens, a lamp in the frame or a slip of the finger is a reading far from it; so is a real step of the light. The readings
// that follow tell: another one for a light that falls, since no torch takes light away, or comes back to where it was in
// the last half hour; those of the next 50 seconds for one that rises.

import { carriedOffsetEv, skyOffsetEv } from '../light/own-light.js';
import { type Expected, mayDifferEv, whyImpossible } from '../light/reading.js';
import { warningOf } from './english.js';
import { type Held, wasHeld, withHeld } from './held.js';
import { type MeterNoise, meterSpreadEv, withReading } from './meter-noise.js';
import { learn, loosen, type OffsetState, offsetAt, startOffset } from './offset-state.js';
import type { BoundReading } from './types.js';
import type { FollowWarning } from './warning.js';

/** What the readings so far have taught. */
export interface Trust {
  readonly offset: OffsetState;
  /** The forecast at its time; undefined before the first reading. */
  readonly forecastEv100: number | undefined;
  /** What the sky alone was brighter by when it was last seen by day. */
  readonly skyEv: number;
  readonly lastUsedMs: number | undefined; // time of the last reading used
  readonly doubt: Doubt | undefined;
  /** What the light was off by in the last half hour, in parts of five minutes. */
  readonly held: readonly Held[];
  /** The last reading used was a bound: how far the light lies to this side of it is not known. */
  readonly open?: 'brighter' | 'darker' | undefined;
  /** How much the readings tremble. */
  readonly noise: MeterNoise | undefined;
}

/** Readings that agree with each other and not with what was expected. */
interface Doubt {
  readonly sinceMs: number;
  readonly offsetEv: number; // of the last of them
  readonly atMs: number;
}

/** Our choice: a torch or a headlamp shines into the lens for less than this. */
const TORCH_S = 50;
/** Our choice: so long after the last reading, whatever it was, the next is believed. */
const SILENCE_MS = 3 * 60_000;
/** Our choice: by less than this, light of its own is not told from a bright sky. */
const OWN_LIGHT_SHOWS_EV = 0.2;

export function startTrust(atMs: number): Trust {
  return {
    offset: startOffset(atMs),
    forecastEv100: undefined,
    skyEv: 0,
    lastUsedMs: undefined,
    doubt: undefined,
    held: [],
    noise: undefined,
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

/** Whether a reading is a bound that a scene of so much keeps. */
function saysNothing({ bound, ev100 }: BoundReading, sceneEv100: number): boolean {
  return bound === 'atLeast' ? sceneEv100 >= ev100 : bound === 'atMost' && sceneEv100 <= ev100;
}

/**
 * What was learnt from a reading, and what is to be said about it.
 *
 * @param lightAt the plan's light at any time
 */
export function takeReading(
  trust: Trust,
  reading: BoundReading,
  lightAt: (atMs: number) => Expected,
  statedMeterEv: number,
): { readonly trust: Trust; readonly warning?: FollowWarning } {
  const { atMs, ev100, sure = false, bound } = reading;
  const expected = lightAt(atMs);
  const offsetEv = ev100 - expected.sceneEv100;
  const { lastUsedMs, doubt } = trust;
  const meterEv = meterSpreadEv(trust.noise, statedMeterEv);
  const expectedEv = expectedOffsetEv(trust, atMs, expected.sceneEv100);
  if (saysNothing(reading, expected.sceneEv100 + expectedEv)) {
    // What is in doubt may be on the other side of it.
    const refuted = doubt !== undefined && !saysNothing(reading, expected.sceneEv100 + doubt.offsetEv);
    return { trust: refuted ? { ...trust, doubt: undefined } : trust };
  }
  const asSkyEv = offsetAt(trust.offset, atMs);
  const carriedEv = expectedEv - asSkyEv;
  // Lamps would have stayed as the sky went; what a bright sky has lost is no cloud that will pass.
  const isSky =
    Math.abs(carriedEv) > OWN_LIGHT_SHOWS_EV &&
    Math.abs(offsetEv - asSkyEv) < Math.abs(offsetEv - expectedEv);
  const offset = isSky ? trust.offset : { ...trust.offset, lastingEv: trust.offset.lastingEv + carriedEv };
  // A bound is no reading to hold the next one against. What is doubted counts: a meter that trembles is the likelier cause.
  const noise = bound === undefined ? withReading(trust.noise, atMs, offsetEv) : trust.noise;
  const believe = (from: OffsetState): Trust => {
    const learnt = learn(from, atMs, offsetEv, meterEv);
    return {
      offset: learnt,
      forecastEv100: expected.sceneEv100,
      skyEv: isSky ? offsetAt(learnt, atMs) : skyOffsetEv(trust.skyEv, offsetAt(learnt, atMs), ev100),
      lastUsedMs: atMs,
      doubt: undefined,
      held: withHeld(trust.held, atMs, offsetEv),
      open: bound === undefined ? undefined : bound === 'atLeast' ? 'brighter' : 'darker',
      noise,
    };
  };
  const sunDeg = expected.sunAltitudeDeg;
  const minutesFrom = (otherMs: number) => Math.abs(atMs - otherMs) / 60_000;
  const isFirst = lastUsedMs === undefined;
  const jumpEv = isFirst ? 0 : offsetEv - expectedEv;
  // Readings that came in since and were doubted would have shown wrong words for the scene as they take hold.
  const wordsFromDeg = isFirst || doubt !== undefined ? sunDeg : lightAt(lastUsedMs).sunAltitudeDeg;
  const near =
    !isFirst && Math.abs(jumpEv) <= mayDifferEv(minutesFrom(lastUsedMs), sunDeg, wordsFromDeg, meterEv);
  // What somebody is sure of, or what goes on as it was, needs no scene to explain it.
  const impossible = sure || near ? undefined : whyImpossible(reading, expected);
  if (impossible !== undefined)
    return { trust, warning: warningOf({ kind: 'reading-impossible', because: impossible }) };
  // What is known begins with the first reading, which may come before the first frame.
  if (isFirst) return { trust: believe({ ...offset, atMs }) };
  if (near) return { trust: believe(offset) };
  // It was known that the light might lie anywhere to that side.
  const wasOpen = trust.open === (jumpEv > 0 ? 'brighter' : 'darker');
  if (sure || wasOpen) return { trust: believe(loosen(offset, jumpEv)) };

  const mayBeTorch = jumpEv > 0 && !wasHeld(trust.held, atMs, offsetEv);
  const doubtedEv = doubt === undefined ? 0 : doubt.offsetEv - expectedEv;
  // The edge of a bank runs on from one reading to the next; a torch that came nearer would as well.
  const runsOn = !mayBeTorch && Math.abs(jumpEv) > Math.abs(doubtedEv);
  const goesOn =
    doubt !== undefined &&
    Math.sign(doubtedEv) === Math.sign(jumpEv) &&
    // Doubted readings bear each other out within half of what they are off by.
    (runsOn || Math.abs(offsetEv - doubt.offsetEv) <= Math.abs(jumpEv) / 2);
  const sinceMs = goesOn ? doubt.sinceMs : atMs;
  const borneOut = goesOn && atMs - sinceMs >= (mayBeTorch ? 1000 * TORCH_S : 0) && atMs > doubt.atMs;
  const afterSilence = atMs - (doubt?.atMs ?? lastUsedMs) >= SILENCE_MS;
  if (borneOut || afterSilence) {
    const warning = warningOf({ kind: 'reading-believed', differsEv: jumpEv });
    return { trust: believe(loosen(offset, jumpEv)), warning };
  }
  return {
    trust: { ...trust, doubt: { sinceMs, offsetEv, atMs }, noise },
    warning: warningOf({ kind: 'reading-doubted', ev100, differsEv: jumpEv }),
  };
}
