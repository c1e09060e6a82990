// Shoot files of every kind that may come in: sound, nearly sound, spoilt as text, and made to do harm. The same seed
// and number always give the same file.

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
    between: (low, high) => low + random() * (high - low),
    // A copy, because what is picked may be spoilt in its turn.
    pick: (list) => structuredClone(list[below(list.length)]),
  };
}

const SHUTTERS = [
  '60',
  '30',
  '15',
  '8',
  '4',
  '2',
  '1',
  '0.5',
  '1/4',
  '1/15',
  '1/60',
  '1/250',
  '1/1000',
  '1/4000',
  '1/8000',
];
const ISOS = [50, 100, 200, 400, 800, 1600, 3200, 6400, 12800, 25600, 51200, 102400];
const APERTURES = ['1', '1.4', '2', '2.8', '4', '5.6', '8', '11', '16', '22', '32'];

/** Two of a list, the first of them not after the second. */
function pair({ below }, list) {
  const [a, b] = [below(list.length), below(list.length)];
  return [list[Math.min(a, b)], list[Math.max(a, b)]];
}

const pad = (value, digits = 2) => String(value).padStart(digits, '0');

/** A shoot file's value, sound or nearly always so. Heavy ones ask for all that a shoot may. */
function soundShoot(tools, heavy) {
  const { between, below, chance, pick } = tools;
  // Mostly a camera that can do an evening; else any at all.
  const able = chance(0.7);
  const [longest, shortest] = able ? [pick(['30', '15', '8']), '1/8000'] : pair(tools, SHUTTERS);
  const [lowest, highest] = able ? [100, pick([6400, 25600])] : pair(tools, ISOS);
  const [widest, narrowest] = able ? [pick(['1.4', '2.8', '4']), '8'] : pair(tools, APERTURES);
  const direction = pick(['dusk', 'dawn']);
  const [from, to] = direction === 'dusk' ? [1, -1] : [-1, 1];
  const owned = chance(0.4) ? 0 : below(heavy ? 13 : 5);
  const date = `${1900 + below(300)}-${pad(1 + below(12))}-${pad(1 + below(28))}`;
  /** @type {Record<string, any>} */
  const shoot = {
    format: 'evenfall-shoot/1',
    ...(chance(0.3)
      ? {
          title: pick([
            'Dusk',
            'Lamps: the wall',
            "it's",
            '"Quoted"',
            '🌇 ø',
            'x'.repeat(120),
            '# no comment',
          ]),
        }
      : {}),
    place: {
      latitudeDeg: chance(0.1) ? pick([-90, 90, 0, 66.5]) : between(-75, 75),
      longitudeDeg: between(-180, 180),
      ...(chance(0.4)
        ? { timeZone: pick(['Europe/Lisbon', 'Asia/Kathmandu', 'UTC', 'Pacific/Apia', 'America/Caracas']) }
        : {}),
    },
    date,
    direction,
    intervalS: heavy ? pick([0.9, 1, 2, 5, 10, 20]) : pick([300, 600, 1200, 1800, 3600, 86_400]),
    camera: {
      ...(chance(0.3) ? { stepsPerStop: pick([2, 3]) } : {}),
      shutter: { shortest, longest },
      iso: { lowest, highest },
      aperture: chance(0.7) ? widest : { widest, narrowest },
      ...(chance(0.5) ? { gapS: heavy ? 0 : between(0, 5) } : {}),
      ...(chance(0.2) ? { darkFrame: true } : {}),
      ...(chance(0.15) ? { bulb: true } : {}),
      ...(chance(0.3)
        ? { frameMB: between(1, 100), cardGB: between(1, 1000), batteryFrames: 1 + below(3000) }
        : {}),
      ...(chance(0.2)
        ? { lens: { focalMm: between(8, 600) }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } }
        : {}),
    },
    ...(owned > 0
      ? {
          filters: Array.from({ length: owned }, (_, i) => ({
            name: `ND ${i + 1}`,
            ...pick([{ stops: between(0, 12) }, { density: between(0, 3) }, { factor: between(1, 2000) }]),
          })),
          stackFilters: chance(heavy ? 0.5 : 0.2),
        }
      : {}),
    ...(chance(0.5)
      ? {
          scene: {
            facing: pick(['toward-sun', 'side', 'away', { azimuthDeg: between(0, 360) }]),
            skyShare: between(0, 1),
            cloud: pick(['clear', 'thin', 'broken', 'overcast', 'heavy', { eighths: between(0, 8) }]),
            night: pick([
              'remote',
              'rural',
              'suburb',
              'town',
              'city',
              { zenithMagArcsec2: between(14, 23) },
              { groundLx: 1e-9 },
            ]),
            lamps: pick([
              'none',
              'street',
              'floodlit',
              'skyline',
              { ev100: between(-15, 25), share: between(0, 1) },
            ]),
          },
        }
      : {}),
    ...(chance(0.3)
      ? {
          look: pick([
            { nightEv: between(-10, 10) },
            [
              { sunAltitudeDeg: -10, offsetEv: -2 },
              { sunAltitudeDeg: 5, offsetEv: 1 },
            ],
          ]),
        }
      : {}),
    ...(chance(0.3)
      ? { span: { fromSunAltitudeDeg: from * between(0, 60), toSunAltitudeDeg: to * between(0.1, 60) } }
      : {}),
    ...(chance(0.3) ? { crew: 'rig' } : {}),
    ...(chance(0.3)
      ? {
          limits: {
            ...(chance(0.5) ? { toleranceEv: between(0.01, heavy ? 10 : 2) } : {}),
            ...(chance(0.5) ? { largestStepEv: between(0.1, 10) } : {}),
            ...(chance(0.5) ? { secondsBetweenCues: pick([0, 30, 600, 86_400]) } : {}),
            ...(chance(0.3) ? { maxFilterChanges: heavy ? below(101) : below(4) } : {}),
            ...(chance(0.3) ? { framesLostPerFilterChange: pick([0, 1, 5, 1000]) } : {}),
          },
        }
      : {}),
    ...(chance(0.15) ? { weights: { error: between(0, 1000), filterCue: between(0, 1000), iso: 0 } } : {}),
    ...(chance(0.2)
      ? {
          moves: [
            {
              axis: 'pan',
              by: pick([
                { deg: between(-400, 400) },
                { fromBearingDeg: 10, toBearingDeg: 200 },
                { sizeM: 30, distanceM: 80 },
              ]),
              mode: pick(['stopped', 'continuous']),
              gear: { topSpeedDegPerS: between(0.01, 50), settleS: between(0, 20) },
            },
          ],
        }
      : {}),
  };
  if (chance(0.08)) {
    // By the clock, half of them from one day into the next.
    const noon = Date.parse(`${date}T12:00:00Z`);
    const at = (hours) => new Date(noon + hours * 3_600_000).toISOString().replace('.000', '');
    shoot.place.timeZone = 'UTC';
    shoot.span = { startAt: at(between(0, 9)), endAt: at(between(4, heavy ? 30 : 14)) };
    shoot.readings = [{ at: at(2), ev100: between(-5, 15) }];
  }
  return shoot;
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
