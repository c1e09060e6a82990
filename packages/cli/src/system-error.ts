// What the operating system answers where a file cannot be read or written.

const CODES = [
  'ENOENT',
  'ENOTDIR',
  'EISDIR',
  'ENOTFILE',
  'ELOOP',
  'EEXIST',
  'ENOTEMPTY',
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOSPC',
  'EDQUOT',
  'ENAMETOOLONG',
] as const;

/** A code of the system that has a meaning to a person. */
export type SystemCode = (typeof CODES)[number];

/** A code, or the system's own words where it is none of these. */
export type SystemFault = { readonly code: SystemCode } | { readonly said: string };

export function systemFault(error: unknown): SystemFault {
  const given = error instanceof Error && 'code' in error ? String(error.code) : '';
  const code = CODES.find((known) => known === given);
  return code === undefined
    ? { said: given || (error instanceof Error ? error.message : String(error)) }
    : { code };
}
