// All that the command says on the screen, in English. Another language is one more file with a value of type
// CommandWords.

import { wordsFor } from '@evenfall/chart';
import type { IntervalAdvice, PlanChoice, Subject, WhyInfeasible } from '@evenfall/core';
import { followEnglish } from './follow-en.js';
import { newEnglish } from './new-en.js';
import { englishSentences } from './sentences-en.js';

/** A number with fixed digits, never "-0.0". */
function fixed(value: number, digits = 1): string {
  // Rounding may leave a minus on zero.
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}

const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
const evenings = (dawn: boolean) => (dawn ? 'mornings' : 'evenings');
const verb = (stops: number) => (stops < 0 ? 'falls' : 'rises');

export const english = {
  /** Those of card, chart and library. */
  card: wordsFor(),
  sentences: englishSentences,
  follow: followEnglish,
  newShoot: newEnglish,
  /** With so many digits after the point. */
  fixed,
  /** With the digits that it has. */
  plain: (value: number) => String(value),
  wrote: (paths: readonly string[]) => `wrote ${paths.join(', ')}`,
  widerShows: 'A wider terminal shows more columns.',
  standardInput: 'standard input',
  directions: { dusk: 'dusk', dawn: 'dawn' },
  range: (from: string, to: string) => `${from} to ${to}`,

  plan: {
    setUpBy: 'Be set up by',
    startEnd: 'Start, end',
    frames: 'Frames',
    framesText: (count: number, intervalS: number, clipS: number, fps: number) =>
      `${count}, one every ${intervalS} s; a clip of ${clipS.toFixed(1)} s at ${fps} frames a second`,
    bracket: 'Bracket',
    bracketText: (p: {
      exposures: number;
      stops: string;
      count: number;
      shortest: string;
      longest: string;
      end: 'longest' | 'interval';
    }) =>
      `${p.exposures} exposures a frame, ${p.stops} stops apart, ${p.count} in all, ${p.shortest} to ${p.longest}; ${p.end === 'interval' ? 'the interval' : 'the longest shutter'} limits the night`,
    card: 'Card',
    cardText: (p: { neededGB: number; cardGB?: number; holds?: number }) =>
      `${p.neededGB.toFixed(1)}${p.cardGB === undefined ? '' : ` of ${p.cardGB}`} GB${p.holds === undefined ? '' : `, room for ${p.holds} frames`}`,
    battery: 'Battery',
    batteryText: (p: { frameCount: number; holds: number; cold: boolean }) =>
      `${p.frameCount} of ${p.holds} frames${p.cold ? ' in the cold' : ''}`,
    notEnough: { card: 'not enough', battery: 'not enough' },
    outAt: { card: (time: string) => `full at ${time}`, battery: (time: string) => `spent at ${time}` },
    light: 'Light',
    lightText: (p: { fromEv: number; toEv: number; stops: number }) =>
      `EV ${fixed(p.fromEv)} to ${fixed(p.toEv)} at ISO 100; ${fixed(p.stops)} stops to follow`,
    fastest: (time: string, evPerMin: number) => `fastest at ${time}, ${fixed(evPerMin, 2)} EV a minute`,
    sky: 'Sun and moon',
    firstSetting: 'First setting',
    offBy: 'Off by',
    offByText: (worstEv: number, rmsEv: number) =>
      `${fixed(worstEv, 2)} stops at worst, ${fixed(rmsEv, 2)} rms`,
    reserve: 'Reserve',
    reserveText: (p: { darkEv: number; brightEv: number; percent: number; dawn: boolean }) =>
      `the scene may be ${fixed(p.darkEv)} stops darker or ${fixed(p.brightEv)} brighter, as on ${p.percent > 99 ? 'more than 99' : Math.round(p.percent)} ${evenings(p.dawn)} in 100`,
    tightest: 'Tightest',
    held: {
      shutterS: 'shutter',
      bracketS: 'rest of the bracket',
      darkS: 'dark frame',
      writeS: 'writing',
      moveS: 'moving',
      settleS: 'rest',
    },
    tightestText: (p: { frame: number; held: string; spare: string | undefined; intervalS: number }) =>
      `frame ${p.frame}: ${p.held}; ${p.spare ?? 'nothing'} to spare of ${p.intervalS} s`,
    move: 'Move',
    moveText: (p: { way: string; stopped: boolean; ease: string }) =>
      `${p.way}, ${p.stopped ? 'stopped at every frame' : 'without a stop'}, ease ${p.ease}`,
    onScreen: 'On screen',
    onScreenText: (frame: number, crossingS: string) =>
      `at its fastest, frame ${frame}, the picture passes its own width in ${crossingS} s of clip`,
    noCues: 'No cues',
    leaveAlone: 'Leave the camera as it stands.',
    cuesTitle: (count: number) =>
      `${counted(count, 'cue')}; the clock is the start of the first frame with the new setting`,
    columns: { clock: 'clock', minutes: '+min', frame: 'frame', change: 'change', after: 'then' },
    rigTitle: (shortest: string, longest: string, cues: number) =>
      `The rig drives the shutter, ${shortest} to ${longest}; ${cues === 0 ? 'no cues beside it' : `${counted(cues, 'cue')} of other controls`}`,
    rigRows: 'Where it stands is told at every third of a stop; the clock is the start of that frame.',
    notes: 'Notes',
    levels: { info: 'note', caution: 'caution', warning: 'warning' },
    next: 'Next',
    nextCard: 'a card to carry',
    nextChart: 'the curve',
    nearestCure: (cure: string) => `Nearest cure: ${cure}`,
    noCure: 'No single change would cure it: try two, or another day.',
    anyCure: 'Any one of these would do',
  },

  choices: {
    columns: ['cues', 'filters', 'rms', 'worst', 'ISO', 'weights'],
    names: {
      'fewest-cues': 'fewest',
      smoothest: 'smoothest',
      'cleanest-iso': 'lowest ISO',
      'as-asked': 'as asked',
    } as Readonly<Record<PlanChoice['names'][number], string>>,
    advice:
      'Error is in stops, what is left to smooth afterwards; ISO is the highest used. To take a line, write its weights into the shoot file:',
  },

  light: {
    columns: ['clock', 'sun°', 'az°', 'moon°', 'lux', 'sky cd/m²', 'EV 100', 'likely', 'EV/min'],
    likely: (low: string, high: string) => `${low} to ${high}`,
    sun: 'sun',
    single: (ev: number) => `EV ${fixed(ev)} at ISO 100.`,
    way: (fromEv: number, toEv: number) =>
      `The light ${verb(toEv - fromEv)} ${fixed(Math.abs(toEv - fromEv))} stops, from EV ${fixed(fromEv)} to ${fixed(toEv)} at ISO 100.`,
    steepest: (p: { time: string; sunDeg: number; evPerMin: number; thirdS?: number }) =>
      `Steepest (*) at ${p.time}, sun ${fixed(p.sunDeg)}°: it ${verb(p.evPerMin)} ${Math.abs(p.evPerMin).toFixed(2)} EV a minute${p.thirdS === undefined ? '' : `, a third of a stop every ${p.thirdS} seconds`}.`,
    stillToCome: (event: string, time: string, stops: number) =>
      `At ${event}, ${time}, ${fixed(stops)} of these stops are still to come.`,
    missing: (why: string) => `does not happen: ${why}`,
  },

  evenings: {
    weekdays: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'],
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    columns: (dawn: boolean) => [
      'day',
      dawn ? 'rise' : 'set',
      'steepest',
      'moon',
      'moon°',
      'stops',
      'cues',
      'off',
      'reserve',
      'of',
    ],
    possible: (count: number, of: number, dawn: boolean) =>
      `${count} of ${counted(of, dawn ? 'morning' : 'evening')} can be done with this kit.`,
    noHorizon: 'none',
    newMoon: 'new',
    fullMoon: 'full',
    no: 'no',
    reasons: {
      'no-span': 'the sun does not go so far',
      'no-time': 'the interval leaves no shutter',
      'too-dark': 'too dark',
      'too-bright': 'too bright',
      'too-fast': 'too fast',
    } as Readonly<Record<WhyInfeasible['reason'], string>>,
    by: (stops: number) => `by ${fixed(stops)}`,
    from: (time: string) => `from ${time}`,
    legend: (dawn: boolean) =>
      `Steepest: when the light changes fastest, and EV a minute. Moon: its lit share, + waxing, - waning, and its altitude at the end (below 0 it is down). Off: the worst error, stops. Reserve: stops the scene may be darker/brighter, as on so many ${evenings(dawn)} in 100.`,
  },

  review: {
    reading: 'reading',
    cuesOff: 'Cues not on time',
    columns: ['cue', 'due', 'frame', 'change', 'done'],
    more: (count: number) => `and ${count} more; the review file has them all`,
  },

  footage: {
    frames: 'Frames',
    interval: 'Interval',
    recording: 'Recording',
    clip: 'Clip',
    clipText: (clipS: string, fps: string) => `${clipS} s at ${fps} frames a second`,
    longestShutter: 'Longest shutter',
    beside: (gapS: string, darkFrame: boolean) =>
      `beside a gap of ${gapS} s${darkFrame ? ' and its dark frame' : ''}`,
    shutterText: (shutter: { label: string; timeS: string } | undefined, beside: string) =>
      shutter === undefined
        ? `none fits ${beside}`
        : `"${shutter.label}", which is ${shutter.timeS} s, ${beside}`,
    inWholeSeconds: 'In whole seconds',
    inWholeSecondsText: (intervalS: number, frames: number, clipS: string) =>
      `every ${intervalS} s: ${frames} frames, a clip of ${clipS} s`,
    advised: 'Advised',
    advisedText: (range: string, subject: Subject, authors: number) =>
      `${range} for ${subject.replaceAll('-', ' ')}; ${authors === 1 ? 'one author says so' : `${authors} authors, each from experience`}; nobody has measured it`,
    range: (fromS: number, toS: number) => (fromS === toS ? `${fromS} s` : `${fromS} to ${toS} s`),
    noTimeLapse: 'No time-lapse',
    noTimeLapseText: (p: { intervalS: string; perS: string; clipS: string; recording: string }) =>
      `a frame every ${p.intervalS} s is ${p.perS} a second, and a clip of ${p.clipS} s from ${p.recording} runs no faster than life: film it as video, or record longer`,
    noCamera: 'No camera does',
    noCameraText: (gapS: string, intervalS: string) =>
      `the camera needs ${gapS} s of each ${intervalS} s beside the shutter: give a longer recording, a shorter clip, or the --gap that it really needs`,
    /** What a reader needs to weigh a row: what kind of page it is, and its age. */
    sources: {
      skarbnik: 'an article on choosing the interval, 2015',
      cogto: 'an article on time-lapse photography, undated',
      'aperture-authority': 'a photo magazine on the web, undated',
    } as Readonly<Record<IntervalAdvice['source'], string>>,
    /** What a source says, in its own words. */
    sourceText: (range: string, said: string, source: string) => `${range}: ${said} (${source})`,
  },
};

export type CommandWords = typeof english;
