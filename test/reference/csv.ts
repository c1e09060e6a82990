import { readFileSync } from 'node:fs';

/** Rows of a check table under test/data, by column name; fields may be quoted. Throws where a row has another width. */
export function readTable(name: string): Record<string, string>[] {
  const text = readFileSync(new URL(`../data/${name}`, import.meta.url), 'utf8');
  const [header, ...rows] = text.trimEnd().split(/\r?\n/).map(fieldsOf);
  return rows.map((fields, i) => {
    if (fields.length !== header!.length)
      throw new Error(`${name}: row ${i + 2} has ${fields.length} fields`);
    return Object.fromEntries(fields.map((field, j) => [header![j]!, field]));
  });
}

function fieldsOf(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
  );
}
