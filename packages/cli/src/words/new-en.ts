// What "new" asks, and what it writes beside the keys of a shoot file, in English.

import type { Question } from '../questions.js';

export const newEnglish = {
  questions: {
    title: 'Title',
    at: 'Place: latitude, longitude in degrees, south and west negative',
    on: 'Date on which it begins',
    direction: 'dusk or dawn',
    interval: 'Interval: seconds from one frame to the next',
    shutter: 'Shutter, shortest to longest that you allow',
    iso: 'ISO, lowest to highest that you allow',
    aperture: 'Aperture, held all the time',
    lens: 'Focal length in mm, as on full frame',
    nd: 'ND filters in the bag, in stops, as in 3, 6',
    facing: 'The lens faces: toward-sun, side, away, or a compass point',
    night: 'Sky glow after dark: remote, rural, suburb, town, city',
    lamps: 'Lamps in the frame: none, street, floodlit, skyline',
  } as Readonly<Record<Question, string>>,
  /** What Enter gives. */
  brackets: (fallback: string) => `[${fallback}]`,
  /** A default as it would be typed in this language. */
  shown: (fallback: string) => fallback,
  next: (command: string) => `Next: ${command}`,
  keep: 'as a file',
  brokenOff: 'broken off; nothing is written',
  notes: {
    plan: (command: string) => `Plan it: ${command}`,
    defaults: 'Every key that is left out has a default; docs/formats.md lists them all.',
    title: 'stands on the card',
    place: 'Degrees; south and west are negative. The time zone is looked up.',
    date: 'The local date on which it begins. dusk: day to night; dawn: night to day.',
    interval: 'Interval: seconds from one frame to the next.',
    dials: 'What you allow, as the dials are marked. The longest shutter and the gap must fit the interval.',
    gap: 'seconds the camera needs between frames',
    lens: 'With the lens known, the light is the mean of the sky in the frame. For a smaller sensor give both as they are.',
    supplies: 'To know whether card and battery last:',
    filters: 'ND filters, by stops; density: 1.8 or factor: 64 will do too.',
    scene: 'What the lens sees. It decides three stops.',
  },
};

export type NewWords = typeof newEnglish;
