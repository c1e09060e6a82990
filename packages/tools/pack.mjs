// Packs what a release publishes: the three packages as they would be downloaded.
//
//   npm run pack                                     into out/packages
//   npm run pack -- --repository https://host/path   the same, after writing where the source is into each package

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { runtimeLicences } from './licences.mjs';
import { build, fail, install, root } from './ready.mjs';

export const PACKAGES = ['core', 'chart', 'cli'];

/** Built files whose source is gone: the compiler leaves them, and they would be published. */
function dropLeftovers(name) {
  const dist = `${root}/packages/${name}/dist`;
  for (const file of readdirSync(dist, { recursive: true, encoding: 'utf8' })) {
    const source = `${root}/packages/${name}/src/${file.replace(/(\.d\.ts|\.js)$/, '.ts')}`;
    if (!existsSync(source)) rmSync(`${dist}/${file}`, { recursive: true, force: true });
  }
}

/**
 * Packs the built packages.
 *
 * @typedef {{name: string, version: string, file: string, paths: string[]}} Packed a tarball, and what is in it
 *
 * @param {string} folder where the tarballs go; made if need be
 * @returns {Packed[]} one a package
 */
export function packInto(folder) {
  for (const name of PACKAGES) dropLeftovers(name);
  mkdirSync(folder, { recursive: true });
  const packages = PACKAGES.map((name) => `./packages/${name}`);
  const { status, stdout, stderr } = spawnSync(
    'npm',
    ['pack', '--json', '--pack-destination', folder, ...packages],
    { cwd: root, encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`npm pack failed: ${stderr}`);
  return JSON.parse(stdout).map(({ name, version, filename, files }) => ({
    name,
    version,
    file: `${folder}/${filename}`,
    paths: files.map(({ path }) => path),
  }));
}

/**
 * What a release is made of beside our own, dependencies of dependencies too: CycloneDX 1.6 (ECMA-424).
 *
 * @returns {string} JSON
 */
export function billOfMaterials(version) {
  const components = runtimeLicences()
    .filter(({ users }) => users.some((user) => user !== 'page'))
    .map(({ name, version, licence }) => ({
      type: 'library',
      name,
      version,
      // A scope's "@" is escaped: package-url/purl-spec, type npm.
      purl: `pkg:npm/${name.replace('@', '%40')}@${version}`,
      licenses: [{ license: { id: licence } }],
    }));
  const component = { type: 'application', name: 'evenfall', version };
  const bill = {
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: { component },
    components,
  };
  return `${JSON.stringify(bill, null, 2)}\n`;
}

/** Says in each package where its source is, which a registry holds against the provenance of a release. */
function setRepository(url) {
  for (const name of PACKAGES) {
    const path = `${root}/packages/${name}/package.json`;
    const told = {
      ...JSON.parse(readFileSync(path, 'utf8')),
      homepage: `${url}#readme`,
      bugs: `${url}/issues`,
      repository: { type: 'git', url: `git+${url}.git`, directory: `packages/${name}` },
    };
    writeFileSync(path, `${JSON.stringify(told, null, 2)}\n`);
  }
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  const [option, url] = argv.slice(2);
  if (option !== undefined && option !== '--repository')
    fail(`${option}: no such option; give --repository URL`);
  if (option !== undefined && !/^https:\/\/[^/]+\/.*[^/]$/.test(url ?? '')) {
    fail('--repository needs the address of the source, https://host/path, without a slash at its end');
  }
  install();
  if (url !== undefined) setRepository(url.replace(/\.git$/, ''));
  build();
  const packed = packInto(`${root}/out/packages`);
  for (const { file, paths } of packed) console.log(`${file}: ${paths.length} files`);
  writeFileSync(`${root}/out/packages/sbom.cdx.json`, billOfMaterials(packed[0]?.version));
  console.log(`${root}/out/packages/sbom.cdx.json: what they are made of`);
  const { repository } = JSON.parse(readFileSync(`${root}/packages/core/package.json`, 'utf8'));
  if (repository === undefined) {
    console.log('The packages do not say where their source is: a registry will refuse their provenance.');
    console.log('Before a release: npm run pack -- --repository https://host/path');
  }
}
