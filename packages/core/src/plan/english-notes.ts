// Notes on what the camera exposes, in English: all that a plan says whose camera stands still.

import { englishRefusals } from '../light/refusal.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { ExposureNote } from './note.js';

/** "19:04" of a time as plans write it. */
export const minute = (at: string) => at.slice(11, 16);
const inTen = (share: number) => Math.round(10 * share);
const percent = (share: number) => `${Math.round(100 * share)} %`;
const inCold = (cold: boolean) => (cold ? ' in the cold' : '');

const RESERVE_ENDS = {
  dark: {
    lack: 'light at the dark end',
    cure: 'One stop more light, by a higher ISO or a wider aperture,',
  },
  bright: {
    lack: 'room at the bright end',
    cure: 'An ND filter of 3 stops more',
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
  'little-reserve': ({ direction, share, end, reserveEv, moreShare }) =>
    `On about ${inTen(share)} ${direction === 'dawn' ? 'mornings' : 'evenings'} in 10 this kit runs out of ${RESERVE_ENDS[end].lack}: ${reserveEv.toFixed(1)} stops are in reserve there. ${RESERVE_ENDS[end].cure} holds ${inTen(moreShare)} in 10.`,
  eclipse: ({ body, magnitude, fromAt, toAt }, clock) =>
    `A ${magnitude >= 1 ? 'total' : 'partial'} eclipse of the ${body}, ${clock(minute(fromAt))} to ${clock(minute(toAt))}: ${
      magnitude >= 1
        ? `${body === 'sun' ? 'daylight' : 'moonlight'} falls by 8 to 10 stops while it is total`
        : `up to ${percent(magnitude)} of the disc's width is covered`
    }. The plan does not follow it.`,
  'clocks-change': ({ byMin, frame, at }, clock) =>
    `The clocks go ${byMin > 0 ? 'forward' : 'back'} by ${Math.abs(byMin)} minutes during the shoot: from frame ${frame} on times are the new ones, ${clock(minute(at))} (${at.slice(19)}) and on.`,
  'shutter-cut': ({ shutter, shutterS, intervalS, insideS, darkFrame, moving }) => {
    const truth = String(Number(shutterS.toPrecision(4)));
    const what = truth === shutter ? `${shutter} s` : `${shutter} s (in fact ${truth} s)`;
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
