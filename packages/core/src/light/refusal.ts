// Why a reading is not used.

import { type Sentences, sentenceOf } from '../words/sentences.js';

/** Why a reading was not used, in numbers. */
export type RefusalReason =
  | {
      /** No scene gives it. */
      readonly reason: 'impossible';
      /** As metered, EV at ISO 100. */
      readonly ev100: number;
      /** True altitude of the sun then, -90 to 90. */
      readonly sunAltitudeDeg: number;
      /** The darkest or brightest of any scene then, EV at ISO 100. */
      readonly limitEv100: number;
    }
  | {
      /** It contradicts a reading near it in time. */
      readonly reason: 'contradictory';
      /** From that reading, against the forecast, stops, > 0. */
      readonly movedEv: number;
      /** That reading, EV at ISO 100. */
      readonly otherEv100: number;
      /** Between the two, >= 0. */
      readonly minutes: number;
      /** The most that skies move in that time, stops. */
      readonly allowedEv: number;
    }
  | {
      /** Two later readings say the light has changed. */
      readonly reason: 'superseded';
    };

/** Refusals in English. */
export const englishRefusals: Sentences<RefusalReason, 'reason'> = {
  impossible: ({ ev100, sunAltitudeDeg, limitEv100 }) =>
    `EV ${ev100.toFixed(1)} is ${ev100 < limitEv100 ? 'darker' : 'brighter'} than any scene with the sun at ${sunAltitudeDeg.toFixed(0)}°: ${limitEv100.toFixed(1)} at ${ev100 < limitEv100 ? 'least' : 'most'}. ` +
    'Check ISO, filter and time.',
  contradictory: ({ movedEv, otherEv100, minutes, allowedEv }) =>
    `${movedEv.toFixed(1)} stops from the reading of EV ${otherEv100.toFixed(1)} ${minutes.toFixed(0)} minutes ` +
    `apart, against the forecast; light moves ${allowedEv.toFixed(1)} at most in that time. Read again.`,
  superseded: () => 'Two later readings agree with each other and not with this one: the light has changed.',
};

/** A refusal with its sentence. */
export function refusalOf<Why extends RefusalReason>(why: Why): Why & { readonly text: string } {
  return { ...why, text: sentenceOf(englishRefusals, 'reason', why) };
}
