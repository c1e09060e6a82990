// Order on paper of a line that mixes scripts written from the left with scripts written from the right, by the Unicode
// Bidirectional Algorithm. Source: docs/sources.md#bidi.

import bidiFactory from 'bidi-js';

// Its types call the function a property `default`; as a CommonJS module it is the module itself.
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

export interface Run {
  readonly text: string; // in the order of reading
  readonly rightToLeft: boolean;
}

/** Whether any letter is written from the right. */
export function hasRightToLeft(text: string): boolean {
  return [...text].some((char) => /^(R|AL)$/.test(bidi.getBidiCharTypeName(char)));
}

/** The runs of one direction, as they stand from left to right. */
export function visualRuns(text: string, baseRightToLeft: boolean): Run[] {
  const embedding = bidi.getEmbeddingLevels(text, baseRightToLeft ? 'rtl' : 'ltr');
  const mirrored = bidi.getMirroredCharactersMap(text, embedding.levels);
  const runs: { text: string; level: number }[] = [];
  for (const i of bidi.getReorderedIndices(text, embedding)) {
    const level = embedding.levels[i]!;
    const shown = mirrored.get(i) ?? text[i]!;
    const last = runs.at(-1);
    if (last?.level === level) last.text = level % 2 === 1 ? shown + last.text : last.text + shown;
    else runs.push({ text: shown, level });
  }
  return runs.map(({ text, level }) => ({ text, rightToLeft: level % 2 === 1 }));
}
