// Order on paper of a line that mixes scripts written from the left with scripts written from the right.
// The rules of the Unicode Bidirectional Algorithm that a title can need: strong letters, numbers, neutrals between
// them, mirrored brackets; no explicit controls. Source: docs/sources.md#bidi.

export interface Run {
  readonly text: string; // in the order of reading
  readonly rightToLeft: boolean;
}

type Kind = 'left' | 'right' | 'number' | 'neutral';

const RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;
const BRACKETS: Readonly<Record<string, string>> = {
  '(': ')',
  ')': '(',
  '[': ']',
  ']': '[',
  '{': '}',
  '}': '{',
  '<': '>',
  '>': '<',
  '«': '»',
  '»': '«',
};

/** Whether any letter is written from the right. */
export function hasRightToLeft(text: string): boolean {
  return RIGHT.test(text);
}

/** The runs of one direction, as they stand from left to right. */
export function visualRuns(text: string, baseRightToLeft: boolean): Run[] {
  const chars = [...text];
  const levels = levelsOf(chars, baseRightToLeft);
  const runs: { text: string; level: number }[] = [];
  chars.forEach((char, i) => {
    const level = levels[i]!;
    const shown = level % 2 === 1 ? (BRACKETS[char] ?? char) : char;
    const last = runs.at(-1);
    if (last?.level === level) last.text += shown;
    else runs.push({ text: shown, level });
  });
  return reordered(runs).map(({ text, level }) => ({ text, rightToLeft: level % 2 === 1 }));
}

function levelsOf(chars: readonly string[], baseRightToLeft: boolean): number[] {
  const base = baseRightToLeft ? 1 : 0;
  const kinds = kindsOf(chars);
  let strong: Kind = baseRightToLeft ? 'right' : 'left';
  return kinds.map((kind, i) => {
    if (kind === 'left' || kind === 'right') strong = kind;
    if (kind === 'left') return base === 1 ? 2 : 0;
    if (kind === 'right') return 1;
    if (kind === 'number') return base === 1 || strong === 'right' ? 2 : 0;
    const [before, after] = [sideOf(kinds, i, -1), sideOf(kinds, i, 1)];
    if (before !== after || before === undefined) return base;
    return before === 'right' ? 1 : base === 1 ? 2 : 0;
  });
}

// Marks go with their letter; a separator between two digits is part of the number (rules W1 and W4).
function kindsOf(chars: readonly string[]): Kind[] {
  const kinds: Kind[] = [];
  chars.forEach((char, i) => {
    const joins = /[.,:/+-]/.test(char) && isDigit(chars[i - 1]) && isDigit(chars[i + 1]);
    if (/\p{M}/u.test(char)) kinds.push(kinds[i - 1] ?? 'neutral');
    else if (isDigit(char) || joins) kinds.push('number');
    else if (/\p{L}/u.test(char)) kinds.push(RIGHT.test(char) ? 'right' : 'left');
    else kinds.push('neutral');
  });
  return kinds;
}

function isDigit(char: string | undefined): boolean {
  return char !== undefined && /\p{Nd}/u.test(char);
}

// The nearest direction on one side of a neutral; undefined at the end of the line. Numbers count as from the right
// where the letters before them do (rule N1).
function sideOf(kinds: readonly Kind[], from: number, step: 1 | -1): 'left' | 'right' | undefined {
  for (let i = from + step; i >= 0 && i < kinds.length; i += step) {
    const kind = kinds[i]!;
    if (kind === 'left' || kind === 'right') return kind;
    if (kind === 'number') {
      const strong = kinds.slice(0, i).findLast((k) => k === 'left' || k === 'right');
      return strong === 'left' ? 'left' : 'right';
    }
  }
  return undefined;
}

// Rule L2: from the highest level down, every stretch at that level or above is turned round.
function reordered<R extends { readonly level: number }>(runs: readonly R[]): R[] {
  const order = [...runs];
  const highest = order.reduce((level, run) => Math.max(level, run.level), 0);
  for (let level = highest; level >= 1; level--) {
    for (let from = 0; from < order.length; from++) {
      if (order[from]!.level < level) continue;
      let to = from;
      while (to < order.length && order[to]!.level >= level) to++;
      order.splice(from, to - from, ...order.slice(from, to).reverse());
      from = to;
    }
  }
  return order;
}
