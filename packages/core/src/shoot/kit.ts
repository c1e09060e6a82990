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
import type { RampFrame, RampKit } from '../ramp/problem.js';
import type { Camera, Shoot } from './shoot.js';

/** A ramp's kit, and the filter stacks its indices stand for. */
export interface Kit {
  /** In dial steps. */
  readonly ramp: RampKit;
  /** What may be on the lens, weakest first; entry i is the ramp's stack i. */
  readonly stacks: readonly FilterStack[];
}

/** What one setting says on the dials, and what it is. */
export interface Setting {
  /** What the dial says, "1/60"; to three digits where a rig times it freely. */
  readonly shutter: string;
  /** Seconds, exact. */
  readonly shutterS: number;
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
export function kitOf({ camera, filters, stackFilters, startFilter }: Shoot): Kit {
  const stacks = filterStacks(filters, stackFilters);
  const startStack = stacks.findIndex(({ names }) => names.length === 1 && names[0] === startFilter);
  if (startFilter !== undefined && startStack < 0) {
    throw new RangeError(`startFilter "${startFilter}" is not among the filters`);
  }
  const { widest, narrowest } = apertures(camera);
  const step = (control: DialControl, label: string) => stepOn(camera, control, label);
  return {
    stacks,
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
  };
}

/** A frame of the ramp as the dials and the filter rims say it. */
export function settingOf({ ramp, stacks }: Kit, frame: RampFrame): Setting {
  const { stepsPerStop, bulb } = ramp;
  const shutterS = timeOfStep(frame.shutterStep, stepsPerStop);
  const stack = stacks[frame.stack];
  return {
    shutter: bulb ? timeText(shutterS) : dialLabel('shutter', frame.shutterStep, stepsPerStop),
    shutterS,
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
