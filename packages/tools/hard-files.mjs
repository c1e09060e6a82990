// Shoot files of every kind that may come in: sound, nearly sound, spoilt as text, and made to do harm. The same seed
// and number always give the same file.

import fc from 'fast-check';
import { shoots } from './any-shoot.mjs';

/** Numbers from 0 up to 1, by Mulberry32. */
function randomOf(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

function toolsOf(random) {
  const below = (count) => Math.floor(random() * count);
  return {
    random,
    below,
    chance: (share) => random() < share,
    // A copy, because what is picked may be spoilt in its turn.
    pick: (list) => structuredClone(list[below(list.length)]),
  };
}

/** A shoot file's value, sound. Heavy ones ask for all that a shoot may. */
function soundShoot(tools, heavy) {
  const kind = shoots({ heavy, able: tools.chance(0.7) });
  const [shoot] = fc.sample(kind, { seed: tools.below(2 ** 31), numRuns: 1 });
  // As a file holds it: its groups are plain objects.
  return JSON.parse(JSON.stringify(shoot));
}

const NUMBERS = [
  0,
  -0,
  -1,
  0.5,
  1e-9,
  5e-324,
  1e9,
  1e21,
  1.7e308,
  -1.7e308,
  2 ** 53,
  4294967296,
  0.1 + 0.2,
  1e7,
  1e-7,
];
const ODD_TEXTS = [
  '',
  ' ',
  'none',
  'null',
  '\u0000',
  '\u2028',
  '\ud800',
  'é'.repeat(41),
  '🌇'.repeat(61),
  'x'.repeat(5000),
  ' '.repeat(3000),
  '../../etc',
  '%s%n',
  '{{7*7}}',
  '1/0',
  '0/0',
  '1e999',
  '-0',
  'NaN',
  'Infinity',
  '2026-02-30',
  '2026-13-01T00:00:00Z',
  '٢٠٢٦',
  '<script>',
];
const ODD = [
  null,
  true,
  [],
  {},
  [[]],
  [null],
  { '': 1 },
  { nightEv: 1e308 },
  Array(1200).fill(0),
  { a: { b: { c: {} } } },
];
const ODD_KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '',
  ' ',
  'intervlaS',
  'INTERVALS',
  'a\nb',
  '🌇',
  'length',
  '0',
  'x'.repeat(300),
  '<<',
  'then',
  'toJSON',
];

/** Every group and list in a value. */
function holders(value, found = []) {
  if (typeof value !== 'object' || value === null) return found;
  found.push(value);
  for (const each of Object.values(value)) holders(each, found);
  return found;
}

/** Changes something in a value, in place. */
function spoilValue(tools, value) {
  const { pick, chance, below } = tools;
  const all = holders(value);
  const holder = all[below(all.length)];
  const keys = Object.keys(holder);
  const key = keys.length > 0 && chance(0.8) ? pick(keys) : pick(ODD_KEYS);
  const put = (key, value) =>
    Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
  if (Array.isArray(holder)) return void holder.push(pick([...NUMBERS, ...ODD_TEXTS, ...ODD]));
  const how = below(8);
  if (how === 0) delete holder[key];
  else if (how === 1 && keys.length > 0) {
    put(`${key.slice(1)}${key.slice(0, 1)}`, holder[key]);
    delete holder[key];
  } else if (how === 2) put(key, pick(ODD_TEXTS));
  else if (how === 3) put(key, pick(ODD));
  else if (how === 4 && typeof holder[key] === 'number')
    put(key, holder[key] * pick([-1, 1e-3, 1e3, 1e9, 1 + 2 ** -52]));
  else if (how === 5) put(key, JSON.stringify(holder[key]) ?? 'x');
  else put(key, pick(NUMBERS));
}

/** YAML of a value, in blocks, as people write it. */
function yamlOf(value, indent = '') {
  if (Array.isArray(value)) {
    if (value.length === 0) return ' []\n';
    return `\n${value.map((each) => `${indent}-${typeof each === 'object' && each !== null ? ` ${JSON.stringify(each)}\n` : ` ${scalar(each)}\n`}`).join('')}`;
  }
  if (typeof value !== 'object' || value === null) return ` ${scalar(value)}\n`;
  const lines = Object.entries(value).map(([key, each]) => {
    const name = /^\w+$/.test(key) ? key : JSON.stringify(key);
    return `${indent}${name}:${yamlOf(each, `${indent}  `)}`;
  });
  return lines.length === 0 ? ' {}\n' : `${indent === '' ? '' : '\n'}${lines.join('')}`;
}

function scalar(value) {
  if (typeof value === 'string')
    return /^[\w/.-]+$/.test(value) && !/^[\d.]+$/.test(value) ? value : JSON.stringify(value);
  if (Object.is(value, -0)) return '-0';
  return String(value);
}

function textOf({ below }, value) {
  const ways = [JSON.stringify, (each) => JSON.stringify(each, null, 2), yamlOf, yamlOf];
  return ways[below(ways.length)](value);
}

const PIECES = [
  '\t',
  '\r',
  '\r\n',
  '\n',
  '\n\n',
  ' ',
  '  ',
  ':',
  ': ',
  ',',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  ' #',
  '&a ',
  '*a',
  '!',
  '!!set ',
  '!!float ',
  '|',
  '>',
  '|-\n',
  '? ',
  '- ',
  '---\n',
  '...\n',
  '%YAML 1.1\n',
  '<<: *a\n',
  '\ufeff',
  '\u0000',
  '\u0085',
  '\u2028',
  '\u00a0',
  '.inf',
  '-.inf',
  '.nan',
  'NaN',
  '0x1F',
  '0o17',
  '1_000',
  '1e400',
  '~',
  '@',
  '`',
  '%',
  '=',
  ';',
  '🌇',
  '\ud800',
  'yes',
  '2026-09-12',
];

/** Text with a few cuts, repeats and pieces put in. */
function spoilText(tools, text) {
  const { below, pick, chance } = tools;
  let spoilt = text;
  for (let n = 1 + below(4); n > 0; n--) {
    const at = below(spoilt.length + 1);
    const to = Math.min(spoilt.length, at + 1 + below(chance(0.2) ? 200 : 6));
    const lines = spoilt.split('\n');
    const line = below(lines.length);
    const how = below(9);
    if (how < 3) spoilt = spoilt.slice(0, at) + pick(PIECES) + spoilt.slice(at);
    else if (how === 3) spoilt = spoilt.slice(0, at) + spoilt.slice(to);
    else if (how === 4) spoilt = spoilt.slice(0, to) + spoilt.slice(at);
    else if (how === 5) spoilt = [...lines.slice(0, line + 1), ...lines.slice(line)].join('\n');
    else if (how === 6)
      spoilt = lines.with(line, pick([' ', '\t', '   ', '']) + lines[line].trimStart()).join('\n');
    else if (how === 7) spoilt = spoilt.slice(0, at);
    else
      spoilt = spoilt.replaceAll(
        pick(['\n', ': ', ', ', '"', '  ']),
        pick(['\r', '\r\n', ':', ' ', '\t', "'", '“', '']),
      );
  }
  return spoilt;
}

const repeated = (piece, bytes) => piece.repeat(Math.ceil(bytes / piece.length));

/** Texts made to do harm, by name; `size` is about how long they are. */
const HARM = {
  laughs: ({ below }, size) => {
    const wide = 2 + below(9);
    const lines = ['a0: &a0 [x, x, x]'];
    for (let i = 1; i < 3 + Math.min(60, size / 100); i++)
      lines.push(
        `a${i}: &a${i} [${Array(wide)
          .fill(`*a${i - 1}`)
          .join(', ')}]`,
      );
    return lines.join('\n');
  },
  laughingGroups: (_, size) =>
    `x: &x { a: 1 }\n${Array.from({ length: size / 20 }, (_, i) => `k${i}: { <<: *x }`).join('\n')}`,
  selfAlias: () => 'look: &a [*a, *a]\nscene: &b { night: *b }\n',
  deepLists: ({ chance }, size) => repeated('[', size) + (chance(0.5) ? repeated(']', size) : ''),
  deepGroups: ({ chance }, size) =>
    repeated('{"a":', size) + (chance(0.5) ? `1${'}'.repeat(Math.ceil(size / 5))}` : ''),
  deepDashes: (_, size) => repeated('- ', size),
  deepIndents: (_, size) =>
    Array.from({ length: Math.sqrt(size) }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
  questions: (_, size) => repeated('? ', size),
  manyKeys: (_, size) => Array.from({ length: size / 10 }, (_, i) => `key${i}: ${i}`).join('\n'),
  manyTwins: (_, size) => repeated('date: 2026-09-12\n', size),
  manyReadings: (_, size) =>
    `readings:\n${repeated('  - { at: 2026-09-12T19:04:00+02:00, ev100: 1e99 }\n', size)}`,
  longList: (_, size) => `readings: [${repeated('0,', size)}]`,
  longText: ({ pick }, size) => `title: "${repeated(pick(['x', 'é', '🌇', '\\u0041', '\\n', ' ']), size)}"`,
  longMark: ({ pick }, size) => `camera: { aperture: "${repeated(pick([' ', '1', '1/', '.']), size)}" }`,
  longKey: (_, size) => `"${repeated('k', size)}": 1`,
  longNumber: (_, size) => `intervalS: ${repeated('9', size)}`,
  quotes: ({ pick }, size) => repeated(pick(['"', "'", '"a', "''", '"\\']), size),
  anchors: ({ pick }, size) => repeated(pick(['&a ', '*a ', '!a ', '!!map ', '&a\n', '%TAG ! x\n']), size),
  blanks: ({ pick }, size) =>
    repeated(pick(['\n', '\r', ' ', '\t', '\n\t', '\u2028', '\u0085', '#\n', '\ufeff', '\u0000']), size),
  documents: ({ pick }, size) => repeated(pick(['---\n', '...\n', '--- 1\n']), size),
  blocks: ({ pick }, size) => `title: ${pick(['|', '>', '|9', '>+'])}\n${repeated('  x y\n', size)}`,
  bytes: ({ below }, size) => Uint8Array.from({ length: Math.min(size, 20_000) }, () => below(256)),
  wideCharacters: (tools) => Buffer.from(`\ufeff${yamlOf(soundShoot(tools, false))}`, 'utf16le'),
  brokenUtf8: (tools) =>
    Buffer.concat([
      Buffer.from(yamlOf(soundShoot(tools, false))),
      Buffer.from([0xed, 0xa0, 0x80, 0xc0, 0xaf]),
    ]),
  emptiness: ({ pick }) => pick(['', ' ', '\n', '#', '---', '~', 'null', '""', '0', '[]', '{}', '\ufeff']),
};

/** A sound shoot with more frames than anybody has. */
function endlessShoot(tools) {
  const shoot = soundShoot(tools, false);
  return {
    ...shoot,
    intervalS: tools.pick([1e-3, 1e-5, 0.0086, 1e-300]),
    camera: { ...shoot.camera, gapS: 0 },
  };
}

/**
 * File `index` of the files of a seed.
 *
 * @param {number} seed
 * @param {number} index from 0
 * @returns {{ kind: string, content: string | Uint8Array }}
 */
export function hardFile(seed, index) {
  const tools = toolsOf(randomOf(Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)));
  const { random, pick, below } = tools;
  const sort = random();
  if (sort < 0.2) return { kind: 'sound', content: textOf(tools, soundShoot(tools, false)) };
  if (sort < 0.203) return { kind: 'heavy', content: textOf(tools, soundShoot(tools, true)) };
  if (sort < 0.21) return { kind: 'endless', content: textOf(tools, endlessShoot(tools)) };
  if (sort < 0.55) {
    const value = soundShoot(tools, false);
    for (let n = 1 + below(3); n > 0; n--) spoilValue(tools, value);
    return { kind: 'nearly sound', content: textOf(tools, value) };
  }
  if (sort < 0.85)
    return { kind: 'spoilt text', content: spoilText(tools, textOf(tools, soundShoot(tools, false))) };
  const name = pick(Object.keys(HARM));
  const size = random() < 0.01 ? 10_000_000 : random() < 0.02 ? 240_000 : 10 + below(20_000);
  const harm = HARM[name](tools, size);
  // Half of them inside a file that is otherwise sound.
  if (typeof harm !== 'string' || random() < 0.5) return { kind: `harm: ${name}`, content: harm };
  return { kind: `harm: ${name}`, content: `${yamlOf(soundShoot(tools, false))}${harm}\n` };
}
