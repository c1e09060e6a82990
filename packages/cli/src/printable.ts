// Text from outside, such as the name of a file, made safe for a terminal.

/** What moves a cursor, colours a screen, breaks a line or turns the direction of writing; a line feed alone is let through. */
const UNSEEN = /(?!\n)[\p{Cc}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** The text with every such character as its escape: "\u001b". */
export function printable(text: string): string {
  return text.replaceAll(
    UNSEEN,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
