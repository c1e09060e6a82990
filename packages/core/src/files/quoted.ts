/**
 * Text in quotes, with nothing in it that could move a terminal's cursor or break the line.
 *
 * @param text any
 * @returns one line, as JSON writes text
 * @example
 * ```ts
 * import { quotedText } from '@evenfall/core';
 *
 * quotedText('two\nlines'); // → '"two\\nlines"'
 * ```
 */
export function quotedText(text: string): string {
  return JSON.stringify(String(text)).replaceAll(
    /[\u007f-\u009f\u2028\u2029]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
