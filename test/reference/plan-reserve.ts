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
  const [least, most] = shareOf(shoot, darkEv, brightEv);
  if (!(share >= least && share <= most)) {
    wrong.push(`summary: eveningsHeldShare is ${share}, should be from ${least} to ${most}`);
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

/**
 * Between which shares the claim must lie: for level ground in daylight and a sky that nobody saw those of measured whole
 * evenings, at the pairs of reserves around the plan's; 0 and 1 elsewhere.
 */
function shareOf(shoot: Found, darkEv: number, brightEv: number): [number, number] {
  const scene = child(shoot, 'scene').value;
  const { skyShare, uprightShare = 0, lamps = 'none', cloud = 'clear' } = scene;
  const { toSunAltitudeDeg } = child(shoot, 'span').value;
  const readings = shoot.value.readings ?? [];
  const daylight = typeof toSunAltitudeDeg === 'number' && toSunAltitudeDeg > -8;
  const levelGround = skyShare === 0 && uprightShare === 0 && lamps === 'none';
  if (!daylight || !levelGround || cloud !== 'clear' || (readings as unknown[]).length > 0) return [0, 1];

  const rows = readTable('light/dtu_whole_evenings_share.csv').map((row) => ({
    dark: row.dark_stops === '' ? Number.POSITIVE_INFINITY : Number(row.dark_stops),
    bright: row.bright_stops === '' ? Number.POSITIVE_INFINITY : Number(row.bright_stops),
    whole: Number(row.whole_evenings_held_share),
    butFiveMinutes: Number(row.evenings_held_but_5_minutes_share),
  }));
  const within = rows.filter(({ dark, bright }) => dark <= darkEv && bright <= brightEv);
  const beyond = rows.filter(({ dark, bright }) => dark >= darkEv && bright >= brightEv);
  return [
    Math.max(0, ...within.map(({ whole }) => whole - 0.05)),
    Math.min(1, ...beyond.map(({ butFiveMinutes }) => butFiveMinutes + 0.05)),
  ];
}
