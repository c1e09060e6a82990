// Text for a screen of 80 columns.

export const COLUMNS = 80;

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
  return [...lines, line];
}

/** A text behind a lead, `Frames        1029 …`; later lines stand under its first word. */
export function hanging(lead: string, text: string, columns = COLUMNS): string {
  return lead + linesOf(text, columns - lead.length).join(`\n${' '.repeat(lead.length)}`);
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
