// Loads the command's modules. Compiling them takes a fifth of the time of a plan, so what was compiled is kept for the
// next run, as node 22.1 and later do it when they are asked to. On Node 20 the same is done here.

import { createRequire } from 'node:module';
import { KeptCode, keptFolder } from './kept-code.js';

type Run = () => Promise<void>;
type Compiling = { readonly enableCompileCache?: (folder: string) => unknown };

/**
 * The command, ready to run.
 *
 * @param folder with `main.cjs`, its parts and `fingerprint`
 * @param command the word it is called with: each keeps the code that it needs
 */
export function runOf(folder: string, command: string): Run {
  const require = createRequire(`${folder}/`);
  const main = `${folder}/main.cjs`;
  const { NODE_COMPILE_CACHE, NODE_DISABLE_COMPILE_CACHE } = process.env;
  const kept = NODE_COMPILE_CACHE ?? keptFolder();
  if (NODE_DISABLE_COMPILE_CACHE !== undefined || kept === undefined) return require(main).runHere;
  const { enableCompileCache } = require('node:module') as Compiling;
  if (enableCompileCache !== undefined) {
    enableCompileCache(kept);
    return require(main).runHere;
  }
  return (new KeptCode(folder, kept, command, require).load(main) as { readonly runHere: Run }).runHere;
}
