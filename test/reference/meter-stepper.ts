// What a person does who plans nothing: looks at the meter and turns a dial one step as soon as the setting is off by
// more than a third of a stop. The same limits hold: the ends of the dials, the time between cues. Written from this
// description alone; it knows neither forecast nor filter.

/** Whole dial steps, more of them the brighter the light that they suit. */
export interface StepperDial {
  readonly stepsPerStop: number;
  readonly darkEv100: number; // longest time, highest ISO
  readonly brightEv100: number; // shortest time, lowest ISO
  /** Frames from one turn to the next, at least 1. */
  readonly spacing: number;
  readonly thresholdEv: number;
}

/**
 * The exposure of each frame, EV at ISO 100.
 *
 * @param metered what a frame asks for as a meter had it before that frame; undefined where it was not read
 */
export function meterStepper(
  metered: readonly (number | undefined)[],
  { stepsPerStop, darkEv100, brightEv100, spacing, thresholdEv }: StepperDial,
): number[] {
  const onDial = (ev: number) => Math.min(brightEv100, Math.max(darkEv100, ev));
  let wanted = metered[0]!;
  let setting = onDial(Math.round(wanted * stepsPerStop) / stepsPerStop);
  let free = 1;
  return metered.map((ev, frame) => {
    wanted = ev ?? wanted;
    const offEv = wanted - setting;
    if (frame >= free && Math.abs(offEv) > thresholdEv) {
      const turned = onDial(setting + Math.sign(offEv) / stepsPerStop);
      if (turned !== setting) free = frame + spacing;
      setting = turned;
    }
    return setting;
  });
}
