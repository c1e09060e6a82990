// YAML, loaded when a file is opened or saved.

import type { Locate } from '@evenfall/core';
import {
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  stringify,
  visit,
} from 'yaml';
import { holdsTooMuch, isNestedTooDeep } from './nesting.js';

export interface Parsed {
  readonly value: unknown;
  readonly where: Locate;
}

/** Text of a file as a plain value, with the line of every key; undefined where it is neither YAML nor JSON. */
export function parse(text: string): Parsed | undefined {
  if (isNestedTooDeep(text) || holdsTooMuch(text)) return undefined;
  const lines = new LineCounter();
  try {
    // Keys that stand twice are looked for here: the parser would compare every key with every other.
    const options = {
      lineCounter: lines,
      prettyErrors: false,
      logLevel: 'error',
      uniqueKeys: false,
    } as const;
    const document = parseDocument(text, options);
    if (document.errors.length > 0 || hasOddKeys(document.contents)) return undefined;
    // Tags and directives change what words mean, and what they make no key takes.
    const { yaml, tags } = document.directives;
    if (yaml.explicit || Object.keys(tags).length > 1 || hasTags(document.contents)) return undefined;
    return { value: document.toJS({ maxAliasCount: 100 }), where: (path) => locate(document.contents, path) };
  } catch {
    return undefined;
  }

  function locate(root: unknown, path: Parameters<Locate>[0]): { line: number } | undefined {
    let node = root;
    let offset = isNode(root) ? root.range?.[0] : undefined;
    for (const part of path) {
      if (isMap(node)) {
        const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(part));
        if (pair === undefined || !isScalar(pair.key)) return undefined;
        offset = pair.key.range?.[0];
        node = pair.value;
      } else if (isSeq(node) && typeof part === 'number') {
        node = node.items[part];
        offset = isNode(node) ? node.range?.[0] : undefined;
      } else return undefined;
    }
    return offset === undefined ? undefined : { line: lines.linePos(offset).line };
  }
}

/** Whether some group holds a key twice, or a key that is no word. */
function hasOddKeys(root: Node | null): boolean {
  let found = false;
  visit(root, {
    Map: (_key, { items }) => {
      const keys = items.flatMap(({ key }) => (isScalar(key) ? [String(key.value)] : []));
      found ||= new Set(keys).size < items.length;
      return found ? visit.BREAK : undefined;
    },
  });
  return found;
}

function hasTags(root: Node | null): boolean {
  let found = false;
  visit(root, {
    Value: (_key, { tag }) => {
      found ||= tag !== undefined;
      return found ? visit.BREAK : undefined;
    },
  });
  return found;
}

/** JSON text as YAML; what YAML would misread, a date say, stays in quotes. */
export function yamlOf(json: string): string {
  return stringify(JSON.parse(json), { defaultStringType: 'PLAIN', defaultKeyType: 'PLAIN' });
}
