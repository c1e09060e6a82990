// A plain reader of JSON Schema, draft 2020-12, for the keywords our published schemas use. It knows nothing of the
// program that made them, and refuses a keyword it does not know.

type Schema = Readonly<Record<string, unknown>>;

const ANNOTATIONS = new Set(['$schema', '$defs', 'title', 'description', 'default']);

/** Where a value breaks a schema, as texts; empty where it does not. */
export function schemaFaults(root: Schema, value: unknown): string[] {
  return faults(root, value, '');

  function faults(schema: Schema, value: unknown, at: string): string[] {
    return Object.entries(schema).flatMap(([keyword, rule]) => {
      const fault = (ok: boolean) => (ok ? [] : [`${at || '/'}: ${keyword} ${JSON.stringify(rule)}`]);
      const isNumber = typeof value === 'number';
      const isText = typeof value === 'string';
      const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value);
      const group = (isGroup ? value : {}) as Record<string, unknown>;
      switch (keyword) {
        case '$ref':
          return faults(resolved(String(rule)), value, at);
        case 'type':
          return fault(typeOf(value, String(rule)));
        case 'enum':
          return fault((rule as unknown[]).includes(value));
        case 'const':
          return fault(value === rule);
        case 'minimum':
          return fault(!isNumber || value >= Number(rule));
        case 'maximum':
          return fault(!isNumber || value <= Number(rule));
        case 'exclusiveMinimum':
          return fault(!isNumber || value > Number(rule));
        case 'minLength':
          return fault(!isText || [...value].length >= Number(rule));
        case 'maxLength':
          return fault(!isText || [...value].length <= Number(rule));
        case 'pattern':
          return fault(!isText || new RegExp(String(rule), 'u').test(value));
        case 'minItems':
          return fault(!Array.isArray(value) || value.length >= Number(rule));
        case 'maxItems':
          return fault(!Array.isArray(value) || value.length <= Number(rule));
        case 'items':
          return Array.isArray(value)
            ? value.flatMap((item, i) => faults(rule as Schema, item, `${at}/${i}`))
            : [];
        case 'properties':
          return Object.entries(rule as Record<string, Schema>).flatMap(([key, each]) =>
            Object.hasOwn(group, key) ? faults(each, group[key], `${at}/${key}`) : [],
          );
        case 'required':
          return isGroup
            ? (rule as string[])
                .filter((key) => !Object.hasOwn(group, key))
                .map((key) => `${at}: requires ${key}`)
            : [];
        case 'additionalProperties': {
          if (rule !== false)
            throw new Error(`additionalProperties ${JSON.stringify(rule)} is not known here`);
          const known = Object.keys((schema.properties ?? {}) as object);
          return Object.keys(group)
            .filter((key) => !known.includes(key))
            .map((key) => `${at}: knows no ${key}`);
        }
        case 'anyOf':
          return fault((rule as Schema[]).some((each) => faults(each, value, at).length === 0));
        case 'not':
          return fault(faults(rule as Schema, value, at).length > 0);
        default:
          if (ANNOTATIONS.has(keyword)) return [];
          throw new Error(`keyword ${keyword} is not known here`);
      }
    });
  }

  function resolved(reference: string): Schema {
    const parts = reference.replace(/^#\//, '').split('/');
    let at: unknown = root;
    for (const part of parts) at = (at as Record<string, unknown>)[part];
    return at as Schema;
  }
}

function typeOf(value: unknown, type: string): boolean {
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value);
  if (type === 'integer') return Number.isInteger(value);
  return typeof value === type;
}
