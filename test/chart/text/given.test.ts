// What is no plan, no fact and no words is told in one line that names it, by every function.

import * as chart from '@evenfall/chart';
import { describe, expect, test } from 'vitest';
import { madePlan } from '../made-plan.js';

type Call = (...given: unknown[]) => unknown;

/** What a program gives that has lost its way: nothing, nothing by name, the same thing all over. */
const LOST: readonly (readonly unknown[])[] = [
  [],
  ...[undefined, null, 7, Number.NaN, 'x', {}, [], true].flatMap((value) => [[value], Array(4).fill(value)]),
];

const FUNCTIONS = Object.entries(chart).filter(([, value]) => typeof value === 'function') as [
  string,
  Call,
][];

test.each(FUNCTIONS)('%s given nothing, or nothing like it, answers or names what must be', (_, call) => {
  for (const args of LOST) {
    try {
      call(...args);
    } catch (error) {
      expect(error, JSON.stringify(args)).toBeInstanceOf(RangeError);
      expect((error as Error).message, JSON.stringify(args)).toMatch(/ must |no sentence|is not /);
    }
  }
});

describe('a slip that types would catch', () => {
  const plan = madePlan();
  const none = { ...plan, kind: 'infeasible' };
  test.each<[string, string, readonly unknown[], RegExp]>([
    [
      'cardPages',
      'a plan that cannot be shot',
      [none],
      /^plan must be one whose kind is "ok", got "infeasible"$/,
    ],
    ['planChart', 'its frames', [plan.frames], /^plan must be what planShoot or readPlan gives$/],
    [
      'cardPages',
      'paper that is none',
      [plan, { paper: 'a3' }],
      /^paper must be one of a6, a5, a4, letter, got a3$/,
    ],
    ['sheetMm', 'paper that is none', ['A4'], /^paper must be one of a6, a5, a4, letter, got A4$/],
    [
      'cardText',
      'a language in place of words',
      [plan, { words: 'de' }],
      /^words must be what wordsFor gives$/,
    ],
    ['wordsFor', 'a language that is none', [{ language: 'fr' }], /^language must be one of en, de, got fr$/],
    ['wordsFor', 'a clock that is none', [{ clock: '12' }], /^clock must be 12 or 24, got 12$/],
    [
      'reviewChart',
      'a plan in place of a review',
      [plan, plan.summary],
      /^review must be what reviewFrames gives$/,
    ],
    [
      'cardPages',
      'a plan without a frame',
      [{ ...plan, frames: [] }],
      /^plan must be what planShoot or readPlan gives$/,
    ],
    ['cardHtml', 'a plan without its cues', [{ ...plan, cues: undefined }], /^plan must be what planShoot/],
    [
      'cardPages',
      'paper in place of options',
      [plan, 'a5'],
      /^options must be a group with words, paper, dark$/,
    ],
    [
      'cardText',
      'a misspelt option',
      [plan, { wordz: 1 }],
      /^options must have no key "wordz"; there are words$/,
    ],
    [
      'planChart',
      'a variant that is none',
      [plan, { variant: 'light' }],
      /^variant must be one of print, .*, got light$/,
    ],
    ['planChart', 'a misspelt option', [plan, { variants: 'dark' }], /^options must have no key "variants"/],
    ['planChart', 'a width as text', [plan, { width: '800' }], /^width must be 300 to 10000, got "800"$/],
    ['wordsFor', 'a language alone', ['de'], /^options must be a group with language, clock$/],
    ['shutterEnds', 'no frame', [[]], /^frames must be one frame of a plan or more$/],
  ])('%s: %s', (name, _, args, said) => {
    const call = (chart as unknown as Readonly<Record<string, Call>>)[name]!;
    expect(() => call(...args)).toThrow(said);
    expect(() => call(...args)).toThrow(RangeError);
  });
});
