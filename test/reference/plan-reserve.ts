// The reserve a plan states, tried out: every target shifted by it still has a setting, and by a hair more not all do.
// How often evenings stay within it follows from the table of measured ones where nothing else is known.

import { readTable } from './csv.js';
import { child, type Found, number } from './plain-json.js';
import { exactOfStep } from './plan-labels.js';
import { longestTimeS, type ShootFacts } from './plan-shoot.js';

const HAIR_EV = 1e-5;
const TRIES = 8;

/** What is wrong with a summary's reserve and its share of evenings. */
export function reserveFaults(
  summary: Found,
  shoot: Found,
  facts: ShootFacts,
  targets: readonly number[],
): string[] {
  const wrong: string[] = [];
  const [darkEv, brightEv] = [number(summary, 'reserveDarkEv'), number(summary, 'reserveBrightEv')];
  const stacks = stacksOf(facts);
  const startStops =
    facts.startFilter === undefined ? undefined : [facts.filterStops.get(facts.startFilter) ?? Number.NaN];
  const reached = (ev: number, i: number) =>
    (i === 0 && startStops !== undefined ? startStops : stacks).some((stops) => reaches(facts, ev - stops));
  const counted = targets.map((ev, i) => ({ ev, i })).filter(({ ev, i }) => reached(ev, i));
  const allReached = (shiftEv: number) => counted.every(({ ev, i }) => reached(ev + shiftEv, i));

  for (const [key, reserveEv, sign] of [
    ['reserveDarkEv', darkEv, -1],
    ['reserveBrightEv', brightEv, 1],
  ] as const) {
    if (reserveEv < 0) wrong.push(`summary: ${key} is ${reserveEv}`);
    for (let part = 1; part <= TRIES; part++) {
      const shiftEv = sign * Math.max(0, (reserveEv * part) / TRIES - HAIR_EV);
      if (!allReached(shiftEv)) wrong.push(`summary: ${key} is ${reserveEv}, out of reach at ${shiftEv}`);
    }
    if (counted.length > 0 && allReached(sign * (reserveEv + HAIR_EV)))
      wrong.push(`summary: ${key} is ${reserveEv}, and more is within reach`);
  }

  const share = number(summary, 'eveningsHeldShare');
  const is = shareOf(shoot, darkEv, brightEv);
  if (!(share >= 0 && share <= 1) || (is !== undefined && Math.abs(share - is) > 1e-6)) {
    wrong.push(`summary: eveningsHeldShare is ${share}, should be ${is ?? 'from 0 to 1'}`);
  }
  return wrong;
}

/** Whether some shutter, ISO and aperture render an EV within tolerance behind no filter. */
function reaches(facts: ShootFacts, ev: number): boolean {
  const per = facts.stepsPerStop;
  const { iso, aperture, shutter } = facts;
  let longest = -Math.log2(longestTimeS(facts)) * per;
  if (!facts.bulb) {
    // The longest mark whose exact time ends inside the interval.
    longest = shutter[0];
    while (exactOfStep('shutter', longest, per) > facts.longestInsideS + 1e-9) longest++;
  }
  const lowest = aperture[0] + longest - iso[1];
  const highest = aperture[1] + shutter[1] - iso[0];
  if (highest < lowest - 1e-9) return false;
  const wanted = ev * per;
  const nearest = facts.bulb ? wanted : Math.round(wanted - lowest) + lowest;
  const set = Math.min(highest, Math.max(lowest, nearest));
  return Math.abs(set - wanted) / per <= facts.toleranceEv + 1e-9;
}

function stacksOf({ filterStops, filtersAtOnce }: ShootFacts): number[] {
  const single = [...filterStops.values()];
  const pairs = filtersAtOnce < 2 ? [] : single.flatMap((a, i) => single.slice(i + 1).map((b) => a + b));
  return [0, ...single, ...pairs];
}

/** Undefined where the shoot says more than the table knows: cloud stated, readings, a facing in degrees. */
function shareOf(shoot: Found, darkEv: number, brightEv: number): number | undefined {
  const { cloud = 'clear', facing = 'toward-sun' } = child(shoot, 'scene').value;
  const readings = shoot.value.readings ?? [];
  if (cloud !== 'clear' || typeof facing !== 'string' || (Array.isArray(readings) && readings.length > 0))
    return undefined;
  const row = readTable('light/dtu_allweather_stops_vs_clear.csv').find((r) => r.sun_alt_from === '1')!;
  // Toward the sun haze lifts the upper end of the band to 0.7.
  const stretch = facing === 'toward-sun' ? 0.7 / Number(row.p95) : 1;
  const points = Object.entries(row)
    .filter(([key]) => /^p\d\d$/.test(key))
    .map(([key, value]) => ({ share: Number(key.slice(1)) / 100, ev: Number(value) }))
    .map(({ share, ev }) => ({ share, ev: ev > 0 ? ev * stretch : ev }));
  return below(brightEv, points, stretch) - below(-darkEv, points, stretch);
}

function below(ev: number, points: readonly { share: number; ev: number }[], stretch: number): number {
  let k = 0;
  while (k < points.length - 2 && points[k + 1]!.ev < ev) k++;
  const [a, b] = [points[k]!, points[k + 1]!];
  // Between a point below the forecast and one above it, the stretch begins at the forecast itself.
  const flat = (x: number) => (x > 0 ? x / stretch : x);
  const share = a.share + ((flat(ev) - flat(a.ev)) / (flat(b.ev) - flat(a.ev))) * (b.share - a.share);
  return Math.min(1, Math.max(0, share));
}
