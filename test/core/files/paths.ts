// Places in a file's value, and the value with another one there.

/** Keys and list positions from the root. */
export type Path = readonly (string | number)[];

/** Every place in a value, the root first. */
export function pathsOf(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([key, each]) => pathsOf(each, [...at, key]))];
}

/** The value with another one at a path. */
export function replaced(value: unknown, [first, ...rest]: Path, by: unknown): unknown {
  if (first === undefined) return by;
  if (Array.isArray(value))
    return value.map((each, i) => (String(i) === first ? replaced(each, rest, by) : each));
  const group = (value ?? {}) as Record<string, unknown>;
  return { ...group, [first]: replaced(group[first], rest, by) };
}
