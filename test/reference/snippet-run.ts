// Snippets, type-checked and run against the built packages, in a folder of their own beside docs/examples.

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import type { Snippet, SnippetModule } from './snippet-blocks.js';
import { withChecks } from './snippet-checks.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What one module came to. */
export interface SnippetResult {
  /** One line each: page, line, what is wrong. Empty is good. */
  readonly failures: readonly string[];
  /** Values and errors that were compared. */
  readonly checkCount: number;
}

/** Runs modules in the order given; entry i is of modules[i]. @param files to lay into the folder, name to text */
export function runSnippets(
  modules: readonly SnippetModule[],
  files: Readonly<Record<string, string>> = {},
): SnippetResult[] {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-snippets-'));
  try {
    cpSync(join(root, 'docs/examples'), join(folder, 'docs/examples'), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
    writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    const joined = modules.map(joinedModule);
    const wrong = typeFaults(joined, folder);
    const ran = run(joined, folder);
    return ran.map(({ failures, checkCount }, i) => ({ failures: [...wrong[i]!, ...failures], checkCount }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Blocks in one file, imports that come again left out, lines as many as in the blocks together. */
interface Joined {
  readonly snippets: SnippetModule;
  readonly texts: readonly string[];
}

function joinedModule(snippets: SnippetModule): Joined {
  const seen = new Set<string>();
  return { snippets, texts: snippets.map(({ code }) => withoutKnownImports(code, seen)) };
}

function withoutKnownImports(code: string, seen: Set<string>): string {
  const file = ts.createSourceFile('snippet.ts', code, ts.ScriptTarget.Latest, true);
  let text = code;
  for (const statement of [...file.statements].reverse()) {
    const names = ts.isImportDeclaration(statement) ? statement.importClause?.namedBindings : undefined;
    if (!names || !ts.isNamedImports(names)) continue;
    const fresh = names.elements
      .filter(({ name }) => !seen.has(name.text))
      .map((element) => element.getText());
    const lines = names.getText().split('\n').length - 1;
    text = `${text.slice(0, names.getStart())}{ ${fresh.join(', ')} ${'\n'.repeat(lines)}}${text.slice(names.end)}`;
    for (const { name } of names.elements) seen.add(name.text);
  }
  return text;
}

/** What the compiler says of each module, against the types that the packages publish. */
function typeFaults(modules: readonly Joined[], folder: string): string[][] {
  const names = modules.map((_, i) => join(folder, `typed-${i}.ts`));
  for (const [i, { texts }] of modules.entries()) writeFileSync(names[i]!, `${texts.join('')}export {};\n`);
  const program = ts.createProgram(names, {
    noEmit: true,
    allowJs: true, // a snippet may depend on a program of docs/examples
    strict: true,
    exactOptionalPropertyTypes: true,
    target: ts.ScriptTarget.ES2022,
    lib: ['lib.es2023.d.ts'],
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    skipLibCheck: true,
    types: ['node'],
    typeRoots: [join(root, 'node_modules/@types')],
  });
  return names.map((name, i) => {
    const file = program.getSourceFile(name)!;
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
      ({ start = 0, messageText }) => {
        const line = file.getLineAndCharacterOfPosition(start).line + 1;
        return `${nameLine(modules[i]!, line)}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`;
      },
    );
  });
}

/** "docs/light.md:34" for a line of the blocks together. */
function nameLine({ snippets, texts }: Joined, line: number): string {
  let first = 1;
  for (const [i, text] of texts.entries()) {
    const next = first + text.split('\n').length - 1;
    if (line < next || i === texts.length - 1) return lineOf(snippets[i]!, line - first + 1);
    first = next;
  }
  return '';
}

function lineOf({ page, line }: Snippet, offset: number): string {
  return `${page}:${line + offset - 1}`;
}

function run(modules: readonly Joined[], folder: string): SnippetResult[] {
  const runner = join(folder, 'snippet-runner.mjs');
  cpSync(join(root, 'test/reference/snippet-runner.mjs'), runner);
  mkdirSync(join(folder, 'made'));
  const written: { readonly file: string; readonly checkCount: number }[] = modules.map(
    ({ snippets, texts }, i) => {
      const blocks = snippets.flatMap((snippet, j) => {
        if (!snippet.run) return [];
        const { code, checkCount } = withChecks(texts[j]!, (line) => lineOf(snippet, line));
        return [{ code: `check$.block(${JSON.stringify(lineOf(snippet, 1))});\n${code}`, checkCount }];
      });
      const code = `const check$ = globalThis.snippetChecks;\n${blocks.map((block) => block.code).join('')}`;
      const { outputText } = ts.transpileModule(code, {
        compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
      });
      const file = join(folder, `made-${i}.mjs`);
      writeFileSync(file, outputText);
      return { file, checkCount: blocks.reduce((sum, block) => sum + block.checkCount, 0) };
    },
  );
  writeFileSync(join(folder, 'list.json'), JSON.stringify(written.map(({ file }) => file)));
  const { status, stderr, stdout } = spawnSync('node', [runner, 'list.json', 'results.json'], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 1_200_000,
  });
  if (status !== 0) throw new Error(`the snippets ended with ${status}: ${stderr}${stdout}`);
  const results = JSON.parse(readFileSync(join(folder, 'results.json'), 'utf8')) as {
    readonly failures: readonly string[];
    readonly output: readonly string[];
    readonly checkCount: number;
  }[];
  return results.map(({ failures, output, checkCount }, i) => {
    const ran = modules[i]!.snippets.filter((snippet) => snippet.run);
    const outputs = ran.flatMap((snippet, j) =>
      snippet.output === undefined || asPrinted(snippet.output, output[j] ?? '')
        ? []
        : [`${lineOf(snippet, 1)}: the page shows\n${snippet.output}it prints\n${output[j]}`],
    );
    const missed = written[i]!.checkCount - checkCount;
    // After an error the rest of a module never runs; that it did not is no news.
    const unreached =
      missed > 0 && failures.length === 0
        ? [`${lineOf(ran[0]!, 1)}: ${missed} said values were not reached`]
        : [];
    return { failures: [...failures, ...outputs, ...unreached], checkCount };
  });
}

/** Whether a page shows what is printed; a line `…` stands for any lines. */
function asPrinted(shown: string, printed: string): boolean {
  const pattern = shown
    .split(/^…\n/m)
    .map((part) => part.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&'))
    .join('(?:.*\\n)*');
  return new RegExp(`^${pattern}$`).test(printed);
}
