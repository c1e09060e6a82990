// Following as lines of text: what is printed, and that no line ends the stream.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { followLines, type LinesState } from '../../../packages/core/src/follow/lines.js';
import { casesOf, seedOf } from '../../reference/cases.js';
import { frameOf, HAND, readingOf } from './evenings.js';

const SEED = 20260922;

interface Out {
  readonly frame?: number;
  readonly at?: string;
  readonly setting?: { readonly shutter: string; readonly iso: number; readonly filters: readonly string[] };
  readonly next?: readonly { readonly cue: number; readonly frame: number }[];
  readonly cue?: { readonly cue: number };
  readonly offsetEv?: number;
  readonly line?: number;
  readonly end?: boolean;
  readonly warnings?: readonly { readonly kind: string; readonly text: string }[];
}

const lines = followLines(HAND);

/** Lines in, parsed lines out, and the state after them. */
function run(input: readonly string[], from: LinesState = lines.start): { out: Out[]; state: LinesState } {
  let state = from;
  const out = input.flatMap((line) => {
    const step = lines.next(state, line);
    state = step.state;
    return step.out.map((text): Out => JSON.parse(text));
  });
  return { out, state };
}

const at = (frame: number) => frameOf(HAND, frame).at;
const ev = (frame: number, offsetEv = 0) => readingOf(HAND, frame, offsetEv).ev100;
const reading = (frame: number, offsetEv = 0) =>
  JSON.stringify({ at: at(frame), ev100: ev(frame, offsetEv) });
const kinds = ({ warnings }: Out) => warnings?.map(({ kind }) => kind);

test('a reading answers with the frame, its setting, the cues ahead and the offset', () => {
  const { out } = run([reading(0, -1)]);
  expect(out.length).toBe(1);
  const [line] = out;
  expect(Object.keys(line!)).toEqual(
    'kind frame at setting next taken offsetEv sceneEv100 lowEv100 highEv100 errorEv affected warnings'.split(
      ' ',
    ),
  );
  expect([line!.frame, line!.at]).toEqual([0, at(0)]);
  expect(Object.keys(line!.setting!)).toEqual(['shutter', 'shutterS', 'iso', 'aperture', 'filters']);
  expect(line!.offsetEv).toBeCloseTo(-1, 2);
  // Twenty minutes are 150 frames.
  expect(line!.next!.length).toBeGreaterThan(0);
  expect(line!.next!.every(({ frame }) => frame > 0 && frame < 150)).toBe(true);
  expect(line!.next!.map(({ cue }) => cue)).toEqual(line!.next!.map((_, i) => i + 1));
});

test('an evening a stop darker than forecast, read line by line: each cue told is one ahead of the last', () => {
  const { out, state } = run([...HAND.frames.map((_, i) => reading(i, -1)), '']);
  expect(out.length).toBe(900);
  const cues = out.flatMap(({ cue }) => (cue === undefined ? [] : [cue.cue]));
  expect(cues).toEqual(cues.map((_, i) => i + 1));
  expect(cues.length).toBeGreaterThan(40);
  const end: Out = JSON.parse(lines.end(state)[0]!);
  expect(end).toEqual({
    kind: 'end',
    end: true,
    lines: 901,
    linesNotUnderstood: 0,
    readingsUsed: 900,
    frame: 899,
    framesLeft: 0,
    cues: cues.length,
  });
});

test('"frame" alone asks for the setting; with "ev100" the reading is of its start', () => {
  const { out } = run(['{"frame": 3}', JSON.stringify({ frame: 4, ev100: ev(4, -0.5) })]);
  expect(out.map(({ frame }) => frame)).toEqual([3, 4]);
  expect(out[1]!.offsetEv).toBeCloseTo(-0.5, 1);
});

test('a meter that failed says null, and the line asks only', () => {
  const { out, state } = run([JSON.stringify({ at: at(5), ev100: null })]);
  expect([out[0]!.frame, out[0]!.offsetEv, state.readings]).toEqual([5, 0, 0]);
});

test('a reading that jumps three stops is doubted, and the setting stays', () => {
  const before = run(Array.from({ length: 50 }, (_, i) => reading(i)));
  const { out, state } = run([reading(50, 2.9), reading(51)], before.state);
  expect(out.map(kinds)).toEqual([['reading-doubted'], []]);
  expect(out[0]!.setting).toEqual(before.out.at(-1)!.setting);
  expect(state.readings).toBe(51);
});

test('a reading that jumps is used where the line is sure of it', () => {
  const before = run(Array.from({ length: 50 }, (_, i) => reading(i)));
  const sure = JSON.stringify({ ...JSON.parse(reading(50, 2.9)), sure: true });
  const { out } = run([sure, '{"frame":51,"sure":"yes"}'], before.state);
  expect(out[0]!.offsetEv).toBeCloseTo(2.9, 1);
  expect(kinds(out[0]!)).toEqual([]);
  expect(out[1]?.warnings?.[0]?.text).toContain('"sure" must be true or false, got "yes"');
});

test('a cue missed, reported late by number or by setting, is told again', () => {
  const frames = Array.from({ length: HAND.frames.length }, (_, i) => reading(i));
  const due = run(frames).out.findIndex(({ cue }) => cue?.cue === 3);
  const { state, out } = run(frames.slice(0, due + 1));
  const { setting } = out[due - 1]!;
  for (const report of [
    { frame: due + 6, missed: 3 },
    { frame: due + 6, setting },
  ]) {
    const bare = 'setting' in report ? { ...report, setting: { shutter: setting!.shutter } } : report;
    const [line] = run([JSON.stringify(bare)], state).out;
    expect(kinds(line!)).toEqual(['cue-missed']);
    expect(line!.cue?.cue).toBe(3);
  }
  const [done] = run([JSON.stringify({ done: 3, at: at(due + 4) })], state).out;
  expect(kinds(done!)).toEqual(['cue-late']);
});

test('the first cue may be missed or done as any other', () => {
  const frames = Array.from({ length: HAND.frames.length }, (_, i) => reading(i));
  const due = run(frames).out.findIndex(({ cue }) => cue?.cue === 1);
  const { state } = run(frames.slice(0, due + 1));
  expect(run([JSON.stringify({ frame: due + 6, missed: 1 })], state).out.map(kinds)).toEqual([
    ['cue-missed'],
  ]);
  expect(run([JSON.stringify({ frame: due + 1, done: 1 })], state).out.map(kinds)).not.toContain([
    'cue-unknown',
  ]);
  expect(run([JSON.stringify({ frame: due + 1, done: 1 })], state).out[0]).toHaveProperty('setting');
});

test('clocks that jump: far ahead is believed the second time, back the third time, and at once where the line means it', () => {
  const { out } = run([reading(200), reading(600), reading(601), reading(210), reading(211), reading(212)]);
  expect(out.map(({ frame }) => frame)).toEqual([200, 200, 601, 601, 601, 212]);
  expect(out.map((line) => kinds(line)![0])).toEqual([
    'joined-late',
    'jump-doubted',
    'clock-ahead',
    'clock-back',
    'clock-back',
    'clock-back',
  ]);
  const meant = run([reading(200), '{"frame":600,"jump":true}', '{"frame":210,"jump":true}']);
  expect(meant.out.map(({ frame }) => frame)).toEqual([200, 600, 210]);
});

test('a line twenty minutes ahead, or past all frames, takes no cue as done', () => {
  const before = run([reading(300), '{"frame":300}']);
  const { out } = run(['{"frame":450}', '{"frame":1e15}', '{"frame":301}'], before.state);
  expect(out.map(({ frame }) => frame)).toEqual([300, 300, 301]);
  expect(out.map(({ next }) => next?.[0]?.cue)).toEqual([1, 1, 1]);
});

test('a setting that no camera of the shoot has is told, and the line counts all the same', () => {
  const before = run([reading(0), reading(1)]);
  for (const [setting, why] of [
    [{ filters: ['ND 9'] }, 'filters ["ND 9"] are not among the shoot\'s: [], ["ND 1.8"]'],
    [{ shutter: '1/77' }, 'shutter "1/77" is not on the camera\'s dial'],
    [{ iso: 123 }, 'iso "123" is not on the camera\'s dial'],
    [{ aperture: 4.4 }, 'aperture "4.4" is not on the camera\'s dial'],
  ] as const) {
    const { out, state } = run([JSON.stringify({ at: at(2), ev100: ev(2), setting })], before.state);
    expect(out[0]!.frame).toBe(2);
    expect(out[0]!.warnings).toEqual([
      {
        kind: 'setting-unknown',
        unknown: [
          expect.objectContaining({
            given: why
              .split(' ')
              .slice(1)
              .join(' ')
              .match(/^(\[.*?\]|".*?")/)![0],
          }),
        ],
        text: `${why}: nothing of the setting is used.`,
      },
    ]);
    expect([state.readings, state.unread]).toEqual([3, 0]);
  }
});

const DEEP = 100_000;
const WRONG: readonly (readonly [string, string])[] = [
  [`${'['.repeat(4000)}${']'.repeat(4000)}`, 'nested more than 32 deep'],
  [`{"frame":${'['.repeat(33)}`, 'nested more than 32 deep'],
  [`${'{"a":'.repeat(2000)}1${'}'.repeat(2000)}`, 'nested more than 32 deep'],
  [`{"frame":3${' '.repeat(DEEP)}}`, 'more than 16000 characters'],
  [`{"setting":{"filters":["${'x'.repeat(DEEP)}"]}}`, 'more than 16000 characters'],
  ['['.repeat(DEEP), 'more than 16000 characters'],
  [' '.repeat(DEEP), 'more than 16000 characters'],
  [`{"${'k'.repeat(10_000)}":1}`, '"kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkk …'],
  ['{"frame":5,"jump":1}', '"jump" must be true or false, got 1'],
  ['{"frame":5,"__proto__":{}}', '"__proto__" is not a key of the line'],
  ['{"frame":5,"ev100":-1e999}', '"ev100" must be a number'],
  ['\u0000', 'not one JSON object'],
  ['\ufffd\ufffd{"frame":5}', 'not one JSON object'],
  ['{"setting":{"filters":[[[[[[]]]]]]}}', '"filters" must be a list of filter names'],
  ['{"frame": 3', 'not one JSON object: {"frame": 3'],
  ['hello', 'not one JSON object: hello'],
  ['7', 'the line must be a JSON object, got 7'],
  ['[]', 'the line must be a JSON object, got []'],
  ['null', 'the line must be a JSON object, got null'],
  [
    '{}',
    'the line is empty; give one of at, frame, ev100, bound, sure, setting, lost, kit, done, missed, jump. N',
  ],
  ['{"ev": 12}', '"ev" is not a key of the line; the nearest is "at"'],
  ['{"ev100": 12}', '"ev100" needs to know when: give "at" or "frame" beside it'],
  ['{"at": "19:05", "ev100": 12}', '"at" must be a time such as "2026-11-25T17:03:20+01:00", got "19:05"'],
  ['{"at": "2026-09-22T19:05:00", "ev100": 12}', '"at" must be a time such as'],
  ['{"frame": -1}', '"frame" must be a whole number from 0, got -1'],
  ['{"frame": 1e300}', '"frame" must be a whole number from 0, got 1e+300'],
  ['{"frame": 5, "ev100": "12"}', '"ev100" must be a number, got "12"'],
  ['{"frame": 5, "ev100": 1e999}', '"ev100" must be a number, got null'],
  ['{"done": 0}', '"done" must be a whole number from 1, got 0'],
  ['{"setting": {"iso": "100"}}', '"iso" must be a number, got "100"'],
  ['{"setting": {"ISO": 100}}', '"ISO" is not a key of "setting"; the nearest is "iso"'],
  ['{"setting": {"filters": "ND 1.8"}}', '"filters" must be a list of filter names, empty for the bare lens'],
];

for (const [line, why] of WRONG) {
  test(`one bad line changes nothing and says why: ${line.slice(0, 60)}`, () => {
    const before = run([reading(0), reading(1)]);
    const { out, state } = run([line], before.state);
    expect(out.length).toBe(1);
    expect(out[0]!.line).toBe(3);
    expect(kinds(out[0]!)).toEqual(['bad-line']);
    expect(out[0]!.warnings![0]!.text).toContain(`Line 3: ${why}`);
    expect(out[0]!.warnings![0]!.text).toContain('Nothing is changed.');
    expect(out[0]!.warnings![0]!.text.length).toBeLessThan(300);
    expect(state).toEqual({ ...before.state, lines: 3, unread: 1 });
    expect(run([reading(2)], state).out[0]!.frame).toBe(2);
  });
}

test('blank lines are passed over; a byte order mark and a line break do no harm', () => {
  const { out, state } = run(['', '  ', '\uFEFF{"frame": 2}\r\n']);
  expect(out.map(({ frame }) => frame)).toEqual([2]);
  expect([state.lines, state.unread]).toEqual([3, 0]);
});

test('the end of an input without a line says so', () => {
  expect(lines.end(lines.start).map((text): unknown => JSON.parse(text))).toEqual([
    { kind: 'end', end: true, lines: 0, linesNotUnderstood: 0, readingsUsed: 0, framesLeft: 900, cues: 0 },
  ]);
});

test('whatever comes down the pipe, each line is answered by at most one line of JSON', () => {
  const frame = fc.integer({ min: -2, max: 960 });
  const cue = fc.integer({ min: 0, max: 60 });
  const line = fc.oneof(
    fc.record({ frame, ev100: fc.double({ min: -20, max: 30 }) }, { requiredKeys: ['frame'] }),
    fc.record({
      at: frame.map((i) => at(Math.min(899, Math.max(0, i)))),
      ev100: fc.integer({ min: -3, max: 16 }),
    }),
    fc.record({ frame: fc.oneof(fc.maxSafeInteger(), fc.double()), ev100: fc.double() }),
    fc.record({ frame, jump: fc.boolean() }),
    fc.record({ done: cue, frame }, { requiredKeys: ['done'] }),
    fc.record({ missed: cue, frame }, { requiredKeys: ['missed'] }),
    fc.record({
      frame,
      setting: fc.record(
        {
          shutter: fc.constantFrom('1/60', '1/4000', '6', '30', 'x'),
          iso: fc.constantFrom(50, 100, 800, 12800, 7),
          aperture: fc.constantFrom('4', '5.6', 4),
          filters: fc.constantFrom([], ['ND 1.8'], ['?']),
        },
        { requiredKeys: [] },
      ),
    }),
    fc.jsonValue(),
  );
  let answered = 0;
  fc.assert(
    fc.property(
      fc.array(
        fc.oneof(
          line.map((value) => JSON.stringify(value)),
          fc.string(),
          fc.string({ unit: 'binary' }),
          // Sound text with a stretch of it told again, cut out or nested.
          fc.tuple(line, fc.nat(40), fc.nat(40)).map(([value, from, to]) => {
            const text = JSON.stringify(value);
            return `${text.slice(0, from)}${text.slice(to)}`;
          }),
          fc.nat(6000).map((deep) => `{"frame":${'['.repeat(deep)}1${']'.repeat(deep)}}`),
        ),
        { maxLength: 12 },
      ),
      (input) => {
        const { state, out } = run(input);
        expect(state.lines).toBe(input.length);
        expect(out.length).toBeLessThanOrEqual(input.length);
        for (const each of out) {
          if (each.frame === undefined) expect(kinds(each)).toEqual(['bad-line']);
          else {
            answered++;
            expect(each.frame).toBeGreaterThanOrEqual(0);
            expect(each.frame).toBeLessThan(900);
            expect(Number.isFinite(each.offsetEv)).toBe(true);
          }
        }
      },
    ),
    { seed: seedOf(SEED), numRuns: casesOf(100) },
  );
  expect(answered).toBeGreaterThan(50);
});

test('a warning carries its values, EVs and degrees to a thousandth', () => {
  // Both readings are as forecast, so the forecast is what is expected.
  const before = run([reading(0), reading(1)]);
  const warned = (offsetEv: number) => {
    const line = JSON.stringify({ at: at(2), ev100: ev(2, offsetEv) });
    return run([line], before.state).out[0]!.warnings;
  };
  const doubted = warned(2.123456);
  expect(doubted).toMatchObject([
    { kind: 'reading-doubted', ev100: toThousandth(ev(2, 2.123456)), differsEv: expect.closeTo(2.12, 1) },
  ]);
  const refused = warned(-13.123456);
  const because = { reason: 'impossible', ev100: toThousandth(ev(2, -13.123456)) };
  expect(refused).toMatchObject([{ kind: 'reading-impossible', because }]);
  expect(JSON.stringify([doubted, refused])).not.toMatch(/\d\.\d{4}/);
});

const toThousandth = (value: number) => Number(value.toFixed(3));
