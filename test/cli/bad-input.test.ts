// Wrong files and arguments: one line on standard error, exit status 1, and no file left behind.

import { linkSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { EVENING, evenfall, folder, IMPOSSIBLE } from './run.js';

const TAGGED =
  'a tag stands before a value, a word that begins with "!"; leave it out, or put text in quotes';

/** Where a parser stumbled the line is shown below; a tab in it can be seen. */
function shownOf(text: string, message: string): string {
  const [, line] = /^(\d+): not readable/.exec(message) ?? [];
  if (line === undefined) return '';
  const shown = text.split('\n')[Number(line) - 1]!.trimEnd().slice(0, 60).replaceAll('\t', '\\u0009');
  return shown === '' ? '' : `  ${line} | ${shown}\n`;
}

describe('a wrong shoot file is told with its line', () => {
  test.each([
    [
      'a latitude of 95',
      ['latitudeDeg: 57.05', 'latitudeDeg: 95'],
      '5: place.latitudeDeg: 95 is not a latitude; give degrees from -90 to 90',
    ],
    [
      'a latitude that is no number',
      ['latitudeDeg: 57.05', 'latitudeDeg: .nan'],
      '5: place.latitudeDeg: NaN is not a latitude; give degrees from -90 to 90',
    ],
    [
      'a mistyped key',
      ['intervalS: 60', 'intervlaS: 60'],
      '8: intervlaS: no such key; the nearest is "intervalS"',
    ],
    [
      'a key without a value',
      ['date: 2026-09-12', 'date:'],
      '7: date: nothing is not a date; give a date as YYYY-MM-DD',
    ],
    [
      'a missing key',
      ['longitudeDeg: 9.92', 'elevationM: 0'],
      '4: place.longitudeDeg: missing; give degrees from -180 to 180',
    ],
    [
      'an aperture off the dial',
      ['aperture: 5.6', 'aperture: 5.7'],
      '12: camera.aperture: "5.7" is not on the aperture dial in thirds; the nearest marks are "5.6" and "6.3"',
    ],
    [
      'an entry of a list',
      ['density: 1.8', 'density: 18'],
      '17: filters[0].density: 18 is not a density; give an optical density from 0 to 9',
    ],
    [
      'an interval too short',
      ['intervalS: 60', 'intervalS: 1'],
      '8: intervalS: 1 is too short for the shortest shutter, "1/4000", and a gap of 1 s; give 1.001 or more',
    ],
    [
      'a key given twice',
      ['date: 2026-09-12', 'intervalS: 7'],
      '8: not readable as YAML or JSON: a key stands twice; give it once',
    ],
    [
      'a tab for an indent',
      ['  longitudeDeg', '\tlongitudeDeg'],
      '6: not readable as YAML or JSON: a tab stands for an indent; give spaces',
    ],
    [
      'a tag nobody knows',
      ['title: ', 'title: !!js/function '],
      '3: not readable as YAML or JSON: text that begins with "!" needs quotes',
    ],
  ])('%s', async (_name, [from, to], message) => {
    expect(EVENING).toContain(from);
    const text = EVENING.replace(from!, to!);
    const dir = folder({ 'evening.yaml': text });
    expect(await evenfall(['plan', dir.at('evening.yaml')])).toEqual({
      status: 1,
      out: '',
      err: `evenfall: evening.yaml:${message}\n${shownOf(text, message)}`,
    });
  });

  test('a fraction needs no quotes, and a number with leading zeros is that number', async () => {
    const dir = folder({ 'evening.yaml': EVENING.replace('lowest: 100', 'lowest: 0100') });
    const { status, out } = await evenfall(['plan', dir.at('evening.yaml'), '--json']);
    expect(status).toBe(0);
    const { camera } = JSON.parse(out).shoot;
    expect(camera.shutter.shortest).toBe('1/4000');
    expect(camera.iso.lowest).toBe(100);
  });

  test('two faults are two lines, in the order of the file', async () => {
    const dir = folder({ 'evening.yaml': EVENING.replace('aperture', 'apperture').replace('57.05', '95') });
    const { err } = await evenfall(['plan', dir.at('evening.yaml')]);
    expect(err.trimEnd().split('\n')).toEqual([
      'evenfall: evening.yaml:5: place.latitudeDeg: 95 is not a latitude; give degrees from -90 to 90',
      'evenfall: evening.yaml:12: camera.apperture: no such key; the nearest is "aperture"',
    ]);
  });

  test.each([
    ['binary', new Uint8Array([0xff, 0xfe, 0x00, 0x61]), ' not readable as text; save it as UTF-8'],
    ['huge', `# ${'x'.repeat(1_000_000)}`, ' is too long for a shoot file; give one of at most 250 kB'],
    ['a well of brackets', '['.repeat(50_000), ' not readable as YAML or JSON: nested too deep'],
    ['a stair of dashes', '- '.repeat(200), ' not readable as YAML or JSON: nested too deep'],
    [
      'a stair of keys',
      Array.from({ length: 150 }, (_, i) => `${' '.repeat(i)}a:\n`).join(''),
      ' not readable as YAML or JSON: nested too deep',
    ],
    [
      'keys of keys',
      '? '.repeat(90),
      '1: not readable as YAML or JSON: a group or a list stands where a key belongs; give a word',
    ],
    [
      'eighty thousand groups',
      `a: [${'{},'.repeat(80_000)}{}]`,
      ' not readable as YAML or JSON: holds more values than a shoot file may; give a file as its format says',
    ],
    ['aliases of aliases', bomb(), ' not readable as YAML or JSON: nested too deep'],
  ])('a file that is %s', async (_name, content, message) => {
    const dir = folder({ 'evening.yaml': content });
    expect(await evenfall(['plan', dir.at('evening.yaml')])).toEqual({
      status: 1,
      out: '',
      err: `evenfall: evening.yaml:${message}\n${typeof content === 'string' ? shownOf(content, message) : ''}`,
    });
  });

  test('an empty file', async () => {
    const dir = folder({ 'evening.yaml': '# nothing yet\n' });
    const { status, err } = await evenfall(['plan', dir.at('evening.yaml')]);
    expect(status).toBe(1);
    expect(err).toMatch(/^evenfall: evening\.yaml: nothing stands where keys belong; give format, /);
  });

  test('a missing file and a folder', async () => {
    const dir = folder();
    const missing = dir.at('none.yaml');
    expect((await evenfall(['plan', missing])).err).toBe(
      `evenfall: ${missing}: cannot be read: there is no such file or folder; check the path\n`,
    );
    expect((await evenfall(['plan', dir.at('')])).err).toBe(
      `evenfall: ${dir.at('')}: cannot be read: that is a folder; give a file\n`,
    );
  });
});

test.each([
  [
    ['card', '-', '-o', 'card.txt', '--paper', 'a4', '--dark'],
    '-o card.txt: --paper and --dark',
    'in this kind of file',
  ],
  [['cues', '-', '-o', 'cues.csv', '--ahead', '30'], '-o cues.csv: --ahead', 'in this kind of file'],
  [['cues', '-', '-o', 'cues.json', '--language', 'en'], '-o cues.json: --language', 'in this kind of file'],
  [['light', '-', '-o', 'light.json', '--clock', '12'], '-o light.json: --clock', 'in this kind of file'],
  [['light', '-', '--dark'], '--dark', 'on the screen'],
])('an option that would change nothing is refused: %j', async (argv, options, where) => {
  expect(await evenfall(argv, EVENING)).toEqual({
    status: 1,
    out: '',
    err: `evenfall: ${options} would change nothing ${where}; leave it out\n`,
  });
});

// What a person types, and what would be right: none is left to the parser's own words.
describe('a usual slip of YAML is told by what would be right', () => {
  test.each([
    [
      'no space after a colon',
      ['date: 2026', 'date:2026'],
      '7: … a space is missing after "date:"; give "date: 2026-09-12"',
    ],
    [
      '= for a colon',
      ['intervalS: 60', 'intervalS = 60'],
      '8: … "=" stands where a colon belongs; give "intervalS: 60"',
    ],
    [
      'no colon',
      ['intervalS: 60', 'intervalS 60'],
      '8: … a colon is missing after "intervalS"; give "intervalS: 60"',
    ],
    ['a brace not closed', ['3200 }', '3200'], '11: … a { is not closed; give a } where its group ends'],
    ['a brace too many', ['3200 }', '3200 }}'], '11: … a } too many; leave it out'],
    [
      'a bracket not closed',
      ['filters:\n  -', 'filters: ['],
      '16: … a [ is not closed; give a ] where its group ends',
    ],
    ['a quote not closed', ['gulls"', 'gulls'], '3: … text in " is not closed; give another " after it'],
    [
      'a quote not closed in braces',
      ['shortest: 1', 'shortest: "1'],
      '10: … text in " is not closed; give another " after it',
    ],
    [
      'no comma',
      ['100, highest', '100 highest'],
      '11: … two entries are not parted; give a comma between them',
    ],
    [
      'a line out of line',
      ['  frameMB', '    frameMB'],
      '13: … the line does not begin below its neighbours; indent it as they are',
    ],
    [
      'a line too far left',
      ['  frameMB', ' frameMB'],
      '13: … the line does not begin below its neighbours; indent it as they are',
    ],
    [
      'no space after a dash',
      ['  - {', '  -{'],
      '17: … a space is missing after "-"; give "- " before an entry of a list',
    ],
    [
      'a colon in a text',
      ['title: "Slipway & gulls"', 'title: Dusk: gulls'],
      '3: … a colon stands in a text; put the text in quotes',
    ],
    // YAML 1.2.2, 6.9.1 and 6.8: what a tag or a directive makes of a value is another sort of it.
    ...['!!set { a: null }', '!!omap [a: 1]', '!!timestamp 2026-09-12', '!!str x'].map(
      (value): [string, [string, string], string] => [
        `a value with a tag, ${value}`,
        ['"Slipway & gulls"', value],
        `3: … ${TAGGED}`,
      ],
    ),
    [
      'a directive',
      ['# a quick evening', '%YAML 1.1\n---'],
      '1: … a directive stands before the file, a line that begins with "%"; leave it out',
    ],
    [
      'a text that begins with a star',
      ['"Slipway & gulls"', '*dusk*'],
      '3: … text that begins with "*" or "&" needs quotes',
    ],
    [
      'a text that begins with @',
      ['"Slipway & gulls"', '@home'],
      '3: … text that begins with "@" needs quotes',
    ],
    [
      'no space before a comment',
      ['3200 }', '3200 }# high'],
      '11: … a space is missing before "#"; give one',
    ],
    [
      'a backslash in quotes',
      ['Slipway & ', 'Slipway \\q'],
      '3: … a "\\" in double quotes begins an escape; give single quotes',
    ],
    [
      'a decimal comma',
      ['9.92', '9,92'],
      '6: place.longitudeDeg: "9,92" is not a longitude; give degrees from -180 to 180, with a point: 9.92',
    ],
    [
      'a unit',
      ['intervalS: 60', 'intervalS: 60 m'],
      '8: intervalS: "60 m" is not an interval; give seconds above 0, at most 86400, without a unit',
    ],
    [
      'no space after a colon in braces',
      ['lowest: 100', 'lowest:100'],
      '11: camera.iso."lowest:100": no such key; give "lowest: 100", with a space after the colon',
    ],
    [
      'a decimal comma in braces',
      ['density: 1.8', 'density: 1,8'],
      '17: filters[0].8: no such key; where a number was cut at its comma, give a point',
    ],
    [
      'a filter without its strength',
      [', density: 1.8', ''],
      '17: filters[0]: a group of keys is not a filter; give a name and one of stops, density, factor',
    ],
  ])('%s', async (_name, [from, to], message) => {
    expect(EVENING).toContain(from);
    const text = EVENING.replace(from!, () => to!);
    const { status, err } = await evenfall(['plan', '-'], text);
    const told = message.replace('…', 'not readable as YAML or JSON:');
    expect(status).toBe(1);
    expect(err).toBe(`evenfall: standard input:${told}\n${shownOf(text, told)}`);
  });
});

test('a rule of dashes is no nesting', async () => {
  const { status } = await evenfall(
    ['plan', '-'],
    `# ${'['.repeat(90)}\n${EVENING}# ${'- '.repeat(150)}\n#${'-'.repeat(150)}\n`,
  );
  expect(status).toBe(0);
});

test('a size of paper may be written in capitals', async () => {
  const dir = folder({ 'evening.yaml': EVENING });
  const argv = [
    'card',
    dir.at('evening.yaml'),
    '-o',
    dir.at('card.html'),
    '--paper',
    'A4',
    '--language',
    'DE',
  ];
  expect((await evenfall(argv)).err).toBe('');
  expect(dir.names()).toContain('card.html');
});

describe('wrong arguments are told in one line', () => {
  test.each([
    [['plna', 'x.yaml'], "unknown command 'plna' (Did you mean plan?)"],
    [['plan'], 'no shoot is given; give a shoot file, or a place with --at'],
    [['plan', 'a.yaml', 'b.yaml'], "too many arguments for 'plan'. Expected 1 argument but got 2."],
    [['plan', '--jsno', 'a.yaml'], "unknown option '--jsno' (Did you mean --json?)"],
    [['card', 'a.yaml'], "required option '-o, --output <file>' not specified"],
    [
      ['card', 'a.yaml', '-o', 'card.docx'],
      '-o card.docx: ends in ".docx", which is not known here; give a file ending in .pdf, .svg, .html, .txt',
    ],
    [['chart', 'a.yaml', '-o', 'chart'], '-o chart: has no ending; give a file ending in .svg, .pdf'],
    [
      ['card', 'a.yaml', '-o', 'card.pdf', '--paper', 'a3'],
      "option '--paper <size>' argument 'a3' is invalid. Allowed choices are a6, a5, a4, letter.",
    ],
    [
      ['card', 'a.yaml', '-o', 'card.pdf', '--clock', '13'],
      "option '--clock <hours>' argument '13' is invalid. Allowed choices are 12, 24.",
    ],
    [
      ['card', 'a.yaml', '-o', 'card.pdf', '--language', 'xx'],
      "option '--language <code>' argument 'xx' is invalid. Allowed choices are en, de.",
    ],
    [
      ['plan', 'a.yaml', '-o', 'x.constructor'],
      '-o x.constructor: ends in ".constructor", which is not known here; give a file ending in .json, .csv',
    ],
    [
      ['cues', 'a.yaml', '-o', 'x.ics', '--ahead', '-5'],
      "option '--ahead <seconds>' argument '-5' is invalid. Give seconds from 0 to 86400.",
    ],
    [
      ['cues', 'a.yaml', '-o', 'x.ics', '--ahead', 'soon'],
      "option '--ahead <seconds>' argument 'soon' is invalid. Give seconds from 0 to 86400.",
    ],
  ])('%j', async (argv, message) => {
    expect(await evenfall(argv)).toEqual({ status: 1, out: '', err: `evenfall: ${message}\n` });
  });
});

describe('an output that cannot be written leaves nothing behind', () => {
  test('in a folder that is not there', async () => {
    const dir = folder({ 'evening.yaml': EVENING });
    const path = dir.at('none/card.pdf');
    const { status, err } = await evenfall(['card', dir.at('evening.yaml'), '-o', path]);
    expect(status).toBe(1);
    expect(err).toBe(
      `evenfall: ${path}: cannot be written: there is no such file or folder; check the path\n`,
    );
    expect(dir.names()).toEqual(['evening.yaml']);
  });

  test('where a file stands for a folder', async () => {
    const dir = folder({ 'evening.yaml': EVENING });
    const path = dir.at('evening.yaml/plan.json');
    const { status, err } = await evenfall(['plan', dir.at('evening.yaml'), '-o', path]);
    expect(status).toBe(1);
    expect(err).toMatch(/evening\.yaml\/plan\.json: cannot be written: .*; check the path\n$/);
    expect(dir.names()).toEqual(['evening.yaml']);
  });

  test('over a folder', async () => {
    const dir = folder({ 'evening.yaml': EVENING });
    const { mkdirSync } = await import('node:fs');
    mkdirSync(dir.at('plan.json'));
    const { status, err } = await evenfall(['plan', dir.at('evening.yaml'), '-o', dir.at('plan.json')]);
    expect(status).toBe(1);
    expect(err).toBe(`evenfall: ${dir.at('plan.json')}: cannot be written: that is a folder; give a file\n`);
    expect(dir.names()).toEqual(['evening.yaml', 'plan.json']);
  });

  test('over the shoot file itself', async () => {
    const json = JSON.stringify({ format: 'evenfall-shoot/1' });
    const dir = folder({ 'evening.json': json });
    const path = dir.at('evening.json');
    expect((await evenfall(['plan', path, '-o', path])).err).toBe(
      `evenfall: -o ${path}: is the shoot file itself; give another name\n`,
    );
  });

  test.each(['as a link', 'as another name of it', 'as a page of its own'])(
    'over the shoot, %s',
    async (how) => {
      const json = JSON.stringify(parse(EVENING));
      const dir = folder({ 'card-1.svg': json });
      const path = dir.at('card-1.svg');
      let output = dir.at('card.svg');
      if (how !== 'as a page of its own') {
        output = dir.at('card.html');
        (how === 'as a link' ? symlinkSync : linkSync)(path, output);
      }
      const { status, out, err } = await evenfall(['card', path, '-o', output]);
      expect({ status, out }).toEqual({ status: 1, out: '' });
      expect(err).toMatch(/: is the shoot file itself; give another name\n$/);
      expect(readFileSync(path, 'utf8')).toBe(json);
    },
  );

  test('a name that would move the cursor is shown, not done', async () => {
    const dir = folder();
    const path = dir.at('a\u001b[2Jb\u202e.yaml');
    const { err } = await evenfall(['plan', path]);
    expect(err).toBe(
      `evenfall: ${dir.at('a\\u001b[2Jb\\u202e.yaml')}: cannot be read: there is no such file or folder; check the path\n`,
    );
    writeFileSync(path, EVENING);
    const { out } = await evenfall(['plan', path]);
    expect(out).toContain('\\u001b[2Jb\\u202e.yaml');
    for (const character of ['\u001b', '\u202e']) expect(out).not.toContain(character);
    const written = await evenfall(['card', path, '-o', `${path}.txt`]);
    expect(written.out).toBe(`wrote ${dir.at('a\\u001b[2Jb\\u202e.yaml.txt')}\n`);
  });

  test('one page of many stands in the way: no page is written', async () => {
    const dir = folder({ 'evening.yaml': EVENING });
    const { mkdirSync } = await import('node:fs');
    mkdirSync(dir.at('card-2.svg'));
    const { status } = await evenfall(['card', dir.at('evening.yaml'), '-o', dir.at('card.svg')]);
    expect(status).toBe(1);
    expect(dir.names()).toEqual(['card-2.svg', 'evening.yaml']);
  });
});

describe('a shoot that no ramp can do', () => {
  test('is told with its remedies, status 2', async () => {
    const { status, out, err } = await evenfall(['plan', '-'], IMPOSSIBLE);
    expect({ status, err }).toEqual({ status: 2, err: '' });
    const told = out.split('Any one of')[0]!.replaceAll('\n', ' ');
    // What happens comes first: when, which frame, by how much, and the nearest cure.
    expect(told).toMatch(
      / {2}From frame \d+ \(\d\d:\d\d:\d\d\) on the scene is too dark for this kit, by \d+\.\d stops at the most\. Nearest cure: [A-Z]/,
    );
    // Once, not again in other words.
    expect(told.match(/too dark|frame \d/g)).toHaveLength(2);
    expect(out.split('Any one of these would do\n')[1]).toMatch(/^( {2}- .*\n( {4}.*\n)*)+$/);
  });

  test('is an infeasible plan file for a program, status 2', async () => {
    const { status, out } = await evenfall(['plan', '-', '--json'], IMPOSSIBLE);
    expect(status).toBe(2);
    expect(JSON.parse(out).infeasible).toMatchObject({ reason: 'too-dark' });
  });

  test.each(['card.pdf', 'card.txt'])('writes no %s', async (name) => {
    const dir = folder({ 'evening.yaml': IMPOSSIBLE });
    const { status, out, err } = await evenfall(['card', dir.at('evening.yaml'), '-o', dir.at(name)]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(
      /^evenfall: nothing written: From frame .*; "evenfall plan" says what would cure it\n$/,
    );
    expect(dir.names()).toEqual(['evening.yaml']);
  });

  // Longyearbyen at midsummer: the sun does not set from 20 April to 22 August (midnight sun, common knowledge of the place).
  const POLAR_DAY = EVENING.replace('57.05', '78.22')
    .replace('9.92', '15.65')
    .replace('2026-09-12', '2026-06-21');

  test.each(['plan', 'light'])(
    '%s says where the sun does go, where it never reaches the span',
    async (command) => {
      const { status, out } = await evenfall([command, '-'], POLAR_DAY);
      expect(status).toBe(2);
      expect(out).toMatch(/^On 2026-06-21 the sun /m);
      expect(JSON.parse((await evenfall([command, '-', '--json'], POLAR_DAY)).out).infeasible.reason).toBe(
        'no-span',
      );
    },
  );
});

/** Nine lists, each of nine aliases of the one before: a billion entries when spelled out. */
function bomb(): string {
  const lines = ['a0: &a0 [x]'];
  for (let i = 1; i < 10; i++)
    lines.push(
      `a${i}: &a${i} [${Array(9)
        .fill(`*a${i - 1}`)
        .join(', ')}]`,
    );
  return lines.join('\n');
}
