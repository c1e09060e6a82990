// The camera as a person owns it, by labels and names, and the same kit as the ramp counts it, in dial steps.

import {
  type DialControl,
  dialLabel,
  dialStep,
  fNumberOfStep,
  isoOfStep,
  timeOfStep,
} from '../exposure/dial.js';
import { type FilterStack, filterStacks } from '../exposure/filter.js';
import { type Bracket, bracketReachEv } from '../footage/bracket.js';
import { aGroup, aList, groupWith, hold } from '../hold.js';
import type { RampFrame, RampKit } from '../ramp/problem.js';
import type { Camera, Shoot } from './shoot.js';

/** A ramp's kit with the names of the filter stacks that its places stand for: what {@link settingOf} reads a frame with. */
export interface NamedKit {
  /** In dial steps. */
  readonly ramp: RampKit;
  /** What may be on the lens, weakest first, none as strong as another; entry i is the ramp's stack i. */
  readonly stacks: readonly FilterStack[];
  /** What could be on it and is as strong as one of those: its names, and which it equals. */
  readonly equals: readonly {
    /** In the shoot's order. */
    readonly names: readonly string[];
    /** Its place in `stacks`. */
    readonly stack: number;
  }[];
  /** Absent: one exposure in every interval. */
  readonly bracket?: Bracket | undefined;
}

/** What one setting says on the dials, and what it is. */
export interface Setting {
  /** What the dial says, "1/60"; to three digits where a rig times it freely. */
  readonly shutter: string;
  /** Seconds, exact. */
  readonly shutterS: number;
  /** Shutter of the shortest exposure, where they are several; `shutter` is the middle one's. */
  readonly bracketShortest?: string | undefined;
  /** Shutter of the longest. */
  readonly bracketLongest?: string | undefined;
  /** What the dial says. */
  readonly iso: number;
  /** Arithmetic speed, exact: 125.99 where the dial says 125. */
  readonly isoExact: number;
  /** What the dial says, "5.6". */
  readonly aperture: string;
  /** Focal ratio, exact. */
  readonly fNumber: number;
  /** Names of those on the lens; empty for the bare lens. */
  readonly filters: readonly string[];
  /** Their sum, stops, exact, >= 0. */
  readonly filterStops: number;
}

/**
 * The ramp's kit of a shoot.
 *
 * @throws RangeError on a label that is not on the dial, or a start filter that is not owned
 */
export function kitOf({ camera, filters, stackFilters, startFilter }: Shoot): NamedKit {
  const all = filterStacks(filters, stackFilters);
  const stacks = distinctStacks(all, startFilter);
  const startStack = stacks.findIndex(({ names }) => (names.join(' + ') || 'none') === startFilter);
  if (startFilter !== undefined && startStack < 0) {
    throw new RangeError(`startFilter "${startFilter}" is not among the filters`);
  }
  const { widest, narrowest } = apertures(camera);
  const step = (control: DialControl, label: string) => stepOn(camera, control, label);
  return {
    stacks,
    equals: all.flatMap(({ names, stops }) =>
      stacks.some((stack) => stack.names === names)
        ? []
        : [{ names, stack: stacks.findIndex((stack) => areEqual(stack.stops, stops)) }],
    ),
    ramp: {
      stepsPerStop: camera.stepsPerStop,
      shutter: {
        longestStep: step('shutter', camera.shutter.longest),
        shortestStep: step('shutter', camera.shutter.shortest),
      },
      iso: {
        lowestStep: step('iso', String(camera.iso.lowest)),
        highestStep: step('iso', String(camera.iso.highest)),
      },
      aperture: { widestStep: step('aperture', widest), narrowestStep: step('aperture', narrowest) },
      stackStops: stacks.map(({ stops }) => stops),
      ...(startFilter === undefined ? {} : { startStack }),
      bulb: camera.bulb,
    },
    ...(camera.bracket === undefined ? {} : { bracket: camera.bracket }),
  };
}

/** Stops by which two filters may differ and are one to a photographer: ND 0.9 is 2.99 stops, ND 8 is 3. Our choice. */
const EQUAL_STOPS = 0.05;

const areEqual = (a: number, b: number) => Math.abs(a - b) < EQUAL_STOPS;

/**
 * Stacks of which none is as strong as another: changing one for its equal would gain nothing but frames that are not judged. Of
 * equals the one to start with is kept, then what has the fewest filters, then the owner's first.
 */
function distinctStacks(all: readonly FilterStack[], startFilter: string | undefined): FilterStack[] {
  const isStart = ({ names }: FilterStack) => names.length === 1 && names[0] === startFilter;
  const wanted = [...all].sort(
    (a, b) => Number(isStart(b)) - Number(isStart(a)) || a.names.length - b.names.length,
  );
  const kept: FilterStack[] = [];
  for (const stack of wanted) {
    if (!kept.some(({ stops }) => areEqual(stops, stack.stops))) kept.push(stack);
  }
  return kept.sort((a, b) => a.stops - b.stops);
}

/** The kit's stack of these names in any order, or the one that is as strong; undefined where there is none. */
export function stackOfNames({ stacks, equals }: NamedKit, names: readonly string[]): number | undefined {
  const wanted = [...names].sort().join('\n');
  const isWanted = (each: { readonly names: readonly string[] }) =>
    [...each.names].sort().join('\n') === wanted;
  const index = stacks.findIndex(isWanted);
  return index >= 0 ? index : equals.find(isWanted)?.stack;
}

const KIT = groupWith({ ramp: aGroup, stacks: aList });

/**
 * A frame of the ramp as the dials and the filter rims say it.
 *
 * @param kit from {@link rampProblemOf}, beside the problem that was solved; of a problem put together by hand its steps as
 *   `ramp`, and as `stacks` what may be on the lens, the bare lens `{ names: [], stops: 0 }`, in the order of its `stackStops`
 * @param frame from {@link solveRamp}
 * @returns marks of the dials, and exact values beside them
 * @throws RangeError where a step of the frame is on no dial, or the kit has no such stack
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { cuesOf, forecastLight, rampProblemOf, settingOf, shootSpan, solveRamp } from '@evenfall/core';
 *
 * const span = shootSpan(shoot);
 * if (span.kind === 'no-span') throw new Error(span.why);
 * const forecast = forecastLight(shoot, span.times);
 * const { kit, problem } = rampProblemOf(shoot, forecast);
 * const ramp = solveRamp(problem);
 * if (ramp.kind !== 'ok') throw new Error(ramp.kind);
 * const settings = ramp.frames.map((frame) => settingOf(kit, frame));
 * settings[0].shutter === plan.frames[0].shutter; // → true
 *
 * // The cues of a ramp alone.
 * const cues = cuesOf(
 *   settings.map((setting, frame) => ({
 *     ...setting,
 *     frame,
 *     at: plan.frames[frame].at,
 *     sunAltitudeDeg: forecast.sky[frame].sunAltitudeDeg,
 *   })),
 *   true,
 * );
 * cues.length === plan.cues.length; // → true
 * ```
 */
export function settingOf(
  kit: Pick<NamedKit, 'stacks' | 'bracket'> & { readonly ramp: Pick<RampKit, 'stepsPerStop' | 'bulb'> },
  frame: RampFrame,
): Setting {
  hold('kit', kit, KIT);
  hold('frame', frame, aGroup);
  const { ramp, stacks, bracket } = kit;
  const stack = stacks[frame.stack];
  if (stack === undefined) {
    throw new RangeError(
      `frame.stack must be a place in kit.stacks, one of ${stacks.length}, got ${frame.stack}`,
    );
  }
  const { stepsPerStop, bulb } = ramp;
  const label = (step: number) =>
    bulb ? timeText(timeOfStep(step, stepsPerStop)) : dialLabel('shutter', step, stepsPerStop);
  const reach = Math.round(bracketReachEv(bracket) * stepsPerStop);
  return {
    shutter: label(frame.shutterStep),
    shutterS: timeOfStep(frame.shutterStep, stepsPerStop),
    ...(bracket && {
      bracketShortest: label(frame.shutterStep + reach),
      bracketLongest: label(frame.shutterStep - reach),
    }),
    iso: Number(dialLabel('iso', frame.isoStep, stepsPerStop)),
    isoExact: isoOfStep(frame.isoStep, stepsPerStop),
    aperture: dialLabel('aperture', frame.apertureStep, stepsPerStop),
    fNumber: fNumberOfStep(frame.apertureStep, stepsPerStop),
    filters: stack.names,
    filterStops: stack.stops,
  };
}

function apertures({ aperture }: Camera): { widest: string; narrowest: string } {
  return typeof aperture === 'string' ? { widest: aperture, narrowest: aperture } : aperture;
}

function stepOn({ stepsPerStop }: Camera, control: DialControl, label: string): number {
  const step = dialStep(control, label, stepsPerStop);
  if (step !== undefined) return step;
  throw new RangeError(`${control} "${label}" is not on a dial of 1/${stepsPerStop}-stop steps`);
}

/** A freely timed shutter to three digits, as a person writes times: "1/79.2", "0.5", "12.7". */
function timeText(timeS: number): string {
  return timeS < 0.3 ? `1/${Number((1 / timeS).toPrecision(3))}` : String(Number(timeS.toPrecision(3)));
}
