// What the page makes of a file's text: a value with the lines of its keys, or nothing at all.

import { expect, test } from 'vitest';
import { parse, yamlOf } from '../../packages/web/src/yaml.js';

test('a value, and the line of every key', () => {
  const parsed = parse('place:\n  latitudeDeg: 57\nfilters:\n  - { name: A, stops: 3 }\n');
  expect(parsed?.value).toEqual({ place: { latitudeDeg: 57 }, filters: [{ name: 'A', stops: 3 }] });
  expect(parsed?.where(['place', 'latitudeDeg'])).toEqual({ line: 2 });
  expect(parsed?.where(['filters', 0, 'stops'])).toEqual({ line: 4 });
  expect(parse(yamlOf('{"date":"2026-09-12","aperture":"5.6"}'))?.value).toEqual({
    date: '2026-09-12',
    aperture: '5.6',
  });
});

test.each([
  ['a key given twice', 'date: 2026-09-12\ndate: 2026-09-13\n'],
  ['a key given twice, deep down', 'scene: { look: [{ a: 1, a: 2 }] }'],
  ['a group for a key', '? { a: 1 }\n: 2\n'],
  // Half a thousand of them kept the parser busy for twenty seconds.
  ['keys of keys', '? '.repeat(90)],
  ['keys of keys, very deep', '? '.repeat(500)],
  ['a stair of dashes', '- '.repeat(200)],
  [
    'aliases of aliases',
    Array.from({ length: 12 }, (_, i) => `a${i}: &a${i} [${i === 0 ? 'x' : `*a${i - 1}, `.repeat(9)}]`).join(
      '\n',
    ),
  ],
  ['a set', 'filters: !!set { a: null }\n'],
  ['an ordered map', 'camera: !!omap [iso: 1]\n'],
  ['a timestamp', 'date: !!timestamp 2026-09-12\n'],
  ['a tag of a key', '!!str date: 2026-09-12\n'],
  ['a tag of its own', 'title: !mine x\n'],
  ['a directive of another YAML', '%YAML 1.1\n---\nbulb: yes\n'],
  ['a directive of tags', '%TAG ! tag:x,2000:\n---\ntitle: x\n'],
  ['a brace not closed', 'place: { latitudeDeg: 57'],
  ['a well of brackets', '['.repeat(50_000)],
])('%s is nothing that can be read', (_name, text) => expect(parse(text)).toBeUndefined());
