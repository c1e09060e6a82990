// Notes on what the camera exposes, in English: all that a plan says whose camera stands still.

import type { Sentences } from '../words/sentences.js';
import type { ExposureNote } from './note.js';

const inSeconds = (timeS: number) => `${Number(timeS.toPrecision(3))} s`;
const percent = (share: number) => `${Math.round(100 * share)} %`;
/** Milliseconds below a second: "1.3 ms". */
export const spareText = (spareS: number) =>
  spareS < 1 ? `${Number((1000 * spareS).toFixed(1))} ms` : `${Number(spareS.toFixed(1))} s`;
/** "1/1020 s": in true time. */
const timeText = (timeS: number) =>
  timeS < 0.3 ? `1/${Number((1 / timeS).toPrecision(3))} s` : inSeconds(timeS);
const inCold = (cold: boolean) => (cold ? ' in the cold' : '');

/** Notes on the exposure in English. */
export const englishExposureNotes: Sentences<ExposureNote> = {
  'card-full': ({ holds, frameCount, neededGB, at, fitIntervalS }, clock) =>
    `The card holds ${holds} of the ${frameCount} frames; bring ${neededGB.toFixed(1)} GB or more. It is full at ${clock(at)}.${
      fitIntervalS === undefined ? '' : ` An interval of ${fitIntervalS} s or more would fit it.`
    }`,
  'card-nearly-full': ({ share }) => `The frames take ${percent(share)} of the card: start with it empty.`,
  'battery-spent': ({ holds, frameCount, cold, at, needed }, clock) =>
    `One charge gives ${holds} of the ${frameCount} frames${inCold(cold)}; bring a second battery or outside power. It is spent at ${clock(at)}.${
      needed === undefined ? '' : ` The shoot wants ${needed} of them.`
    }`,
  'battery-nearly-spent': ({ share, cold }) =>
    `The frames take ${percent(share)} of one charge${inCold(cold)}: start with it full, and have another at hand.`,
  eclipse: ({ body, magnitude, fromAt, toAt }, clock) =>
    `A ${magnitude >= 1 ? 'total' : 'partial'} eclipse of the ${body}, ${clock(fromAt)} to ${clock(toAt)}: ${
      magnitude >= 1
        ? `${body === 'sun' ? 'daylight' : 'moonlight'} falls by 8 to 10 stops while it is total`
        : `up to ${percent(magnitude)} of the disc's width is covered`
    }. The plan does not follow it.`,
  'clocks-change': ({ byMin, frame, at }, clock) =>
    `The clocks go ${byMin > 0 ? 'forward' : 'back'} by ${Math.abs(byMin)} minutes during the shoot: from frame ${frame}, ${clock(at)}, on times are the new ones.`,
  bracket: ({ exposures, stepEv, count, longestS, end, shortestS }) =>
    `Every frame is ${exposures} exposures, ${Number(stepEv.toFixed(2))} stops apart, ${count} in all; the plan states the middle one. At night that ends at ${inSeconds(longestS)}, because ${
      end === 'longest' ? 'the longest is at the end of the dial' : 'the interval holds no more'
    }; by day at ${timeText(shortestS)}, because the shortest is at the end of the dial.`,
  'shutter-cut': ({ shutter, shutterS, intervalS, insideS, darkFrame, moving }) => {
    const truth = String(Number(shutterS.toPrecision(4)));
    const what = truth === shutter ? `${shutter} s` : `${shutter} s (in fact ${truth} s)`;
    return `A shutter of ${what} does not fit: an interval of ${intervalS} s leaves ${Number(insideS.toPrecision(4))} s${
      darkFrame ? ', each dark frame counted' : ''
    }${moving ? ', beside the move and its rest' : ''}. The plan stays below it.`;
  },
  'tight-interval': ({ frame, at, spareS, intervalS }, clock) =>
    `The interval of frame ${frame + 1} (${clock(at)}) has ${spareText(spareS)} of its ${intervalS} s to spare: a camera or a trigger that is a little slower loses frames. Lengthen the interval, or shorten the longest shutter.`,
  'one-direction': ({ viewAltitudeDeg }) =>
    `The sky ${viewAltitudeDeg}° up stands for all of it: with lens and sensor the plan takes the mean of the frame.`,
  moonrise: ({ at }, clock) => `The moon rises at ${clock(at)}, during the shoot.`,
  moonset: ({ at }, clock) => `The moon sets at ${clock(at)}, during the shoot.`,
  'frames-affected': ({ count }) =>
    `Changing filters may spoil ${count} frames; they are marked in the plan.`,
  stars: ({ rule500S, npfSimpleS, npfFullS, declinationDeg, longestS, trailPx }) => {
    const rules = [
      `${inSeconds(rule500S)} by the 500 rule`,
      ...(npfSimpleS === undefined
        ? []
        : [
            `${inSeconds(npfSimpleS)} by the simplified NPF rule`,
            `${npfFullS === undefined ? 'any time' : inSeconds(npfFullS)} by the full one at declination ${Math.round(declinationDeg) + 0}°`,
          ]),
    ];
    const trail = trailPx === undefined ? '' : `, a trail of ${Number(trailPx.toPrecision(2))} pixels`;
    return `Stars stay points up to ${rules.join(', ')}. At night this plan opens for ${inSeconds(longestS)} at most${trail}.`;
  },
  'sun-in-frame': ({ fromAt, toAt, pullEv }, clock) =>
    `Between ${clock(fromAt)} and ${clock(toAt)} the sun stands in the frame: a meter that takes the mean reads up to ${pullEv.toFixed(1)} stops brighter for it. The plan does not follow its disc; meter the sky beside it.`,
  sun: () => 'Never look at the sun through an optical finder: a photographic ND filter is no solar viewer.',
};
