// The command as it is published, built once for a file of tests.

import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

let built = false;

/** Path of the command's program, built. */
export function build(): string {
  if (!built) {
    const packages = ['core', 'chart', 'cli'].map((name) => at(`packages/${name}`));
    execFileSync(process.execPath, [at('node_modules/typescript/bin/tsc'), '-b', ...packages]);
    execFileSync(process.execPath, [at('packages/tools/bundle-packages.mjs')]);
    built = true;
  }
  return at('packages/cli/bin/evenfall.cjs');
}
