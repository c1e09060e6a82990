// Text for a screen of 80 columns.

export const COLUMNS = 80;

/** Words that belong on one line, for {@link linesOf}. */
export function together(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}

/** Words of a text in lines of at most `columns`; a longer word stands alone. */
export function linesOf(text: string, columns = COLUMNS): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((each) => each.replaceAll('\u00a0', ' '));
}

/** A text behind a lead, `Frames        1029 …`; later lines stand under its first word. */
export function hanging(lead: string, text: string, columns = COLUMNS): string {
  return lead + linesOf(text, columns - lead.length).join(`\n${' '.repeat(lead.length)}`);
}

/** A text laid out by hand for 80 columns, its longer lines broken: what stands two spaces behind a command goes below it. */
export function narrowed(text: string, columns: number): string {
  const lines = text.split('\n').flatMap((line) => {
    // A command that was broken in two could not be pasted.
    const isCommand = /^ *evenfall /.test(line) && !/\S {2,}\S/.test(line);
    if (line.length <= columns || isCommand) return [line];
    const [, indent = '', head, rest] = /^( *)(\S.*?) {2,}(\S.*)$/.exec(line) ?? [];
    if (head !== undefined) return [indent + head, ...hanging(`${indent}    `, rest!, columns).split('\n')];
    const [lead = ''] = /^ */.exec(line) ?? [];
    return hanging(lead, line.trimStart(), columns).split('\n');
  });
  return lines.join('\n');
}

/** "  12 | intervalS: 6": a line of a file, shown where it is wrong. */
const SHOWN = /^ {2}\d+ \| /;

/** What is said on standard error, for a screen: later lines stand two spaces in; a line of a file is cut short, not broken. */
export function told(text: string, columns: number): string {
  const lines = text.split('\n').map((line) => {
    if (line.length <= columns) return line;
    if (SHOWN.test(line)) return `${line.slice(0, columns - 1)}…`;
    const [first, ...rest] = linesOf(line, columns);
    return [first, ...linesOf(rest.join(' '), columns - 2).map((later) => `  ${later}`)].join('\n');
  });
  return lines.join('\n');
}

/** Which columns of a table, counted from 0, fit side by side; of those in `least` the first go first. */
export function columnsThatFit(
  rows: readonly (readonly string[])[],
  least: readonly number[],
  columns: number,
): number[] {
  let kept = rows[0]!.map((_, i) => i);
  const width = () =>
    kept.reduce((sum, i) => sum + 2 + rows.reduce((most, row) => Math.max(most, row[i]!.length), 0), -2);
  for (const i of least) {
    if (width() <= columns) break;
    kept = kept.filter((each) => each !== i);
  }
  return kept;
}

/** Rows under headings, columns as wide as their widest entry, two spaces between; "right" aligns numbers. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  align: readonly ('left' | 'right')[],
) {
  const widths = head.map((name, i) => Math.max(name.length, ...rows.map((row) => row[i]!.length)));
  return [head, ...rows].map((row) =>
    row
      .map((cell, i) => (align[i] === 'right' ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd(),
  );
}
