// What the operating system's error codes mean to a person.

const MEANINGS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder; check the path',
  ENOTDIR: 'a part of the path is a file, not a folder; check the path',
  EISDIR: 'that is a folder; give a file',
  ENOTFILE: 'that is a device or a pipe; give a file',
  ELOOP: 'its links lead in a circle; give another path',
  EEXIST: 'something is in the way; give another name',
  ENOTEMPTY: 'that is a folder; give a file',
  EACCES: 'permission is missing; give a path of your own',
  EPERM: 'permission is missing; give a path of your own',
  EROFS: 'the disk takes no writing; give a path on another',
  ENOSPC: 'the disk is full; make room',
  EDQUOT: 'the disk quota is used up; make room',
  ENAMETOOLONG: 'the name is too long; give a shorter one',
};

/** One line's worth: what is wrong and what to do. */
export function systemErrorText(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return (
    MEANINGS[code] ?? `the system says ${code || (error instanceof Error ? error.message : String(error))}`
  );
}
