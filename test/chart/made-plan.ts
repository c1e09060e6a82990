// Invented evenings for chart and card: plausible light, as many cues as a test asks for. No solver is at
// work here; settings only have to hang together, so that a picture of them can be checked.

import type { Direction, PlanChange, PlanEvent, PlanFrame, PlanMade, Shoot, SkyEvent } from '@evenfall/core';
import { dialLabel, fNumberOfStep, isoOfStep, timeOfStep } from '../../packages/core/src/exposure/dial.js';
import { setUpAt } from '../../packages/core/src/plan/set-up.js';

export interface MadePlanOptions {
  readonly cues?: number;
  readonly direction?: Direction;
  readonly title?: string;
  readonly latitudeDeg?: number; // slower dusks further from the equator
  readonly intervalS?: number;
  readonly filters?: readonly { readonly name: string; readonly stops: number }[]; // all on at the start
  readonly apertureMoves?: boolean;
  readonly startAt?: string; // local time, no offset
  readonly nightEv?: number;
}

const OFFSET = '+01:00';

/** A plan whose frames, cues and summary agree with one another. */
export function madePlan(options: MadePlanOptions = {}): PlanMade {
  const {
    cues = 40,
    direction = 'dusk',
    title = 'Harbour wall, evening',
    latitudeDeg = 50,
    intervalS = 7,
    filters = [{ name: 'ND 6-stop', stops: 6 }],
    startAt = '2026-10-18T17:25:04',
    nightEv = -1.5,
  } = options;
  const degPerS = (0.25 * Math.cos((latitudeDeg * Math.PI) / 180)) / 60;
  const frameCount = Math.max(Math.floor(18.5 / degPerS / intervalS), 3 * cues + 10);
  const altitudes = Array.from({ length: frameCount }, (_, i) => 6 - (18.5 * i) / (frameCount - 1));
  const scene = altitudes.map(sceneEv);
  const target = altitudes.map((deg, i) => scene[i]! - nightEv * smooth(Math.min(1, Math.max(0, -deg / 12))));
  const settings = ramp(target, cues, filters, options.apertureMoves ?? false);
  if (direction === 'dawn') for (const list of [altitudes, scene, target, settings]) list.reverse();

  const at = (i: number) =>
    new Date(Date.parse(`${startAt}Z`) + i * intervalS * 1000).toISOString().slice(0, 19) + OFFSET;
  const frames: PlanFrame[] = settings.map((s, i) => {
    const { shutterStep, isoStep, apertureStep, names, stops } = s;
    const settingEv100 = (apertureStep + shutterStep - isoStep) / 3 + stops;
    return {
      frame: i,
      at: at(i),
      sunAltitudeDeg: altitudes[i]!,
      sceneEv100: scene[i]!,
      targetEv100: target[i]!,
      shutter: dialLabel('shutter', shutterStep, 3),
      shutterS: timeOfStep(shutterStep, 3),
      iso: Number(dialLabel('iso', isoStep, 3)),
      isoExact: isoOfStep(isoStep, 3),
      aperture: dialLabel('aperture', apertureStep, 3),
      fNumber: fNumberOfStep(apertureStep, 3),
      filters: names,
      filterStops: stops,
      settingEv100,
      errorEv: settingEv100 - target[i]!,
      affected: [i - 1, i].some((k) => k > 0 && settings[k]!.names.join() !== settings[k - 1]!.names.join()),
      lowEv100: scene[i]! - 3,
      highEv100: scene[i]! + 0.5,
    };
  });
  const made = frames.flatMap((frame, i) => {
    const changes = i === 0 ? [] : changesBetween(frames[i - 1]!, frame);
    return changes.length === 0
      ? []
      : [{ frame: i, at: frame.at, sunAltitudeDeg: frame.sunAltitudeDeg, changes }];
  });
  const errors = frames.filter((f) => !f.affected).map((f) => f.errorEv);
  return {
    format: 'evenfall-plan/1',
    kind: 'ok',
    shoot: shootOf({ title, latitudeDeg, intervalS, filters, direction, startAt, nightEv }),
    summary: {
      frameCount,
      setUpAt: setUpAt(at(0)),
      startAt: at(0),
      endAt: at(frameCount - 1),
      clipS: frameCount / 24,
      sceneFromEv100: scene[0]!,
      sceneToEv100: scene.at(-1)!,
      rampStops: Math.max(...target) - Math.min(...target),
      reserveDarkEv: 1,
      reserveBrightEv: 2,
      eveningsHeldShare: 0.5,
      worstErrorEv: Math.max(...errors.map(Math.abs)),
      rmsErrorEv: Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length),
      cueCount: made.length,
      objective: 100,
    },
    events: eventsOf(frames),
    frames,
    cues: made,
    notes: [
      {
        level: 'caution',
        kind: 'moonrise',
        at: frames.at(-1)!.at,
        text: 'The moon rises during the shoot.',
      },
    ],
  };
}

// Fall in stops a degree at altitudes of the sun, near those of docs/light.md, summed from +6 degrees down.
const SLOPES = [
  [6, 0.3],
  [5, 0.34],
  [0, 0.82],
  [-4.5, 1.5],
  [-7, 1.65],
  [-9, 1.5],
  [-11, 0.9],
  [-14, 0.3],
] as const;

function slopeAt(deg: number): number {
  for (let k = 1; k < SLOPES.length; k++) {
    const [[high, a], [low, b]] = [SLOPES[k - 1]!, SLOPES[k]!];
    if (deg >= low) return a + ((b - a) * (high - deg)) / (high - low);
  }
  return 0.3;
}

function sceneEv(deg: number): number {
  let ev = 13.8;
  for (let d = 6; d - 0.1 >= deg; d -= 0.1) ev -= 0.1 * slopeAt(d - 0.05);
  const whole = Math.floor((6 - deg) / 0.1 + 1e-9) * 0.1;
  return ev - (6 - deg - whole) * slopeAt(deg);
}

const smooth = (x: number) => x * x * (3 - 2 * x);

interface Dials {
  readonly shutterStep: number;
  readonly isoStep: number;
  readonly apertureStep: number;
  readonly names: readonly string[];
  readonly stops: number;
}

const LONGEST_STEP = -7; // 5 s

function ramp(
  target: readonly number[],
  cues: number,
  owned: readonly { readonly name: string; readonly stops: number }[],
  apertureMoves: boolean,
): Dials[] {
  const [first, last] = [target[0]!, target.at(-1)!];
  const deltas = stepsDown(Math.round(3 * (first - last)), cues);
  let names = owned.map((f) => f.name);
  let stops = owned.reduce((sum, f) => sum + f.stops, 0);
  let now: Dials = { shutterStep: 0, isoStep: 0, apertureStep: 18, names, stops };
  now = { ...now, shutterStep: Math.round(3 * (first - stops) - 18) };
  const settings: Dials[] = [];
  let next = 0;
  let lastFrame = 0;
  for (let i = 0; i < target.length; i++) {
    const due = first - ((next + 0.5) / cues) * (first - last);
    const mustGo = target.length - i <= cues - next + 3;
    if (next < cues && i > lastFrame && (target[i]! <= due || mustGo)) {
      now = moved(deltas[next]!);
      next++;
      lastFrame = i;
    }
    settings.push(now);
  }
  return settings;

  function moved(delta: number): Dials {
    const { shutterStep, isoStep, apertureStep } = now;
    if (delta < 0)
      return isoStep > 0
        ? { ...now, isoStep: isoStep + delta }
        : { ...now, shutterStep: shutterStep - delta };
    if (shutterStep - delta >= LONGEST_STEP) return { ...now, shutterStep: shutterStep - delta };
    const off = owned.find((f) => names.includes(f.name));
    if (off !== undefined) {
      names = names.filter((name) => name !== off.name);
      stops -= off.stops;
      return { ...now, names, stops, shutterStep: shutterStep - delta + Math.round(3 * off.stops) };
    }
    if (apertureMoves && apertureStep - delta >= 9) return { ...now, apertureStep: apertureStep - delta };
    // Past the end of the ISO dial the shutter goes on; such kits are made up to fill a card.
    return isoStep + delta > 27
      ? { ...now, shutterStep: shutterStep - delta }
      : { ...now, isoStep: isoStep + delta };
  }
}

// So many whole steps that sum to the fall (or one more); with more cues than steps some go back.
function stepsDown(total: number, cues: number): number[] {
  const back = cues > total ? Math.floor((cues - total) / 2) : 0;
  const at = (k: number, n: number) => Math.floor((n * k) / cues);
  return Array.from({ length: cues }, (_, k) =>
    cues > total ? (at(k + 1, back) > at(k, back) ? -1 : 1) : at(k + 1, total) - at(k, total),
  );
}

function changesBetween(a: PlanFrame, b: PlanFrame): PlanChange[] {
  const name = (f: PlanFrame) => (f.filters.length === 0 ? 'none' : f.filters.join(' + '));
  const pairs = [
    { control: 'shutter', from: a.shutter, to: b.shutter },
    { control: 'iso', from: String(a.iso), to: String(b.iso) },
    { control: 'aperture', from: a.aperture, to: b.aperture },
    { control: 'filter', from: name(a), to: name(b) },
  ] as const;
  return pairs.filter(({ from, to }) => from !== to);
}

const EVENTS: readonly (readonly [SkyEvent, SkyEvent, number])[] = [
  ['sunset', 'sunrise', -0.833],
  ['civil-dusk', 'civil-dawn', -6],
  ['nautical-dusk', 'nautical-dawn', -12],
];

function eventsOf(frames: readonly PlanFrame[]): PlanEvent[] {
  return EVENTS.flatMap(([dusk, dawn, deg]) => {
    const i = frames.findIndex(
      (f, k) => k > 0 && (f.sunAltitudeDeg - deg) * (frames[k - 1]!.sunAltitudeDeg - deg) <= 0,
    );
    if (i < 0) return [];
    const falling = frames[i]!.sunAltitudeDeg < frames[i - 1]!.sunAltitudeDeg;
    return [{ name: falling ? dusk : dawn, at: frames[i]!.at, sunAltitudeDeg: deg }];
  }).sort((a, b) => a.at.localeCompare(b.at));
}

function shootOf(p: {
  title: string;
  latitudeDeg: number;
  intervalS: number;
  filters: readonly { readonly name: string; readonly stops: number }[];
  direction: Direction;
  startAt: string;
  nightEv: number;
}): Shoot {
  return {
    format: 'evenfall-shoot/1',
    title: p.title,
    place: { latitudeDeg: p.latitudeDeg, longitudeDeg: -5.5, timeZone: 'Europe/London' },
    date: p.startAt.slice(0, 10),
    direction: p.direction,
    span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12.5 },
    intervalS: p.intervalS,
    clipFps: 24,
    camera: {
      stepsPerStop: 3,
      shutter: { shortest: '1/4000', longest: '5' },
      bulb: false,
      iso: { lowest: 100, highest: 6400 },
      aperture: '8',
      gapS: 1,
      darkFrame: false,
    },
    filters: p.filters,
    stackFilters: p.filters.length > 1,
    scene: {
      facing: 'toward-sun',
      viewAltitudeDeg: 15,
      skyShare: 0.5,
      reflectance: 0.18,
      cloud: 'clear',
      night: 'rural',
      lamps: 'none',
    },
    look: { nightEv: p.nightEv },
    readings: [],
    crew: 'hand',
    limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 60, framesLostPerFilterChange: 2 },
    moves: [],
  };
}
