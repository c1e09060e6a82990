// What somebody does who has the forecast and a meter: the reading less the forecast, smoothed, moves the forecast; a dial
// is turned one step as soon as the setting is off by more than half a step from what is then expected half a spacing ahead.
// Written from this description alone; it knows no filter.

import type { StepperDial } from './meter-stepper.js';

/**
 * The exposure of each frame, EV at ISO 100.
 *
 * @param forecast what each frame was forecast to ask for
 * @param metered what a frame asks for as a meter had it before that frame; undefined where it was not read
 * @param memoryS in which a reading is forgotten to 1/e
 */
export function smoothingStepper(
  forecast: readonly number[],
  metered: readonly (number | undefined)[],
  { stepsPerStop, darkEv100, brightEv100, spacing }: Omit<StepperDial, 'thresholdEv'>,
  { intervalS, memoryS }: { readonly intervalS: number; readonly memoryS: number },
): number[] {
  const onDial = (ev: number) => Math.min(brightEv100, Math.max(darkEv100, ev));
  let offsetEv = metered[0]! - forecast[0]!;
  let readAt = 0;
  let setting = onDial(Math.round(metered[0]! * stepsPerStop) / stepsPerStop);
  let free = 1;
  return metered.map((ev, frame) => {
    if (ev !== undefined && frame > 0) {
      const share = 1 - Math.exp((-(frame - readAt) * intervalS) / memoryS);
      offsetEv += share * (ev - forecast[frame - 1]! - offsetEv);
      readAt = frame;
    }
    const ahead = Math.min(forecast.length - 1, frame + Math.floor(spacing / 2));
    const offEv = forecast[ahead]! + offsetEv - setting;
    if (frame >= free && Math.abs(offEv) > 0.5 / stepsPerStop) {
      const turned = onDial(setting + Math.sign(offEv) / stepsPerStop);
      if (turned !== setting) free = frame + spacing;
      setting = turned;
    }
    return setting;
  });
}
