// Lists the licence of everything that is installed or bundled with the packages and the page, dependencies of
// dependencies too.
//
//   npm run licences            writes docs/licences.md

import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { markdownTable } from './marked-table.mjs';
import { install, root } from './ready.mjs';

export const PAGE = `${root}/docs/licences.md`;

const USERS = [
  { user: 'core', folder: 'packages/core' },
  { user: 'chart', folder: 'packages/chart' },
  { user: 'command', folder: 'packages/cli', bundles: true },
  { user: 'page', folder: 'packages/web' },
];

/**
 * Everything that is depended on at run time.
 *
 * @returns {{name: string, version: string, licence: string, folder: string, text?: string, users: string[]}[]} by name;
 *   `text` is the file in its folder that holds its licence, absent where there is none
 * @throws where a licence is not known, or its text is another than the package says
 */
export function runtimeLicences() {
  const found = new Map();
  for (const { user, folder, bundles } of USERS) visit(`${root}/${folder}`, user, bundles);
  return [...found.values()]
    .map(({ users, ...each }) => ({ ...each, users: [...users] }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));

  function visit(folder, user, bundles = false) {
    const { dependencies = {}, devDependencies = {} } = manifestOf(folder);
    // What is bundled in is needed by nobody who installs the package.
    const bundled = bundles ? Object.keys(devDependencies).filter((name) => !name.startsWith('@types/')) : [];
    for (const name of [...Object.keys(dependencies), ...bundled]) {
      if (name.startsWith('@evenfall/')) {
        if (bundles) visit(resolved(name, folder), user);
        continue;
      }
      const at = resolved(name, folder);
      const known = found.get(at);
      if (known?.users.has(user)) continue;
      if (known === undefined) found.set(at, { ...described(at), users: new Set([user]) });
      else known.users.add(user);
      visit(at, user);
    }
  }
}

function manifestOf(folder) {
  return JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
}

/** Where a package finds another: in its own node_modules, or in those of a folder above it. */
function resolved(name, from) {
  for (let folder = from; folder.startsWith(root); folder = folder.slice(0, folder.lastIndexOf('/'))) {
    if (existsSync(`${folder}/node_modules/${name}/package.json`)) return `${folder}/node_modules/${name}`;
  }
  throw new Error(`${name} is not installed; run npm ci`);
}

/** Licences by words that stand in their texts and in no other's. */
/** @type {[string, RegExp][]} */
const TEXTS = [
  ['MIT', /permission is hereby granted, free of charge, to any person obtaining a copy of this software/],
  ['ISC', /permission to use, copy, modify, and\/or distribute this software for any purpose/],
  ['Apache-2.0', /apache license version 2\.0/],
  ['BSD-3-Clause', /redistribution and use in source and binary forms.*neither the name/],
  ['BSD-2-Clause', /redistribution and use in source and binary forms(?!.*neither the name)/],
  ['CC0-1.0', /cc0 1\.0 universal/],
  ['Bitstream-Vera', /bitstream vera fonts copyright/],
];

function described(folder) {
  const { name, version, license } = manifestOf(folder);
  const said = license?.startsWith('SEE LICENSE') ? undefined : license;
  const text = readdirSync(folder).find((file) => /^(licen[cs]e|copying)/i.test(file));
  if (text === undefined) {
    if (said === undefined) throw new Error(`${name} ${version}: no licence is said, and no text is there`);
    return { name, version, licence: said, folder };
  }
  const words = readFileSync(`${folder}/${text}`, 'utf8').toLowerCase().replaceAll(/\s+/g, ' ');
  const licence = TEXTS.find(([, pattern]) => pattern.test(words))?.[0];
  if (licence === undefined || (said !== undefined && said !== licence)) {
    throw new Error(`${name} ${version}: it says ${said}, its text ${text} is ${licence ?? 'not known'}`);
  }
  return { name, version, licence, folder, text };
}

/** The page. */
export function licencePage() {
  const rows = runtimeLicences().map(({ name, version, licence, text, users }) => [
    `${name} ${version}`,
    licence,
    text === undefined ? 'none in the package' : `\`${text}\``,
    users.join(', '),
  ]);
  return `# Licences

For anyone who ships it with something of their own. [All pages](README.md)

Evenfall is under the [MIT licence](../LICENSE). This is what it depends on at run time, dependencies of dependencies too,
as \`npm run licences\` finds it installed; each licence is read off its text where the package holds one. What only
builds or tests Evenfall is not listed. The built page carries the texts themselves, in \`licences.md\` beside it, the one
file at its end.

${markdownTable(['package', 'licence', 'its text', 'used by'], rows)}
`;
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  install();
  writeFileSync(PAGE, licencePage());
  console.log('wrote docs/licences.md');
}
