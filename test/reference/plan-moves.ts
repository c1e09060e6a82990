// The moves of a plan file held against docs/moves.md: positions, what each interval holds, the gap. It imports
// nothing of the product; angles come from vectors, easing from the area under the speed.

import { child, type Found, list, number, numberOr, object, objects, text } from './plain-json.js';

const DIGITS = 1e-6;

interface Axis {
  readonly key: string; // panDeg, tiltDeg, slideM
  readonly stepsKey: string;
  readonly length: number;
  readonly stopped: boolean;
  readonly smallest: number | undefined;
  share(time: number): number;
  stepS(length: number): number;
  readonly settleS: number;
}

export interface MoveFacts {
  readonly gapS: number; // writing, the longest step, the longest rest
  /** Faults of a frame's own words on where it stands and what its interval holds. */
  frameFaults(frame: Found, i: number, timeS: number): string[];
  /** Faults of the plan's sum of its moves. */
  planFaults(plan: Found, frames: readonly Found[]): string[];
}

/** What a shoot's moves ask of a plan of so many frames; without moves, no more than the gap as it is written. */
export function moveFacts(shoot: Found, frameCount: number): MoveFacts {
  const camera = child(shoot, 'camera');
  const writeS = numberOr(camera, 'gapS', 1);
  const dark = camera.value.darkFrame === true;
  const bracket = camera.value.bracket === undefined ? undefined : child(camera, 'bracket');
  const exposures = bracket === undefined ? 1 : number(bracket, 'frames');
  const stepEv = bracket === undefined ? 0 : number(bracket, 'stepEv');
  const pausesS = bracket === undefined ? 0 : (exposures - 1) * numberOr(bracket, 'betweenS', 0);
  const perMiddle = Array.from(
    { length: exposures },
    (_, i) => 2 ** (stepEv * (i - (exposures - 1) / 2)),
  ).reduce((sum, each) => sum + each);
  const intervalS = number(shoot, 'intervalS');
  const moves = shoot.value.moves === undefined ? [] : objects(shoot, 'moves');
  const axes = moves.map((move) => axisOf(move, camera));
  const at = (axis: Axis, i: number) => axis.length * axis.share(frameCount < 2 ? 0 : i / (frameCount - 1));
  const stopped = axes.filter((axis) => axis.stopped);
  const busy = (i: number) => {
    const turning = stopped.filter((axis) => i + 1 < frameCount && at(axis, i + 1) !== at(axis, i));
    return {
      moveS: Math.max(0, ...turning.map((axis) => axis.stepS(Math.abs(at(axis, i + 1) - at(axis, i))))),
      settleS: Math.max(0, ...turning.map((axis) => axis.settleS)),
    };
  };
  const all = Array.from({ length: frameCount }, (_, i) => busy(i));
  const moveS = all.reduce((most, each) => Math.max(most, each.moveS), 0);
  const settleS = all.reduce((most, each) => Math.max(most, each.settleS), 0);
  const gapS = writeS + moveS + settleS;

  return {
    gapS,
    frameFaults(frame, i, timeS) {
      if (axes.length === 0) {
        return frame.value.slackS === undefined
          ? []
          : [`frame ${i}: has the slack of moves that are not there`];
      }
      const wrong: string[] = [];
      const same = (key: string, is: number) => {
        const said = number(frame, key);
        if (!near(said, is)) wrong.push(`frame ${i}: ${key} is ${said}, should be ${is}`);
      };
      for (const axis of axes) {
        same(axis.key, at(axis, i));
        if (axis.smallest !== undefined) {
          const steps = number(frame, axis.stepsKey);
          const off = Math.abs(steps - at(axis, i) / axis.smallest);
          if (!Number.isInteger(steps) || off > 0.5 + DIGITS) wrong.push(`frame ${i}: ${steps} motor steps`);
        }
      }
      const exposedS = timeS * perMiddle;
      const darkS = dark ? exposedS : 0;
      const bracketS = exposedS - timeS + pausesS;
      if (bracket === undefined) {
        if (frame.value.bracketS !== undefined) wrong.push(`frame ${i}: bracketS without a bracket`);
      } else same('bracketS', bracketS);
      const { moveS: goS, settleS: restS } = all[i]!;
      for (const [key, is] of Object.entries({ darkS, writeS, moveS: goS, settleS: restS })) same(key, is);
      same('slackS', intervalS - timeS - bracketS - darkS - writeS - goS - restS);
      if (number(frame, 'slackS') < -DIGITS) wrong.push(`frame ${i}: short of time`);
      if (axes.every((axis) => axis.stopped) && number(frame, 'blurPx') !== 0) {
        wrong.push(`frame ${i}: a stopped move smears`);
      }
      return wrong;
    },
    planFaults(plan, frames) {
      if (axes.length === 0) return plan.value.move === undefined ? [] : ['a move where there is none'];
      const move = child(plan, 'move');
      const wrong: string[] = [];
      const gap = child(move, 'gap');
      for (const [key, is] of Object.entries({ writeS, moveS, settleS, gapS })) {
        const said = number(gap, key);
        if (!near(said, is)) wrong.push(`move.gap: ${key} is ${said}, should be ${is}`);
      }
      const slacks = frames.map((frame) => number(frame, 'slackS'));
      const least = Math.min(...slacks);
      const tightest = child(move, 'tightest');
      if (!near(number(tightest, 'slackS'), least) || !near(slacks[number(tightest, 'frame')]!, least)) {
        wrong.push('move.tightest is not the tightest frame');
      }
      for (const [i, travel] of objects(move, 'travels').entries()) {
        const said = number(travel, 'length');
        if (!near(said, axes[i]!.length)) wrong.push(`move.travels: ${said}, should be ${axes[i]!.length}`);
      }
      if (list(move, 'lines').length !== axes.length) wrong.push('move.lines are not one a move');
      for (const finding of objects(move, 'findings')) {
        for (const remedy of objects(finding, 'remedies')) text(remedy, 'text');
      }
      return wrong;
    },
  };
}

function axisOf(move: Found, camera: Found): Axis {
  const axis = text(move, 'axis');
  const gear = child(move, 'gear');
  const optional = (key: string) => (gear.value[key] === undefined ? undefined : number(gear, key));
  const [speedKey, pullKey, smallKey] =
    axis === 'slide'
      ? ['topSpeedMPerS', 'accelerationMPerS2', 'smallestStepM']
      : ['topSpeedDegPerS', 'accelerationDegPerS2', 'smallestStepDeg'];
  const [speed, pull, moveS] = [optional(speedKey!), optional(pullKey!), optional('moveS')];
  return {
    key: axis === 'slide' ? 'slideM' : `${axis}Deg`,
    stepsKey: `${axis}Steps`,
    length: lengthOf(move, axis, camera),
    stopped: text(move, 'mode') === 'stopped',
    smallest: optional(smallKey!),
    settleS: numberOr(gear, 'settleS', 1),
    share: (time) => shareOf(move.value.ease, time),
    stepS(length) {
      if (speed === undefined) return moveS ?? Number.NaN;
      if (pull === undefined) return length / speed;
      // Up to the speed that the half way allows, along the rest, down again.
      const top = Math.min(speed, Math.sqrt(length * pull));
      return (2 * top) / pull + (length - top ** 2 / pull) / top;
    },
  };
}

/** Area under the speed up to a time, as a share of the whole area. */
function shareOf(ease: unknown, time: number): number {
  if (ease === 'linear') return time;
  if (ease === 'smoothstep') return 6 * (time ** 2 / 2 - time ** 3 / 3);
  if (ease === 'quintic') return 30 * (time ** 3 / 3 - time ** 4 / 2 + time ** 5 / 5);
  const slope = number(object(ease, 'ease'), 'trapezoid');
  const area = (until: number) => {
    const up = slope === 0 ? 0 : Math.min(until, slope) ** 2 / (2 * slope);
    const flat = Math.max(0, Math.min(until, 1 - slope) - slope);
    const late = Math.max(0, until - (1 - slope));
    return up + flat + (slope === 0 ? 0 : late - late ** 2 / (2 * slope));
  };
  return area(time) / area(1);
}

function lengthOf(move: Found, axis: string, camera: Found): number {
  const by = child(move, 'by');
  const has = (key: string) => by.value[key] !== undefined;
  if (has('m')) return number(by, 'm');
  if (has('trackM')) {
    return number(by, 'trackM') - numberOr(by, 'carriageM', 0) - 2 * numberOr(by, 'marginM', 0);
  }
  if (has('deg')) return number(by, 'deg');
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  if (has('sizeM')) return 2 * degrees(Math.atan2(number(by, 'sizeM') / 2, number(by, 'distanceM')));
  if (has('fromBearingDeg')) {
    let turn = number(by, 'toBearingDeg') - number(by, 'fromBearingDeg');
    while (turn < 0) turn += 360;
    while (turn >= 360) turn -= 360;
    const way = has('way') ? text(by, 'way') : 'shorter';
    const back = way === 'counterclockwise' || (way === 'shorter' && turn > 180);
    return back && turn > 0 ? turn - 360 : turn;
  }
  const sensor = child(camera, 'sensor');
  const focalMm = has('focalMm') ? number(by, 'focalMm') : number(child(camera, 'lens'), 'focalMm');
  const tilt = (numberOr(by, 'cameraTiltDeg', 0) * Math.PI) / 180;
  const [from, to] = ['fromPoint', 'toPoint'].map((key) => {
    const point = child(by, key);
    const right = (numberOr(point, 'fromLeft', 0.5) - 0.5) * number(sensor, 'widthMm');
    const above = (numberOr(point, 'fromBottom', 0.5) - 0.5) * number(sensor, 'heightMm');
    // The ray through the point, turned up with the camera: right, ahead, up.
    const ray = [
      right,
      focalMm * Math.cos(tilt) - above * Math.sin(tilt),
      focalMm * Math.sin(tilt) + above * Math.cos(tilt),
    ];
    return { pan: Math.atan2(ray[0]!, ray[1]!), tilt: Math.asin(ray[2]! / Math.hypot(...ray)) };
  });
  return degrees(axis === 'pan' ? to!.pan - from!.pan : to!.tilt - from!.tilt);
}

function near(said: number, is: number): boolean {
  return Math.abs(said - is) <= DIGITS * Math.max(1, Math.abs(is));
}
