// A sky by the altitude of the view, for a lens that tilts: its tables take some milliseconds for each altitude, so
// they are made a degree apart and read between. Straight in log2 over one degree is within 0.002 stop.

/** What a piece of sky gives under a sun, >= 0. */
type OfSun = (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number;

/**
 * The same at any altitude of the view, exact at `fromDeg` and at whole degrees from it.
 *
 * @param skyToward sets up for one altitude, 0 to 90
 */
export function alongAltitude(
  skyToward: (viewAltitudeDeg: number) => OfSun,
  fromDeg: number,
): (viewAltitudeDeg: number) => OfSun {
  const made = new Map<number, OfSun>();
  const at = (altitudeDeg: number) => {
    const known = made.get(altitudeDeg);
    if (known !== undefined) return known;
    const sky = skyToward(altitudeDeg);
    made.set(altitudeDeg, sky);
    return sky;
  };
  at(fromDeg);
  return (viewAltitudeDeg) => {
    const steps = Math.floor(viewAltitudeDeg - fromDeg);
    const lowDeg = Math.max(0, fromDeg + steps);
    if (lowDeg >= viewAltitudeDeg) return at(viewAltitudeDeg);
    const highDeg = Math.min(90, fromDeg + (steps + 1));
    const share = (viewAltitudeDeg - lowDeg) / (highDeg - lowDeg);
    const [low, high] = [at(lowDeg), at(highDeg)];
    return (sunDeg, azimuthDeg) => low(sunDeg, azimuthDeg) ** (1 - share) * high(sunDeg, azimuthDeg) ** share;
  };
}
