// What the packages publish and the command runs: their modules put together, so that node opens a few files instead of
// hundreds. Each way into a package is a module of its own; what several share stands once, in `parts/`.
//
//   node packages/tools/bundle-packages.mjs      part of `npm run build`

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { runtimeLicences } from './licences.mjs';
import { pureValues } from './pure-values.mjs';
import { root } from './ready.mjs';

const FOLDER = 'bundle';

/** Paths of a package's ways in without their ending: "index", "light/index". */
function waysInto(name) {
  const { exports } = JSON.parse(readFileSync(`${root}/packages/${name}/package.json`, 'utf8'));
  return Object.values(exports).flatMap((way) => {
    const [, path] = /^\.\/bundle\/(.+)\.js$/.exec(way.default ?? '') ?? [];
    return path === undefined ? [] : [path];
  });
}

const entries = (name, paths) =>
  Object.fromEntries(paths.map((path) => [path, `${root}/packages/${name}/src/${path}.ts`]));

/**
 * @typedef {object} Kind
 * @property {Record<string, string>} input
 * @property {'neutral' | 'node'} platform
 * @property {RegExp[]} external what is left to the package's dependencies
 * @property {boolean} sourcemap
 * @property {boolean} minify
 * @property {'js' | 'cjs'} [ending] of modules; js where it is left out
 */

/** @type {Readonly<Record<string, Kind>>} */
const KINDS = {
  core: {
    input: {
      ...entries('core', waysInto('core')),
      'parts/read-shoot': `${root}/packages/core/src/files/shoot-file.ts`,
    },
    platform: 'neutral',
    external: [/^suncalc/, /^valibot/],
    sourcemap: true,
    minify: false,
  },
  chart: {
    input: entries('chart', waysInto('chart')),
    platform: 'neutral',
    external: [/^@evenfall\/core/, /^d3-/],
    sourcemap: true,
    minify: false,
  },
  // The command carries its libraries; the letters of a PDF are files. CommonJS, whose compiled code can be kept.
  cli: {
    input: entries('cli', ['start', 'main']),
    platform: 'node',
    external: [/^dejavu-fonts-ttf/],
    sourcemap: false,
    minify: true,
    ending: 'cjs',
  },
};

/**
 * Writes `packages/NAME/bundle`.
 *
 * @param {string} name
 */
export async function bundlePackage(name) {
  const { input, platform, external, sourcemap, minify, ending = 'js' } = KINDS[name];
  const made = await rolldown({
    cwd: `${root}/packages/${name}`,
    input,
    platform,
    external,
    plugins: name === 'cli' ? [withoutNeverUsed] : [pureValues],
    treeshake: { moduleSideEffects: (id) => !id.startsWith(`${root}/packages/`) },
    resolve: {
      alias: {
        '@evenfall/core': `${root}/packages/core/src/index.ts`,
        '@evenfall/chart': `${root}/packages/chart/src/index.ts`,
      },
    },
    onLog: (level, log) => {
      // That a machine is slow is no fault of the bundle.
      if (level === 'warn' && !log.code?.endsWith('_TIMINGS'))
        throw new Error(`bundling ${name}: ${log.message}`);
    },
  });
  const place = `${root}/packages/${name}/${FOLDER}`;
  const dir = `${place}.new`;
  rmSync(dir, { recursive: true, force: true });
  const { output } = await made.write({
    dir,
    format: ending === 'cjs' ? 'cjs' : 'esm',
    sourcemap,
    minify,
    entryFileNames: `[name].${ending}`,
    chunkFileNames: `parts/[name].${ending}`,
  });
  await made.close();
  const lazily = output.flatMap((part) => (part.type === 'chunk' ? part.dynamicImports : []));
  const outside = lazily.filter((id) => id.startsWith('node:'));
  // Node 20 cannot load these from code that was kept.
  if (ending === 'cjs' && outside.length > 0) throw new Error(`bundling ${name}: import() of ${outside}`);
  if (name === 'cli') {
    writeFileSync(`${dir}/licences.md`, licenceTexts('command'));
    writeFileSync(`${dir}/fingerprint`, `${fingerprint(dir)}\n`);
  }
  // Whoever runs the command meanwhile finds it whole.
  rmSync(place, { recursive: true, force: true });
  renameSync(dir, place);
}

/**
 * What libraries of the command load at once and we never ask of them: the reader of arguments to start other programs, the
 * writer of PDF to break lines and to encrypt. It took a quarter of a short help, and a twelfth of a card.
 *
 * @type {Readonly<Record<string, string>>} what stands for each
 */
const NEVER_USED = {
  'node:child_process': 'export {};',
  linebreak: 'export default undefined;',
  '@noble/ciphers/aes': 'export const cbc = undefined, ecb = undefined;',
};
const withoutNeverUsed = {
  name: 'without-never-used',
  resolveId: (id) => (Object.hasOwn(NEVER_USED, id) ? `\0${id}` : null),
  load: (id) => NEVER_USED[id.slice(1)] ?? null,
};

/** Tells the modules in a folder from those of every other build. */
function fingerprint(folder) {
  const hash = createHash('sha256');
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('js'),
  );
  for (const path of paths.sort()) hash.update(`${path}\n`).update(readFileSync(`${folder}/${path}`));
  return hash.digest('hex').slice(0, 16);
}

/** The licences of what a bundle carries ask to go with it. */
function licenceTexts(user) {
  const texts = runtimeLicences()
    .filter(({ users }) => users.includes(user))
    .map(({ name, version, licence, folder, text }) =>
      [
        `## ${name} ${version}, ${licence}`,
        ...(text ? [readFileSync(`${folder}/${text}`, 'utf8').trim()] : []),
      ].join('\n\n'),
    );
  return `# Licences\n\nOf the libraries that this command carries or is installed with.\n\n${texts.join('\n\n')}\n`;
}

/** When the newest file in a folder was written, ms; 0 where there is none. */
function newestMs(folder) {
  if (!existsSync(folder)) return 0;
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return Math.max(
    0,
    ...paths.map((path) => statSync(`${folder}/${path}`)).map((at) => (at.isFile() ? at.mtimeMs : 0)),
  );
}

/** Whether nothing that goes into the bundles is newer than they are. */
function upToDate() {
  const names = Object.keys(KINDS);
  const sources = [
    ...names.map((name) => newestMs(`${root}/packages/${name}/src`)),
    ...names.map((name) => statSync(`${root}/packages/${name}/package.json`).mtimeMs),
    ...['bundle-packages', 'licences', 'pure-values'].map(
      (tool) => statSync(`${root}/packages/tools/${tool}.mjs`).mtimeMs,
    ),
    statSync(`${root}/package-lock.json`).mtimeMs,
  ];
  return names.every((name) => newestMs(`${root}/packages/${name}/${FOLDER}`) >= Math.max(...sources));
}

if (argv[1] === fileURLToPath(import.meta.url) && !upToDate()) {
  for (const name of Object.keys(KINDS)) await bundlePackage(name);
}
