// The packages as a user gets them: packed, and installed into an empty project.

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Packed, packInto } from '../../packages/tools/pack.mjs';

/** An empty project with the three packages in it. */
export interface Project {
  readonly folder: string;
  readonly packages: readonly Packed[];
  /** Runs a command in the project; what it prints, or an error with what it complained of. */
  run(command: string, args: readonly string[], input?: string): string;
  remove(): void;
}

/** Packs and installs. What the packages depend on comes from npm's cache where it has it, else from the registry. */
export function installedProject(): Project {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-installed-'));
  const packages = packInto(join(folder, 'tarballs'));
  const project = join(folder, 'project');
  mkdirSync(project);
  writeFileSync(join(project, 'package.json'), '{ "private": true, "type": "module" }');
  const run = (command: string, args: readonly string[], input = '') => {
    const { status, stdout, stderr } = spawnSync(command, args, { cwd: project, encoding: 'utf8', input });
    if (status !== 0)
      throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${stderr}${stdout}`);
    return stdout;
  };
  run('npm', ['install', '--prefer-offline', '--loglevel=error', ...packages.map(({ file }) => file)]);
  return {
    folder: project,
    packages,
    run,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
