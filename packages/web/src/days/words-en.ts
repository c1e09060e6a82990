// What the page says of the days to come, in English. Another language is one more file with a value of type DayWords.

type Direction = 'dusk' | 'dawn';

const evenings = { dusk: 'evenings', dawn: 'mornings' };

export const english = {
  help: {
    dusk: 'Each evening planned with this kit and scene: its moon at the end, and on how many evenings in 100 the light stays within the reserve. Press one to take its date.',
    dawn: 'Each morning planned with this kit and scene: its moon at the end, and on how many mornings in 100 the light stays within the reserve. Press one to take its date.',
  },
  list: { dusk: 'Evenings to choose from', dawn: 'Mornings to choose from' },
  working: 'Planning each of them …',
  failed: 'They could not be planned here. Closing and opening this tries again.',
  count: (can: number, all: number) => `${can} of ${all} can be done.`,
  no: 'no',
  between: ', ',
  horizon: { dusk: (at: string) => `sunset ${at}`, dawn: (at: string) => `sunrise ${at}` },
  noHorizon: { dusk: 'no sunset', dawn: 'no sunrise' },
  steepest: (at: string, ev: string) => `steepest at ${at} with ${ev} EV a minute`,
  moon: (percent: number, waxing: boolean, altitudeDeg: number) => {
    const phase =
      percent === 0
        ? 'new moon'
        : percent === 100
          ? 'full moon'
          : `moon ${percent} % lit and ${waxing ? 'waxing' : 'waning'}`;
    return `${phase}, ${altitudeDeg < 0 ? 'down' : `${altitudeDeg}° up`} at the end`;
  },
  stops: (stops: string) => `${stops} stops to follow`,
  cues: (count: number) => `${count} ${count === 1 ? 'cue' : 'cues'}`,
  error: (stops: string) => `off by ${stops} stops at worst`,
  reserve: (dark: string, bright: string, share: string, direction: Direction) =>
    `${dark} stops in reserve if darker and ${bright} if brighter, as on ${share} ${evenings[direction]} in 100`,
  taken: (day: string) => `Now the plan for ${day}.`,
  earlier: (days: number) => `${days} days earlier`,
  later: (days: number) => `${days} days later`,
};

export type DayWords = typeof english;
