// The colours of a clear sky toward the sun, from the sun's altitude: light that the air scatters once, on its way
// through ozone. An approximation: no second scattering, no clouds, and red, green and blue stand for light of 610,
// 550 and 450 nm. How bright it is drawn is another matter: no screen shows seven powers of ten. See `onScreen`.
//
// Source: docs/sources.md#drawn-sky.

export type Rgb = readonly [red: number, green: number, blue: number];

const GROUND_KM = 6360;
const TOP_KM = 6460;
const RAYLEIGH_KM: Rgb = [0.00896, 0.013558, 0.03025];
const MIE_SCATTERED_KM = 0.003996;
const MIE_LOST_KM = 0.00444; // scattered or absorbed
const OZONE_KM: Rgb = [0.00266, 0.001881, 0.0001];
const MIE_FORWARD = 0.8;

const VIEW_STEPS = 12;
const SUN_STEPS = 4;

/** What lies on a way, in km of ground-level air, of ground-level haze, and of the thickest ozone. */
type Depth = readonly [air: number, haze: number, ozone: number];

const CLEAR: Depth = [0, 0, 0];

/** Goes on from a depth by a length of the air at a height. */
const through = ([air, haze, ozone]: Depth, heightKm: number, lengthKm: number): Depth => [
  air + Math.exp(-heightKm / 8) * lengthKm,
  haze + Math.exp(-heightKm / 1.2) * lengthKm,
  ozone + Math.max(0, 1 - Math.abs(heightKm - 25) / 15) * lengthKm,
];

const radians = (deg: number) => (deg * Math.PI) / 180;

/** Depth from a point (x, y; the centre of the earth is 0, 0) to the sun; undefined in the earth's shadow. */
function depthToSun(x: number, y: number, sunX: number, sunY: number): Depth | undefined {
  const along = x * sunX + y * sunY;
  const off = x * x + y * y - along * along; // of the way from the centre, squared
  if (along < 0 && off < GROUND_KM * GROUND_KM) return undefined;
  const length = Math.sqrt(TOP_KM * TOP_KM - off) - along;
  let depth = CLEAR;
  for (let i = 0; i < SUN_STEPS; i++) {
    const way = ((i + 0.5) / SUN_STEPS) * length;
    depth = through(depth, Math.hypot(x + sunX * way, y + sunY * way) - GROUND_KM, length / SUN_STEPS);
  }
  return depth;
}

/**
 * Radiance of the sky in the sun's vertical, for a sun of 1 above the air.
 *
 * @param sunAltitudeDeg true altitude, -90 to 90
 * @param viewAltitudeDeg looked at, 0 to 90, on the sun's side
 * @returns linear red, green and blue, each >= 0; all 0 where no sunlit air is in the line of sight
 */
export function skyRadiance(sunAltitudeDeg: number, viewAltitudeDeg: number): Rgb {
  const [viewX, viewY] = [Math.cos(radians(viewAltitudeDeg)), Math.sin(radians(viewAltitudeDeg))];
  const [sunX, sunY] = [Math.cos(radians(sunAltitudeDeg)), Math.sin(radians(sunAltitudeDeg))];
  const whole = Math.sqrt(TOP_KM ** 2 - (GROUND_KM * viewX) ** 2) - GROUND_KM * viewY;
  const cos = viewX * sunX + viewY * sunY;
  const rayleighPhase = (3 / (16 * Math.PI)) * (1 + cos * cos);
  const g = MIE_FORWARD;
  const miePhase = (1 - g * g) / (4 * Math.PI * (1 + g * g - 2 * g * cos) ** 1.5);
  const sum: [number, number, number] = [0, 0, 0];
  let back = CLEAR;
  let from = 0;
  for (let i = 1; i <= VIEW_STEPS; i++) {
    // Short steps where the air is thick.
    const to = whole * (i / VIEW_STEPS) ** 2;
    const [x, y] = [(viewX * (from + to)) / 2, GROUND_KM + (viewY * (from + to)) / 2];
    const length = to - from;
    const heightKm = Math.hypot(x, y) - GROUND_KM;
    from = to;
    back = through(back, heightKm, length);
    const toSun = depthToSun(x, y, sunX, sunY);
    if (toSun === undefined) continue;
    const [air, haze] = through(CLEAR, heightKm, length);
    for (const c of [0, 1, 2] as const) {
      const lost =
        RAYLEIGH_KM[c] * (toSun[0] + back[0]) +
        MIE_LOST_KM * (toSun[1] + back[1]) +
        OZONE_KM[c] * (toSun[2] + back[2]);
      const scattered = RAYLEIGH_KM[c] * air * rayleighPhase + MIE_SCATTERED_KM * haze * miePhase;
      sum[c] += scattered * Math.exp(-lost);
    }
  }
  return sum;
}

/** What is seen where no sunlit air is left, on the scale of `skyRadiance`: a dim blue, as the eye takes the night. */
const NIGHT: Rgb = [4.5e-9, 8e-9, 2.2e-8];

/** Share of green in what the eye calls bright (ITU-R BT.709-6, item 3.2). */
export const brightness = ([r, g, b]: Rgb) => 0.2126 * r + 0.7152 * g + 0.0722 * b;

const VIEWS_DEG = [0.7, 2, 4, 7, 11, 16, 23, 32, 44, 60];
const STEP_DEG = 2;
const columns = new Map<number, readonly Rgb[]>();

/** Logarithms from the horizon up, night counted, at a whole number of steps of the sun. */
function columnAt(step: number): readonly Rgb[] {
  const known = columns.get(step);
  if (known !== undefined) return known;
  // Under 18 degrees no air in sight is sunlit; high up the colours hardly change.
  const sunDeg = Math.max(-19.5, Math.min(step * STEP_DEG, 45));
  const column = VIEWS_DEG.map((viewDeg): Rgb => {
    const [r, g, b] = skyRadiance(sunDeg, viewDeg);
    return [Math.log(r + NIGHT[0]), Math.log(g + NIGHT[1]), Math.log(b + NIGHT[2])];
  });
  columns.set(step, column);
  return column;
}

// Between brightnesses of many powers of ten the middle is that of their logarithms.
const mixed = (a: Rgb, b: Rgb, share: number): Rgb => {
  const one = (i: 0 | 1 | 2) => a[i] + (b[i] - a[i]) * share;
  return [one(0), one(1), one(2)];
};

/** The sky of a sun's altitude from the horizon up to 60°, `rows` values, linear. */
export function skyColumn(sunAltitudeDeg: number, rows: number): Rgb[] {
  const at = sunAltitudeDeg / STEP_DEG;
  const [low, high] = [columnAt(Math.floor(at)), columnAt(Math.floor(at) + 1)];
  return Array.from({ length: rows }, (_, i) => {
    const view = (i / Math.max(1, rows - 1)) * (VIEWS_DEG.length - 1);
    const j = Math.min(Math.floor(view), VIEWS_DEG.length - 2);
    const along = (column: readonly Rgb[]) => mixed(column[j] as Rgb, column[j + 1] as Rgb, view - j);
    const [r, g, b] = mixed(along(low), along(high), at - Math.floor(at));
    return [Math.exp(r), Math.exp(g), Math.exp(b)];
  });
}

/** A colour at a brightness of the screen, 0 to 1, linear; what the screen cannot show turns paler. */
export function atBrightness(colour: Rgb, wanted: number): Rgb {
  const scale = wanted / brightness(colour);
  const most = Math.max(colour[0], colour[1], colour[2]) * scale;
  const share = most <= 1 ? 0 : (most - 1) / (most - wanted);
  const one = (i: 0 | 1 | 2) => Math.min(1, colour[i] * scale + (wanted - colour[i] * scale) * share);
  return [one(0), one(1), one(2)];
}

/** Towards night the eye takes colours for a dim blue (mesopic vision; the range is our choice, by eye). */
export function asSeen(colour: Rgb): Rgb {
  const light = brightness(colour);
  const share = Math.max(0, Math.min(1, (Math.log10(light) + 6.6) / 3));
  const blue = atBrightness(NIGHT, light);
  const one = (i: 0 | 1 | 2) => {
    const ratio = (blue[i] + (colour[i] - blue[i]) * share) / light;
    return light * Math.max(0.25, ratio) ** 1.25; // a little more colour than the model has
  };
  return [one(0), one(1), one(2)];
}

/** The drawn sky: seven powers of ten in the range of a screen. Our choice, by eye. */
export function onScreen(colour: Rgb): Rgb {
  const share = Math.max(0, Math.min(1, (Math.log10(brightness(colour)) + 8.3) / 7.4));
  return atBrightness(asSeen(colour), 0.01 + 0.6 * share ** 2.4);
}

/** 0 to 255, as a screen takes it (IEC 61966-2-1, sRGB). */
export const encoded = (linear: number) =>
  Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.min(1, linear) ** (1 / 2.4) - 0.055));
