// What a shoot must be, at the door of what plans it: what readShoot has read is that; what a program has put together, or
// changed by hand, may be nearly that, and is told by name.

import { dialStep } from '../exposure/dial.js';
import {
  aboveZero,
  aGroup,
  aNumber,
  atLeast,
  either,
  flag,
  from,
  group,
  has,
  hold,
  isGroup,
  listOf,
  oneOf,
  text,
  wordOr,
} from '../hold.js';
import { bySunCheck, sceneCheck } from '../light/scene-check.js';
import { bracketCheck, limitsCheck, weightsCheck } from '../ramp/problem-check.js';
import type { Shoot } from './shoot.js';

const altitude = from(-90, 90);
const share = from(0, 1);

const camera = group(
  {
    stepsPerStop: oneOf([2, 3]),
    shutter: group({ shortest: text, longest: text }),
    bulb: flag,
    iso: group({ lowest: aboveZero, highest: aboveZero }),
    aperture: wordOr(text, group({ widest: text, narrowest: text })),
    gapS: atLeast(0),
    darkFrame: flag,
  },
  {
    bracket: bracketCheck,
    frameMB: aboveZero,
    cardGB: aboveZero,
    batteryFrames: aboveZero,
    coldFactor: share,
    lens: group({ focalMm: aboveZero }),
    sensor: group({ widthMm: aboveZero, heightMm: aboveZero }, { widthPx: aboveZero }),
  },
);

const filter = either((value) =>
  has('factor')(value)
    ? group({ name: text, factor: atLeast(1) })
    : has('density')(value)
      ? group({ name: text, density: atLeast(0) })
      : group({ name: text, stops: atLeast(0) }),
);

/** Lengths and motors are checked where a move is resolved, which says which of them belong together. */
const ease = wordOr(oneOf(['linear', 'smoothstep', 'quintic']), group({ trapezoid: from(0, 0.5) }));
const how = { by: aGroup, mode: oneOf(['stopped', 'continuous']), ease, gear: aGroup };
const move = either((value) =>
  isGroup(value) && value.axis === 'slide'
    ? group({ axis: oneOf(['slide']), ...how, toward: oneOf(['side', 'forward']) }, { nearestM: aboveZero })
    : group({ axis: oneOf(['pan', 'tilt', 'slide']), ...how }),
);

/** One number, or a table. */
export const lookCheck = either((value) =>
  Array.isArray(value)
    ? listOf(group({ sunAltitudeDeg: altitude, offsetEv: aNumber }), 1)
    : group({ nightEv: aNumber }),
);

const shootCheck = group(
  {
    format: oneOf(['evenfall-shoot/1']),
    title: text,
    place: group(
      { latitudeDeg: from(-90, 90), longitudeDeg: from(-180, 180) },
      { elevationM: aNumber, aboveHorizonM: atLeast(0), timeZone: text },
    ),
    date: text,
    direction: oneOf(['dusk', 'dawn']),
    span: either((value) => (has('startAt')(value) ? group({ startAt: text, endAt: text }) : bySunCheck)),
    intervalS: aboveZero,
    clipFps: aboveZero,
    camera,
    filters: listOf(filter),
    stackFilters: flag,
    scene: sceneCheck,
    look: lookCheck,
    readings: listOf(group({ at: text, ev100: aNumber })),
    crew: oneOf(['hand', 'rig']),
    limits: limitsCheck,
    moves: listOf(move),
  },
  { startFilter: text, weights: weightsCheck },
);

/**
 * @param name of the argument that it is, where its keys are not named as they are
 * @throws RangeError naming the key, the rule and the value of what readShoot would refuse
 */
export function checkShoot(shoot: Shoot, name = ''): void {
  // The two slips of a first program: the whole answer of readShoot, and a file that it has not read.
  if (isGroup(shoot) && 'kind' in shoot) {
    throw new RangeError(`${name || 'shoot'} must be a shoot, got an answer of readShoot; give its "shoot"`);
  }
  if (isGroup(shoot) && has('format')(shoot) && !has('limits')(shoot)) {
    throw new RangeError(
      `${name === '' ? '' : `${name}.`}limits must be there: a shoot file is read by readShoot, which fills in what it leaves out`,
    );
  }
  hold(name, shoot, shootCheck);
  checkEnds(shoot.camera, name === '' ? '' : `${name}.`);
}

/** Ranges of the dials, each from the end with the lower step. */
const ENDS = [
  ['shutter', 'longest', 'shortest'],
  ['iso', 'lowest', 'highest'],
  ['aperture', 'widest', 'narrowest'],
] as const;

/** Labels that are on no dial are told where the dials are read. */
function checkEnds(camera: Shoot['camera'], before: string): void {
  for (const [control, low, high] of ENDS) {
    const range = camera[control];
    if (typeof range === 'string') continue;
    const ends = range as Readonly<Record<string, string | number>>;
    const [from, to] = [low, high].map((end) => dialStep(control, String(ends[end]), camera.stepsPerStop));
    if (from === undefined || to === undefined || from <= to) continue;
    throw new RangeError(
      `${before}camera.${control} must run from its ${low} to its ${high}, got ${ends[low]} to ${ends[high]}`,
    );
  }
}
