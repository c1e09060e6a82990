// Altitudes in sentences for people.

/**
 * An altitude with the digits that a person reads. Never throws.
 *
 * @param altitudeDeg any finite number
 * @param shortOfDeg an altitude that it fell short of: more digits where fewer would read like it
 * @returns one decimal, four at most
 */
export function altitudeText(altitudeDeg: number, shortOfDeg?: number): string {
  let digits = 1;
  while (digits < 4 && Number(altitudeDeg.toFixed(digits)) === shortOfDeg) digits++;
  // Adding 0 keeps "-0.0" out of sight.
  return `${(Number(altitudeDeg.toFixed(digits)) + 0).toFixed(digits)}°`;
}
