// Bundles as a program that imports the packages would be bundled.

import { rolldown } from 'rolldown';

/**
 * One minified file of an entry and all it needs.
 *
 * @param input path of the entry, or its code where it begins with "import" or "export"
 * @param folder from where packages are looked up
 * @param format `esm` for a module, `iife` for a script that leaves its exports in the variable `evenfall`
 * @throws where something is not found, or a warning is given
 */
export async function bundle(
  input: string,
  folder: string,
  format: 'esm' | 'iife' = 'esm',
): Promise<{ readonly code: string; readonly modules: readonly string[] }> {
  const isCode = /^(import|export)\b/.test(input);
  const entry = isCode ? `${folder}/entry.js` : input;
  const made = await rolldown({
    cwd: folder,
    input: entry,
    platform: 'browser',
    plugins: isCode ? [{ name: 'entry', load: (id) => (id === entry ? input : null), resolveId: own }] : [],
    onLog: (level, log) => {
      if (level !== 'debug' && level !== 'info') throw new Error(log.message);
    },
  });
  const { output } = await made.generate({ format, name: 'evenfall', minify: true });
  await made.close();
  const [chunk, ...others] = output;
  if (others.length > 0) throw new Error(`one file was expected, there are ${output.length}`);
  return { code: chunk.code, modules: chunk.moduleIds };

  function own(id: string): string | null {
    return id === entry ? entry : null;
  }
}
