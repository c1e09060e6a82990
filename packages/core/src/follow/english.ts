// What following warns of, in English.

import { englishRefusals } from '../light/refusal.js';
import { type ClocksBack, clockOver } from '../words/clock.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import type { FollowWarning, FollowWarningFacts, UnknownMark } from './warning.js';

const frames = (count: number) => `${count} ${count === 1 ? 'frame' : 'frames'}`;
const differing = (ev: number) =>
  `${Math.abs(ev).toFixed(1)} stops ${ev > 0 ? 'brighter' : 'darker'} than expected`;
const namesText = (names: readonly string[]) => `[${names.map((name) => `"${name}"`).join(', ')}]`;

const OLD = {
  'older-than-used': 'is older than one already used',
  'to-come': 'is of a time to come',
  'another-day': 'is of another day',
  'doubtful-time': 'comes with a doubtful time',
};
const UNKNOWN_CUE = {
  'neither-last-nor-next': 'is neither the last nor the next',
  'not-told': 'is none of the last that were told',
};
const BEFORE_MARK = { shutter: 'shutter ', iso: 'ISO ', aperture: 'f/' };
const ASK_AGAIN =
  'ask again if that is the time, or say so with "jump": true. Until then nothing is taken as done.';

const lensText = (names: readonly string[]) => (names.length === 0 ? 'the bare lens' : names.join(' + '));
const unknownText = (unknown: readonly UnknownMark[]) =>
  unknown
    .map((each) =>
      each.control === 'filter'
        ? `filters ${each.given} are not among the shoot's: ${each.stacks.map(namesText).join(', ')}`
        : `${each.control} ${each.given} is not on the camera's dial`,
    )
    .join('; ');

/** Warnings in English. */
export const englishWarnings: Sentences<FollowWarningFacts> = {
  'reading-doubted': ({ ev100, differsEv }) =>
    `EV ${ev100.toFixed(1)} is ${differing(differsEv)}: not used unless the next readings bear it out.`,
  'reading-believed': ({ differsEv }) =>
    `The light stays ${differing(differsEv)}: it is believed from now on.`,
  'reading-impossible': ({ because }, clock) => sentenceOf(englishRefusals, 'reason', because, clock),
  'reading-old': ({ ev100, reason }) => `The reading of EV ${ev100.toFixed(1)} ${OLD[reason]}: not used.`,
  'reading-failed': ({ what, given }) =>
    what === 'ev'
      ? `The meter gave ${given}, which is no EV: not used.`
      : `The reading has no time but ${given}: not used.`,
  'no-reading': ({ minutes }) => `No reading for ${minutes} minutes: the forecast is carried on from it.`,
  'clock-back': (said, clock) => {
    const back = `${frames(said.frames)} back, to ${clock(said.at)}`;
    return said.believed
      ? `The clock is taken to have been set ${back}.`
      : `This is ${back}: the setting is held, and the time believed if it goes on.`;
  },
  'clock-ahead': (said) =>
    said.reason === 'past-cues-told'
      ? `${said.frames} frames were passed over; cues were told for the first ${said.toldFrames} of them.`
      : `Frames were passed over in which ${said.cues === 1 ? 'a cue was' : `${said.cues} cues were`} due: taken as not done.`,
  'jump-doubted': (said, clock) =>
    said.reason === 'far-ahead'
      ? `Frame ${said.frame + 1} (${clock(said.at)}) is ${said.minutes} minutes ahead: ${ASK_AGAIN}`
      : `Frame ${said.frame + 1} lies past the last, ${said.frameCount}: ${ASK_AGAIN}`,
  'time-unknown': ({ what, given }) =>
    `${what === 'frame' ? `Frame ${given} is none` : `${given} is no time`}: answered for the frame answered last.`,
  'joined-late': ({ frame }) =>
    `Joined at frame ${frame + 1}: the camera is taken to stand where the plan has it.`,
  over: ({ frameCount }) => `The last frame, ${frameCount}, has been taken.`,
  'cue-late': ({ cue, lateFrames, frame }) =>
    `Cue ${cue} came ${frames(lateFrames)} late, at frame ${frame + 1}.`,
  'cue-missed': ({ cue, sinceFrame, untilFrame }) => {
    if (sinceFrame === undefined) return `Cue ${cue} has not been done: planned again without it.`;
    if (untilFrame !== undefined)
      return `Cue ${cue} was missed from frame ${sinceFrame + 1} to ${untilFrame}; a later cue has set it right.`;
    return `Cue ${cue} has been missed since frame ${sinceFrame + 1}: planned again from the setting without it.`;
  },
  'cue-unknown': (said, clock) =>
    said.reason === 'none-then'
      ? `No cue of the last was due at ${clock(said.at)}: nothing is changed.`
      : `Cue ${said.cue} ${UNKNOWN_CUE[said.reason]}: nothing is changed.`,
  'outside-kit': ({ outside }) =>
    `${outside.map(({ control, mark }) => BEFORE_MARK[control] + mark).join(' and ')} cannot be used here: set what is answered.`,
  'setting-unknown': ({ unknown }) => `${unknownText(unknown)}: nothing of the setting is used.`,
  'kit-unknown': ({ unknown }) => `${unknownText(unknown)}: the kit is left as it was.`,
  'kit-empty': ({ control }) =>
    `These limits leave no ${control === 'iso' ? 'ISO' : 'shutter time that fits the interval'}: the kit is left as it was.`,
  'filter-refused': ({ times, filters, standing }) =>
    `The change from ${lensText(standing)} to ${lensText(filters)} has not been done ${times} times. Do it with the next cue; ` +
    'or say what is "lost", or "kit": {"maxFilterChanges": 0}, and the rest is planned without it.',
  'out-of-reach': ({ now, frame, at, end, worstEv }, clock) =>
    `${now ? 'Now' : `From frame ${frame + 1} on (${clock(at)})`} the light is too ${end} for this kit, by up to ${worstEv.toFixed(1)} stops beyond tolerance.`,
  'within-reach': ({ end }) =>
    `The light is not too ${end} for this kit any more, now or later, as far as is known.`,
  'too-fast': ({ frame, at, worstEv }, clock) =>
    `From frame ${frame + 1} on (${clock(at)}) the light changes faster than these limits on cues allow: by up to ${worstEv.toFixed(1)} stops beyond tolerance.`,
};

/** A warning with its sentence; `back` where it names a time. */
export function warningOf(said: FollowWarningFacts, back?: ClocksBack): FollowWarning {
  return { ...said, text: sentenceOf(englishWarnings, 'kind', said, clockOver(back)) };
}
