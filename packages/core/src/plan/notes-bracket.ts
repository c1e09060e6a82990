// What several exposures in an interval come to, and which of their ends limits the night.

import { timeOfStep } from '../exposure/dial.js';
import { longestTimeInside } from '../footage/frames.js';
import { shutterEnds } from '../ramp/problem.js';
import type { Note, NoteContext } from './note-context.js';

/** None without a bracket. */
export function bracketNotes({ shoot: { camera }, problem, frames }: NoteContext): Note[] {
  const { bracket } = camera;
  if (bracket === undefined) return [];
  const { stepsPerStop, bulb } = problem.kit;
  const { longestStep, shortestStep } = shutterEnds(problem);
  const fits = -stepsPerStop * Math.log2(longestTimeInside(problem.intervalS, problem));
  const inside = bulb ? fits : Math.ceil(fits - 1e-9);
  const end = inside > longestStep ? 'interval' : 'longest';
  return [
    {
      level: 'info',
      kind: 'bracket',
      exposures: bracket.frames,
      stepEv: bracket.stepEv,
      count: bracket.frames * frames.length,
      longestS: timeOfStep(Math.max(longestStep, inside), stepsPerStop),
      end,
      shortestS: timeOfStep(shortestStep, stepsPerStop),
    },
  ];
}
