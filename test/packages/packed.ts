// The packages as a user gets them: packed, and installed into an empty project.

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Packed, packInto } from '../../packages/tools/pack.mjs';

/** An empty project with the three packages in it. */
export interface Project {
  readonly folder: string;
  readonly packages: readonly Packed[];
  /** What was there when core alone had been installed. */
  readonly withCore: readonly string[];
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
  const add = (...files: readonly string[]) =>
    run('npm', ['install', '--prefer-offline', '--loglevel=error', ...files]);
  const core = packages.filter(({ name }) => name === '@evenfall/core').map(({ file }) => file);
  add(...core);
  const lock = JSON.parse(readFileSync(join(project, 'node_modules/.package-lock.json'), 'utf8')) as {
    packages: object;
  };
  const withCore = Object.keys(lock.packages).filter((path) => path !== '');
  add(...packages.map(({ file }) => file));
  return {
    folder: project,
    packages,
    withCore,
    run,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
