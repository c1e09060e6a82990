// The marked series of shutter, aperture and ISO. A setting is a whole number of steps on its dial,
// counted as APEX counts: up is a shorter time, a higher ISO, a narrower opening. The exact value is a
// power of two of the step; the label is what the dial says. The two are never mixed: "30" is 32 s.
// Source: docs/sources.md#marked-series.

import { finite, whole } from '../check.js';
import { hold, oneOf, text } from '../hold.js';

/** Dial steps in one stop: thirds or halves. */
export type StepsPerStop = 2 | 3;

/** One of the three controls that turn in steps. */
export type DialControl = 'shutter' | 'iso' | 'aperture';

/** Exact seconds of a dial step, whole or between marks: 2^(-step / stepsPerStop); 0 is 1 s, up is shorter. */
export function timeOfStep(step: number, stepsPerStop: StepsPerStop): number {
  return 2 ** (-step / stepsPerStop);
}

/** Exact arithmetic speed of a dial step: 100 · 2^(step / stepsPerStop); 0 is ISO 100, up is more sensitive. */
export function isoOfStep(step: number, stepsPerStop: StepsPerStop): number {
  return 100 * 2 ** (step / stepsPerStop);
}

/** Exact f-number of a dial step: 2^(step / (2 stepsPerStop)); 0 is f/1, up is narrower. */
export function fNumberOfStep(step: number, stepsPerStop: StepsPerStop): number {
  return 2 ** (step / stepsPerStop / 2);
}

const EXACT = { shutter: timeOfStep, iso: isoOfStep, aperture: fNumberOfStep } as const;

/**
 * Exact value of a dial step: the shutter's 2^(-step / stepsPerStop) s, the ISO's 100 · 2^(step / stepsPerStop), the
 * f-number 2^(step / (2 stepsPerStop)). Source: APEX scale of ASA PH2.5-1960 and Exif, marks as libgphoto2 and exiftool list them.
 *
 * @param control whose dial
 * @param step any finite number, not whole between marks; 0 is 1 s, ISO 100, f/1; up is shorter, more sensitive, narrower
 * @param stepsPerStop of the dial, 2 or 3
 * @returns seconds, ISO or focal ratio
 * @throws RangeError on a control or a dial that there is none of, or a step that is not finite
 * @example
 * ```ts
 * import { valueOfStep } from '@evenfall/core';
 *
 * valueOfStep('shutter', 18, 3); // → 1 / 64
 * valueOfStep('iso', 1, 3); // → 125.99
 * valueOfStep('aperture', 15, 3); // → 5.657
 * ```
 */
export function valueOfStep(control: DialControl, step: number, stepsPerStop: StepsPerStop): number {
  marksOf(control, stepsPerStop);
  return EXACT[control](finite('step', step), stepsPerStop);
}

// Labels in order of rising step, one dial a line, from the step named first.
// Above 60 s people time by hand and no dial is marked: there a label is double that of one stop less.
const MARKS: Record<
  DialControl,
  Record<StepsPerStop, { readonly first: number; readonly labels: string[] }>
> = {
  shutter: {
    3: marks(
      -18,
      '60 50 40 30 25 20 15 13 10 8 6 5 4 3.2 2.5 2 1.6 1.3 1 0.8 0.6 0.5 0.4 0.3 1/4 1/5 1/6 1/8 1/10 1/13 ' +
        '1/15 1/20 1/25 1/30 1/40 1/50 1/60 1/80 1/100 1/125 1/160 1/200 1/250 1/320 1/400 1/500 1/640 1/800 ' +
        '1/1000 1/1250 1/1600 1/2000 1/2500 1/3200 1/4000 1/5000 1/6400 1/8000',
    ),
    2: marks(
      -12,
      '60 45 30 20 15 10 8 6 4 3 2 1.5 1 0.7 0.5 0.3 1/4 1/6 1/8 1/10 1/15 1/20 1/30 1/45 1/60 1/90 1/125 ' +
        '1/180 1/250 1/350 1/500 1/750 1/1000 1/1500 1/2000 1/3000 1/4000 1/6000 1/8000',
    ),
  },
  iso: {
    3: marks(
      -3,
      '50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400 8000 ' +
        '10000 12800 16000 20000 25600 32000 40000 51200 64000 80000 102400',
    ),
    2: marks(
      -2,
      '50 70 100 140 200 280 400 560 800 1100 1600 2200 3200 4500 6400 9000 12800 18000 25600 36000 51200 ' +
        '72000 102400',
    ),
  },
  aperture: {
    3: marks(
      0,
      '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32',
    ),
    2: marks(0, '1 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22 27 32'),
  },
};

function marks(first: number, labels: string) {
  return { first, labels: labels.split(' ') };
}

const aControl = oneOf(['shutter', 'iso', 'aperture']);
const aDial = oneOf([2, 3]);

/** @throws RangeError on a control or a dial that there is none of */
function marksOf(control: DialControl, stepsPerStop: StepsPerStop) {
  hold('control', control, aControl);
  hold('stepsPerStop', stepsPerStop, aDial);
  return MARKS[control][stepsPerStop];
}

/** Longest step beyond the marked shutter dial that has a label: 2^14 s, four and a half hours. */
const LONGEST_TIME_STOPS = -14;

/**
 * What the dial says at a step. Shutter labels go on above "60" by doubling, to 2^14 s. Source:
 * APEX scale of ASA PH2.5-1960 and Exif, marks as libgphoto2 and exiftool list them.
 *
 * @param control whose dial
 * @param step whole, as {@link valueOfStep} counts it
 * @param stepsPerStop of the dial, 2 or 3
 * @returns the mark: seconds as "1/60" or "4", ISO as "400", the f-number as "5.6"
 * @throws RangeError for a step that is not whole or not on the dial, or a control or a dial that there is none of
 * @example
 * ```ts
 * import { dialLabel } from '@evenfall/core';
 *
 * dialLabel('shutter', 18, 3); // → '1/60'
 * dialLabel('shutter', -15, 3); // → '30'
 * dialLabel('aperture', 15, 3); // → '5.6'
 * dialLabel('iso', 40, 3); // throws RangeError: step 40 is not on the iso dial
 * ```
 */
export function dialLabel(control: DialControl, step: number, stepsPerStop: StepsPerStop): string {
  const { first, labels } = marksOf(control, stepsPerStop);
  whole('step', step);
  if (control === 'shutter' && step < first && step >= LONGEST_TIME_STOPS * stepsPerStop) {
    return String(2 * Number(dialLabel(control, step + stepsPerStop, stepsPerStop)));
  }
  const label = labels[step - first];
  if (label === undefined) throw new RangeError(`step ${step} is not on the ${control} dial`);
  return label;
}

/**
 * Step of a label on this dial. "0.3" is step 5 in thirds (0.315 s) and step 3 in halves (0.354 s): the dial
 * in use decides, never the text. Source: APEX scale of ASA PH2.5-1960 and Exif, marks as libgphoto2 and exiftool list them.
 *
 * @param control whose dial
 * @param label as marked; seconds without a unit, the f-number without "f/"
 * @param stepsPerStop of the dial, 2 or 3
 * @returns the step, or undefined where the dial has no such mark
 * @throws RangeError on a control or a dial that there is none of, or a label that is not text
 * @example
 * ```ts
 * import { dialStep } from '@evenfall/core';
 *
 * dialStep('shutter', '1/60', 3); // → 18
 * dialStep('iso', '6400', 3); // → 18
 * dialStep('iso', '125', 2); // → undefined
 * ```
 */
export function dialStep(
  control: DialControl,
  label: string,
  stepsPerStop: StepsPerStop,
): number | undefined {
  const { first, labels } = marksOf(control, stepsPerStop);
  hold('label', label, text);
  const index = labels.indexOf(label);
  if (index >= 0) return first + index;
  if (control !== 'shutter') return undefined;
  for (let step = first - 1; step >= LONGEST_TIME_STOPS * stepsPerStop; step--) {
    if (dialLabel(control, step, stepsPerStop) === label) return step;
  }
  return undefined;
}

/**
 * Every mark of a dial, in order of rising step; shutter times above "60" are not listed. Source:
 * APEX scale of ASA PH2.5-1960 and Exif, marks as libgphoto2 and exiftool list them.
 *
 * @param control whose dial
 * @param stepsPerStop of the dial, 2 or 3
 * @returns labels, the longest time, the lowest ISO or the widest opening first
 * @throws RangeError on a control or a dial that there is none of
 * @example
 * ```ts
 * import { dialLabels } from '@evenfall/core';
 *
 * dialLabels('aperture', 2).slice(4, 9); // → ['2', '2.4', '2.8', '3.3', '4']
 * ```
 */
export function dialLabels(control: DialControl, stepsPerStop: StepsPerStop): readonly string[] {
  return marksOf(control, stepsPerStop).labels;
}
