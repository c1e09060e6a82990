// Writes what each package offers into docs/api/, so that a change of it shows in review. Run after a build:
//
//   npm run api

import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { build, install, root } from './ready.mjs';

const REFRESH = `For whoever builds on it. [All pages](../README.md)

Written by \`npm run api\`. A change here is a change of what others build on.`;
const printer = ts.createPrinter({ removeComments: true });

/**
 * The reports as text, by file name in docs/api.
 *
 * @returns {Record<string, string>}
 */
export function apiReports() {
  return {
    'core.md': libraryReport('core'),
    'chart.md': libraryReport('chart'),
    'evenfall.md': commandReport(),
  };
}

/** The built types that a package's exports lead to, by way in: "@evenfall/core/ramp" to a path. */
function waysIn(name) {
  const folder = `${root}/packages/${name}`;
  const manifest = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  return Object.entries(manifest.exports).flatMap(([way, { types }]) =>
    types === undefined
      ? []
      : [{ way: `${manifest.name}${way.slice(1)}`, path: `${folder}/${types.slice(2)}` }],
  );
}

function libraryReport(name) {
  const ways = waysIn(name);
  const program = ts.createProgram(
    ways.map(({ path }) => path),
    { module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext, types: [] },
  );
  const checker = program.getTypeChecker();
  const exported = (path) => {
    const module = checker.getSymbolAtLocation(/** @type {ts.Node} */ (program.getSourceFile(path)));
    if (module === undefined) throw new Error(`${path} is not there; run npm run build first`);
    return checker
      .getExportsOfModule(module)
      .map((symbol) => ({ name: symbol.name, symbol: origin(symbol) }));
  };
  const origin = (symbol) =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;

  const offered = new Map(exported(ways[0].path).map(({ name, symbol }) => [symbol, name]));
  const table = ways.slice(1).map(({ way, path }) => {
    const names = exported(path).map(({ name, symbol }) => {
      if (offered.get(symbol) !== name) throw new Error(`${way} has ${name}, ${ways[0].way} has not`);
      return `\`${name}\``;
    });
    return `- \`${way}\`: ${names.sort(byName).join(', ')}`;
  });

  const hidden = new Map();
  const texts = [...offered].map(([symbol, name]) => ({ name, text: declared(symbol, name) }));
  const beneath = [];
  for (const [symbol] of hidden) beneath.push({ name: symbol.name, text: declared(symbol, symbol.name) });

  return [
    `# What \`${ways[0].way}\` offers`,
    REFRESH,
    ...(table.length === 0 ? [] : ['## Stages that can be imported alone', table.join('\n')]),
    '## Declarations',
    fenced(texts),
    ...(beneath.length === 0 ? [] : ['## Named by these, not exported', fenced(beneath)]),
    '',
  ].join('\n\n');

  /** The declarations of a symbol without comments; what they name and nobody exports is put on the list. */
  function declared(symbol, name) {
    return symbol.declarations
      .map((node) => {
        const whole = ts.isVariableDeclaration(node) ? node.parent.parent : node;
        visit(whole);
        const text = printer.printNode(ts.EmitHint.Unspecified, whole, whole.getSourceFile());
        const plain = text.replace(/^export /, '').replace(/^declare /, '');
        return symbol.name === name ? plain : `${plain} // exported as ${name}`;
      })
      .join('\n');
  }

  function visit(node) {
    const named = ts.isTypeReferenceNode(node)
      ? node.typeName
      : ts.isExpressionWithTypeArguments(node)
        ? node.expression
        : ts.isTypeQueryNode(node)
          ? node.exprName
          : undefined;
    const found = named && checker.getSymbolAtLocation(named);
    const symbol = found && origin(found);
    const at = symbol?.declarations?.[0];
    const ours = at && relative(`${root}/packages/${name}/dist`, at.getSourceFile().fileName);
    if (ours && !ours.startsWith('..') && !ts.isTypeParameterDeclaration(at) && !offered.has(symbol)) {
      hidden.set(symbol, true);
    }
    ts.forEachChild(node, visit);
  }
}

function byName(a, b) {
  return a < b ? -1 : a > b ? 1 : 0;
}

function fenced(texts) {
  const sorted = texts.sort((a, b) => byName(a.name, b.name)).map(({ text }) => text);
  return `\`\`\`ts\n${sorted.join('\n\n')}\n\`\`\``;
}

/** What the command says of itself: its help, and that of each command in it. */
function commandReport() {
  const help = (...words) =>
    execFileSync(process.execPath, [`${root}/packages/cli/bin/evenfall.cjs`, ...words, '--help'], {
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1', COLUMNS: '100' },
    }).trimEnd();
  const all = help();
  const commands = [...all.matchAll(/^ {2}([a-z]+) /gm)]
    .map(([, name]) => name)
    .filter((name) => name !== 'help');
  const texts = [all, ...commands.map((name) => help(name))];
  return [
    '# What the command `evenfall` offers',
    REFRESH,
    ...texts.map((text) => `\`\`\`text\n${text}\n\`\`\``),
    '',
  ].join('\n\n');
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  install();
  build();
  for (const [name, text] of Object.entries(apiReports())) {
    const path = `${root}/docs/api/${name}`;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    console.log(`wrote docs/api/${name}`);
  }
}
