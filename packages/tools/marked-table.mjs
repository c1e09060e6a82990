// Tables in Markdown, and the part of a page between two marks that a command writes.

import { readFileSync, writeFileSync } from 'node:fs';

/** A table with columns as wide as their widest cell. */
export function markdownTable(head, lines) {
  const widths = head.map((_, i) => Math.max(...[head, ...lines].map((line) => line[i].length)));
  const rule = widths.map((width) => '-'.repeat(width));
  return [head, rule, ...lines]
    .map((line) => `| ${line.map((cell, i) => cell.padEnd(widths[i])).join(' | ')} |`)
    .join('\n');
}

/** What stands between the marks of a page. */
export function partBetween(page, open, close) {
  const text = readFileSync(page, 'utf8');
  return text.slice(text.indexOf(open) + open.length, text.indexOf(close)).trim();
}

/** Puts another part between the marks of a page. */
export function writeBetween(page, open, close, part) {
  const text = readFileSync(page, 'utf8');
  const from = text.indexOf(open) + open.length;
  writeFileSync(page, `${text.slice(0, from)}\n\n${part}\n\n${text.slice(text.indexOf(close))}`);
}
