// What the words of every language are put together from.

/** Rounded to so many digits, never "-0.0". */
export function fixed(value: number, digits: number): string {
  // Rounding may leave a minus on zero.
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}

/** A typographic minus, as wide as a plus. */
export function minus(text: string): string {
  return text.replace('-', '−');
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Parts of "2026-10-14": month from 1, weekday from 0, a Sunday. */
export function dateParts(isoDate: string) {
  const [year = 0, month = 1, day = 1] = isoDate.split('-').map(Number);
  return { year, month, day, weekday: new Date(Date.UTC(year, month - 1, day)).getUTCDay() };
}

/** "18:42:13" on a clock of twelve hours: "6:42:13 pm". Midnight is 12 am, noon 12 pm. */
export function twelveHours(time: string, halves: { readonly morning: string; readonly evening: string }) {
  const hours = Number(time.slice(0, 2));
  return `${((hours + 11) % 12) + 1}${time.slice(2)} ${hours < 12 ? halves.morning : halves.evening}`;
}
