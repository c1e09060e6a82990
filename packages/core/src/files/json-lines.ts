// JSON that people can skim and compare: each row of a list stands on a line of its own.

/**
 * A value as JSON text, a line break at the end. The keys of the outermost group are indented as usual; a list
 * among them has one entry a line.
 *
 * @throws RangeError on NaN or an infinity, which JSON would silently turn into null
 */
export function jsonLines(value: Readonly<Record<string, unknown>>): string {
  const parts = Object.entries(value).map(([key, each]) => {
    const text = Array.isArray(each) ? rows(each) : indented(each);
    return `  ${JSON.stringify(key)}: ${text}`;
  });
  return `{\n${parts.join(',\n')}\n}\n`;
}

function rows(list: readonly unknown[]): string {
  if (list.length === 0) return '[]';
  return `[\n${list.map((row) => `    ${JSON.stringify(row, refuseNonFinite)}`).join(',\n')}\n  ]`;
}

function indented(value: unknown): string {
  return JSON.stringify(value, refuseNonFinite, 2).replaceAll('\n', '\n  ');
}

function refuseNonFinite(key: string, value: unknown): unknown {
  if (typeof value !== 'number' || Number.isFinite(value)) return value;
  throw new RangeError(`${key} must be finite, got ${value}`);
}
