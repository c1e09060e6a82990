// How deep a text nests and how much it holds, told without parsing it. A parser that goes as deep as the text does may be
// ended by the system instead of failing, and no program can catch that; one that makes a node of every second
// character takes seconds and hundreds of megabytes before anybody can count them.

/** Deepest nesting that is parsed: a shoot file has seven levels. */
const DEEPEST = 100;

/** Most brackets and commas that are parsed: a shoot file has 20,000 values at most, and two of these a value. */
const MOST_MARKS = 60_000;

/** Whether a text holds more brackets and commas than any shoot file. */
export function holdsTooMuch(text: string): boolean {
  let left = MOST_MARKS;
  for (const _ of text.matchAll(/[[{,]/g)) if (left-- === 0) return true;
  return false;
}

/** Whether brackets, dashes side by side, or lines ever further to the right nest more than a hundred deep. */
export function isNestedTooDeep(text: string): boolean {
  let open = 0;
  for (const [mark] of text.matchAll(/[[\]{}]/g)) {
    open = mark === '[' || mark === '{' ? open + 1 : Math.max(0, open - 1);
    if (open > DEEPEST) return true;
  }
  const columns: number[] = []; // at which what is open in blocks begins
  for (const [lead] of text.matchAll(/^[ \t?:-]*(?=[^\s])/gm)) {
    const starts = [...lead.matchAll(/[?:-](?=[ \t])/g)].map(({ index }) => index);
    const first = starts[0] ?? lead.length;
    while (columns.length > 0 && columns[columns.length - 1]! >= first) columns.pop();
    if (columns.length + starts.length >= DEEPEST) return true;
    columns.push(...starts, lead.length);
  }
  return false;
}
