// Notes on what the camera exposes, in English: all that a plan says whose camera stands still.

import { englishRefusals } from '../light/refusal.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { ExposureNote } from './note.js';

/** "19:04" of a time as plans write it. */
export const minute = (at: string) => at.slice(11, 16);
const percent = (share: number) => `${Math.round(100 * share)} %`;
const inCold = (cold: boolean) => (cold ? ' in the cold' : '');

const RESERVE_ENDS = {
  dark: {
    lack: 'light at the dark end',
    cure: 'A higher ISO, a wider aperture or a longer shutter',
  },
  bright: {
    lack: 'room at the bright end',
    cure: 'A stronger filter, a shorter shutter or a narrower aperture',
  },
};

/** Notes on the exposure in English. */
export const englishExposureNotes: Sentences<ExposureNote> = {
  'under-way': ({ startAt, readingAt }, clock) =>
    `This plans the shoot from its start at ${clock(minute(startAt))}, with a reading taken at ${clock(minute(readingAt))}: settings before the reading change too. Once the shoot has begun, use evenfall follow or the field view of the page, which go on from where the camera stands.`,
  'card-full': ({ holds, frameCount, neededGB, at, fitIntervalS }, clock) =>
    `The card holds ${holds} of the ${frameCount} frames; bring ${neededGB.toFixed(1)} GB or more. It is full at ${clock(minute(at))}.${
      fitIntervalS === undefined ? '' : ` An interval of ${fitIntervalS} s or more would fit it.`
    }`,
  'card-nearly-full': ({ share }) => `The frames take ${percent(share)} of the card: start with it empty.`,
  'battery-spent': ({ holds, frameCount, cold, at, needed }, clock) =>
    `One charge gives ${holds} of the ${frameCount} frames${inCold(cold)}; bring a second battery or outside power. It is spent at ${clock(minute(at))}.${
      needed === undefined ? '' : ` The shoot wants ${needed} of them.`
    }`,
  'battery-nearly-spent': ({ share, cold }) =>
    `The frames take ${percent(share)} of one charge${inCold(cold)}: start with it full, and have another at hand.`,
  'reading-refused': ({ ev100, because }, clock) =>
    `The reading of EV ${ev100} was not used. ${sentenceOf(englishRefusals, 'reason', because, clock)}`,
  'little-reserve': ({ direction, share, end, reserveEv }) =>
    `On about ${Math.round(share * 100)} ${direction === 'dawn' ? 'mornings' : 'evenings'} in 100 this kit runs out of ${RESERVE_ENDS[end].lack}: ${reserveEv.toFixed(1)} stops are in reserve there. ${RESERVE_ENDS[end].cure} gives more.`,
  'shutter-cut': ({ shutter, shutterS, intervalS, insideS, darkFrame, moving }) => {
    const truth = String(Number(shutterS.toPrecision(4)));
    const what = truth === shutter ? `${shutter} s` : `${shutter} s (${truth} s in truth)`;
    return `A shutter of ${what} does not fit: an interval of ${intervalS} s leaves ${Number(insideS.toPrecision(4))} s${
      darkFrame ? ', each dark frame counted' : ''
    }${moving ? ', beside the move and its rest' : ''}. The plan stays below it.`;
  },
  moonrise: ({ at }, clock) => `The moon rises at ${clock(minute(at))}, during the shoot.`,
  moonset: ({ at }, clock) => `The moon sets at ${clock(minute(at))}, during the shoot.`,
  'frames-affected': ({ count }) =>
    `Changing filters may spoil ${count} frames; they are marked in the plan.`,
  sun: () => 'Never look at the sun through an optical finder: a photographic ND filter is no solar viewer.',
};
