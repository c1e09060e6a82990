// The small faults that may be put into a file: one operator, number, word or condition changed at a time.

import ts from 'typescript';

const { SyntaxKind } = ts;

const BINARY = new Map([
  [SyntaxKind.PlusToken, ['-']],
  [SyntaxKind.MinusToken, ['+']],
  [SyntaxKind.AsteriskToken, ['/']],
  [SyntaxKind.SlashToken, ['*']],
  [SyntaxKind.AsteriskAsteriskToken, ['*']],
  [SyntaxKind.PercentToken, ['*']],
  [SyntaxKind.LessThanToken, ['<=', '>=']],
  [SyntaxKind.LessThanEqualsToken, ['<', '>']],
  [SyntaxKind.GreaterThanToken, ['>=', '<=']],
  [SyntaxKind.GreaterThanEqualsToken, ['>', '<']],
  [SyntaxKind.EqualsEqualsEqualsToken, ['!==']],
  [SyntaxKind.ExclamationEqualsEqualsToken, ['===']],
  [SyntaxKind.AmpersandAmpersandToken, ['||']],
  [SyntaxKind.BarBarToken, ['&&']],
  [SyntaxKind.PlusEqualsToken, ['-=']],
  [SyntaxKind.MinusEqualsToken, ['+=']],
]);

const METHODS = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  some: 'every',
  every: 'some',
  sin: 'cos',
  cos: 'sin',
  startsWith: 'endsWith',
};

/** What a call may be left out of: the value it is called on stays. */
const LEFT_OUT = new Set(['sort', 'reverse', 'filter', 'trim', 'abs']);

/** Whether a number stands in a constant of its file, and so decides. */
function isConstant(node) {
  const declaration = ts.findAncestor(node, ts.isVariableDeclaration);
  return declaration !== undefined && /^[A-Z][A-Z\d_]*$/.test(declaration.name.getText());
}

/** A number that decides, moved either way: by a tenth, or by one where it counts. */
function othersOf(value) {
  const by = Number.isInteger(value) ? Math.max(1, Math.round(value / 10)) : value / 10;
  return value === 0 ? [1] : [value + by, value - by];
}

/**
 * Every mutant of a file: what stands from…to of the text is replaced `by` something else.
 *
 * @param {string} text of a TypeScript file
 * @returns {{ from: number, to: number, by: string, what: string, line: number }[]}
 */
export function mutantsOf(text) {
  const source = ts.createSourceFile('file.ts', text, ts.ScriptTarget.Latest, true);
  const mutants = [];
  const add = (node, by, what) => {
    const from = node.getStart(source);
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    mutants.push({ from, to: node.getEnd(), by, what, line });
  };
  visit(source);
  return mutants;

  function visit(node) {
    // Types, and the names that are imported and exported, do nothing when the program runs.
    if (ts.isTypeNode(node) || ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) return;
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    mutate(node);
    ts.forEachChild(node, visit);
  }

  function mutate(node) {
    if (ts.isBinaryExpression(node)) {
      const isText = [node.left, node.right].some(
        (side) => ts.isStringLiteralLike(side) || ts.isTemplateExpression(side),
      );
      if (node.operatorToken.kind === SyntaxKind.QuestionQuestionToken) {
        add(node, node.left.getText(source), 'no fallback');
      } else if (!isText || node.operatorToken.kind !== SyntaxKind.PlusToken) {
        for (const by of BINARY.get(node.operatorToken.kind) ?? []) add(node.operatorToken, by, 'operator');
      }
    } else if (ts.isPrefixUnaryExpression(node) && /^[-!]/.test(node.getText(source))) {
      if (!ts.isNumericLiteral(node.operand)) add(node, node.operand.getText(source), 'sign');
    } else if (ts.isNumericLiteral(node)) {
      const what = isConstant(node) ? 'constant' : 'number';
      for (const by of othersOf(Number(node.text.replaceAll('_', '')))) add(node, String(by), what);
    } else if (node.kind === SyntaxKind.TrueKeyword || node.kind === SyntaxKind.FalseKeyword) {
      add(node, node.kind === SyntaxKind.TrueKeyword ? 'false' : 'true', 'flag');
    } else if (ts.isStringLiteralLike(node) && !ts.isPropertyAssignment(node.parent?.parent ?? node)) {
      const isName = ts.isPropertyAssignment(node.parent) && node.parent.name === node;
      if (!isName) add(node, node.text === '' ? "'mutant'" : "''", 'text');
    } else if (ts.isTemplateExpression(node)) {
      add(node, '``', 'text');
    } else if (ts.isIfStatement(node) || ts.isConditionalExpression(node)) {
      const condition = ts.isIfStatement(node) ? node.expression : node.condition;
      add(condition, 'true', 'condition');
      add(condition, 'false', 'condition');
    } else if (
      ts.isArrayLiteralExpression(node) &&
      node.elements.length > 0 &&
      !ts.isSpreadElement(node.parent)
    ) {
      add(node, '[]', 'list');
    } else if (ts.isCallExpression(node)) mutateCall(node);
  }

  function mutateCall(node) {
    const { expression } = node;
    if (ts.isPropertyAccessExpression(expression)) {
      const name = expression.name.text;
      const isMath = expression.expression.getText(source) === 'Math';
      if (Object.hasOwn(METHODS, name)) add(expression.name, METHODS[name], 'method');
      if (LEFT_OUT.has(name))
        add(node, (isMath ? node.arguments[0] : expression.expression).getText(source), 'no call');
    } else if (ts.isExpressionStatement(node.parent)) add(node, 'undefined', 'no call');
  }
}
