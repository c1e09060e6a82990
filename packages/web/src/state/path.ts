// Reading and changing one value deep inside plain data, without touching the rest.

export type Path = readonly (string | number)[];

export type Group = Readonly<Record<string, unknown>>;

export function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const key of path) {
    if (Array.isArray(value) && typeof key === 'number') value = value[key];
    else if (isGroup(value) && Object.hasOwn(value, key)) value = value[key];
    else return undefined;
  }
  return value;
}

/** A copy with the value at the path replaced, or with its key or entry removed where the value is undefined. */
export function withValue(root: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const next = withValue(valueAt(root, [key]), rest, value);
  if (typeof key === 'number') {
    const list = Array.isArray(root) ? root : [];
    return next === undefined
      ? list.filter((_, i) => i !== key)
      : list.with(Math.min(key, list.length), next);
  }
  const group = isGroup(root) ? root : {};
  return next === undefined
    ? Object.fromEntries(Object.entries(group).filter(([name]) => name !== key))
    : { ...group, [key]: next };
}

export const startsWith = (path: Path, head: Path) => head.every((key, i) => key === path[i]);

/** Keys of files, "camera.iso.highest", whose values differ; lists are compared as a whole. */
export function changedKeys(before: unknown, after: unknown, head = ''): string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (!isGroup(before) || !isGroup(after)) return [head];
  const names = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...names].flatMap((name) =>
    changedKeys(before[name], after[name], head === '' ? name : `${head}.${name}`),
  );
}
