// Every command, file and snippet that README and docs show is run or read as it stands; a fenced block of a kind that
// nothing here knows is a failure. TypeScript is run by docs-snippets.test.ts.

import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import {
  planShoot,
  type RampWeights,
  rampWeights,
  readPlan,
  readShoot,
  type Shoot,
} from '../packages/core/src/index.js';
import { published, schemaReader } from './reference/json-schema.js';
import { type Block, blocksOf } from './reference/pages.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (page: string) => readFileSync(join(root, page), 'utf8');
const pages = [
  'README.md',
  ...readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];
const blocks = pages.flatMap((page) => blocksOf(page, read(page)));
const ofKind = (...kinds: string[]) => blocks.filter(({ kind }) => kinds.includes(kind));
const bin = join(root, 'packages/cli/bin/evenfall.cjs');

/** What checks a block of each kind: here, or elsewhere. */
const CHECKED: Readonly<Record<string, string>> = {
  sh: 'each line is run below, or where ELSEWHERE says',
  js: 'run below',
  'js file': 'held below against the file it shows',
  ts: 'docs-snippets.test.ts',
  'ts new': 'docs-snippets.test.ts',
  'ts no-run': 'docs-snippets.test.ts',
  text: 'the demo, below',
  'text output': 'docs-snippets.test.ts',
  'text typed': 'test/cli/at-terminal.test.ts',
  'text usage': 'held below against what the command says of itself',
  yaml: 'read below',
  'yaml part': 'read below',
  'yaml cure': 'planned below',
  json: 'read below',
  'json in': 'given to follow below',
  'json out': 'what follow answers, below',
};

/** Commands that would take a test too far here, and the tests that do what they do. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'npm test': 'this is it',
  'npx evenfall new my-evening.yaml': 'test/cli/new-shoot.test.ts', // it asks
  'npx evenfall review plan.json frames': 'test/cli/review.test.ts',
  'npx evenfall review plan.json frames --levels -o offsets.csv': 'test/cli/review.test.ts',
  'npx evenfall review plan.json frames --levels -o clip.ffconcat': 'test/cli/review.test.ts',
  'npx evenfall review plan.json frames --levels --next docs/examples/dusk.yaml -o readings.yaml':
    'test/cli/review.test.ts',
  'ffmpeg -f concat -safe 0 -i clip.ffconcat -filter_script:v clip.filter clip.mp4':
    'test/cli/review.test.ts',
  'npm run page': 'test/web/build.ts',
  'node packages/tools/light-accuracy.mjs': 'test/core/light/accuracy.test.ts',
  'node packages/tools/ramp-proof.mjs --problems 1000 --seed 20000': 'test/core/ramp/proof.test.ts',
  'npm run pack': 'test/packages/packed.ts',
  'npm init -y': 'test/packages/packed.ts',
  'npm install ../evenfall/out/packages/evenfall-core-*.tgz': 'test/packages/packed.ts',
  'npm install ../evenfall/out/packages/evenfall-chart-*.tgz': 'test/packages/packed.ts',
};

const commands = ofKind('sh').flatMap(({ page, body }) =>
  body
    .trim()
    .split('\n')
    .map((line) => ({ page, line })),
);
const here = commands.filter(({ line }) => !(line in ELSEWHERE));

let folder = '';
beforeAll(() => {
  // As a reader would: a folder of one's own beside the examples.
  folder = mkdtempSync(join(tmpdir(), 'evenfall-docs-'));
  cpSync(join(root, 'docs/examples'), join(folder, 'docs/examples'), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  writeFileSync(join(folder, 'evening.yaml'), wholeShoots('README.md')[0]!.body);
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('every block is of a kind that something checks', () => {
  expect(blocks.length).toBeGreaterThan(40);
  for (const { page, line, kind } of blocks) {
    expect(Object.keys(CHECKED), `${page}:${line}: nothing checks a block of this kind`).toContain(kind);
  }
});

describe('commands', () => {
  test('are many', () => {
    expect(commands.length).toBeGreaterThan(20);
  });

  test.each(Object.entries(ELSEWHERE))('%s is shown, and done by %s', (line, where) => {
    expect(commands.map((each) => each.line)).toContain(line);
    if (where.includes('/')) expect(existsSync(join(root, where))).toBe(true);
    const [, script] = /^npm run (\S+)$/.exec(line) ?? [];
    if (script !== undefined) expect(JSON.parse(read('package.json')).scripts).toHaveProperty([script]);
  });

  test.each(here)('$page: $line', ({ line }) => {
    if (line === 'npm start') {
      const { status, stderr, stdout } = spawnSync('npm', ['start'], { cwd: root, encoding: 'utf8' });
      expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
      expect(stdout).toContain(wholeText());
      return;
    }
    const [npx, name, ...words] = line.trim().split(/\s+/);
    expect([npx, name]).toEqual(['npx', 'evenfall']);
    const { status, stderr } = spawnSync('node', [bin, ...words], {
      cwd: folder,
      encoding: 'utf8',
      input: '',
    });
    expect(stderr).toBe('');
    // Examples that have no plan, to show what an answer without one looks like.
    expect(status).toBe(/impossible|slide/.test(line) ? 2 : 0);
    const output = words[words.indexOf('-o') + 1];
    // "-" and "-.txt" are standard output.
    if (words.includes('-o') && !output!.startsWith('-'))
      expect(existsSync(join(folder, output!)), output).toBe(true);
  });

  test('named in a sentence exist', () => {
    const { scripts } = JSON.parse(read('package.json'));
    const named = [...pages, 'DEVELOPERS.md'].flatMap((page) =>
      [...read(page).matchAll(/`(npm (?:run [\w:-]+|start|test)|node packages\/tools\/[\w-]+\.mjs)/g)].map(
        ([, line]) => line!,
      ),
    );
    expect(named.length).toBeGreaterThan(10);
    for (const line of named) {
      const [, script] = /^npm (?:run )?(.+)$/.exec(line) ?? [];
      if (script === undefined) expect(existsSync(join(root, line.slice(5))), line).toBe(true);
      else expect(scripts, line).toHaveProperty([script]);
    }
  });

  test('of the usage in docs/formats.md are all there are', () => {
    const [usage] = ofKind('text usage');
    const { stdout } = spawnSync('node', [bin, '--help'], { encoding: 'utf8' });
    const known = [...stdout.matchAll(/^ {2}(?!help)([a-z]+) .*[<[]|^ {2}(frames|man) /gm)].map(
      ([, a, b]) => (a ?? b)!,
    );
    const told = [...usage!.body.matchAll(/^evenfall ([a-z]+)/gm)].map(([, name]) => name!);
    expect(told.length).toBeGreaterThan(5);
    expect(told.sort()).toEqual(known.sort());
  });
});

function wholeText(): string {
  const [shown, ...others] = ofKind('text');
  expect(others).toEqual([]);
  return shown!.body;
}

test('the README shows what the demo prints', () => {
  const { stdout } = spawnSync('node', [bin, 'plan', 'docs/examples/dusk.yaml'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(stdout.startsWith(wholeText())).toBe(true);
});

describe('JavaScript', () => {
  test('the README snippet runs and prints a plan', () => {
    const [snippet, ...others] = ofKind('js');
    expect(others).toEqual([]);
    writeFileSync(join(folder, 'snippet.js'), snippet!.body);
    const { stdout, stderr } = spawnSync('node', ['snippet.js'], { cwd: folder, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^\d+ \S+ \[ \{ control: /);
  });

  test.each(ofKind('js file'))('$page shows $argument as it is', ({ body, argument }) => {
    expect(body).toBe(read(argument));
  });

  test('the TypeScript of docs/library.md is plain JavaScript, as it says', () => {
    const code = ofKind('ts')
      .filter(({ page }) => page === 'docs/library.md')
      .map(({ body }) => body);
    expect(code.length).toBeGreaterThan(5);
    // A name may be imported again further down the page; each block alone is what node looks at.
    for (const [i, block] of code.entries()) {
      writeFileSync(join(folder, `block-${i}.mjs`), block);
      const { stderr } = spawnSync('node', ['--check', `block-${i}.mjs`], { cwd: folder, encoding: 'utf8' });
      expect(stderr).toBe('');
    }
  });
});

/** Blocks of a page that are a shoot, whole. */
function wholeShoots(page: string): Block[] {
  return ofKind('yaml').filter((block) => block.page === page && /^format: /m.test(block.body));
}

const shootFaults = (value: unknown) => {
  const answer = readShoot(value);
  return answer.kind === 'wrong' ? answer.errors.map(({ message }) => message) : [];
};

test.each(ofKind('yaml', 'yaml part'))(
  '$page:$line is a shoot, or part of one',
  ({ page, body, argument }) => {
    const value = parse(body);
    if (argument === '' && 'format' in value) {
      expect(shootFaults(value)).toEqual([]);
      return;
    }
    // Part of the page's own shoot where it has one, else of the demo evening.
    const whole = parse(wholeShoots(page)[0]?.body ?? read('docs/examples/dusk.yaml'));
    const part = argument === '' ? value : { [argument]: value };
    const camera = { ...whole.camera, ...part.camera };
    const place = { timeZone: 'Europe/Copenhagen', ...whole.place };
    expect(shootFaults({ ...whole, ...part, place, camera })).toEqual([]);
  },
);

test.each(ofKind('yaml cure'))('$page:$line cures $argument', ({ body, argument }) => {
  const whole = parse(read(argument));
  const change = parse(body);
  const planned = (value: unknown) => planShoot((readShoot(value) as { shoot: Shoot }).shoot);
  expect(planned(whole)).toHaveProperty('infeasible');
  expect(planned({ ...whole, ...change, camera: { ...whole.camera, ...change.camera } })).toHaveProperty(
    'frames',
  );
});

test("the table of meter readings in docs/guide.md is APEX's", () => {
  const [, times, evs] = /^\| shutter it proposes \|(.*)\|\n\|[-|]*\|\n\| EV \|(.*)\|$/m.exec(
    read('docs/guide.md'),
  )!;
  const marks = times!.split('|').map((mark) => mark.replace(' s', '').trim());
  const told = evs!.split('|').map(Number);
  expect(told).toHaveLength(marks.length);
  expect(marks.length).toBeGreaterThan(10);
  // ASA PH2.5-1960: log2 N² − log2 t at ISO 100; marked times are within a tenth of a stop of whole ones.
  const ev = (mark: string) => {
    const [over, under = 1] = mark.split('/').map(Number);
    return Math.log2(8 ** 2) - Math.log2(over! / under);
  };
  marks.forEach((mark, i) => {
    expect(Math.abs(ev(mark) - told[i]!), mark).toBeLessThan(0.1);
  });
});

test.each(ofKind('json'))('$page:$line is a file that reads', ({ body }) => {
  const value = JSON.parse(body);
  for (const written of ['light', 'evenings', 'review'] as const) {
    if (value.format !== `evenfall-${written}/1`) continue;
    expect(schemaReader(published(written))(value)).toEqual([]);
    return;
  }
  const answer = readPlan(value);
  expect(answer.kind === 'wrong' ? answer.errors : []).toEqual([]);
});

test('docs/follow.md shows what following answers', () => {
  const [line, ...more] = ofKind('json in');
  const [answer, ...others] = ofKind('json out');
  expect(others).toEqual([]);
  const withFilter = `${readFileSync(join(folder, 'evening.yaml'), 'utf8')}\nfilters: [{ name: ND 6, stops: 6 }]\n`;
  writeFileSync(join(folder, 'filter.yaml'), withFilter);
  const followed = (input: string, shoot = 'evening') => {
    spawnSync('node', [bin, 'plan', `${shoot}.yaml`, '-o', `${shoot}.json`], { cwd: folder });
    const argv = [bin, 'follow', `${shoot}.json`, '--no-journal'];
    const { stdout, stderr } = spawnSync('node', argv, { cwd: folder, encoding: 'utf8', input });
    expect(stderr).toBe('');
    return stdout
      .trim()
      .split('\n')
      .map((text) => JSON.parse(text));
  };
  expect(followed(line!.body)[0]).toEqual(JSON.parse(answer!.body));
  // Lines without an answer beside them are understood, at the least.
  expect(more.length).toBeGreaterThan(0);
  for (const { body } of more) {
    const lines = body.trim().split('\n').length;
    const answers = followed(body, 'filter');
    expect(answers).toHaveLength(lines + 1);
    for (const { warnings } of answers.slice(0, -1)) {
      expect(warnings.map(({ kind }: { kind: string }) => kind)).not.toContain('bad-line');
      expect(warnings.filter(({ kind }: { kind: string }) => kind.startsWith('kit-'))).toEqual([]);
    }
  }
});

describe('the numbers of docs/ramp.md are what the weights give', () => {
  const { shoot } = readShoot(parse(read('docs/examples/dusk.yaml'))) as { shoot: Shoot };
  const usual = rampWeights('hand');
  const summary = (weights: Partial<RampWeights>) => {
    const plan = planShoot({ ...shoot, weights });
    if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
    return plan.summary;
  };

  test('for the plans that are drawn', () => {
    const rows = [
      ...read('docs/ramp.md').matchAll(
        /^\| (?:the usual|`(\w+): ([\d.]+)`) \| (\d+) \| ([\d.]+), ([\d.]+) \|/gm,
      ),
    ];
    expect(rows).toHaveLength(3);
    for (const [, key, value, cues, rms, worst] of rows) {
      const { cueCount, rmsErrorEv, worstErrorEv } = summary(
        key === undefined ? {} : { [key]: Number(value) },
      );
      expect([cueCount, rmsErrorEv.toFixed(2), worstErrorEv.toFixed(2)]).toEqual([Number(cues), rms, worst]);
    }
  });

  test('for each weight alone, at a quarter and at four times its price', () => {
    const rows = [
      ...read('docs/ramp.md').matchAll(/^\| `(\w+)` \| .* \| (\d+), ([\d.]+) \| (\d+), ([\d.]+) \|$/gm),
    ];
    expect(rows.map(([, key]) => key).sort()).toEqual(Object.keys(usual).sort());
    for (const [, key, ...told] of rows) {
      const found = [1 / 4, 4].flatMap((times) => {
        const { cueCount, rmsErrorEv } = summary({ [key!]: usual[key as keyof RampWeights] * times });
        return [String(cueCount), rmsErrorEv.toFixed(2)];
      });
      expect(found, key).toEqual(told);
    }
  });
});
