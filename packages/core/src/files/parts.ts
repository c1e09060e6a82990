// Building blocks of the file schemas. Each says as data what was expected and what to give instead; what to give is
// also the description in the published JSON Schema, in English.

import * as v from 'valibot';
import { nearestWord } from '../check.js';
import {
  type Entries,
  type FaultFacts,
  type Give,
  givenOf,
  type NumberHint,
  type Phrase,
  type Unit,
} from './fault.js';

/** What a value should have been, "latitude", and what would be right. */
interface Right {
  readonly what: string;
  readonly give: Give;
}

/** An issue of the schema library, and what we say of it. */
type Issue = v.BaseIssue<unknown> & { fault?: FaultFacts };

type Message = (issue: v.BaseIssue<unknown>) => string;

/**
 * A message of the schema library may only be text: what is wrong goes into the issue beside it, and the text is the
 * kind of fault.
 */
function told(faultOf: (input: unknown) => FaultFacts): Message {
  return (issue: Issue) => {
    issue.fault = faultOf(issue.input);
    return issue.fault.kind;
  };
}

/** What is wrong, of an issue of these schemas. */
export function faultOf(issue: v.BaseIssue<unknown>): FaultFacts {
  return (
    (issue as Issue).fault ?? {
      kind: 'wrong-value',
      given: givenOf(issue.input),
      what: 'value',
      give: phrase('value'),
    }
  );
}

/** The action that keeps what to give, for missing keys and for the published schema. */
const giving = <const T>(give: Give) => v.metadata<T, { give: Give }>({ give });

/** What to give for a value of a schema; undefined where nothing says it. */
export function giveOf(schema: v.GenericSchema): Give | undefined {
  return (v.getMetadata(schema) as { readonly give?: Give }).give;
}

export const phrase = (phrase: Phrase): Give => ({ give: 'phrase', phrase });

function refusal({ what, give }: Right): Message {
  return told((input) => ({ kind: 'wrong-value', given: givenOf(input), what, give }));
}

/** As {@link refusal}, and helps where a number stands in quotes, with a comma for its point, or with a unit. */
function numberRefusal({ what, give }: Right): Message {
  return told((input) => {
    const hint = numberHint(input);
    return {
      kind: 'wrong-value',
      given: givenOf(input),
      what,
      give,
      ...(hint === undefined ? {} : { hint }),
    };
  });
}

function numberHint(input: unknown): NumberHint | undefined {
  if (typeof input !== 'string' || input.length > 40) return undefined;
  if (input.trim() !== '' && Number.isFinite(Number(input))) return { hint: 'no-quotes' };
  const [, whole, part] = /^\s*([-+]?\d+),(\d+)\s*$/.exec(input) ?? [];
  if (whole !== undefined) return { hint: 'point', number: `${whole}.${part}` };
  return /^\s*[-+]?\d+(\.\d+)?\s*(s|sec|min|m|h|°|deg|MB|GB|EV|lx|mm|px|%)\s*$/i.test(input)
    ? { hint: 'no-unit' }
    : undefined;
}

/** A number in [min, max], ends included. */
export function number(
  what: string,
  unit: Unit,
  min: number,
  max: number,
  give: Give = { give: 'range', unit, from: min, to: max },
) {
  const message = numberRefusal({ what, give });
  return v.pipe(v.number(message), v.minValue(min, message), v.maxValue(max, message), giving(give));
}

/** A number in (0, max]; without a most, in (0, 2^53 - 1]. */
export function aboveZero(what: string, unit: Unit, max?: number, give?: Give) {
  const right: Right = {
    what,
    give: give ?? { give: 'above-zero', unit, ...(max === undefined ? {} : { to: max }) },
  };
  const message = numberRefusal(right);
  return v.pipe(
    v.number(message),
    v.gtValue(0, message),
    v.maxValue(max ?? Number.MAX_SAFE_INTEGER, message),
    giving(right.give),
  );
}

/** A whole number in [min, max], ends included. */
export function whole(
  what: string,
  min: number,
  max: number,
  give: Give = { give: 'range', unit: 'whole', from: min, to: max },
) {
  const message = numberRefusal({ what, give });
  return v.pipe(
    v.number(message),
    v.integer(message),
    v.minValue(min, message),
    v.maxValue(max, message),
    giving(give),
  );
}

/** A whole number from 0 to a most that need not be told. */
export function wholeFromZero(what: string, max: number) {
  return whole(what, 0, max, { give: 'at-least', unit: 'whole', from: 0 });
}

/** Any finite number: what a computed file may hold. */
export function finite(unit: Unit, give: Give = { give: 'number', unit }) {
  const message = numberRefusal({ what: 'finite number', give });
  return v.pipe(v.number(message), v.finite(message), giving(give));
}

/** `true` or `false`. */
export function flag(is: Phrase = 'true-or-false') {
  return v.pipe(
    v.boolean(refusal({ what: 'true or false', give: phrase('true-or-false') })),
    giving(phrase(is)),
  );
}

/**
 * One line of text of at most so many characters, without control characters. Characters are those of Unicode, as
 * JSON Schema counts them: an emoji is one, though JavaScript's own length makes it two.
 */
export function text(what: string, most: number, least = 0, give: Give = { give: 'text', least, most }) {
  const message = told((input) =>
    typeof input === 'number' || typeof input === 'boolean'
      ? { kind: 'not-text', given: input }
      : { kind: 'wrong-value', given: givenOf(input), what, give },
  );
  return v.pipe(
    v.string(message),
    v.regex(new RegExp(`^[^\\p{Cc}\\p{Cs}\\u2028\\u2029]{${least},${most}}$`, 'u'), message),
    giving(give),
  );
}

/** Text of a fixed form. */
export function formed(what: string, is: Phrase, form: RegExp) {
  const give = phrase(is);
  const message = refusal({ what, give });
  return v.pipe(v.string(message), v.regex(form, message), giving(give));
}

/** A time with its offset, RFC 3339. Whether any clock shows it, the rules say. */
export function instant() {
  return formed('time', 'time', /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(\.\d+)?([Zz]|[+-]\d{2}:\d{2})$/);
}

/** A list of at most so many entries. */
export function list<const Item extends v.GenericSchema>(item: Item, of: Entries, most: number, least = 0) {
  return v.pipe(
    v.array(item, refusal({ what: 'list', give: { give: 'list', of } })),
    v.minLength(
      least,
      told(() => ({ kind: 'empty-list', of, least })),
    ),
    v.maxLength(
      most,
      told((input) => ({ kind: 'long-list', count: (input as readonly unknown[]).length, most })),
    ),
    v.readonly(),
  );
}

/** One of a few numbers. */
export function oneOf<const Options extends readonly number[]>(options: Options, what: string, is: Phrase) {
  const give = phrase(is);
  return v.pipe(v.picklist(options, numberRefusal({ what, give })), giving(give));
}

/** A mark of a dial: text, or a number whose text is the mark. Which marks there are, the dial in use says. */
export function mark(is: Phrase) {
  const give = phrase(is);
  return v.pipe(
    v.union([v.string(), v.number()], refusal({ what: 'mark of the dial', give })),
    giving(give),
    v.transform(String),
  );
}

/** One of a few words. */
export function word<const Options extends readonly string[]>(options: Options) {
  return v.pipe(v.picklist(options, wordMessage(options)), giving({ give: 'word', words: options }));
}

/** That a value is none of a few words. */
export function wordMessage(words: readonly string[]): Message {
  return told((input) => {
    const nearest = typeof input === 'string' && words.length > 1 ? nearestWord(input, words) : undefined;
    return {
      kind: 'unknown-word',
      given: givenOf(input),
      words,
      ...(nearest === undefined ? {} : { nearest }),
    };
  });
}

/** The format of a file, `evenfall-shoot/1`. In one of a later number nothing is wrong but the program's age. */
export function format<const Format extends string>(ours: Format) {
  const message = told((input) =>
    isLater(input, ours)
      ? { kind: 'later-format', given: givenOf(input), ours }
      : { kind: 'unknown-word', given: givenOf(input), words: [ours] },
  );
  return v.pipe(v.picklist([ours], message), giving({ give: 'word', words: [ours] }));
}

function isLater(input: unknown, ours: string): boolean {
  const [name, number] = ours.split('/');
  const [, theirs, later] = typeof input === 'string' ? (/^([a-z-]+)\/(\d{1,3})$/.exec(input) ?? []) : [];
  return theirs === name && Number(later) > Number(number);
}

/** What sort of answer a file holds. It is always written; files from before there was one do without. */
export function kindOf<const Kind extends string>(kind: Kind) {
  return v.exactOptional(word([kind]));
}

/** Several shapes for one value. */
type Shapes = readonly v.GenericSchema[];

/**
 * One of several shapes. `pick` looks at the value and says which shape it was meant to have, so that an
 * error speaks of that shape alone; where it cannot tell, the error names them all.
 */
export function choice<const Options extends Shapes>(
  options: Options,
  right: Right,
  pick: (input: unknown) => Options[number] | undefined,
) {
  const any = v.union(options, refusal(right));
  return v.pipe(
    // Of nothing at all no shape is picked: that is how the published schema asks for all of them.
    v.lazy((input): Options[number] | typeof any => (input === undefined ? any : (pick(input) ?? any))),
    giving(right.give),
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
