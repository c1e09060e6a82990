// Building blocks of the file schemas. Each carries the words of its own error: what was expected, and
// what to give instead. The words to give are also the description in the published JSON Schema.

import * as v from 'valibot';
import { nearestWord } from '../check.js';
import { shown } from './file-error.js';

/** What a value should have been, and what would be right: "is not {what}; give {give}". */
interface Words {
  readonly what: string;
  readonly give: string;
}

type Message = (issue: v.BaseIssue<unknown>) => string;

function refusal({ what, give }: Words): Message {
  return ({ input }) => `${shown(input)} is not ${what}; give ${give}`;
}

/** As {@link refusal}, and helps where a number stands in quotes, with a comma for its point, or with a unit. */
function numberRefusal({ what, give }: Words): Message {
  return ({ input }) => `${shown(input)} is not ${what}; give ${give}${numberHint(input)}`;
}

function numberHint(input: unknown): string {
  if (typeof input !== 'string' || input.length > 40) return '';
  if (input.trim() !== '' && Number.isFinite(Number(input))) return ', without quotes';
  const [, whole, part] = /^\s*([-+]?\d+),(\d+)\s*$/.exec(input) ?? [];
  if (whole !== undefined) return `, with a point: ${whole}.${part}`;
  return /^\s*[-+]?\d+(\.\d+)?\s*(s|sec|min|m|h|°|deg|MB|GB|EV|lx|mm|px|%)\s*$/i.test(input)
    ? ', without a unit'
    : '';
}

/** A number in [min, max], ends included. */
export function number(what: string, give: string, min: number, max: number) {
  const message = numberRefusal({ what, give });
  return v.pipe(v.number(message), v.minValue(min, message), v.maxValue(max, message), v.description(give));
}

/** A number in (0, max]. */
export function aboveZero(what: string, give: string, max: number) {
  const message = numberRefusal({ what, give });
  return v.pipe(v.number(message), v.gtValue(0, message), v.maxValue(max, message), v.description(give));
}

/** A whole number in [min, max], ends included. */
export function whole(what: string, give: string, min: number, max: number) {
  const message = numberRefusal({ what, give });
  return v.pipe(
    v.number(message),
    v.integer(message),
    v.minValue(min, message),
    v.maxValue(max, message),
    v.description(give),
  );
}

/** Any finite number: what a computed file may hold. */
export function finite(give: string) {
  const message = numberRefusal({ what: 'a finite number', give });
  return v.pipe(v.number(message), v.finite(message), v.description(give));
}

/** `true` or `false`. */
export function flag(give: string) {
  return v.pipe(v.boolean(refusal({ what: 'true or false', give: 'true or false' })), v.description(give));
}

/**
 * One line of text of at most so many characters, without control characters. Characters are those of Unicode, as
 * JSON Schema counts them: an emoji is one, though JavaScript's own length makes it two.
 */
export function text(what: string, give: string, maxLength: number, minLength = 0) {
  const message: Message = ({ input }) =>
    typeof input === 'number' || typeof input === 'boolean'
      ? `${shown(input)} is not text; put it in quotes`
      : refusal({ what, give })({ input } as v.BaseIssue<unknown>);
  return v.pipe(
    v.string(message),
    v.regex(new RegExp(`^[^\\p{Cc}\\p{Cs}\\u2028\\u2029]{${minLength},${maxLength}}$`, 'u'), message),
    v.description(give),
  );
}

/** Text of a fixed form. */
export function formed(what: string, give: string, form: RegExp) {
  const message = refusal({ what, give });
  return v.pipe(v.string(message), v.regex(form, message), v.description(give));
}

/** A time with its offset, RFC 3339. Whether any clock shows it, the rules say. */
export function instant() {
  return formed(
    'a time',
    'a time with its offset, such as "2026-09-12T19:04:00+02:00"',
    /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(\.\d+)?([Zz]|[+-]\d{2}:\d{2})$/,
  );
}

/** A list of at most so many entries. */
export function list<const Item extends v.GenericSchema>(
  item: Item,
  entries: string,
  most: number,
  least = 0,
) {
  return v.pipe(
    v.array(item, refusal({ what: 'a list', give: `a list of ${entries}` })),
    v.minLength(least, `an empty list; give at least ${least} of ${entries}`),
    v.maxLength(most, ({ input }) => `${(input as unknown[]).length} are too many; give at most ${most}`),
    v.readonly(),
  );
}

/** One of a few numbers. */
export function oneOf<const Options extends readonly number[]>(options: Options, what: string, give: string) {
  return v.pipe(v.picklist(options, numberRefusal({ what, give })), v.description(give));
}

/** A mark of a dial: text, or a number whose text is the mark. Which marks there are, the dial in use says. */
export function mark(give: string) {
  return v.pipe(
    v.union([v.string(), v.number()], refusal({ what: 'a mark of the dial', give })),
    v.description(give),
    v.transform(String),
  );
}

/** One of a few words. */
export function word<const Options extends readonly string[]>(options: Options) {
  const list = options.map((option) => `"${option}"`).join(', ');
  return v.pipe(
    v.picklist(options, wordMessage(options)),
    v.description(options.length === 1 ? list : `one of ${list}`),
  );
}

/** That a value is none of a few words. */
export function wordMessage(options: readonly string[]): Message {
  const list = options.map((option) => `"${option}"`).join(', ');
  return ({ input }) => {
    const near = typeof input === 'string' ? nearestWord(input, options) : undefined;
    return near === undefined || options.length === 1
      ? `${shown(input)} is not ${options.length === 1 ? list : `one of ${list}`}; give ${list}`
      : `${shown(input)} is not one of ${list}; the nearest is "${near}"`;
  };
}

/** The format of a file, `evenfall-shoot/1`. In one of a later number nothing is wrong but the program's age. */
export function format<const Format extends string>(ours: Format) {
  const message: Message = ({ input }) =>
    isLater(input, ours)
      ? `${shown(input)} is a later format than "${ours}"; read it with a newer version`
      : `${shown(input)} is not "${ours}"; give "${ours}"`;
  return v.pipe(v.picklist([ours], message), v.description(`"${ours}"`));
}

function isLater(input: unknown, ours: string): boolean {
  const [name, number] = ours.split('/');
  const [, theirs, later] = typeof input === 'string' ? (/^([a-z-]+)\/(\d{1,3})$/.exec(input) ?? []) : [];
  return theirs === name && Number(later) > Number(number);
}

/** Several shapes for one value. */
type Shapes = readonly v.GenericSchema[];

/**
 * One of several shapes. `pick` looks at the value and says which shape it was meant to have, so that an
 * error speaks of that shape alone; where it cannot tell, the error names them all.
 */
export function choice<const Options extends Shapes>(
  options: Options,
  words: Words,
  pick: (input: unknown) => Options[number] | undefined,
) {
  const any = v.union(options, refusal(words));
  return v.pipe(
    // Of nothing at all no shape is picked: that is how the published schema asks for all of them.
    v.lazy((input): Options[number] | typeof any => (input === undefined ? any : (pick(input) ?? any))),
    v.description(words.give),
  );
}

/** Whether a value is a group of keys, this one among them. */
export function holds(input: unknown, key: string): boolean {
  return isGroup(input) && Object.hasOwn(input, key);
}

/** Whether a value is a group of keys at all. */
export function isGroup(input: unknown): input is Readonly<Record<string, unknown>> {
  return typeof input === 'object' && input !== null && !Array.isArray(input);
}
