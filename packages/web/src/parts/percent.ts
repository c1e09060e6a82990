// Shares of the file as percentages on the page, and back; what is no number stays for a message to quote.

export const asPercent = (value: unknown) =>
  typeof value === 'number' ? Math.round(value * 1e4) / 100 : value;

export const asShare = (value: unknown) => (typeof value === 'number' ? value / 100 : value);
