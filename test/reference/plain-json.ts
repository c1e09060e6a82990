// Reading values out of JSON of unknown make. Each throws an Error that names the key.

/** A JSON object with the path it was found at. */
export interface Found {
  readonly path: string;
  readonly value: Record<string, unknown>;
}

export function object(value: unknown, path: string): Found {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Error(`${path}: no object`);
  return { path, value: { ...value } };
}

export function child(of: Found, key: string): Found {
  return object(of.value[key], `${of.path}.${key}`);
}

export function number(of: Found, key: string): number {
  const value = of.value[key];
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new Error(`${of.path}.${key}: ${String(value)} is no number`);
}

export function numberOr(of: Found, key: string, otherwise: number): number {
  return of.value[key] === undefined ? otherwise : number(of, key);
}

export function text(of: Found, key: string): string {
  const value = of.value[key];
  if (typeof value === 'string') return value;
  throw new Error(`${of.path}.${key}: ${String(value)} is no text`);
}

export function flag(of: Found, key: string): boolean {
  const value = of.value[key];
  if (typeof value === 'boolean') return value;
  throw new Error(`${of.path}.${key}: ${String(value)} is neither true nor false`);
}

export function list(of: Found, key: string): unknown[] {
  const value = of.value[key];
  if (Array.isArray(value)) return value;
  throw new Error(`${of.path}.${key}: no list`);
}

export function objects(of: Found, key: string): Found[] {
  return list(of, key).map((value, i) => object(value, `${of.path}.${key}[${i}]`));
}

export function texts(of: Found, key: string): string[] {
  return list(of, key).map((value, i) => {
    if (typeof value === 'string') return value;
    throw new Error(`${of.path}.${key}[${i}]: no text`);
  });
}

/** An RFC 3339 time with its offset, as epoch milliseconds. */
export function timeMs(of: Found, key: string): number {
  const value = text(of, key);
  const rfc3339 = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/;
  const ms = Date.parse(value);
  if (rfc3339.test(value) && Number.isFinite(ms)) return ms;
  throw new Error(`${of.path}.${key}: "${value}" is no RFC 3339 time with offset`);
}
