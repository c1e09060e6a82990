// What a marked label stands for, without a table: the step of the dial nearest to the printed number. Marks lie
// within 0.24 stop of the exact value ("0.3" in halves is 0.354 s), dial steps a third or a half apart.

export type Dial = 'shutter' | 'iso' | 'aperture';

const LARGEST_ROUNDING_EV = 0.24;

/** Dial step of a label, up being shorter, more sensitive, narrower; 1 s, ISO 100 and f/1 are step 0. */
export function stepOfLabel(dial: Dial, label: string, stepsPerStop: number): number {
  const printed = label.startsWith('1/') ? 1 / Number(label.slice(2)) : Number(label);
  if (!(printed > 0)) throw new Error(`"${label}" is no ${dial} mark`);
  const stops =
    dial === 'shutter'
      ? -Math.log2(printed)
      : dial === 'iso'
        ? Math.log2(printed / 100)
        : 2 * Math.log2(printed);
  const step = Math.round(stops * stepsPerStop);
  if (Math.abs(stops - step / stepsPerStop) > LARGEST_ROUNDING_EV) {
    throw new Error(`"${label}" is no ${dial} mark with ${stepsPerStop} steps a stop`);
  }
  return step + 0; // no negative zero
}

/** Exact time in seconds, arithmetic ISO or f-number of a step. */
export function exactOfStep(dial: Dial, step: number, stepsPerStop: number): number {
  const stops = step / stepsPerStop;
  if (dial === 'shutter') return 1 / 2 ** stops;
  return dial === 'iso' ? 100 * 2 ** stops : Math.SQRT2 ** stops;
}
