// What a snippet says of its values, made into checks: `ev100Of(exposure); // → 15`.

import ts from 'typescript';

/** A statement's comment about its value or its error. */
const SAID = /^;?[ \t]*(?:\n[ \t]*)?\/\/ (→|throws) (.*(?:\n[ \t]*\/\/ {3,}.*)*)/;

interface Insertion {
  readonly at: number;
  readonly text: string;
}

/** Code with its checks in place, for the runner beside this file, and how many checks there are. */
export interface Checked {
  readonly code: string;
  readonly checkCount: number;
}

/** @param nameLine line 3 of the code as a reader finds it: "docs/light.md:34" */
export function withChecks(code: string, nameLine: (line: number) => string): Checked {
  const file = ts.createSourceFile('snippet.ts', code, ts.ScriptTarget.Latest, true);
  const insertions: Insertion[] = [];
  let checkCount = 0;

  const visit = (node: ts.Node): void => {
    const said = ts.isStatement(node) && !ts.isBlock(node) ? SAID.exec(code.slice(node.end)) : null;
    if (said) {
      const line = file.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      const text = said[2]!.replaceAll(/\n[ \t]*\/\/ */g, ' ').trim();
      const where = nameLine(line);
      insertions.push(...checkOf(node, said[1] === '→' ? expected(text, where) : text, said[1]!, where));
      checkCount++;
    }
    ts.forEachChild(node, visit);
  };
  visit(file);

  // An arrow that belongs to no statement would be a check that never fails.
  const written = code.match(/\/\/ (→|throws) /g)?.length ?? 0;
  if (written !== checkCount)
    throw new Error(`${nameLine(1)}: ${written} values are written, ${checkCount} stand after a statement`);
  const parts = insertions.sort((a, b) => b.at - a.at);
  return {
    code: parts.reduce((text, { at, text: more }) => text.slice(0, at) + more + text.slice(at), code),
    checkCount,
  };
}

function checkOf(node: ts.Node, said: string, mark: string, where: string): Insertion[] {
  const value = saidOf(node);
  if (value === undefined) throw new Error(`${where}: a value can be said of an expression or of one const`);
  const around = (at: ts.Node, before: string, after: string) => [
    { at: at.getStart(), text: before },
    { at: at.end, text: after },
  ];
  const place = JSON.stringify(where);
  if (mark === 'throws') {
    const [pause, kind] = /\bawait\b/.test(value.getText()) ? ['await ', 'async '] : ['', ''];
    return around(value, `${pause}check$.throws(${place}, ${kind}() => (`, `), ${JSON.stringify(said)})`);
  }
  if (
    ts.isCallExpression(value) &&
    value.expression.getText() === 'console.log' &&
    value.arguments.length > 0
  ) {
    const [first, last] = [value.arguments[0]!, value.arguments.at(-1)!];
    return [
      { at: first.getStart(), text: `...check$.is(${place}, [` },
      { at: last.end, text: `], [${said}])` },
    ];
  }
  return around(value, `check$.is(${place}, (`, `), ${said})`);
}

function saidOf(node: ts.Node): ts.Expression | undefined {
  if (ts.isExpressionStatement(node)) return node.expression;
  if (!ts.isVariableStatement(node)) return undefined;
  const [first, ...others] = node.declarationList.declarations;
  return others.length === 0 ? first?.initializer : undefined;
}

/** A said value as code: numbers hold to the digits written, what stands in no list or group is left as it is. */
function expected(text: string, where: string): string {
  const source = `[${text}]`;
  const file = ts.createSourceFile('said.ts', source, ts.ScriptTarget.Latest, true);
  const [statement, ...others] = file.statements;
  if (others.length > 0 || !statement || !ts.isExpressionStatement(statement))
    throw new Error(`${where}: "${text}" is no value`);
  const numbers: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(ts.isPrefixUnaryExpression(node) ? node.operand : node)) numbers.push(node);
    else if (ts.isArrayLiteralExpression(node)) node.elements.forEach(visit);
    else if (ts.isObjectLiteralExpression(node)) {
      for (const property of node.properties)
        if (ts.isPropertyAssignment(property)) visit(property.initializer);
    }
  };
  visit(statement.expression);
  const wrapped = numbers
    .reverse()
    .reduce(
      (said, number) => `${said.slice(0, number.getStart())}${near(number)}${said.slice(number.end)}`,
      source,
    );
  return wrapped.slice(1, -1);
}

/** 14.97 as anything that rounds to it, 12 as itself. */
function near(number: ts.Node): string {
  const text = number.getText();
  const [digits = '', exponent] = text.toLowerCase().split('e');
  const decimals = digits.split('.')[1]?.length;
  if (decimals === undefined && exponent === undefined) return text;
  return `check$.near(${text}, ${0.5 * 10 ** (Number(exponent ?? 0) - (decimals ?? 0))})`;
}
