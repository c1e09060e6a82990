// Every name that the packages export, with what its docstring says: read from the sources by the compiler.

import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import type { Snippet } from './snippet-blocks.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** One exported name. */
export interface ExportedName {
  readonly package: string; // '@evenfall/core'
  readonly name: string;
  readonly at: string; // "packages/core/src/exposure/dial.ts:15"
  readonly kind: 'function' | 'constant' | 'type';
  /** What its docstring lacks, one line each; empty is good. */
  readonly gaps: readonly string[];
  readonly examples: readonly Snippet[];
  /** Of a function: as its declaration has them, and what of them it checks at its own door. */
  readonly parameters: readonly string[];
  readonly checked: readonly string[];
}

/** @param packages names of folders under packages/ */
export function exportedNames(packages: readonly string[]): ExportedName[] {
  const entries = packages.flatMap((folder) => entriesOf(folder).map((file) => ({ folder, file })));
  const config = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile).config as object;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const program = ts.createProgram(
    entries.map(({ file }) => file),
    options,
  );
  const reader = new DocReader(program.getTypeChecker());
  const seen = new Set<ts.Symbol>();
  return entries.flatMap(({ folder, file }) =>
    reader.symbolsOf(program.getSourceFile(file)!).flatMap(({ name, symbol }) => {
      if (seen.has(symbol)) return [];
      seen.add(symbol);
      return [{ package: `@evenfall/${folder}`, ...reader.read(name, symbol) }];
    }),
  );
}

/** Sources of a package's entry points, those that its `exports` gives types for. */
function entriesOf(folder: string): string[] {
  const path = join(root, 'packages', folder);
  const { exports } = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8')) as {
    readonly exports: Readonly<Record<string, string | { readonly types?: string }>>;
  };
  return Object.values(exports).flatMap((target) =>
    typeof target === 'string' || target.types === undefined
      ? []
      : [join(path, target.types.replace('./dist/', 'src/').replace(/\.d\.ts$/, '.ts'))],
  );
}

type FunctionNode = ts.FunctionDeclaration | ts.ArrowFunction | ts.FunctionExpression | ts.MethodDeclaration;

class DocReader {
  readonly #checker: ts.TypeChecker;
  readonly #reachesThrow = new Map<ts.Node, boolean>();

  constructor(checker: ts.TypeChecker) {
    this.#checker = checker;
  }

  symbolsOf(file: ts.SourceFile): { name: string; symbol: ts.Symbol }[] {
    return this.#checker
      .getExportsOfModule(this.#checker.getSymbolAtLocation(file)!)
      .map((symbol) => ({ name: symbol.name, symbol: this.#resolved(symbol) }));
  }

  read(name: string, symbol: ts.Symbol): Omit<ExportedName, 'package'> {
    const node = symbol.declarations![0]!;
    const at = place(node);
    if (ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node)) {
      const gaps = [...(described(node) ? [] : ['no docstring']), ...fieldGaps(node, name)];
      return { name, at, kind: 'type', gaps, examples: [], parameters: [], checked: [] };
    }
    const examples = examplesOf(node);
    const fn = functionOf(node);
    const gaps = [
      ...(described(node) ? [] : ['no docstring']),
      ...(examples.length > 0 ? [] : ['no @example in a ts block']),
      ...(examples.every(({ code }) => /\/\/ (→|throws) /.test(code))
        ? []
        : ['an @example that says no value']),
      ...(fn === undefined ? [] : this.#functionGaps(node, fn)),
    ];
    const parameters = fn?.parameters.map((parameter) => parameter.name.getText()) ?? [];
    const checked = fn === undefined ? [] : checkedNames(fn);
    return {
      name,
      at,
      kind: fn === undefined ? 'constant' : 'function',
      gaps,
      examples,
      parameters,
      checked,
    };
  }

  #functionGaps(node: ts.Node, fn: FunctionNode): string[] {
    const params = ts.getJSDocTags(node).filter(ts.isJSDocParameterTag);
    const gaps = fn.parameters.flatMap((parameter, i) => {
      const tag = params[i];
      const name = ts.isIdentifier(parameter.name) ? parameter.name.text : undefined;
      if (tag === undefined) return [`no @param for parameter ${i + 1}, ${parameter.name.getText()}`];
      if (name !== undefined && tag.name.getText() !== name)
        return [`@param ${tag.name.getText()} is named ${name}`];
      return textOf(tag) === '' ? [`@param ${tag.name.getText()} says nothing`] : [];
    });
    if (params.length > fn.parameters.length) gaps.push('more @param than parameters');
    const returns = ts.getJSDocReturnTag(node);
    if (returns === undefined || textOf(returns) === '') gaps.push('no @returns');

    const throwsTexts = ts
      .getJSDocTags(node)
      .filter(({ tagName }) => tagName.text === 'throws')
      .map(textOf);
    if (throwsTexts.some((text) => !text.startsWith('RangeError '))) gaps.push('@throws names no RangeError');
    const neverThrows = /never throws/i.test(docText(node));
    if (throwsTexts.length === 0 && !neverThrows && this.#mayThrow(fn))
      gaps.push('may throw a RangeError: no @throws, nor "never throws"');
    for (const name of checkedNames(fn)) {
      if (!throwsTexts.some((text) => new RegExp(`\\b${name}\\b`).test(text)))
        gaps.push(`@throws does not name ${name}, which is checked`);
    }
    return gaps;
  }

  #resolved(symbol: ts.Symbol): ts.Symbol {
    return symbol.flags & ts.SymbolFlags.Alias ? this.#checker.getAliasedSymbol(symbol) : symbol;
  }

  /** Whether a `throw new RangeError` can be reached through the packages' own functions. */
  #mayThrow(fn: ts.Node): boolean {
    const known = this.#reachesThrow.get(fn);
    if (known !== undefined) return known;
    this.#reachesThrow.set(fn, false); // a circle adds nothing
    const reaches = (node: ts.Node): boolean => {
      if (ts.isTryStatement(node) && node.catchClause) return reaches(node.catchClause);
      if (ts.isThrowStatement(node)) return node.expression.getText().startsWith('new RangeError');
      if (ts.isIdentifier(node) && !ts.isTypeNode(node.parent)) {
        const symbol = this.#checker.getSymbolAtLocation(node);
        const declaration = symbol && this.#resolved(symbol).valueDeclaration;
        const called = declaration && functionOf(declaration);
        if (called && called !== fn && place(called).startsWith('packages/') && this.#mayThrow(called))
          return true;
      }
      return ts.forEachChild(node, reaches) ?? false;
    };
    const found = ts.forEachChild(fn, reaches) ?? false;
    this.#reachesThrow.set(fn, found);
    return found;
  }
}

function place(node: ts.Node): string {
  const file = node.getSourceFile();
  const { line } = file.getLineAndCharacterOfPosition(node.getStart());
  return `${relative(root, file.fileName)}:${line + 1}`;
}

function functionOf(node: ts.Node): FunctionNode | undefined {
  if (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node)) return node;
  if (!ts.isVariableDeclaration(node) || node.initializer === undefined) return undefined;
  return ts.isArrowFunction(node.initializer) || ts.isFunctionExpression(node.initializer)
    ? node.initializer
    : undefined;
}

function textOf(tag: ts.JSDocTag): string {
  return ts.getTextOfJSDocComment(tag.comment)?.trim() ?? '';
}

function docsOf(node: ts.Node): readonly ts.JSDoc[] {
  return ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc);
}

function docText(node: ts.Node): string {
  return docsOf(node)
    .map((doc) => doc.getText().replaceAll(/\s*\n\s*\*\s*/g, ' '))
    .join(' ');
}

/** Whether words of its own stand before any tag. */
function described(node: ts.Node): boolean {
  return docsOf(node).some(({ comment }) => (ts.getTextOfJSDocComment(comment)?.trim() ?? '') !== '');
}

function examplesOf(node: ts.Node): Snippet[] {
  const tags = ts.getJSDocTags(node).filter(({ tagName }) => tagName.text === 'example');
  return tags.flatMap((tag) => {
    // From the source and not from the tag's text, so that lines can be named.
    const [page = '', first = '0'] = place(tag).split(':');
    const text = tag.getText().replaceAll(/^[ \t]*\* ?/gm, '');
    const block = /```ts\n([\s\S]*?)^```/m.exec(text);
    if (block === null) return [];
    const line = Number(first) + text.slice(0, block.index).split('\n').length;
    return [{ page, line, code: block[1]!, run: true }];
  });
}

/**
 * Fields that nothing is said of. Those of an interface have a comment each; in a group written within another type a
 * field may be told by name in the words above it. A field whose type is one word says what it is.
 */
function fieldGaps(node: ts.Node, path: string): string[] {
  const gaps: string[] = [];
  const visit = (inner: ts.Node, where: string, above: string): void => {
    let [next, words] = [where, above];
    if (ts.isPropertySignature(inner) || ts.isMethodSignature(inner)) {
      const name = inner.name.getText();
      next = `${where}.${name}`;
      const oneWord =
        ts.isPropertySignature(inner) && inner.type !== undefined && ts.isLiteralTypeNode(inner.type);
      // What is marked so is written into no type file.
      if (ts.getJSDocTags(inner).some(({ tagName }) => tagName.text === 'internal')) return;
      const told = described(inner) || oneWord || new RegExp(`\\b${name}\\b`).test(above);
      if (!told) gaps.push(`${next} has no comment`);
      words = docText(inner);
    }
    ts.forEachChild(inner, (child) => visit(child, next, words));
  };
  visit(node, path, ts.isInterfaceDeclaration(node) ? '' : docText(node));
  return gaps;
}

/** Arguments that a function checks at its own door. */
function checkedNames(fn: ts.Node): string[] {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && /^(positive|finite|within|whole)$/.test(node.expression.getText())) {
      const [name] = node.arguments;
      if (name && ts.isStringLiteral(name)) names.add(name.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(fn);
  return [...names];
}
