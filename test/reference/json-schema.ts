// The published JSON Schemas as an outside reader takes them: Ajv (docs/choices.md), strict, draft 2020-12.

import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';

/** A published schema as it stands in the package. */
export function published(format: 'shoot' | 'plan' | 'light' | 'evenings' | 'review'): object {
  const path = `../../packages/core/schema/evenfall-${format}-1.schema.json`;
  return JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as object;
}

/** Where values break a schema, as texts; empty where they do not. The schema itself must be without fault. */
export function schemaReader(schema: object): (value: unknown) => string[] {
  const ajv = new Ajv2020({ strict: true, allErrors: false, validateSchema: true });
  const check = ajv.compile(schema);
  return (value) =>
    check(value) ? [] : check.errors!.map(({ instancePath, message }) => `${instancePath} ${message}`);
}
