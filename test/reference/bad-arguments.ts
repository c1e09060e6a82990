// A name that a function checks is a name that its error tells: made from the function's own example, one argument at a
// time no number.

import ts from 'typescript';
import type { ExportedName } from './exports.js';
import type { Snippet } from './snippet-blocks.js';

/** The example, then its first call again for each checked number that it writes out, NaN in its place. */
export function withBadArguments({ name, parameters, checked, examples }: ExportedName): Snippet[] {
  const [example] = examples;
  if (example === undefined) return [];
  const call = firstCall(example.code, name);
  const tries =
    call === undefined ? [] : numbersIn(call, parameters).filter(({ key }) => checked.includes(key));
  return tries.map(({ key, at }) => {
    const from = call!.getStart();
    const text = call!.getText();
    const bad = `${text.slice(0, at.getStart() - from)}(NaN as never)${text.slice(at.end - from)}`;
    const code = `let said = 'nothing';
try { ${bad}; } catch (error) { said = String(error); }
/^RangeError: .*\\b${key}\\b/.test(said) || said; // → true
`;
    return { ...example, code: `${example.code}\n${code}` };
  });
}

function firstCall(code: string, name: string): ts.CallExpression | undefined {
  const file = ts.createSourceFile('example.ts', code, ts.ScriptTarget.Latest, true);
  const find = (node: ts.Node): ts.CallExpression | undefined =>
    ts.isCallExpression(node) && node.expression.getText() === name ? node : ts.forEachChild(node, find);
  return find(file);
}

/** Arguments, and fields of groups written out in them, by name. */
function numbersIn(
  call: ts.CallExpression,
  parameters: readonly string[],
): { key: string; at: ts.Expression }[] {
  return call.arguments.flatMap((at, i) =>
    ts.isObjectLiteralExpression(at)
      ? at.properties
          .filter(ts.isPropertyAssignment)
          .map(({ name, initializer }) => ({ key: name.getText(), at: initializer }))
      : [{ key: parameters[i] ?? '', at }],
  );
}
