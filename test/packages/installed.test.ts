// What a user gets: the three packages packed, installed into an empty project, imported, type-checked, bundled, run.

import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkPackage, createPackageFromTarballData } from '@arethetypeswrong/core';
import { chromium } from 'playwright-core';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, FLAGS } from '../../packages/tools/browser.mjs';
import { bundle } from '../../packages/tools/bundle.mjs';
import { billOfMaterials } from '../../packages/tools/pack.mjs';
import { runBare } from './bare-realm.js';
import { installedProject, type Project } from './packed.js';
import { surfaceText } from './surface.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const NAMES = ['@evenfall/core', '@evenfall/chart', 'evenfall'];
const FOLDERS: Readonly<Record<string, string>> = {
  '@evenfall/core': 'core',
  '@evenfall/chart': 'chart',
  evenfall: 'cli',
};

let project: Project;
beforeAll(() => {
  project = installedProject();
});
afterAll(() => project?.remove());

const packed = (name: string) => project.packages.find((each) => each.name === name)!;
const installed = (name: string, path: string) => join(project.folder, 'node_modules', name, path);
const manifest = (name: string) => JSON.parse(readFileSync(installed(name, 'package.json'), 'utf8'));
const blocks = (name: string, language: string) =>
  [
    ...readFileSync(installed(name, 'README.md'), 'utf8').matchAll(
      new RegExp(`^\`\`\`${language}\n([\\s\\S]*?)^\`\`\`$`, 'gm'),
    ),
  ].map(([, body]) => body!);

describe.each(NAMES)('%s', (name) => {
  test('holds what is needed and nothing else', () => {
    const { paths } = packed(name);
    expect(paths).toEqual(expect.arrayContaining(['package.json', 'README.md', 'LICENSE', 'CHANGELOG.md']));
    const others = paths.filter(
      (path) =>
        !/^(package\.json|README\.md|LICENSE|CHANGELOG\.md)$/.test(path) && !/^(dist|bundle)\//.test(path),
    );
    const expected: Readonly<Record<string, readonly string[]>> = {
      '@evenfall/core': ['shoot', 'plan', 'light', 'evenings', 'review'].map(
        (format) => `schema/evenfall-${format}-1.schema.json`,
      ),
      '@evenfall/chart': [],
      evenfall: ['bin/evenfall.cjs'],
    };
    expect(others.sort()).toEqual([...expected[name]!].sort());
    // Types beside modules that were put together; every one of them has its source.
    const types = paths.filter((path) => path.startsWith('dist/'));
    if (name === 'evenfall') expect(types).toEqual([]);
    else expect(types.length).toBeGreaterThan(20);
    for (const path of types) {
      expect(path).toMatch(/\.d\.ts$/);
      const source = path.replace(/^dist\/(.*)\.d\.ts$/, 'src/$1.ts');
      expect(existsSync(join(root, 'packages', FOLDERS[name]!, source)), path).toBe(true);
    }
    expect(paths.filter((path) => path.startsWith('bundle/')).length).toBeLessThan(110);
  });

  test('its modules lead back to their sources, or carry the licences of what is in them', () => {
    const modules = packed(name).paths.filter((path) => /^bundle\/.*\.js$/.test(path));
    if (name === 'evenfall') {
      const texts = readFileSync(installed(name, 'bundle/licences.md'), 'utf8');
      for (const library of ['commander', 'yaml', 'valibot', 'suncalc', 'exifr', 'papaparse']) {
        expect(texts).toMatch(new RegExp(`^## ${library} \\d`, 'm'));
      }
      // What it carries need not be installed with it.
      expect(Object.keys(manifest(name).dependencies)).toEqual(['dejavu-fonts-ttf']);
      return;
    }
    for (const path of modules) {
      // A module that only hands on what others offer has none.
      if (!readFileSync(installed(name, path), 'utf8').includes('sourceMappingURL')) continue;
      const { sources, sourcesContent } = JSON.parse(
        readFileSync(installed(name, `${path}.map`), 'utf8'),
      ) as { sources: string[]; sourcesContent: string[] };
      for (const [i, source] of sources.entries()) {
        if (!/\/src\/.*\.ts$/.test(source)) continue; // the bundler's own
        const own = join(root, 'packages', FOLDERS[name]!, path, '..', source);
        expect(readFileSync(own, 'utf8'), source).toBe(sourcesContent[i]);
      }
    }
    expect(modules.length).toBeGreaterThan(0);
  });

  test('carries the licence and says what a registry shows', () => {
    expect(readFileSync(installed(name, 'LICENSE'), 'utf8')).toBe(
      readFileSync(join(root, 'LICENSE'), 'utf8'),
    );
    const told = manifest(name);
    expect(told).toMatchObject({
      license: 'MIT',
      type: 'module',
      engines: { node: '>=20' },
      publishConfig: { access: 'public', provenance: true },
    });
    expect(told.keywords.length).toBeGreaterThan(4);
    expect(told).not.toHaveProperty('scripts');
    expect(readFileSync(installed(name, 'CHANGELOG.md'), 'utf8')).toContain(`\n## ${told.version}\n`);
    const sisters = NAMES.filter((other) => other in told.dependencies);
    for (const other of sisters) expect(told.dependencies[other]).toBe(manifest(other).version);
    if (name !== 'evenfall') expect(told.sideEffects).toBe(false);
  });

  test('has nothing that publint would change', async () => {
    const { buffer } = Uint8Array.from(readFileSync(packed(name).file));
    const { messages, pkg } = await publint({ pack: { tarball: buffer }, strict: true });
    expect(messages.map((message) => formatMessage(message, pkg))).toEqual([]);
  });
});

test.each(['@evenfall/core', '@evenfall/chart'])(
  '%s has types that resolve wherever modules do',
  async (name) => {
    const data = createPackageFromTarballData(Uint8Array.from(readFileSync(packed(name).file)));
    const analysis = await checkPackage(data);
    if (!analysis.types) throw new Error('no types');
    expect(analysis.types.kind).toBe('included');
    const ways = Object.keys(analysis.entrypoints).filter((way) => !way.endsWith('.json'));
    // The whole, eleven rooms and the schemas; chart is one.
    expect(ways).toHaveLength(name === '@evenfall/core' ? 14 : 1);
    // The packages are modules alone: require() and the resolution of Node 10 are not theirs to serve.
    const problems = analysis.problems.filter(
      (problem) =>
        !('resolutionKind' in problem && /^node10$|^node16-cjs$/.test(problem.resolutionKind)) &&
        !('entrypoint' in problem && problem.entrypoint.startsWith('./schema/')),
    );
    expect(problems).toEqual([]);
  },
);

test('every way in answers in Node, and is part of the whole', () => {
  const ways = Object.keys(manifest('@evenfall/core').exports)
    .filter((way) => /^\.(\/[a-z]+)?$/.test(way))
    .map((way) => `@evenfall/core${way.slice(1)}`);
  expect(ways).toHaveLength(13);
  const script = `
    const whole = await import('@evenfall/core');
    const names = new Set();
    for (const way of ${JSON.stringify(ways)}) {
      const part = await import(way);
      for (const [name, value] of Object.entries(part)) {
        if (whole[name] !== value) throw new Error(way + ' has ' + name + ' of its own');
        if (way !== '@evenfall/core') names.add(name);
      }
    }
    await import('@evenfall/chart');
    // The sentences and values of all rooms are joined in the whole alone.
    const others = Object.keys(whole).filter((name) => !names.has(name));
    console.log(others.join());
  `;
  expect(project.run('node', ['--input-type=module', '-e', script])).toBe('englishSentences,englishValues\n');
});

test('core alone is three packages', () => {
  expect(project.withCore.map((path) => path.replace('node_modules/', '')).sort()).toEqual([
    '@evenfall/core',
    'suncalc',
    'valibot',
  ]);
});

test('nothing that is installed runs a script, and the bill of materials names all of it', () => {
  const folder = join(project.folder, 'node_modules');
  const found = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /^(?:.*node_modules\/)?(?:@[^/]+\/)?[^/]+\/package\.json$/.test(path))
    .map((path) => JSON.parse(readFileSync(join(folder, path), 'utf8')) as Record<string, never>);
  const scripted = found.filter(({ scripts = {} }) =>
    ['preinstall', 'install', 'postinstall'].some((step) => step in scripts),
  );
  expect(scripted.map(({ name }) => name)).toEqual([]);
  const bill = JSON.parse(billOfMaterials('0.1.0')) as { components: { purl: string }[] };
  const named = new Set(bill.components.map(({ purl }) => purl));
  const others = found.filter(({ name }) => !NAMES.includes(name));
  expect(others.length).toBeGreaterThan(8);
  for (const { name, version } of others) {
    // package-url/purl-spec, type npm: the "@" of a scope is escaped.
    expect(named).toContain(`pkg:npm/${String(name).replace('@', '%40')}@${version}`);
  }
  // Bundled into the command, and so installed nowhere.
  expect([...named].join()).toMatch(/pkg:npm\/commander@.*pkg:npm\/yaml@/);
});

test('a room loads no library that it does not need', () => {
  const dependencies = (room: string) =>
    project
      .run('node', [
        '--input-type=module',
        '-e',
        `import { register } from 'node:module';
         register('data:text/javascript,' + encodeURIComponent(
           "export async function load(url, context, next) { console.log(url); return next(url, context); }"));
         await import('@evenfall/core/${room}');`,
      ])
      .split('\n')
      .flatMap((url) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(url)?.[1] ?? [])
      .filter((name, i, all) => name !== '@evenfall/core' && all.indexOf(name) === i);
  for (const room of ['ramp', 'light', 'exposure', 'move', 'footage']) {
    expect(dependencies(room), room).toEqual([]);
  }
  expect(dependencies('sky')).toEqual(['suncalc']);
  expect(dependencies('files').sort()).toEqual(['suncalc', 'valibot']);
});

test('the READMEs show code that runs', () => {
  const snippets = NAMES.flatMap((name) => blocks(name, 'js').map((code) => ({ name, code })));
  expect(snippets).toHaveLength(3);
  const printed = snippets.map(({ code }) => {
    writeFileSync(join(project.folder, 'snippet.js'), code);
    return project.run('node', ['snippet.js']);
  });
  expect(printed[0]).toMatch(/^\d+ \S+ \[ \{ control: /);
  expect(printed[1]).toBe('ok 600\n');
  expect(printed[2]).toMatch(/^<svg \d+\n$/);
});

test("the command's README shows commands that run", () => {
  writeFileSync(join(project.folder, 'evening.yaml'), blocks('evenfall', 'yaml')[0]!);
  const lines = blocks('evenfall', 'sh')
    .flatMap((block) => block.trim().split('\n'))
    .filter((line) => line.startsWith('evenfall '));
  expect(lines).toHaveLength(4);
  for (const line of lines) {
    const words = line.split(' ').slice(1);
    project.run(join(project.folder, 'node_modules/.bin/evenfall'), words);
    const output = words[words.indexOf('-o') + 1]!;
    if (words.includes('-o')) expect(existsSync(join(project.folder, output)), output).toBe(true);
  }
});

test.each([
  ['node16', ts.ModuleKind.Node16, ts.ModuleResolutionKind.Node16],
  ['nodenext', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['bundler', ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
])('types hold under %s resolution, without page, Node or other types', (_, module, moduleResolution) => {
  const file = join(project.folder, 'typed.ts');
  writeFileSync(
    file,
    `import { cardText } from '@evenfall/chart';
     import { planShoot, readShoot, type PlanMade } from '@evenfall/core';
     import { writeCuesCsv } from '@evenfall/core/files';
     import { solveRamp, type RampProblem, type RampResult } from '@evenfall/core/ramp';
     import { followFrame, startFollow } from '@evenfall/core/follow';
     const read = readShoot({});
     if (read.kind === 'ok') {
       const plan = planShoot(read.shoot);
       if (plan.kind !== 'infeasible') {
         const made: PlanMade = plan;
         const text: string = cardText(made) + writeCuesCsv(made);
         const iso: number = followFrame(startFollow(made), { frame: 1 }).setting.iso;
       }
     }
     export const solve = (problem: RampProblem): RampResult => solveRamp(problem);
     // @ts-expect-error a frame count is no shoot
     planShoot(3);
     // @ts-expect-error what is not exported cannot be reached
     import('@evenfall/core/bundle/index.js');
    `,
  );
  const program = ts.createProgram([file], {
    module,
    moduleResolution,
    noEmit: true,
    strict: true,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    skipLibCheck: false,
    target: ts.ScriptTarget.ES2022,
    lib: ['lib.es2022.d.ts'],
    types: [],
  });
  const faults = ts
    .getPreEmitDiagnostics(program)
    .map(
      ({ file, messageText }) => `${file?.fileName}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`,
    );
  expect(faults).toEqual([]);
  // The compiler of a program that plans need not read the schemas' types.
  const paths = program.getSourceFiles().map(({ fileName }) => fileName);
  expect(paths.filter((path) => /valibot|-schema\.d\.ts/.test(path))).toEqual([]);
});

describe('bundled', () => {
  const text = surfaceText();
  const plainly = (json: string) => JSON.parse(json) as unknown;

  test('as a script it runs in an empty realm', async () => {
    copyFileSync(join(root, 'test/packages/surface.ts'), join(project.folder, 'surface.ts'));
    const { code, modules } = await bundle(join(project.folder, 'surface.ts'), project.folder, 'iife');
    expect(modules.some((path) => path.startsWith(installed('@evenfall/core', 'bundle')))).toBe(true);
    expect(modules.filter((path) => path.startsWith(join(root, 'packages')))).toEqual([]);
    expect(plainly(runBare(code, 'evenfall.surfaceText()'))).toEqual(plainly(text));
  });

  test('in Chromium page and worker plan and draw alike', async () => {
    writeFileSync(
      join(project.folder, 'in-browser.ts'),
      `import { planChart } from '@evenfall/chart';
       import { surface, surfaceText } from './surface.js';
       const answer = () => ({ text: surfaceText(), svg: planChart(surface().planShoot as never) });
       if ('document' in globalThis) {
         const worker = new Worker('bundle.js', { type: 'module' });
         worker.onmessage = ({ data }) => Object.assign(globalThis, { answers: { page: answer(), worker: data } });
         worker.onerror = ({ message }) => Object.assign(globalThis, { answers: message });
       } else (globalThis as never as Worker).postMessage(answer());`,
    );
    const { code } = await bundle(join(project.folder, 'in-browser.ts'), project.folder);
    const server = await serveOnly({
      '/': '<script type="module" src="bundle.js"></script>',
      '/bundle.js': code,
    });
    const browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
    try {
      const page = await browser.newPage();
      // However slow the machine.
      page.setDefaultTimeout(300_000);
      const errors: string[] = [];
      page.on('pageerror', (error) => errors.push(String(error)));
      await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
      const handle = await page.waitForFunction(() => Reflect.get(globalThis, 'answers'));
      const answers = (await handle.jsonValue()) as Record<'page' | 'worker', { text: string; svg: string }>;
      expect(errors).toEqual([]);
      expect(answers.worker).toEqual(answers.page);
      expect(answers.page.svg).toMatch(/^<svg /);
      // Another release of the engine may round a sine otherwise in its last digit.
      const rounded = (json: string) =>
        JSON.parse(json, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(9)) : value));
      expect(rounded(answers.page.text).planShoot.cues).toEqual(rounded(text).planShoot.cues);
      expect(rounded(answers.page.text).solveRamp.frames).toEqual(rounded(text).solveRamp.frames);
    } finally {
      await browser.close();
      server.close();
    }
  });
});

function serveOnly(files: Readonly<Record<string, string>>): Promise<Server> {
  const server = createServer(({ url }, response) => {
    const type = url === '/' ? 'text/html' : 'text/javascript';
    const content = files[url ?? ''];
    response.writeHead(content === undefined ? 404 : 200, { 'Content-Type': type }).end(content);
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(server)));
}
