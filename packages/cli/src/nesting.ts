// How deep a text nests, told without parsing it. A parser that goes as deep as the text does may be ended by the
// system instead of failing, and no program can catch that.

/** Deepest nesting that is parsed: a shoot file has seven levels. */
const DEEPEST = 100;

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
