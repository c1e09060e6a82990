// Which interval suits which subject: advice from people who teach it, rough and not unanimous.
// Source: docs/sources.md#intervals.

/** What the picture is about. */
export type Subject =
  | 'traffic'
  | 'people'
  | 'fast-clouds'
  | 'clouds'
  | 'slow-clouds'
  | 'sunset'
  | 'city-into-night'
  | 'shadows'
  | 'stars'
  | 'plants'
  | 'construction';

/** One row of advice, as its source gives it. */
export interface IntervalAdvice {
  /** What the row speaks of, one or more. */
  readonly subjects: readonly Subject[];
  /** The source's own. */
  readonly words: string;
  /** Shortest interval advised, seconds. */
  readonly minS: number;
  /** Longest, seconds; as `minS` where the source names one. */
  readonly maxS: number;
  /** Whose page it is, of three authors on time-lapse. */
  readonly source: 'skarbnik' | 'cogto' | 'aperture-authority';
}

const ROWS: readonly IntervalAdvice[] = [
  row(['traffic', 'fast-clouds'], 'moving traffic, fast clouds, driving', 1, 1, 'skarbnik'),
  row(
    ['sunset', 'slow-clouds', 'people'],
    'sunsets, sunrises, slower clouds, crowds, sun or moon near horizon, telephoto',
    1,
    3,
    'skarbnik',
  ),
  row(['people'], 'people walking', 2, 2, 'skarbnik'),
  row(['fast-clouds'], 'clouds very fast', 3, 3, 'skarbnik'),
  row(['clouds'], 'clouds normal', 5, 5, 'skarbnik'),
  row(['slow-clouds'], 'clouds very slow', 10, 10, 'skarbnik'),
  row(['shadows'], 'moving shadows, sun across sky, wide', 15, 30, 'skarbnik'),
  row(['stars'], 'night landscape, stars, moon', 20, 30, 'skarbnik'),
  row(['stars'], 'stars', 15, 60, 'skarbnik'),
  row(['shadows'], 'path of sun, clear day', 30, 30, 'skarbnik'),
  row(['plants'], 'fast-growing plants', 90, 120, 'skarbnik'),
  row(['construction'], 'construction', 300, 900, 'skarbnik'),
  row(['traffic', 'people'], 'cars and people', 1, 2, 'cogto'),
  row(['fast-clouds'], 'fog and low fast clouds', 1, 2, 'cogto'),
  row(['slow-clouds', 'clouds'], 'high and slower clouds', 2, 3, 'cogto'),
  row(['stars'], 'stars and Milky Way', 15, 30, 'cogto'),
  row(['city-into-night'], 'city from sunset into night', 5, 7, 'cogto'),
  row(['fast-clouds', 'traffic'], 'fast clouds or busy traffic', 1, 2, 'aperture-authority'),
  row(['sunset', 'clouds'], 'general skies and sunsets', 3, 5, 'aperture-authority'),
  row(['stars'], 'stars or very slow scenes', 15, 30, 'aperture-authority'),
];

/** What the sources advise for a subject. */
export interface SubjectInterval {
  /** Shortest interval that any of them advises, seconds. */
  readonly minS: number;
  /** Longest, seconds. */
  readonly maxS: number;
  /** What each of them says, one or more. */
  readonly rows: readonly IntervalAdvice[];
}

/**
 * From the shortest to the longest interval that any source advises for a subject, and the rows that say so, as their
 * sources have them. Source: pages of three authors on time-lapse, from experience.
 *
 * @example
 * ```ts
 * import { INTERVALS_BY_SUBJECT } from '@evenfall/core';
 *
 * INTERVALS_BY_SUBJECT['city-into-night']; // → { minS: 5, maxS: 7 }
 * INTERVALS_BY_SUBJECT.stars.rows.find(({ words }) => words === 'stars and Milky Way'); // → { minS: 15, maxS: 30 }
 * ```
 */
export const INTERVALS_BY_SUBJECT: Readonly<Record<Subject, SubjectInterval>> = Object.fromEntries(
  ROWS.flatMap(({ subjects }) => subjects).map((subject) => [subject, intervalFor(subject)]),
) as Record<Subject, SubjectInterval>;

function intervalFor(subject: Subject): SubjectInterval {
  const rows = ROWS.filter(({ subjects }) => subjects.includes(subject));
  return {
    minS: Math.min(...rows.map(({ minS }) => minS)),
    maxS: Math.max(...rows.map(({ maxS }) => maxS)),
    rows,
  };
}

function row(
  subjects: readonly Subject[],
  words: string,
  minS: number,
  maxS: number,
  source: IntervalAdvice['source'],
): IntervalAdvice {
  return { subjects, words, minS, maxS, source };
}
