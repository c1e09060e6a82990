// What follow says to a person at a terminal, in English.

import { quotedText, type Sentences } from '@evenfall/core';
import type { TypedFault } from '../typed.js';

const faults: Sentences<TypedFault, 'wrong'> = {
  unknown: ({ given }) => `${quotedText(given)} is not understood; type ? for what is`,
  'time-needed': () => 'the clock is not that of this shoot; give the time too, as in 17:31 9.9',
  'no-such-filter': ({ given, filters }) =>
    filters.length === 0
      ? 'this shoot has no filters'
      : `${quotedText(given)} is none of the filters; give ${filters.map(quotedText).join(' or ')}`,
  'no-cue': () => 'no cue has been told; give its number, as in done 3',
};

export const followEnglish = {
  hello: (p: { title: string; date: string; start: string; end: string }) =>
    `${p.title}: ${p.date}, ${p.start} to ${p.end}.`,
  invite: 'Type what the meter says, as in 9.9 or 1/15; Enter for now; ? for more.',
  now: 'NOW',
  set: 'SET',
  next: 'NEXT',
  ring: 'SOON',
  light: (p: { ev: number; low: number; high: number }) =>
    `EV ${p.ev.toFixed(1)} (${p.low.toFixed(1)} to ${p.high.toFixed(1)})`,
  asPlanned: 'as planned',
  offPlan: (ev: number) => `${Math.abs(ev).toFixed(1)} ${ev < 0 ? 'darker' : 'brighter'}`,
  inTime: (seconds: number) =>
    seconds < 1 ? 'now' : seconds < 100 ? `in ${seconds} s` : `in ${Math.round(seconds / 60)} min`,
  noneSoon: 'no cue in the next 20 minutes',
  noneLeft: 'no cue any more',
  clicks: (count: number) => `${count} click${count === 1 ? '' : 's'}`,
  taken: (first: number, last: number) =>
    `taken as done: ${first === last ? `cue ${first}` : `cues ${first} to ${last}`}; if not, type missed ${last}`,
  cue: (number: number, at: string, changes: string) => `${number}. ${at} ${changes}`,
  affected: 'hand on the lens: this frame may be spoiled',
  readAgain: 'meter again; if it is right, type sure',
  undone: (what: string) => `taken back: ${what}`,
  nothingToUndo: 'nothing to take back',
  notDoubted: 'no reading is in doubt',
  notTaken: 'that changes nothing',
  help: [
    ['9.9', 'a reading: EV at ISO 100'],
    ['1/15', 'a reading: the shutter your camera meters, the rest as it stands'],
    ['2s f/4 iso 800', 'the same with other marks'],
    ['17:31 9.9', 'a reading of that time'],
    ['Enter, 17:31', 'what holds now, or then'],
    ['next', 'the cues of the next 20 minutes'],
    ['done, done 3', 'the cue is on the camera'],
    ['missed, missed 3', 'the cue has not been done'],
    ['set 1/15 iso 200', 'what the camera stands at instead'],
    ['lost nd 6', 'a filter is gone; found nd 6: it is back'],
    ['sure', 'the doubted reading is right'],
    ['undo', 'takes the last report back'],
    ['d, m, n, s, u', 'the first letter will do: done, missed, next, sure, undo'],
    ['18:14 done', 'a report of that time'],
    ['q', 'ends; started again, it goes on from here'],
  ] as readonly (readonly [typed: string, means: string])[],
  ended: (p: { frame: number; of: number; readings: number; cues: number }) =>
    `Frame ${p.frame} of ${p.of}; ${p.readings} reading${p.readings === 1 ? '' : 's'} used, ${p.cues} cue${p.cues === 1 ? '' : 's'}.`,
  kept: 'Started again, it goes on from here.',
  faults,
};

export type FollowWords = typeof followEnglish;
