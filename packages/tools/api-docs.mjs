// Makes the reference of the libraries as pages, from the comments in their source. An export that is not documented
// and a link that leads nowhere are errors.
//
//   npm run api-docs            into out/api; open out/api/index.html

import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { Application, Converter, Logger, LogLevel } from 'typedoc';
import { fail, install, root } from './ready.mjs';

/** @type {import('typedoc').TypeDocOptions} */
const OPTIONS = {
  name: 'Evenfall',
  entryPoints: [`${root}/packages/core/src/*/index.ts`, `${root}/packages/chart/src/index.ts`],
  tsconfig: `${root}/tsconfig.json`,
  readme: `${root}/packages/core/README.md`,
  packagesRequiringDocumentation: ['@evenfall/core', '@evenfall/chart'],
  skipErrorChecking: true,
  excludeInternal: true,
  disableGit: true,
  disableSources: true,
  githubPages: false,
  hideGenerator: true,
  validation: { notDocumented: true, notExported: true, invalidLink: true, invalidPath: true },
  requiredToBeDocumented: ['Variable', 'Function', 'Class', 'Interface', 'TypeAlias', 'Method'],
};

class Told extends Logger {
  lines = [];
  /** @override */
  log(message, level) {
    // The words of a language speak for themselves.
    if (/chart\.(english\.__type|Words)\./.test(message)) return;
    if (level >= LogLevel.Warn) this.lines.push(message);
  }
}

/** A comment may name what another room exports, though its own file does not import it. */
function linkAcross(project) {
  const exported = new Map(
    project.children.flatMap(({ children = [] }) => children.map((each) => [each.name, each])),
  );
  for (const { comment } of Object.values(project.reflections)) {
    const parts = [
      ...(comment?.summary ?? []),
      ...(comment?.blockTags ?? []).flatMap(({ content }) => content),
    ];
    for (const part of parts) {
      if (part.kind === 'inline-tag' && part.target === undefined)
        part.target = exported.get(part.text.trim());
    }
  }
}

/**
 * Reads the comments.
 *
 * @param {string} [folder] where the pages are written; none are without it
 * @returns {Promise<string[]>} what is undocumented, missing or misleading, one line each
 */
export async function apiDocs(folder) {
  const told = new Told();
  const app = await Application.bootstrap(OPTIONS);
  app.logger = told;
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => linkAcross(project));
  const project = await app.convert();
  if (project === undefined) return told.lines;
  app.validate(project);
  if (folder !== undefined && told.lines.length === 0) await app.generateDocs(project, folder);
  return told.lines;
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  install();
  const faults = await apiDocs(`${root}/out/api`);
  if (faults.length > 0) fail(faults.join('\n'));
  console.log('The reference is written: open out/api/index.html');
}
