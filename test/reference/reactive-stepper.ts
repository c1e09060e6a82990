// What a plain program does that plans nothing: it looks at the last frame and turns a dial by one step as soon as
// the error passes a threshold. Shutter first, ISO where the shutter has ended, the filter off where both have.

export interface StepperKit {
  readonly stepsPerStop: number;
  readonly shutter: readonly [longest: number, shortest: number]; // dial steps
  readonly iso: readonly [lowest: number, highest: number];
  readonly apertureStep: number;
  readonly filterStops: number; // of the one filter, on at first
  readonly framesLost: number;
}

export interface StepperFrame {
  readonly settingEv100: number;
  readonly filterStops: number; // on the lens
  readonly affected: boolean;
}

/**
 * One setting a frame; each is decided on the error of the frame before.
 *
 * @param metered what each frame turns out to ask for, EV at ISO 100, as its meter has it
 * @param thresholdEv above which a step is taken
 */
export function reactiveStepper(
  metered: ArrayLike<number>,
  thresholdEv: number,
  kit: StepperKit,
): StepperFrame[] {
  const { stepsPerStop, shutter, iso, apertureStep, filterStops, framesLost } = kit;
  const [longest, shortest] = shutter;
  const [lowest, highest] = iso;
  const clip = (step: number, from: number, to: number) => Math.min(to, Math.max(from, step));
  let filter = true;
  let isoStep = lowest;
  const ev = () => (apertureStep + shutterStep - isoStep) / stepsPerStop + (filter ? filterStops : 0);
  // The first frame is set by a meter beforehand.
  let shutterStep = clip(
    Math.round((metered[0]! - filterStops) * stepsPerStop) - apertureStep + isoStep,
    longest,
    shortest,
  );
  let affectedUntil = 0;
  const frames: StepperFrame[] = [{ settingEv100: ev(), filterStops, affected: false }];
  for (let i = 1; i < metered.length; i++) {
    const errorEv = ev() - metered[i - 1]!;
    if (i >= affectedUntil && Math.abs(errorEv) > thresholdEv) {
      if (errorEv > 0) brighter(i);
      else darker();
    }
    frames.push({ settingEv100: ev(), filterStops: filter ? filterStops : 0, affected: i < affectedUntil });
  }
  return frames;

  function brighter(frame: number): void {
    if (shutterStep > longest) shutterStep--;
    else if (filter) {
      // The filter comes off and the shutter makes up for it, one step brighter than before.
      filter = false;
      shutterStep = clip(shutterStep + Math.round(filterStops * stepsPerStop) - 1, longest, shortest);
      affectedUntil = frame + framesLost;
    } else if (isoStep < highest) isoStep++;
  }

  function darker(): void {
    if (isoStep > lowest) isoStep--;
    else if (shutterStep < shortest) shutterStep++;
  }
}
