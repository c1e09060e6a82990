// YAML or JSON text to a plain value, and the line of every key. JSON is YAML too.

import type { Locate } from '@evenfall/core';
import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type ParsedNode,
  parseDocument,
  visit,
} from 'yaml';
import { holdsTooMuch, isNestedTooDeep } from './nesting.js';
import { Refusal } from './refusal.js';
import { lineText, type SlipFacts, type Stumble, slipAt } from './slips.js';

/** Most of a line that is shown, in characters. */
const LONGEST_SHOWN = 60;

export interface Parsed {
  readonly value: unknown;
  readonly where: Locate;
}

/**
 * @param source name of the file, for messages
 * @throws Refusal, one line, where the text is neither YAML nor JSON
 */
export function parseText(text: string, source: string): Parsed {
  const lines = new LineCounter();
  const lineAt = (offset: number) => lines.linePos(offset).line;
  const refuse = (slip: SlipFacts, line?: number) => {
    const shown = line === undefined ? '' : lineText(text, line).slice(0, LONGEST_SHOWN);
    const place = line === undefined ? {} : { line, ...(shown === '' ? {} : { shown }) };
    return new Refusal([{ kind: 'not-yaml', source, ...place, slip }]);
  };
  if (isNestedTooDeep(text)) throw refuse({ slip: 'too-deep' });
  if (holdsTooMuch(text)) throw refuse({ slip: 'too-many' });
  try {
    // Keys that stand twice are looked for below: the parser would compare every key with every other.
    const options = {
      lineCounter: lines,
      prettyErrors: false,
      logLevel: 'error',
      uniqueKeys: false,
    } as const;
    const document = parseDocument(text, options);
    const stumble = stumbleIn(document);
    if (stumble !== undefined) {
      const slip = slipAt(text, stumble);
      throw refuse(slip.facts, slip.line);
    }
    return { value: document.toJS({ maxAliasCount: 100 }), where: (path) => locate(document.contents, path) };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    // Aliases of aliases: no shoot file has them.
    throw refuse({ slip: 'too-deep' });
  }

  function locate(root: unknown, path: Parameters<Locate>[0]): { line: number } | undefined {
    let node = root;
    let offset = isNode(root) ? root.range?.[0] : undefined;
    for (const part of path) {
      if (isAlias(node)) return offset === undefined ? undefined : { line: lineAt(offset) };
      if (isMap(node)) {
        const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(part));
        if (!pair || !isScalar(pair.key)) return undefined;
        offset = pair.key.range?.[0];
        node = pair.value;
      } else if (isSeq(node) && typeof part === 'number') {
        node = node.items[part];
        if (!isNode(node)) return undefined;
        offset = node.range?.[0];
      } else return undefined;
    }
    return offset === undefined ? undefined : { line: lineAt(offset) };
  }
}

/** The first thing in a document that cannot be read as meant. */
function stumbleIn(document: Document.Parsed<ParsedNode>): Stumble | undefined {
  const problem = document.errors[0] ?? document.warnings[0];
  if (problem) return { code: problem.code, message: problem.message, offset: problem.pos[0] };
  let stumble: Stumble | undefined;
  // A directive changes what words mean, down to "yes" and 0144.
  const { yaml, tags } = document.directives;
  if (yaml.explicit || Object.keys(tags).length > 1) return { code: 'DIRECTIVE', message: '', offset: 0 };
  const anchors = new Set<string>();
  const stop = (code: string, offset: number | undefined) => {
    stumble = { code, message: code, offset: offset ?? 0 };
    return visit.BREAK;
  };
  visit(document, {
    Value: (_key, node) => {
      // A tag makes another sort of value, which no key takes: it would be passed over in silence.
      if (node.tag !== undefined) return stop('TAG', node.range?.[0]);
      if (node.anchor !== undefined) anchors.add(node.anchor);
      return undefined;
    },
    Alias: (_key, { source, range }) => (anchors.has(source) ? undefined : stop('BAD_ALIAS', range?.[0])),
    Map: (_key, { items, anchor, tag, range }) => {
      if (tag !== undefined) return stop('TAG', range?.[0]);
      if (anchor !== undefined) anchors.add(anchor);
      const keys = new Set<string>();
      for (const { key } of items) {
        // Groups as keys: their text is made again at every depth, which takes long.
        if (!isScalar(key)) return stop('KEY_NO_WORD', isNode(key) ? key.range?.[0] : 0);
        const name = String(key.value);
        if (keys.has(name)) return stop('DUPLICATE_KEY', key.range?.[0]);
        keys.add(name);
      }
      return undefined;
    },
  });
  return stumble;
}
