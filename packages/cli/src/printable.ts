// Text from outside, such as the name of a file, made safe for a terminal.

/** What moves a cursor, colours a screen, breaks a line or turns the direction of writing; a line feed alone is let through. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what this is about
const UNSEEN = /[\0-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/** The text with every such character as its escape: "\u001b". */
export function printable(text: string): string {
  return text.replaceAll(
    UNSEEN,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
