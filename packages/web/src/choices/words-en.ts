// What the page says of choices, in English. Another language is one more file with a value of type ChoiceWords.

const cues = (count: number) => `${count} ${count === 1 ? 'cue' : 'cues'}`;

export const english = {
  help: 'The same evening under other weights. Errors are in stops: what is left to smooth afterwards.',
  working: 'Working out the choices …',
  failed: 'The choices could not be worked out here. Closing and opening this tries again.',
  count: (count: number) =>
    count === 1
      ? 'No other weights would give fewer cues or less error.'
      : `${count} choices, fewest cues first.`,
  columns: {
    cues: 'cues',
    filters: 'filter changes',
    rms: 'rms error',
    worst: 'worst error',
    iso: 'highest ISO',
  },
  names: {
    'fewest-cues': 'fewest cues',
    smoothest: 'closest to the light',
    'cleanest-iso': 'lowest ISO',
    'as-asked': 'as before',
  },
  use: 'Use this',
  inUse: 'In use',
  spoken: (count: number, rms: string) => `${cues(count)}, ${rms} stops rms`,
  taken: (count: number) => `Now the plan with ${cues(count)}.`,
  own: 'This shoot has weights of its own.',
  usual: 'Back to the default weights',
  usualTaken: 'The default weights hold again.',
};

export type ChoiceWords = typeof english;
