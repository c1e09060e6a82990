// Writes the published JSON Schemas (draft 2020-12) of the file formats from the schemas that read them.
// Run after a build: node packages/tools/schemas.mjs

import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';

const at = (path) => new URL(`../core/${path}`, import.meta.url);

const LONG_CHARACTERS = 250;
const KEYWORDS = new Set(['anyOf', 'items', 'properties', 'additionalProperties']);

/**
 * The same schema with every long part that stands several times written once, under the key that it was first found at.
 * Written out wherever they stand, the parts of a plan would be 12,000 lines.
 */
function sharingParts({ $defs = {}, ...schema }) {
  const times = new Map();
  const eachPart = (part, meet) => {
    if (typeof part !== 'object' || part === null) return;
    if (!Array.isArray(part) && ('type' in part || 'anyOf' in part)) meet(JSON.stringify(part));
    for (const value of Object.values(part)) eachPart(value, meet);
  };
  eachPart([schema, $defs], (text) => times.set(text, (times.get(text) ?? 0) + 1));
  const shared = new Map(); // name by text
  const defs = { ...$defs };
  const nameFor = (key) => {
    for (let n = 1; ; n++) {
      const name = n === 1 ? key : `${key}-${n}`;
      if (!(name in defs)) return name;
    }
  };
  const inside = (part, key) =>
    Array.isArray(part)
      ? part.map((value) => once(value, key))
      : Object.fromEntries(
          Object.entries(part).map(([name, value]) => [name, once(value, KEYWORDS.has(name) ? key : name)]),
        );
  const once = (part, key) => {
    if (typeof part !== 'object' || part === null) return part;
    const text = JSON.stringify(part);
    if ((times.get(text) ?? 0) < 2 || text.length < LONG_CHARACTERS) return inside(part, key);
    if (!shared.has(text)) {
      const name = nameFor(key);
      shared.set(text, name);
      defs[name] = undefined; // its place
      defs[name] = inside(part, key);
    }
    return { $ref: `#/$defs/${shared.get(text)}` };
  };
  const whole = inside(schema, 'part');
  for (const [name, part] of Object.entries($defs)) defs[name] = inside(part, name);
  return Object.keys(defs).length === 0 ? whole : { ...whole, $defs: defs };
}

/**
 * The published schemas as text, by file name.
 *
 * @param {{shoot: object, plan: object, light: object, evenings: object, review: object}} schemas the valibot schemas of the formats
 * @param {(give: object) => string} describe what to give, in English
 * @returns {Record<string, string>}
 */
export function publishedSchemas({ shoot, plan, light, evenings, review }, describe) {
  const schema = (format, title, from) => {
    // A part that JSON Schema cannot say must not be lost in silence; these say nothing that JSON could break.
    const { $schema, ...rest } = toJsonSchema(from, {
      target: 'draft-2020-12',
      typeMode: 'input',
      errorMode: 'throw',
      ignoreActions: ['finite', 'transform', 'readonly'],
      // Patterns of JSON Schema are Unicode's anyway, which the flag u asks of ours.
      overrideAction: ({ valibotAction, jsonSchema }) => {
        if ('requirement' in valibotAction && valibotAction.requirement instanceof RegExp) {
          return { ...jsonSchema, pattern: valibotAction.requirement.source };
        }
        // What to give instead, which every leaf keeps as data, describes it.
        if (!('metadata' in valibotAction)) return undefined;
        const { give, ...rest } = { give: {}, ...jsonSchema };
        return { ...rest, description: describe(give) };
      },
    });
    const $id = `urn:evenfall:schema:${format}:1`;
    const text = JSON.stringify({ $schema, $id, title, ...sharingParts(rest) }, null, 2);
    return [`evenfall-${format}-1.schema.json`, `${text}\n`];
  };
  return Object.fromEntries([
    schema('shoot', 'Evenfall shoot file, evenfall-shoot/1', shoot),
    schema('plan', 'Evenfall plan file, evenfall-plan/1', plan),
    schema('light', 'Evenfall light table, evenfall-light/1', light),
    schema('evenings', 'Evenfall evenings to choose from, evenfall-evenings/1', evenings),
    schema('review', 'Evenfall review of a shoot, evenfall-review/1', review),
  ]);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const load = async (name) => import(fileURLToPath(at(`dist/files/${name}.js`)));
  const [
    { shootFileSchema },
    { planSchema },
    { lightSchema },
    { eveningsSchema },
    { reviewSchema },
    { englishGive },
  ] = await Promise.all([
    load('shoot-schema'),
    load('plan-schema'),
    load('light-schema'),
    load('evenings-schema'),
    load('review-schema'),
    load('english-faults'),
  ]);
  mkdirSync(at('schema/'), { recursive: true });
  const schemas = {
    shoot: shootFileSchema,
    plan: planSchema,
    light: lightSchema,
    evenings: eveningsSchema,
    review: reviewSchema,
  };
  const texts = publishedSchemas(schemas, englishGive);
  for (const [name, text] of Object.entries(texts)) {
    writeFileSync(at(`schema/${name}`), text);
    console.log(`wrote packages/core/schema/${name}`);
  }
}
