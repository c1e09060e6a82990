// Which readings are believed. A torch across the lens, a lamp in the frame or a slip of the finger is a reading
// far from what was expected; so is a real step of the light. Time tells: the farther off, the longer it must last.

import { METER_EV, NOTHING_KNOWN } from '../light/band.js';
import { driftEv } from '../light/drift.js';
import { addReading, type Reading, startCorrection } from '../light/reading.js';
import { learn, loosen, type OffsetState, offsetAt } from './offset-state.js';
import type { FollowWarning, SureReading } from './types.js';

/** What the readings so far have taught. */
export interface Trust {
  readonly offset: OffsetState;
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

/** The plan's light at the reading's time. */
export interface Expected {
  readonly sceneEv100: number;
  readonly sunAltitudeDeg: number;
}

/** What was learnt from a reading, and what is to be said about it. */
export function takeReading(
  trust: Trust,
  reading: SureReading,
  expected: Expected,
  meterEv: number,
): { readonly trust: Trust; readonly warning?: FollowWarning } {
  const { atMs, ev100, sure = false } = reading;
  const offsetEv = ev100 - expected.sceneEv100;
  const impossible = whyImpossible(reading, expected);
  if (impossible !== undefined) return { trust, warning: { kind: 'reading-impossible', text: impossible } };

  const { offset, lastUsedMs, doubt } = trust;
  const believe = (from: OffsetState): Trust => ({
    offset: learn(from, atMs, offsetEv, meterEv),
    lastUsedMs: atMs,
    doubt: undefined,
  });
  // What is known begins with the first reading, which may come before the first frame.
  if (lastUsedMs === undefined) return { trust: believe({ ...offset, atMs }) };
  const jumpEv = offsetEv - offsetAt(offset, atMs);
  if (Math.abs(jumpEv) <= allowedEv(atMs - lastUsedMs, expected)) return { trust: believe(offset) };
  if (sure) return { trust: believe(loosen(offset, jumpEv)) };

  const goesOn =
    doubt !== undefined && Math.abs(offsetEv - doubt.offsetEv) <= allowedEv(atMs - doubt.atMs, expected);
  const sinceMs = goesOn ? doubt.sinceMs : atMs;
  const stops = `${Math.abs(jumpEv).toFixed(1)} stops ${jumpEv > 0 ? 'brighter' : 'darker'} than expected`;
  if (goesOn && atMs - sinceMs >= 1000 * PATIENCE_S_PER_STOP * Math.abs(jumpEv)) {
    const text = `The light stays ${stops}: it is believed from now on.`;
    return { trust: believe(loosen(offset, jumpEv)), warning: { kind: 'reading-believed', text } };
  }
  const text = `EV ${ev100.toFixed(1)} is ${stops}: not used unless the next readings bear it out.`;
  return {
    trust: { offset, lastUsedMs, doubt: { sinceMs, offsetEv, atMs } },
    warning: { kind: 'reading-doubted', text },
  };
}

/** Stops by which 99 % of measured skies move in so long, and a meter and the hand that points it on top. */
function allowedEv(apartMs: number, { sunAltitudeDeg }: Expected): number {
  return driftEv(Math.abs(apartMs) / 60_000, sunAltitudeDeg, 99) + 2 * METER_EV;
}

function whyImpossible(reading: Reading, { sceneEv100, sunAltitudeDeg }: Expected): string | undefined {
  const forecast = {
    forecastEv100At: () => sceneEv100,
    sunAltitudeAt: () => sunAltitudeDeg,
    known: NOTHING_KNOWN,
  };
  return addReading(startCorrection(forecast), reading).refused[0]?.text;
}
