// Types that a package's public names lead to, as the compiler sees its declarations.

import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** Names of the package's own types that a public declaration names and nobody can import, "Name, of Other". */
export function unreachableTypes(name: 'core' | 'chart'): string[] {
  const dist = fileURLToPath(new URL(`../../packages/${name}/dist/`, import.meta.url));
  const program = ts.createProgram([`${dist}index.d.ts`], {
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    skipLibCheck: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  const declared = (symbol: ts.Symbol) =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const entry = checker.getSymbolAtLocation(program.getSourceFile(`${dist}index.d.ts`)!)!;
  const offered = new Set(checker.getExportsOfModule(entry).map(declared));
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
