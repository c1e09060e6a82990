// What a first shoot has to say: a question each, an option each.

/** In the order in which they are asked. */
export const QUESTIONS = [
  'title',
  'at',
  'on',
  'direction',
  'interval',
  'shutter',
  'iso',
  'aperture',
  'lens',
  'nd',
  'facing',
  'night',
  'lamps',
] as const;

export type Question = (typeof QUESTIONS)[number];

/** What was answered, as typed; a question that was not asked is absent. */
export type Answers = Readonly<Partial<Record<Question, string>>>;

/** The answers among options; none where none is given. */
export function answersIn(options: Answers): Answers {
  return Object.fromEntries(
    QUESTIONS.flatMap((question) => {
      const text = options[question];
      return text === undefined ? [] : [[question, text.trim()]];
    }),
  );
}
