// A value with something wrong in it, or something right that is rare: what stands at one place is taken out, put
// twice, or replaced, most often by what lies on or just beside an end of a range.

import fc from 'fast-check';
import { type Path, pathsOf, replaced } from './paths.js';

/** Texts at the ends of what text may be. A 😀 is one character and two units of UTF-16. */
const TEXTS = ['', ' ', 'none', 'A + B', '9'.repeat(41), 'x'.repeat(120), 'x'.repeat(121), '😀'.repeat(40)];
const MORE_TEXTS = [
  '😀'.repeat(41),
  '😀'.repeat(61),
  '😀'.repeat(120),
  '😀'.repeat(121),
  '\u2028',
  'a\nb',
  '\ud800',
];
const DATES = ['2026-02-30', '1899-12-31', '2200-01-01', '2026-9-1', '2024-02-29', '٢٠٢٦-٠١-٠١'];
const TIMES = [
  '2026-09-12T19:04:00+02:00',
  '2026-09-12t19:04:00z',
  '2026-09-12T24:00:00Z',
  '2026-02-30T10:00:00Z',
  '2026-09-12T19:04:60Z',
  '2026-09-12T19:04:00',
  '2026-09-12T19:04:00.5+99:99',
];
const MARKS = ['1/45', '1/125', '5.7', '90', '60', 'f/8', 100, 125, 5.6, 1e21];
const WORDS = ['dawn', 'rig', 'city', 'water', 'heavy', 'slide', 'tilt', 'continuous', 'UTC'];
const GROUPS = [{}, [], [{}], null, true, false];
/** What a key may well hold and yet contradict the rest of the file. */
const APT: Readonly<Record<string, readonly unknown[]>> = {
  date: DATES,
  direction: ['dusk', 'dawn'],
  intervalS: [0.1, 1, 60, 86_400],
  span: [
    { startAt: TIMES[0], endAt: TIMES[0] },
    { startAt: '2026-09-12T19:04:00+02:00', endAt: '2026-09-12T18:04:00+02:00' },
    { startAt: TIMES[0], endAt: TIMES[3] },
    { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
    { fromSunAltitudeDeg: -12, toSunAltitudeDeg: 6 },
    { fromSunAltitudeDeg: 6, toSunAltitudeDeg: 6, startAt: TIMES[0] },
  ],
  place: [{ latitudeDeg: 57, longitudeDeg: 9, timeZone: 'Europe/Atlantis' }],
  camera: [
    { shutter: { shortest: '1/4000', longest: '4' }, iso: { lowest: 100, highest: 3200 }, aperture: '5.7' },
    { shutter: { shortest: '4', longest: '1/4' }, iso: { lowest: 100, highest: 50 }, aperture: '5.6' },
    {
      shutter: { shortest: '60', longest: '60' },
      iso: { lowest: 100, highest: 101 },
      aperture: { widest: '8', narrowest: '2.8' },
      gapS: 3600,
    },
    { shutter: { shortest: 0.5, longest: 30 }, iso: { lowest: 50, highest: 50 }, aperture: 5.6, bulb: true },
  ],
  filters: [
    [
      { name: 'A', stops: 1 },
      { name: 'A', factor: 8 },
    ],
    [{ name: 'none', stops: 1 }],
    [{ name: 'A', stops: 1, density: 1 }],
  ],
  startFilter: ['A', 'ND 1'],
  bracket: [
    { frames: 3, stepEv: 0.4, betweenS: 0 },
    { frames: 9, stepEv: 4, betweenS: 0 },
  ],
  scene: [
    { surface: 'sand', reflectance: 0.3 },
    { reflectance: 0 },
    { lamps: { word: 'street', on: { fromSunAltitudeDeg: -2, toSunAltitudeDeg: 1 } } },
  ],
  look: [
    { nightEv: -1 },
    [
      { sunAltitudeDeg: 0, offsetEv: 0 },
      { sunAltitudeDeg: -6, offsetEv: -1 },
    ],
  ],
  readings: [
    [{ at: TIMES[0], ev100: 3 }],
    [{ at: '2150-09-12T19:04:00+02:00', ev100: 3 }],
    [{ at: TIMES[2], ev100: 3 }],
  ],
  moves: [
    [{ axis: 'pan', by: { deg: 3 } }],
    [{ axis: 'tilt', by: { deg: 0 } }],
    [{ axis: 'tilt', by: { fromPoint: {}, toPoint: { fromBottom: 1 } }, gear: { moveS: 1 } }],
    [{ axis: 'pan', by: { fromPoint: {}, toPoint: { fromLeft: 1 } }, mode: 'continuous' }],
    [{ axis: 'tilt', by: { fromBearingDeg: 3, toBearingDeg: 4 } }],
    [{ axis: 'slide', by: { trackM: 1, carriageM: 2 }, mode: 'continuous' }],
    [
      { axis: 'pan', by: { deg: 3 }, mode: 'continuous' },
      { axis: 'pan', by: { deg: 4 }, mode: 'continuous' },
    ],
  ],
};
const NUMBERS = [0, -0, 1, -1, 0.5, 2, 3, 12, 13, 1.5, 1e-320, 1e308, -1e308, 2 ** 53, 1.5e308];
const KEYS = ['__proto__', 'constructor', 'toString', 'intervlaS', 'stops', 'deg', 'surface', 'frames', ''];

/**
 * The same value with one or two places changed, as JSON would carry it.
 *
 * @param ends numbers on which a range ends
 */
export function brokenArbitrary<Value>(
  sound: fc.Arbitrary<Value>,
  ends: readonly number[],
): fc.Arbitrary<unknown> {
  const number = fc.constantFrom(...ends, ...NUMBERS).chain((end) => {
    const beside = Math.max(Number.MIN_VALUE, Math.abs(end) * 2 ** -52);
    return fc.constantFrom(end, end + beside, end - beside, Math.round(end) + 0.5);
  });
  const value = fc.oneof(
    { weight: 4, arbitrary: number },
    fc.constantFrom(...TEXTS, ...MORE_TEXTS, ...DATES, ...TIMES),
    fc.constantFrom<unknown>(...MARKS, ...WORDS),
    fc.constantFrom<unknown>(...GROUPS),
  );
  const how = fc.constantFrom('put', 'apt', 'apt', 'cross', 'cross', 'leave out', 'add', 'twice');
  const change = fc.record({ pick: fc.nat(), how, by: value, key: fc.constantFrom(...KEYS) });
  return fc
    .tuple(sound, sound, fc.array(change, { minLength: 1, maxLength: 2 }))
    .map(([file, other, changes]) => {
      const broken = changes.reduce<unknown>((now, { how, pick, by, key }) => {
        if (how === 'apt') return withApt(now, pick);
        const paths = pathsOf(how === 'cross' ? other : now);
        const path = paths[pick % paths.length]!;
        if (how === 'put') return replaced(now, path, by);
        if (how === 'cross') return replaced(now, path, valueAt(other, path));
        return replaced(now, path, changed(valueAt(now, path), how, by, key));
      }, file);
      return broken === undefined ? null : JSON.parse(JSON.stringify(broken));
    });
}

/** The shoot, or a plan's shoot, with one of its keys holding something apt; or a plan with one of its counts off. */
function withApt(value: unknown, pick: number): unknown {
  const isPlan = typeof value === 'object' && value !== null && 'shoot' in value;
  const counts = isPlan
    ? pathsOf(value).filter((path) => /^(frame|frameCount|cueCount)$/.test(`${path.at(-1)}`))
    : [];
  if (counts.length > 0 && pick % 3 === 0) return replaced(value, counts[pick % counts.length]!, pick % 7);
  const keys = Object.keys(APT);
  const key = keys[pick % keys.length]!;
  const apt = APT[key]!;
  return replaced(
    value,
    [...(isPlan ? ['shoot'] : []), key],
    apt[Math.floor(pick / keys.length) % apt.length],
  );
}

function changed(value: unknown, how: string, by: unknown, key: string): unknown {
  if (Array.isArray(value)) {
    if (how === 'twice') return [...value, ...value];
    return how === 'add' ? [...value, by] : value.slice(1);
  }
  if (typeof value !== 'object' || value === null) return how === 'leave out' ? undefined : by;
  if (how === 'leave out') return Object.fromEntries(Object.entries(value).slice(1));
  return Object.fromEntries([...Object.entries(value), [key, by]]);
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], value);
}

/** Every number that a JSON Schema gives as the end of a range. */
export function endsIn(schema: unknown): number[] {
  const ends = new Set<number>();
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, each] of Object.entries(value)) {
      if (/^(exclusive)?(minimum|maximum)$/i.test(key) && typeof each === 'number') ends.add(each);
      else visit(each);
    }
  };
  visit(schema);
  return [...ends];
}
