// Altitudes in sentences for people.

/** "-10.6°"; with more digits where fewer would read like the altitude it fell short of. */
export function altitudeText(altitudeDeg: number, shortOfDeg?: number): string {
  let digits = 1;
  while (digits < 4 && Number(altitudeDeg.toFixed(digits)) === shortOfDeg) digits++;
  // Adding 0 keeps "-0.0" out of sight.
  return `${(Number(altitudeDeg.toFixed(digits)) + 0).toFixed(digits)}°`;
}
