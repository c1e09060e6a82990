// What a bracket asks of the camera, and between which shutters each of its settings stands.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { clockText } from './local-time.js';
import { shutterText } from './setting.js';
import type { Words } from './words.js';

export interface BracketTexts {
  readonly setTo: string; // "Bracketing: 3 exposures, 2 stops apart"
  readonly how: string; // how the camera takes them, and how long the longest keep it busy
}

/** For the first page of a card; undefined without a bracket. */
export function bracketTexts({ shoot, frames }: PlanMade, words: Words): BracketTexts | undefined {
  const { bracket, darkFrame } = shoot.camera;
  if (bracket === undefined) return undefined;
  const w = words.card.bracket;
  const longest = frames.reduce((most, frame) => (frame.shutterS > most.shutterS ? frame : most));
  const { shutterS, bracketS = 0, darkS = 0, bracketLongest = longest.shutter } = longest;
  const busyS = shutterS + bracketS + (darkFrame ? darkS : 0);
  return {
    setTo: w.setTo(bracket.frames, words.upTo(bracket.stepEv, 2)),
    how: [
      w.how(bracket.frames),
      w.first(bracketEnds(frames[0]!, words)),
      w.longest({
        shutter: shutterText(bracketLongest),
        clock: clockText(longest.at, false, words),
        seconds: words.seconds(Number(busyS.toFixed(1))),
        interval: words.seconds(shoot.intervalS),
      }),
    ].join(' '),
  };
}

/** "middle of 1/60 to 1 s"; "" without a bracket. */
export function bracketEnds({ bracketShortest, bracketLongest }: PlanFrame, { card }: Words): string {
  if (bracketShortest === undefined || bracketLongest === undefined) return '';
  return card.bracket.ends(shutterText(bracketShortest), shutterText(bracketLongest));
}
