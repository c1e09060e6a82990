// What a file prints of a setting, as steps of the dial. Files print marks ("1/125", 0.3 for a third) or exact values
// (32 s, 25.398 s); both mean the step. Source: docs/sources.md#exif.

import {
  type DialControl,
  dialLabel,
  dialLabels,
  dialStep,
  type StepsPerStop,
  valueOfStep,
} from '../exposure/dial.js';

/** A control as the dial has it: what it says and what it is. */
export interface Mark {
  readonly label: string;
  readonly exact: number;
}

/** Stops by which a print may lie off a mark that it is, of either dial: 1/750 is one of a dial in halves. */
const IS_MARK_EV = 0.02;
/** Stops by which it may lie off the exact value that it means: a third of a second is 0.08 off 0.315 s. */
const IS_EXACT_EV = 0.1;

/** Stops a doubling of the number counts. */
const STOPS = { shutter: 1, iso: 1, aperture: 2 } as const;

interface Step extends Mark {
  readonly markLog: number;
  readonly exactLog: number;
}

/** Every mark of a dial, times of minutes too, by what is printed for it. */
function stepsOf(control: DialControl, stepsPerStop: StepsPerStop): Step[] {
  const labels = [...dialLabels(control, stepsPerStop)];
  const first = dialStep(control, labels[0]!, stepsPerStop)!;
  const longer = control === 'shutter' ? 6 * stepsPerStop : 0;
  return Array.from({ length: labels.length + longer }, (_, i) => {
    const step = first - longer + i;
    const label = dialLabel(control, step, stepsPerStop);
    const exact = valueOfStep(control, step, stepsPerStop);
    const [over, under = 1] = label.split('/').map(Number);
    return { label, exact, markLog: Math.log2(over! / under), exactLog: Math.log2(exact) };
  });
}

/** What a print means. */
export type MarkReader = (control: DialControl, printed: number) => Mark;

/** Reads prints of one camera; the dial in use is asked first, then the other. */
export function markReader(stepsPerStop: StepsPerStop): MarkReader {
  const dials = [stepsPerStop, stepsPerStop === 3 ? 2 : 3] as const;
  const steps = new Map(
    (['shutter', 'iso', 'aperture'] as const).map((control) => [
      control,
      dials.map((dial) => stepsOf(control, dial)),
    ]),
  );
  const known = new Map<string, Mark>();
  return (control, printed) => {
    const key = `${control} ${printed}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const mark = markIn(steps.get(control)!, control, printed);
    known.set(key, mark);
    return mark;
  };
}

function markIn(dials: readonly Step[][], control: DialControl, printed: number): Mark {
  const log = Math.log2(printed);
  const nearest = (dial: readonly Step[], key: 'markLog' | 'exactLog', mostEv: number) => {
    const off = (step: Step) => STOPS[control] * Math.abs(step[key] - log);
    const best = dial.reduce((a, b) => (off(b) < off(a) ? b : a));
    return off(best) <= mostEv ? best : undefined;
  };
  const [own, other] = dials as readonly [Step[], Step[]];
  const found =
    nearest(own, 'markLog', IS_MARK_EV) ??
    nearest(own, 'exactLog', IS_MARK_EV) ??
    nearest(other, 'markLog', IS_MARK_EV) ??
    nearest(own, 'exactLog', IS_EXACT_EV) ??
    nearest(other, 'exactLog', IS_EXACT_EV);
  return found === undefined
    ? { label: plainText(control, printed), exact: printed }
    : { label: found.label, exact: found.exact };
}

/** What is no mark, to three digits: "1/79.2", "12.7". */
function plainText(control: DialControl, value: number): string {
  return control === 'shutter' && value < 0.3
    ? `1/${Number((1 / value).toPrecision(3))}`
    : String(Number(value.toPrecision(control === 'iso' ? 6 : 3)));
}
