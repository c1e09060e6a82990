// The part of a shoot file that a plan can be held against, read with the defaults of docs/formats.md.

import { child, type Found, flag, list, number, numberOr, objects, text } from './plain-json.js';
import { exactOfStep, stepOfLabel } from './plan-labels.js';
import { type MoveFacts, moveFacts } from './plan-moves.js';

export interface ShootFacts {
  readonly intervalS: number;
  readonly clipFps: number;
  readonly stepsPerStop: number;
  readonly shutter: readonly [longest: number, shortest: number]; // of the middle exposure, dial steps
  readonly iso: readonly [lowest: number, highest: number];
  readonly aperture: readonly [widest: number, narrowest: number];
  readonly bulb: boolean;
  readonly gapS: number; // the longest step and rest of the moves counted
  readonly moves: MoveFacts;
  readonly darkFrame: boolean;
  readonly bracketEv: readonly number[]; // of each exposure about the middle one, stops
  readonly pausesS: number; // between the exposures, all together
  readonly longestInsideS: number; // exact longest time that ends inside the interval
  readonly filterStops: ReadonlyMap<string, number>;
  readonly filtersAtOnce: number;
  readonly startFilter: string | undefined;
  readonly dusk: boolean;
  readonly rig: boolean;
  readonly toleranceEv: number;
  readonly m: number; // largest change of one control, dial steps
  readonly spacing: number; // frames between cues
  readonly framesLost: number;
  readonly maxFilterChanges: number; // Infinity where there is no limit
  readonly frameMB: number | undefined;
  readonly cardGB: number | undefined;
  readonly batteryFrames: number | undefined;
  offsetEv(sunAltitudeDeg: number): number; // the look
  priceOf(weight: string, usual: number): number; // the shoot's weight, or the usual one
}

/** @param frameCount of the plan: moves take longer steps over fewer frames */
export function shootFacts(shoot: Found, frameCount: number): ShootFacts {
  const camera = child(shoot, 'camera');
  const limits = child(shoot, 'limits');
  const stepsPerStop = numberOr(camera, 'stepsPerStop', 3);
  const intervalS = number(shoot, 'intervalS');
  const moves = moveFacts(shoot, frameCount);
  const { gapS } = moves;
  const darkFrame = flag(camera, 'darkFrame');
  const bracket = camera.value.bracket === undefined ? undefined : child(camera, 'bracket');
  const exposures = bracket === undefined ? 1 : number(bracket, 'frames');
  const bracketEv = Array.from(
    { length: exposures },
    (_, i) => (bracket === undefined ? 0 : number(bracket, 'stepEv')) * (i - (exposures - 1) / 2),
  );
  const pausesS = bracket === undefined ? 0 : (exposures - 1) * numberOr(bracket, 'betweenS', 0);
  const perMiddle = bracketEv.reduce((sum, ev) => sum + 2 ** ev, 0) * (darkFrame ? 2 : 1);
  const reach = bracketEv[exposures - 1]! * stepsPerStop;
  const rig = text(shoot, 'crew') === 'rig';
  const optional = (of: Found, key: string) => (of.value[key] === undefined ? undefined : number(of, key));

  const shutter = child(camera, 'shutter');
  const iso = child(camera, 'iso');
  const shutterStep = (key: string) => stepOfLabel('shutter', text(shutter, key), stepsPerStop);
  const isoStep = (key: string) => stepOfLabel('iso', String(number(iso, key)), stepsPerStop);
  const held = typeof camera.value.aperture === 'string';
  const apertureLabel = (key: string) =>
    held ? text(camera, 'aperture') : text(child(camera, 'aperture'), key);
  const apertureStep = (key: string) => stepOfLabel('aperture', apertureLabel(key), stepsPerStop);

  const frameMB = optional(camera, 'frameMB');
  const batteryFrames = optional(camera, 'batteryFrames');
  const stepEv = 1 / stepsPerStop;
  const weights = shoot.value.weights === undefined ? undefined : child(shoot, 'weights');
  const largestStepEv = numberOr(limits, 'largestStepEv', rig ? stepEv : 1);
  const secondsBetweenCues = numberOr(limits, 'secondsBetweenCues', rig ? 0 : 60);
  return {
    priceOf: (weight, usual) => (weights === undefined ? usual : numberOr(weights, weight, usual)),
    intervalS,
    clipFps: fpsOf(numberOr(shoot, 'clipFps', 24)),
    stepsPerStop,
    shutter: [shutterStep('longest') + reach, shutterStep('shortest') - reach],
    iso: [isoStep('lowest'), isoStep('highest')],
    aperture: [apertureStep('widest'), apertureStep('narrowest')],
    bulb: flag(camera, 'bulb'),
    gapS,
    moves,
    darkFrame,
    bracketEv,
    pausesS,
    longestInsideS: (intervalS - gapS - pausesS) / perMiddle,
    filterStops: new Map(objects(shoot, 'filters').map((filter) => [text(filter, 'name'), stopsOf(filter)])),
    filtersAtOnce: flag(shoot, 'stackFilters') ? 2 : 1,
    startFilter: shoot.value.startFilter === undefined ? undefined : text(shoot, 'startFilter'),
    dusk: text(shoot, 'direction') === 'dusk',
    rig,
    toleranceEv: numberOr(limits, 'toleranceEv', rig ? stepEv : 0.75),
    m: Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9)),
    spacing: Math.max(1, Math.ceil(secondsBetweenCues / intervalS - 1e-9)),
    framesLost: numberOr(
      limits,
      'framesLostPerFilterChange',
      Math.max(2, Math.ceil(15 / number(shoot, 'intervalS'))),
    ),
    maxFilterChanges: optional(limits, 'maxFilterChanges') ?? Number.POSITIVE_INFINITY,
    frameMB: frameMB === undefined ? undefined : frameMB * exposures,
    cardGB: optional(camera, 'cardGB'),
    batteryFrames:
      batteryFrames === undefined
        ? undefined
        : (batteryFrames * numberOr(camera, 'coldFactor', 1)) / exposures,
    offsetEv: lookOf(shoot),
  };
}

/** Longest time of the kit in seconds, cut off by the interval: where bulb's clamp lies. */
export function longestTimeS({ shutter, stepsPerStop, longestInsideS }: ShootFacts): number {
  return Math.min(exactOfStep('shutter', shutter[0], stepsPerStop), longestInsideS);
}

/** Video's names of film speeds slowed by 1000/1001: 23.976, 29.97, 59.94. */
function fpsOf(named: number): number {
  const slowed = (Math.ceil(named) * 1000) / 1001;
  return Math.abs(named - slowed) < 0.005 ? slowed : named;
}

function stopsOf(filter: Found): number {
  if (filter.value.stops !== undefined) return number(filter, 'stops');
  if (filter.value.density !== undefined) return number(filter, 'density') * Math.log2(10);
  return Math.log2(number(filter, 'factor'));
}

function lookOf(shoot: Found): (sunAltitudeDeg: number) => number {
  if (!Array.isArray(shoot.value.look)) {
    const nightEv = number(child(shoot, 'look'), 'nightEv');
    return (altitudeDeg) => {
      const x = Math.min(1, Math.max(0, -altitudeDeg / 12));
      return nightEv * x * x * (3 - 2 * x);
    };
  }
  const rows = objects({ path: shoot.path, value: { look: list(shoot, 'look') } }, 'look')
    .map((row) => ({ x: number(row, 'sunAltitudeDeg'), y: number(row, 'offsetEv') }))
    .sort((a, b) => a.x - b.x);
  return (altitudeDeg) => {
    const above = rows.findIndex(({ x }) => x >= altitudeDeg);
    if (above === 0) return rows[0]!.y;
    if (above < 0) return rows[rows.length - 1]!.y; // the table's ends go on
    const [a, b] = [rows[above - 1]!, rows[above]!];
    return a.y + ((b.y - a.y) * (altitudeDeg - a.x)) / (b.x - a.x);
  };
}
