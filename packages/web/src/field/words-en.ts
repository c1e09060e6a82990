// What the field view says, in English. Another language is one more file with a value of type FieldWords.

const counted = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

export const english = {
  days: (count: number) => counted(count, 'day'),
  now: 'Now',
  next: 'Next',
  due: 'Do it now',
  late: 'Late',
  afterThat: 'Then',
  toGo: 'to go',
  over: 'ago',
  startAt: 'Start the camera at',
  startCamera: 'start the camera',
  bracket: (exposures: number, stops: string) =>
    `${exposures} exposures each, ${stops} ${stops === '1' ? 'stop' : 'stops'} apart; this is the middle one`,
  setFirst: 'Set this, then start the camera',
  standsReady: 'Ready: the camera stands at',
  ready: 'Ready',
  isReady: 'Ready ✓',
  setNow: 'Set this now',
  setBehind: (count: number) => `${counted(count, 'cue')} behind: set this now`,
  allDone: 'No more cues',
  ended: 'The shoot is over',
  toTheEnd: 'to the end',
  done: 'Done',
  clicks: (count: number) => counted(count, 'click'),
  wasDone: (p: { frames: number; cues: number; missed: number; readings: number }) =>
    `${counted(p.frames, 'frame')}: ${counted(p.cues, 'cue')} done, ${p.missed} not done, ${counted(p.readings, 'reading')}.`,
  undoLast: (kind?: string): string =>
    kind === 'reading'
      ? 'Undo reading'
      : kind === 'done'
        ? 'Undo done'
        : kind === 'kit'
          ? 'Undo kit'
          : 'Undo',
  early: (at: string, toGo: string) =>
    `The next cue is due at ${at}, in ${toGo}. Is it on the camera already?`,
  earlyYes: 'Yes, it is done',
  earlyNo: 'No',
  missed: 'Not done: plan on from what the camera stands at',
  enterEv: 'Enter EV',
  frameOf: (n: number, of: number) => `frame ${n} of ${of}`,
  exposing: 'exposing',
  gap: 'gap',
  interval: (seconds: string) => `every ${seconds} s`,
  clip: (now: string, all: string) => `clip ${now} of ${all} s`,
  card: (now: string, all: string) => `card ${now} of ${all} GB`,
  cardShort: (frames: number) => `card full at frame ${frames}`,
  battery: (now: number, all: number) => `battery ${now} of ${all}`,
  batteryShort: (frame: number) => `change battery by frame ${frame}`,
  rehearsal: 'Rehearsal 60×',
  live: 'Live',
  pause: 'Pause',
  go: 'Go on',
  jump: 'Skip ahead',
  sound: 'Sound',
  vibration: 'Vibration',
  on: 'on',
  off: 'off',
  announceSet: (what: string) => `Set now: ${what}`,
  announceDue: (what: string) => `Now: ${what}`,
  announceSoon: (what: string, seconds: number) => `In ${seconds} seconds: ${what}`,
  awake: 'screen stays on',
  notAwake: 'screen may sleep',
  notKept: 'This browser keeps nothing: a reload loses the evening.',
  kit: {
    open: 'Kit',
    title: 'The kit, as it is now',
    filters: 'Filters at hand: untick what is lost',
    highestIso: 'ISO at most',
    use: 'Plan on',
    used: 'What is left is planned again with this kit.',
  },
  meter: {
    title: 'Metered EV',
    ev: 'EV at ISO 100',
    less: 'Darker by a tenth',
    more: 'Brighter by a tenth',
    forecast: (ev: string) => `Forecast now: EV ${ev}`,
    byCamera: 'The camera meters',
    atSetting: (setting: string) => `at ${setting}`,
    spread: 'Readings of the same light differ by',
    spreadUnsaid: 'not stated',
    spreadOf: (stops: string) => `±${stops} stop`,
    use: 'Use it',
    cancel: 'Cancel',
    used: (ev: string) => `Reading of EV ${ev} used; what is left is planned again.`,
    insist: 'Use it anyway',
  },
};

export type FieldWords = typeof english;
