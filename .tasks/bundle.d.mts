export function bundle(
  input: string,
  folder: string,
  format?: 'esm' | 'iife',
): Promise<{ readonly code: string; readonly modules: readonly string[] }>;
