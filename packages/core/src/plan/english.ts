// Notes, reasons and remedies of plans in English.

import { englishRefusals } from '../light/refusal.js';
import { englishCautions } from '../move/cautions.js';
import { englishFindings, englishMoveChanges } from '../move/english.js';
import type { GapParts } from '../move/time-budget.js';
import { englishNoPass } from '../sky/missing.js';
import type { Clock } from '../words/clock.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import { englishExposureNotes, spareText } from './english-notes.js';
import type { NoteFacts } from './note.js';
import type { RemedyChange } from './remedies/change.js';
import type { BelowHalfClick, RemedyLeaves, WhyInfeasible } from './types.js';

const inSeconds = (timeS: number) => `${Number(timeS.toPrecision(3))} s`;
const inTen = (share: number) => Math.round(10 * share);
const counted = (stops: number) => `${stops} stop${stops === 1 ? '' : 's'}`;
const rounded = (value: number) => Math.round(value * 1000) / 1000;

const RESERVE_ENDS = {
  dark: 'light at the dark end, and frames come out too dark',
  bright: 'room at the bright end, and frames come out too bright',
};

/** Notes in English. */
export const englishNotes: Sentences<NoteFacts> = {
  ...englishExposureNotes,
  'under-way': ({ startAt, readingAt }, clock) =>
    `This plans the shoot from its start at ${clock(startAt)}, with a reading taken at ${clock(readingAt)}: settings before the reading change too. Once the shoot has begun, use evenfall follow or the field view of the page, which go on from where the camera stands.`,
  'reading-refused': ({ ev100, because }, clock) =>
    `The reading of EV ${ev100} was not used. ${sentenceOf(englishRefusals, 'reason', because, clock)}`,
  'little-reserve': ({ direction, share, end, reserveEv, change, moreShare }, clock) =>
    `On about ${inTen(share)} ${direction === 'dawn' ? 'mornings' : 'evenings'} in 10 this kit runs out of ${RESERVE_ENDS[end]}: ${reserveEv.toFixed(1)} stops are in reserve there.${
      change === undefined || moreShare === undefined
        ? ''
        : ` One change gains most: ${sentenceOf(englishRemedies, 'change', change, clock)} It holds ${inTen(moreShare)} in 10.`
    }`,
  move: ({ found, changes }, clock) =>
    [
      sentenceOf(englishFindings, 'kind', found, clock),
      changes.map((change) => sentenceOf(englishRemedies, 'change', change, clock)).join(' Or: '),
    ]
      .filter((text) => text !== '')
      .join(' '),
  'move-caution': ({ caution }) => sentenceOf(englishCautions, 'kind', { kind: caution }),
};

/** Changes that would make a shoot possible, in English. */
export const englishRemedies: Sentences<RemedyChange, 'change'> = {
  ...englishMoveChanges,
  'longer-shutter': ({ shutter, fromShutter, intervalS, fromIntervalS }) => {
    const interval = `the interval from ${fromIntervalS} to ${intervalS} s`;
    if (shutter === fromShutter) return `Raise ${interval}.`;
    return `Allow a shutter of ${shutter} s${intervalS === undefined ? '' : ` and raise ${interval}`}.`;
  },
  'faster-shutter': ({ shutter, fromShutter }) =>
    `Allow shutters as short as ${shutter} s instead of ${fromShutter} s.`,
  'higher-iso': ({ iso, fromIso }) => `Raise the ISO limit from ${fromIso} to ${iso}.`,
  'wider-aperture': ({ aperture }) => `Open the aperture to f/${aperture}.`,
  'narrower-aperture': ({ aperture }) => `Stop the aperture down to f/${aperture}.`,
  'another-filter': ({ stops }) => `Bring an ND filter of ${counted(stops)}.`,
  'start-filter': ({ filter, fromFilter }) =>
    filter === 'none' ? `Begin without ${fromFilter}.` : `Begin with ${filter} instead of ${fromFilter}.`,
  'more-filter-changes': ({ maxFilterChanges, fromFilterChanges }) =>
    `Allow ${maxFilterChanges} filter change${maxFilterChanges === 1 ? '' : 's'} instead of ${fromFilterChanges === 0 ? 'none' : fromFilterChanges}.`,
  'darker-look': ({ nightEv, fromNightEv }) =>
    `Let the night be darker: ${nightEv} stops against metered instead of ${fromNightEv}.`,
  'looser-tolerance': ({ toleranceEv, fromToleranceEv }) =>
    `Accept ${toleranceEv} EV of error instead of ${rounded(fromToleranceEv)}.`,
  'larger-steps': ({ largestStepEv, fromStepEv }) =>
    `Allow steps of ${rounded(largestStepEv)} EV at one cue instead of ${rounded(fromStepEv)}.`,
  'closer-cues': ({ secondsBetweenCues, fromSeconds }) =>
    `Allow cues ${secondsBetweenCues} s apart instead of ${fromSeconds} s.`,
  'fewer-exposures': ({ exposures, fromExposures }) =>
    exposures === 1
      ? `Expose once instead of ${fromExposures} times.`
      : `Bracket ${exposures} exposures instead of ${fromExposures}.`,
  'closer-exposures': ({ stepEv, fromStepEv }) =>
    `Bracket by ${rounded(stepEv)} stops instead of ${rounded(fromStepEv)}.`,
  'shorter-span': ({ span }, clock) =>
    'startAt' in span
      ? `Shoot only from ${clock(span.startAt)} to ${clock(span.endAt)}.`
      : `Shoot a shorter span: from ${span.fromSunAltitudeDeg}° to ${span.toSunAltitudeDeg}° of sun altitude.`,
};

/** Less is told as none: tenths of a millisecond are. */
const NO_TIME_S = 0.000_05;

/**
 * What a remedy leaves to spare, in English.
 *
 * @param leaves stops that the scene may be off then, >= 0; seconds to spare in its tightest interval, where that is less than a
 *   twentieth of it; the clip, where a longer interval leaves little of it
 * @returns one to three sentences
 */
export function englishReserve({ reserveEv, spareS, clip }: RemedyLeaves): string {
  return [
    reserveEv < 0.05
      ? 'It works, with nothing to spare.'
      : `It leaves ${reserveEv.toFixed(1)} stops of reserve.`,
    ...(spareS === undefined
      ? []
      : [
          `Its tightest interval has ${spareS < NO_TIME_S ? 'no time' : `only ${spareText(spareS)}`} to spare.`,
        ]),
    ...(clip === undefined
      ? []
      : [`The clip is ${inSeconds(clip.clipS)} long then, instead of ${inSeconds(clip.fromClipS)}.`]),
  ].join(' ');
}

const gapText = ({ moveS, settleS, writeS }: GapParts) =>
  `Between frames the longest step of the move takes ${inSeconds(moveS)}, its rest ${inSeconds(settleS)} and writing ${inSeconds(writeS)}.`;
const halfClickText = ({ toleranceEv, halfClickEv }: BelowHalfClick) =>
  `No dial can follow within ${rounded(toleranceEv)}: half a click is ${halfClickEv.toFixed(2)}.`;
const stopsText = (ev: number) => (ev < 0.05 ? 'less than 0.05 stops' : `${ev.toFixed(1)} stops`);
const beyond = (worstEv: number) => `${stopsText(worstEv)}${worstEv < 0.05 ? '' : ' at the most'}`;

/** Reasons why a shoot has no plan, in English. */
export const englishReasons: Sentences<WhyInfeasible, 'reason'> = {
  'no-span': ({ date, because }) => `On ${date} ${sentenceOf(englishNoPass, 'kind', because)}.`,
  'no-time': ({ gap, intervalS, darkFrame, exposures, pausesS = 0 }) => {
    const open =
      exposures === undefined
        ? `a shutter${darkFrame ? ' and its dark frame' : ''}`
        : `${exposures} exposures${darkFrame ? ', their dark frames' : ''} and ${inSeconds(pausesS)} of pauses`;
    return `${gapText(gap)} An interval of ${intervalS} s leaves no time for ${open}.`;
  },
  'too-dark': (why, clock) =>
    `${fromFrame(why, clock)} the scene is too dark for this kit, by ${beyond(why.worstShortfallEv)}.${
      why.gap === undefined ? '' : ` ${gapText(why.gap)} That keeps the shutter short.`
    }`,
  'too-bright': (why, clock) =>
    `${fromFrame(why, clock)} the scene is too bright for this kit, by ${beyond(why.worstShortfallEv)}.`,
  'too-fast': (why, clock) =>
    `${fromFrame(why, clock)} the light changes faster than the steps, their spacing and the tolerance can follow: that frame would be off by ${stopsText(why.shortfallEv)} more than allowed.${
      why.belowHalfClick === undefined ? '' : ` ${halfClickText(why.belowHalfClick)}`
    }`,
};

function fromFrame({ frame, at }: Extract<WhyInfeasible, { readonly at: string }>, clock: Clock): string {
  return `From frame ${frame + 1} (${clock(at, true)}) on`;
}
