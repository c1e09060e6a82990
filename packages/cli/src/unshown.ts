// What the letters that a PDF embeds cannot show. A stand-in is drawn there, never the empty box of a font.

/** Marks that change how others are joined, and spaces: nothing is drawn for them. */
const UNDRAWN = /^(?:[\p{Cf}\p{Cc}\p{Z}]|\p{Variation_Selector})$/u;

const STAND_IN = '?';

/**
 * A text as its letters can show it.
 *
 * @param unshown gets the characters for which a stand-in is drawn
 */
export function withStandIns(
  text: string,
  hasGlyph: (character: string) => boolean,
  unshown: Set<string>,
): string {
  if ([...text].every(hasGlyph)) return text;
  // What is seen as one sign, as a flag of two letters, has one stand-in.
  const signs = [...new Intl.Segmenter().segment(text)].map(({ segment }) => {
    const lacking = [...segment].filter((character) => !hasGlyph(character));
    const drawn = lacking.filter((character) => !UNDRAWN.test(character));
    for (const character of drawn) unshown.add(character);
    if (drawn.length > 0) return STAND_IN;
    return lacking.reduce((rest, each) => rest.replace(each, /\p{Z}/u.test(each) ? ' ' : ''), segment);
  });
  return signs.join('');
}
