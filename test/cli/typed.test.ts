// What a person types while following, read as the line that a program would send.

import { zoneOf } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { type Known, readTyped } from '../../packages/cli/src/typed.js';
import { eveningPlan } from './run.js';

const { shoot } = eveningPlan({
  filters: [
    { name: 'ND 1.8', density: 1.8 },
    { name: 'ND 6', stops: 6 },
  ],
});
const zone = zoneOf(shoot.place);
const at = (time: string) => Date.parse(`2026-09-12T${time}+02:00`);

const KNOWN: Known = {
  shoot,
  zone,
  nowMs: at('19:40:20'),
  nearMs: at('19:40:20'),
  frame: 12,
  setting: { shutter: '1/60', iso: 100, aperture: '5.6', filters: [] },
  cues: [
    { cue: 3, atMs: at('19:39:00') },
    { cue: 4, atMs: at('19:48:00') },
  ],
  lastCue: 2,
  filters: ['ND 1.8', 'ND 6'],
};

const told = (text: string, known = KNOWN) => {
  const read = readTyped(text, known);
  return read.kind === 'tell' ? read.told : read;
};

describe('times', () => {
  // Every way of writing 19:31 that we know of; ISO 8601, and how the British, French and Germans write it by hand.
  test.each([
    '19:31',
    '19.31',
    '19h31',
    '1931',
    '7:31 pm',
    '7:31pm',
    '7:31 PM',
    '07:31',
    '7:31',
    '19:31 Uhr',
  ])('%s before a reading', (time) => {
    expect(told(`${time} 9.9`)).toEqual({ at: '2026-09-12T19:31:00+02:00', jump: true, ev100: 9.9 });
  });
  test.each([
    ['19:31', '2026-09-12T19:31:00+02:00'],
    ['19:31:20', '2026-09-12T19:31:20+02:00'],
    ['8 pm', '2026-09-12T20:00:00+02:00'],
    ['00:10', '2026-09-13T00:10:00+02:00'],
    ['12:10 am', '2026-09-13T00:10:00+02:00'],
  ])('%s alone', (text, time) => {
    expect(told(text)).toMatchObject({ at: time });
  });
  test('nothing at all is now, to the second', () => {
    expect(told('')).toEqual({ at: '2026-09-12T19:40:20+02:00', jump: true });
  });
  test.each(['25:00 9', '19:61 9', '7:31 xm 9'])('%s is none', (text) => {
    expect(readTyped(text, KNOWN)).toEqual({ kind: 'wrong', fault: { wrong: 'unknown', given: text } });
  });
});

describe('readings', () => {
  const ev = (text: string, known = KNOWN) => {
    const answer = told(text, known);
    return 'ev100' in answer ? answer.ev100 : undefined;
  };
  test.each([
    ['9.9', 9.9],
    ['9,9', 9.9],
    ['-1.5', -1.5],
    ['ev 12', 12],
    ['17.31', 17.31], // alone it is no time
  ])('%s is EV %d', (text, value) => expect(ev(text)).toBe(value));
  // By hand, in APEX (ANSI PH2.5-1960): Tv of 1/60 is 6 and of 1/15 is 4 (exact 1/16), Av of f/5.6 is 5, each doubling of ISO
  // is one less, a filter of 6 stops six more.
  test.each([
    ['1/60', 11],
    ['1/15', 9],
    ['1/15s', 9],
    ['2s', 4],
    ['2"', 4],
    ['1/15 f/8', 10],
    ['1/15 f8 iso 400', 8],
    ['ISO400 1/15', 7],
  ])('%s is EV %d', (text, value) => expect(ev(text)).toBe(value));
  test('is of the scene before the filter', () => {
    expect(ev('1/15', { ...KNOWN, setting: { ...KNOWN.setting, filters: ['ND 6'] } })).toBe(15);
  });
  test('on another day asks for its time', () => {
    const rehearsal = { ...KNOWN, nowMs: undefined };
    expect(readTyped('9.9', rehearsal)).toEqual({ kind: 'wrong', fault: { wrong: 'time-needed' } });
    expect(told('19:31 9.9', rehearsal)).toMatchObject({ at: '2026-09-12T19:31:00+02:00' });
    expect(told('', rehearsal)).toEqual({ frame: 12 });
  });
});

test('reports are about the cue that was due, or the one that is named', () => {
  expect(told('done')).toMatchObject({ done: 3 });
  expect(told('fertig')).toMatchObject({ done: 3 });
  expect(told('Done 4')).toMatchObject({ done: 4 });
  expect(told('missed')).toMatchObject({ missed: 3 });
  expect(told('missed 2')).toMatchObject({ missed: 2 });
  expect(told('missed 19:39')).toMatchObject({ missed: '2026-09-12T19:39:00+02:00' });
  // Nothing due yet: the next one was done early, the last one was missed.
  const before = { ...KNOWN, nowMs: at('19:30:00') };
  expect(told('done', before)).toMatchObject({ done: 3 });
  expect(told('missed', before)).toMatchObject({ missed: 2 });
  expect(told('missed', { ...before, lastCue: undefined })).toEqual({
    kind: 'wrong',
    fault: { wrong: 'no-cue' },
  });
});

test('filters go by their name, or what of it says which one', () => {
  for (const text of ['lost ND 6', 'lost nd6', 'lost 6', 'verloren nd 6'])
    expect(told(text)).toMatchObject({ lost: 'ND 6' });
  expect(told('lost 1,8')).toMatchObject({ lost: 'ND 1.8' });
  const one = { ...KNOWN, shoot: { ...shoot, filters: shoot.filters.slice(0, 1) } };
  expect(told('lost nd', one)).toMatchObject({ lost: 'ND 1.8' });
  expect(readTyped('lost nd', KNOWN).kind).toBe('wrong');
  expect(told('found 6', { ...KNOWN, filters: [] })).toMatchObject({ kit: { filters: ['ND 6'] } });
  expect(readTyped('lost nd 3', KNOWN)).toEqual({
    kind: 'wrong',
    fault: { wrong: 'no-such-filter', given: 'nd 3', filters: ['ND 1.8', 'ND 6'] },
  });
});

test('the beginning of a word will do, in either language, where it is the beginning of no other', () => {
  for (const [text, kind] of [
    ['h', 'help'],
    ['hi', 'help'],
    ['n', 'ahead'],
    ['W', 'ahead'],
    ['u', 'undo'],
    ['z', 'undo'],
    ['s', 'sure'],
    ['si', 'sure'],
  ])
    expect(readTyped(text!, KNOWN), text).toEqual({ kind });
  expect(told('d')).toMatchObject({ done: 3 });
  expect(told('d 4')).toMatchObject({ done: 4 });
  expect(told('fe')).toMatchObject({ done: 3 });
  expect(told('m')).toMatchObject({ missed: 3 });
  expect(told('miss 2')).toMatchObject({ missed: 2 });
  expect(told('verp')).toMatchObject({ missed: 3 });
  expect(told('l 6')).toMatchObject({ lost: 'ND 6' });
  expect(told('fo 6', { ...KNOWN, filters: [] })).toMatchObject({ kit: { filters: ['ND 6'] } });
  expect(told('s 1/30')).toMatchObject({ setting: { shutter: '1/30' } });
  // Two words begin so; the evening ends by a whole word alone; "f8" is an aperture.
  for (const text of ['v', 'ver', 'f', 'e', 'en', 'qu', 'x'])
    expect(readTyped(text, KNOWN).kind, text).toBe('wrong');
  expect(readTyped('q', KNOWN)).toEqual({ kind: 'end' });
  expect(told('f 8')).toHaveProperty('ev100');
});

test('a report may have its time before it, and is of the cue that was due then', () => {
  expect(told('19:50 d')).toEqual({ at: '2026-09-12T19:50:00+02:00', jump: true, done: 4 });
  expect(told('19:41 missed')).toEqual({ at: '2026-09-12T19:41:00+02:00', jump: true, missed: 3 });
  expect(told('19:41 lost 6')).toEqual({ at: '2026-09-12T19:41:00+02:00', jump: true, lost: 'ND 6' });
  for (const text of ['19:41 undo', '19:41 q', '19:41 done x'])
    expect(readTyped(text, KNOWN).kind, text).toBe('wrong');
});

test('what the camera stands at is told by its marks', () => {
  expect(told('set 1/30 iso 200')).toMatchObject({ setting: { shutter: '1/30', iso: 200 } });
  // In thirds of a stop, half a second is one stop below 1 s and a third of one is nearest to five thirds below it.
  expect(told('set 1/2')).toMatchObject({ setting: { shutter: '0.5' } });
  expect(told('set 0.25s')).toMatchObject({ setting: { shutter: '1/4' } });
  expect(told('set 1/3')).toMatchObject({ setting: { shutter: '0.3' } });
  expect(told('set 1/35')).toMatchObject({ setting: { shutter: '1/35' } });
  expect(told('set f/8 nd 6')).toMatchObject({ setting: { aperture: '8', filters: ['ND 6'] } });
  expect(told('set bare')).toMatchObject({ setting: { filters: [] } });
  expect(readTyped('set', KNOWN).kind).toBe('wrong');
});

test.each(['done x', '9.9.9', 'nonsense', '1/15 f/8 and more', 'undo 3', 'f/0', 'iso 200', '9.9 8.8'])(
  '"%s" is not understood',
  (text) => expect(readTyped(text, KNOWN).kind).toBe('wrong'),
);
