// Types that a package's public names lead to, as the compiler sees its declarations.

import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** What the package offers: its symbols, and what reads them. */
function offerOf(name: 'core' | 'chart') {
  const dist = fileURLToPath(new URL(`../../packages/${name}/dist/`, import.meta.url));
  const program = ts.createProgram([`${dist}index.d.ts`], {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    skipLibCheck: true,
    types: [],
    strict: true,
  });
  const checker = program.getTypeChecker();
  const declared = (symbol: ts.Symbol) =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const entry = checker.getSymbolAtLocation(program.getSourceFile(`${dist}index.d.ts`)!)!;
  return { dist, checker, declared, offered: new Set(checker.getExportsOfModule(entry).map(declared)) };
}

/** Names of the package's own types that a public declaration names and nobody can import, "Name, of Other". */
export function unreachableTypes(name: 'core' | 'chart'): string[] {
  const { dist, checker, declared, offered } = offerOf(name);
  const missing = new Set<string>();
  for (const symbol of offered) {
    const look = (node: ts.Node): void => {
      const named = nameIn(node);
      const type = named && checker.getSymbolAtLocation(named);
      if (type) {
        const own = declared(type);
        const isOurs = own.declarations?.[0]?.getSourceFile().fileName.startsWith(dist);
        const isParameter = own.flags & ts.SymbolFlags.TypeParameter;
        if (isOurs && !isParameter && !offered.has(own)) missing.add(`${own.name}, of ${symbol.name}`);
      }
      ts.forEachChild(node, look);
    };
    symbol.declarations?.forEach(look);
  }
  return [...missing].sort();
}

function nameIn(node: ts.Node): ts.Node | undefined {
  if (ts.isTypeReferenceNode(node)) return node.typeName;
  if (ts.isTypeQueryNode(node)) return node.exprName;
  if (ts.isImportTypeNode(node)) return node.qualifier;
  return ts.isExpressionWithTypeArguments(node) ? node.expression : undefined;
}

/** Keys whose word tells the entries of a list apart. */
const WORDS = ['kind', 'change', 'reason'];

/**
 * Functions whose answer, or an entry of a list in it, is one of several shapes that no word tells apart: the answer by
 * its `kind`, an entry by one of its words. Nothing at all, undefined, is not a shape.
 */
export function answersWithoutKind(name: 'core' | 'chart'): string[] {
  const { checker, offered } = offerOf(name);
  const shapesOf = (type: ts.Type) =>
    (type.isUnion() ? type.types : [type]).filter(({ flags }) => flags & ts.TypeFlags.Object);
  const toldBy = (key: string, shapes: readonly ts.Type[]) =>
    shapes.every((shape) => {
      const word = shape.getProperty(key);
      return word !== undefined && shapesOf(checker.getTypeOfSymbol(word)).length === 0;
    }) &&
    new Set(shapes.map((shape) => checker.typeToString(checker.getTypeOfSymbol(shape.getProperty(key)!))))
      .size === shapes.length;
  const told = (type: ts.Type, keys: readonly string[]) => {
    const shapes = shapesOf(type);
    return shapes.length < 2 || keys.some((key) => toldBy(key, shapes));
  };
  const entriesOf = (type: ts.Type) =>
    shapesOf(type)
      .flatMap((shape) =>
        checker.isArrayType(shape)
          ? [shape]
          : shape.getProperties().map((key) => checker.getTypeOfSymbol(key)),
      )
      .filter((each) => checker.isArrayType(each))
      .flatMap((list) => checker.getTypeArguments(list as ts.TypeReference));
  return [...offered]
    .filter(({ flags }) => flags & ts.SymbolFlags.Function)
    .filter((symbol) =>
      checker
        .getTypeOfSymbol(symbol)
        .getCallSignatures()
        .map((signature) => signature.getReturnType())
        .some((answer) => !told(answer, ['kind']) || entriesOf(answer).some((entry) => !told(entry, WORDS))),
    )
    .map((symbol) => symbol.name);
}
