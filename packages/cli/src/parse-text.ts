// YAML or JSON text to a plain value, and the line of every key. JSON is YAML too.

import type { Locate } from '@evenfall/core';
import { isAlias, isMap, isNode, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import { Refusal } from './refusal.js';

export interface Parsed {
  readonly value: unknown;
  readonly where: Locate;
}

/** The slips people make most, each with what would be right; the parser's own words tell the rest. */
const PROBLEMS: Readonly<Record<string, string>> = {
  DUPLICATE_KEY: 'a key stands twice; give it once',
  TAB_AS_INDENT: 'a tab stands for an indent; give spaces',
  MULTIPLE_DOCS: 'a second document follows the first; give one a file',
  RESOURCE_EXHAUSTION: 'nested too deep',
};

/**
 * @param source name of the file, for messages
 * @throws Refusal, one line, where the text is neither YAML nor JSON
 */
export function parseText(text: string, source: string): Parsed {
  const lines = new LineCounter();
  const lineAt = (offset: number) => lines.linePos(offset).line;
  try {
    const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, logLevel: 'error' });
    const problem = document.errors[0] ?? document.warnings[0];
    if (problem) {
      const what = PROBLEMS[problem.code] ?? problem.message.split('\n')[0]!.replace(/[.:\s]*$/, '');
      throw new Refusal([`${source}:${lineAt(problem.pos[0])}: not readable as YAML or JSON: ${what}`]);
    }
    return { value: document.toJS({ maxAliasCount: 100 }), where: (path) => locate(document.contents, path) };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    // Thousands of brackets, or aliases of aliases: no shoot file has them.
    throw new Refusal([`${source}: not readable as YAML or JSON: nested too deep`]);
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
