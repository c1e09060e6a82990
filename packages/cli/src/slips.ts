// What a person most likely did where a parser of YAML stumbled: the usual slips, each told by what is wrong and what
// would be right. Works on the text alone, because the parser often stumbles a line after the slip.

/** Where the parser stumbled, and over what. */
export interface Stumble {
  readonly code: string; // of the yaml package
  readonly message: string; // in the parser's own words, for a slip that is none of the usual
  readonly offset: number; // in the text
}

/** A line's worth: what is wrong and what would be right, and the line of it, from 1. */
export interface Slip {
  readonly line: number;
  readonly text: string;
}

/** Most of the parser's own words, which may hold a piece of the file. */
const LONGEST_WORDS = 100;

/** Longest piece of a file that a message repeats. */
const LONGEST_QUOTE = 40;

/** The slip behind a stumble. */
export function slipAt(text: string, stumble: Stumble): Slip {
  const line = lineAt(text, stumble.offset);
  const told = (what: string, at = line) => ({ line: at, text: what });
  switch (stumble.code) {
    case 'DUPLICATE_KEY':
      return told('a key stands twice; give it once');
    case 'TAB_AS_INDENT':
      return told('a tab stands for an indent; give spaces');
    case 'MULTIPLE_DOCS':
      return told('a second document follows the first; give one a file');
    case 'RESOURCE_EXHAUSTION':
      return told('nested too deep');
    case 'KEY_NO_WORD':
      return told('a group or a list stands where a key belongs; give a word');
    case 'TAG_RESOLVE_FAILED':
      return told('text that begins with "!" needs quotes');
    case 'BAD_ALIAS':
      return told('text that begins with "*" or "&" needs quotes');
    case 'BAD_SCALAR_START':
      return told(
        `text that begins with ${shown(text.slice(stumble.offset, stumble.offset + 1))} needs quotes`,
      );
  }
  const open = openAt(text);
  if (open?.mark === '"' || open?.mark === "'") {
    return told(`text in ${open.mark} is not closed; give another ${open.mark} after it`, open.line);
  }
  if (/^Missing closing/.test(stumble.message))
    return told('a quote is not closed; give another where its text ends');
  if (open !== undefined && open.line <= line) {
    return told(
      `a ${open.mark} is not closed; give a ${open.mark === '{' ? '}' : ']'} where its group ends`,
      open.line,
    );
  }
  const closed = /^[}\]]/.exec(text.slice(stumble.offset, stumble.offset + 1));
  if (stumble.code === 'UNEXPECTED_TOKEN' && closed) return told(`a ${closed[0]} too many; leave it out`);
  const content = lineText(text, line);
  // One colon is right: then it is the line below that stands too far to the right.
  const lone =
    stumble.code === 'BLOCK_AS_IMPLICIT_KEY' && /^[^:]*:[^:]*$/.test(content) && !/^\s*-\S/.test(content);
  return lone ? told(OUT_OF_LINE, line + 1) : told(slipOfLine(content, stumble));
}

const OUT_OF_LINE = 'the line does not begin below its neighbours; indent it as they are';

function slipOfLine(content: string, { code, message }: Stumble): string {
  const [, key = '', sign = '', value = ''] =
    /^\s*(?:- +)?([A-Za-z]\w*)(\s*=\s*|:(?=\S)| +(?=[^\s:]))(.*)$/.exec(content) ?? [];
  if (sign === ':') return `a space is missing after ${shown(`${key}:`)}; give ${shown(`${key}: ${value}`)}`;
  if (sign.includes('=')) return `"=" stands where a colon belongs; give ${shown(`${key}: ${value}`)}`;
  if (/^\s*-[^\s-]/.test(content)) return 'a space is missing after "-"; give "- " before an entry of a list';
  if (code === 'BLOCK_AS_IMPLICIT_KEY') return 'a colon stands in a text; put the text in quotes';
  if (code === 'BAD_INDENT') return OUT_OF_LINE;
  if (sign !== '' && !content.includes(':')) {
    return `a colon is missing after ${shown(key)}; give ${shown(`${key}: ${value}`)}`;
  }
  if (/^Block collections are not allowed within|^Missing , |^Unexpected .*-scalar token/.test(message)) {
    return 'two entries are not parted; give a comma between them';
  }
  if (/^Comments must be separated/.test(message)) return 'a space is missing before "#"; give one';
  if (/^Invalid escape/.test(message)) return 'a "\\" in double quotes begins an escape; give single quotes';
  if (/^Not a YAML token/.test(message)) return 'something stands here that is neither a key nor a value';
  return message
    .split('\n')[0]!
    .replace(/[.:\s]*$/, '')
    .slice(0, LONGEST_WORDS);
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

function lineAt(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line++;
  return line;
}

function lineText(text: string, line: number): string {
  return text.split('\n', line)[line - 1]?.slice(0, 200).replace(/\s+$/, '') ?? '';
}

/** In quotes, cut short, with nothing that could move a terminal's cursor. */
function shown(text: string): string {
  const short = text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
  return JSON.stringify(short).replaceAll(
    /[\u007f-\u009f\u2028\u2029]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
