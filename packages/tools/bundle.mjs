// Bundles as a program that imports the packages would be bundled.

import { rolldown } from 'rolldown';

/**
 * One minified file of an entry and all it needs.
 *
 * @param {string} input path of the entry, or its code where it begins with "import" or "export"
 * @param {string} folder from where packages are looked up
 * @param {'esm' | 'iife'} format a module, or a script that leaves its exports in the variable `evenfall`
 * @returns {Promise<{code: string, modules: string[]}>} the file, and the paths of what went into it
 * @throws where something is not found, or the bundler warns of anything
 */
export async function bundle(input, folder, format = 'esm') {
  const isCode = /^(import|export)\b/.test(input);
  const entry = isCode ? `${folder}/entry.js` : input;
  const given = {
    name: 'entry',
    resolveId: (id) => (id === entry ? entry : null),
    load: (id) => (id === entry ? input : null),
  };
  const made = await rolldown({
    cwd: folder,
    input: entry,
    platform: 'browser',
    plugins: isCode ? [given] : [],
    onLog: (level, log) => {
      // That a machine is slow is no fault of the bundle.
      if (level === 'warn' && !log.code?.endsWith('_TIMINGS')) throw new Error(log.message);
    },
  });
  const { output } = await made.generate({ format, name: 'evenfall', minify: true });
  await made.close();
  const [chunk, ...others] = output;
  if (others.length > 0) throw new Error(`one file was expected, there are ${output.length}`);
  return { code: chunk.code, modules: chunk.moduleIds };
}
