// What a person most likely did where a parser of YAML stumbled: the usual slips, as data. Works on the parser's code and
// the text alone, because the parser often stumbles a line after the slip.

import { Lexer } from 'yaml';

/** Where the parser stumbled, and over what. */
export interface Stumble {
  readonly code: string; // of the yaml package
  readonly message: string; // in the parser's own words, to be quoted where it is none of the usual slips
  readonly offset: number; // in the text
}

/** What is wrong, told apart by `slip`; `right` is what to write instead. */
export type SlipFacts =
  | { readonly slip: 'key-twice' }
  | { readonly slip: 'tab-indent' }
  | { readonly slip: 'second-document' }
  | { readonly slip: 'too-deep' }
  | { readonly slip: 'too-many' }
  | { readonly slip: 'key-no-word' }
  | { readonly slip: 'directive' }
  | { readonly slip: 'tag' }
  /** Text that begins with one of these marks. */
  | { readonly slip: 'needs-quotes'; readonly begins: readonly string[] }
  | { readonly slip: 'text-open'; readonly mark: string }
  | { readonly slip: 'bracket-open'; readonly mark: string }
  | { readonly slip: 'one-too-many'; readonly mark: string }
  | { readonly slip: 'out-of-line' }
  | { readonly slip: 'space-missing'; readonly after: string; readonly right?: string }
  | { readonly slip: 'equals-sign'; readonly right: string }
  | { readonly slip: 'dash-space' }
  | { readonly slip: 'colon-in-text' }
  | { readonly slip: 'colon-missing'; readonly key: string; readonly right: string }
  | { readonly slip: 'entries-together' }
  | { readonly slip: 'comment-space' }
  | { readonly slip: 'escape' }
  | { readonly slip: 'text-after-end' }
  | { readonly slip: 'odd-token' }
  /** None of the usual; `said` are the parser's own words. */
  | { readonly slip: 'unusual'; readonly said: string };

/** What is wrong, and the line of it, from 1. */
export interface Slip {
  readonly line: number;
  readonly facts: SlipFacts;
}

/** Most of the parser's own words, which may hold a piece of the file. */
const LONGEST_WORDS = 100;

/** Longest piece of a file that a message repeats. */
const LONGEST_QUOTE = 40;

/** The slip behind a stumble. */
export function slipAt(text: string, stumble: Stumble): Slip {
  const { code, offset } = stumble;
  const line = lineAt(text, offset);
  const found = (facts: SlipFacts, at = line): Slip => ({ line: at, facts });
  switch (code) {
    case 'DUPLICATE_KEY':
      return found({ slip: 'key-twice' });
    case 'TAB_AS_INDENT':
      return found({ slip: 'tab-indent' });
    case 'MULTIPLE_DOCS':
      return found({ slip: 'second-document' });
    case 'RESOURCE_EXHAUSTION':
      return found({ slip: 'too-deep' });
    case 'KEY_NO_WORD':
      return found({ slip: 'key-no-word' });
    case 'DIRECTIVE':
      return found({ slip: 'directive' });
    case 'TAG':
      return found({ slip: 'tag' });
    case 'TAG_RESOLVE_FAILED':
      return found({ slip: 'needs-quotes', begins: ['!'] });
    case 'BAD_ALIAS':
      return found({ slip: 'needs-quotes', begins: ['*', '&'] });
    case 'MULTILINE_IMPLICIT_KEY':
      // A word that the parser took with the lines below it for one key.
      if (/^\s*[A-Za-z]\w*$/.test(lineText(text, line))) {
        const key = short(lineText(text, line).trim());
        return found({ slip: 'colon-missing', key, right: `${key}:` });
      }
      break;
    case 'BAD_SCALAR_START':
      return found({ slip: 'needs-quotes', begins: [text.slice(offset, offset + 1)] });
  }
  const open = openAt(text);
  if (open?.mark === '"' || open?.mark === "'") {
    return found({ slip: 'text-open', mark: open.mark }, open.line);
  }
  const quote = code === 'MISSING_CHAR' ? openQuote(text) : undefined;
  if (quote !== undefined) return found({ slip: 'text-open', mark: quote.mark }, quote.line);
  if (open !== undefined && open.line <= line)
    return found({ slip: 'bracket-open', mark: open.mark }, open.line);
  const closed = /^[}\]]/.exec(text.slice(offset, offset + 1));
  if (code === 'UNEXPECTED_TOKEN' && closed) return found({ slip: 'one-too-many', mark: closed[0] });
  const content = lineText(text, line);
  // One colon is right: then it is the line below that stands too far to the right.
  const lone = code === 'BLOCK_AS_IMPLICIT_KEY' && /^[^:]*:[^:]*$/.test(content) && !/^\s*-\S/.test(content);
  return lone ? found({ slip: 'out-of-line' }, line + 1) : found(slipOfLine(text, content, stumble));
}

function slipOfLine(text: string, content: string, { code, message, offset }: Stumble): SlipFacts {
  const [, key = '', sign = '', value = ''] =
    /^\s*(?:- +)?([A-Za-z]\w*)(\s*=\s*|:(?=\S)| +(?=[^\s:]))(.*)$/.exec(content) ?? [];
  const right = short(`${key}: ${value}`);
  if (sign === ':') return { slip: 'space-missing', after: short(`${key}:`), right };
  if (sign.includes('=')) return { slip: 'equals-sign', right };
  if (/^\s*-[^\s-]/.test(content)) return { slip: 'dash-space' };
  if (code === 'BLOCK_AS_IMPLICIT_KEY') return { slip: 'colon-in-text' };
  if (code === 'BAD_INDENT') return { slip: 'out-of-line' };
  if (sign !== '' && !content.includes(':')) return { slip: 'colon-missing', key: short(key), right };
  if (code === 'BAD_DQ_ESCAPE') return { slip: 'escape' };
  const stands = text.slice(offset, offset + 1);
  if (code === 'MISSING_CHAR' && stands === '#') return { slip: 'comment-space' };
  if (code === 'MISSING_CHAR' && stands === ':') return { slip: 'space-missing', after: ':' };
  const inBrackets = openAt(text.slice(0, offset)) !== undefined;
  if (code === 'BLOCK_IN_FLOW' || (code === 'MISSING_CHAR' && inBrackets))
    return { slip: 'entries-together' };
  if (code === 'UNEXPECTED_TOKEN') {
    if (stands === ',') return { slip: 'one-too-many', mark: ',' };
    if (!/["'|>]/.test(stands)) return { slip: 'odd-token' };
    return { slip: inBrackets ? 'entries-together' : 'text-after-end' };
  }
  const said = message.split('\n')[0]!.replace(/[.:\s]*$/, '');
  return { slip: 'unusual', said: said.slice(0, LONGEST_WORDS) };
}

/** The first bracket or quote that is never closed; quotes inside words, and comments, do not count. */
function openAt(text: string): { readonly mark: string; readonly line: number } | undefined {
  const open: { readonly mark: string; readonly at: number }[] = [];
  const marks =
    /(?<![^\s,:[{(])"[^"\\]*(?:\\[\s\S][^"\\]*)*("|(?![\s\S]))|(?<![^\s,:[{(])'[^']*('|(?![\s\S]))|(?<!\S)#.*|[{}[\]]/g;
  for (const found of text.matchAll(marks)) {
    const mark = found[0][0]!;
    if (mark === '#') continue;
    if (mark === '"' || mark === "'") {
      if ((found[1] ?? found[2]) === '') return { mark, line: lineAt(text, found.index) };
    } else if (mark === '{' || mark === '[') open.push({ mark, at: found.index });
    else open.pop();
  }
  const [first] = open;
  return first === undefined ? undefined : { mark: first.mark, line: lineAt(text, first.at) };
}

/** Marks that the lexer puts between the pieces of the text, which are not in it. */
const NOT_IN_TEXT: readonly string[] = ['\u0002', '\u0018', '\u001f'];

/** A text in quotes that goes on to the end, as the parser parts the file: it knows more of quotes than openAt. */
function openQuote(text: string): { readonly mark: string; readonly line: number } | undefined {
  let at = 0;
  for (const part of new Lexer().lex(text)) {
    if (/^'[^']*(?:''[^']*)*$/.test(part) || /^"[^"\\]*(?:\\[\s\S][^"\\]*)*$/.test(part)) {
      return { mark: part[0]!, line: lineAt(text, at) };
    }
    if (!NOT_IN_TEXT.includes(part)) at += part.length;
  }
  return undefined;
}

function lineAt(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line++;
  return line;
}

/** A line of a text, from 1, without the spaces at its end. */
export function lineText(text: string, line: number): string {
  return text.split('\n', line)[line - 1]?.slice(0, 200).replace(/\s+$/, '') ?? '';
}

function short(text: string): string {
  return text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
}
