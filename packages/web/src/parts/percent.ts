// Shares of the file as percentages on the page, and back; what is no number stays for a message to quote.

export const asPercent = (value: unknown) =>
  typeof value === 'number' ? Math.round(value * 1e4) / 100 : value;

export const asShare = (value: unknown) => (typeof value === 'number' ? value / 100 : value);

/** A fault that speaks of shares, as it is told beside a percentage; what is quoted stands as it was typed. */
const faultInPercent = (text: string) =>
  text.replaceAll(/"[^"]*"|\d+(?:[.,]\d+)?/g, (part) => {
    if (part.startsWith('"')) return part;
    const percent = String(asPercent(Number(part.replace(',', '.'))));
    return part.includes(',') ? percent.replace('.', ',') : percent; // German, as the fault has it
  });

/** For a control that shows a share as a percentage. */
export const inPercent = { show: asPercent, store: asShare, tell: faultInPercent };
