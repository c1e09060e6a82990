// Marks against the dial in use: "1/45" is on a dial in halves and not on one in thirds.

import {
  type DialControl,
  dialLabel,
  dialLabels,
  dialStep,
  isoOfStep,
  type StepsPerStop,
} from '../exposure/dial.js';
import type { Camera } from '../shoot/shoot.js';
import { givenOf } from './fault.js';
import type { Fault, Path } from './file-error.js';

/** A mark of a shoot file that is on the dial. */
interface Mark {
  readonly path: Path;
  readonly label: string;
  readonly step: number;
}

/** Faults of the marks, and the step of the shortest shutter where it has one. */
export interface DialFaults {
  readonly faults: readonly Fault[];
  readonly shortestStep?: number;
  readonly longestStep?: number;
}

/** Every mark is on its dial, and each range runs the right way. */
export function dialFaults({ stepsPerStop, shutter, iso, aperture }: Camera): DialFaults {
  const faults: Fault[] = [];

  const shortest = find('shutter', ['camera', 'shutter', 'shortest'], shutter.shortest);
  const longest = find('shutter', ['camera', 'shutter', 'longest'], shutter.longest);
  if (shortest && longest && longest.step > shortest.step) {
    reversed('shutter', longest, shortest);
  }

  const lowest = find('iso', ['camera', 'iso', 'lowest'], iso.lowest);
  const highest = find('iso', ['camera', 'iso', 'highest'], iso.highest);
  if (lowest && highest && lowest.step > highest.step) reversed('iso', highest, lowest);

  if (typeof aperture === 'string') find('aperture', ['camera', 'aperture'], aperture);
  else {
    const widest = find('aperture', ['camera', 'aperture', 'widest'], aperture.widest);
    const narrowest = find('aperture', ['camera', 'aperture', 'narrowest'], aperture.narrowest);
    if (widest && narrowest && widest.step > narrowest.step) {
      reversed('aperture', narrowest, widest);
    }
  }
  return {
    faults,
    ...(shortest ? { shortestStep: shortest.step } : {}),
    ...(longest ? { longestStep: longest.step } : {}),
  };

  function find(control: DialControl, path: Path, value: string | number): Mark | undefined {
    const label = String(value);
    const step = dialStep(control, label, stepsPerStop);
    if (step !== undefined) return { path, label, step };
    const all = dialLabels(control, stepsPerStop);
    faults.push({
      path,
      kind: 'not-on-dial',
      given: givenOf(value),
      control,
      stepsPerStop,
      nearest: nearestMarks(control, label, stepsPerStop),
      first: all[0]!,
      last: all.at(-1)!,
    });
    return undefined;
  }

  function reversed(control: DialControl, { path, label }: Mark, other: Mark): void {
    faults.push({ path, kind: 'range-reversed', control, mark: label, other: other.label });
  }
}

/**
 * The mark that text comes to ("30 s" is "30"), else the marks next below and above its value, as far as
 * the dial goes; empty where the text is no number.
 */
function nearestMarks(control: DialControl, text: string, stepsPerStop: StepsPerStop): string[] {
  const value = valueMeant(text);
  if (Number.isNaN(value)) return [];
  const first = dialStep(control, dialLabels(control, stepsPerStop)[0]!, stepsPerStop)!;
  const last = first + dialLabels(control, stepsPerStop).length - 1;
  // Shutter labels go on by doubling above the marked dial; eight stops of them are enough to be near.
  const longest = control === 'shutter' ? first - 8 * stepsPerStop : first;
  const near = Math.min(last, Math.max(longest, Math.floor(stepOfValue(control, value, stepsPerStop))));
  // A mark's value is off its exact one by up to a third of a step, so look one further to each side.
  const around = [near - 1, near, near + 1, near + 2]
    .filter((step) => step >= longest && step <= last)
    .map((step) => dialLabel(control, step, stepsPerStop))
    .map((label) => ({ label, value: valueMeant(label) }))
    .sort((a, b) => a.value - b.value);
  const same = around.find((mark) => Math.abs(mark.value / value - 1) < 1e-9);
  if (same) return [same.label];
  const below = around.filter((mark) => mark.value < value).at(-1);
  const above = around.find((mark) => mark.value > value);
  return [below, above].flatMap((mark) => (mark ? [mark.label] : []));
}

/** Step, with fraction, of a value on its dial. */
function stepOfValue(control: DialControl, value: number, stepsPerStop: StepsPerStop): number {
  if (control === 'iso') return Math.log2(value / isoOfStep(0, stepsPerStop)) * stepsPerStop;
  return (control === 'shutter' ? -1 : 2) * Math.log2(value) * stepsPerStop;
}

/** No mark comes near it; the pattern below takes long on a line of blanks. */
const LONGEST_MARK = 40;

/** Number a person means: "1/125" is 0.008, "f/8" is 8, "30 s" is 30; NaN where there is none. */
function valueMeant(text: string): number {
  if (text.length > LONGEST_MARK) return Number.NaN;
  const found = /^\s*(?:f\/?|ISO)?\s*(\d+(?:\.\d+)?)(?:\s*\/\s*(\d+(?:\.\d+)?))?\s*(?:s|sec|"|″)?\s*$/i.exec(
    text,
  );
  if (!found) return Number.NaN;
  const value = Number(found[1]) / Number(found[2] ?? 1);
  return value > 0 && Number.isFinite(value) ? value : Number.NaN;
}
