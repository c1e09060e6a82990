// What people write in a shoot file, as the file has it: "f/8", "3.2s", "ISO 800", "south". Anything else is left as it
// is, for the reader of shoots to tell what is wrong.

type Group = Readonly<Record<string, unknown>>;
type Meant = (value: unknown) => unknown;

const COMPASS = [
  ['north', 'n', 'nord', 'norden'],
  ['north-east', 'northeast', 'ne', 'nordost', 'no'],
  ['east', 'e', 'ost', 'osten', 'o'],
  ['south-east', 'southeast', 'se', 'südost', 'so'],
  ['south', 's', 'süd', 'süden'],
  ['south-west', 'southwest', 'sw', 'südwest'],
  ['west', 'w', 'westen'],
  ['north-west', 'northwest', 'nw', 'nordwest'],
];

/** Words that are not the file's, and the file's that they can only mean. */
const NIGHTS = {
  urban: 'city',
  suburban: 'suburb',
  village: 'town',
  countryside: 'rural',
  wilderness: 'remote',
};
const SURFACES = {
  sea: 'water',
  lake: 'water',
  river: 'water',
  ocean: 'water',
  beach: 'sand',
  ice: 'snow',
  urban: 'city',
};
const CLOUDS = { cloudless: 'clear', sunny: 'clear', cloudy: 'overcast' };

const shutter: Meant = (value) => part(value, /^(1\/\d+(?:\.\d+)?|\d+(?:\.\d+)?) ?(?:s|sec|seconds?|")$/i);
const aperture: Meant = (value) => part(value, /^f ?\/? ?(\d+(?:\.\d+)?)$/i);
const iso: Meant = (value) => numberIn(value, /^iso ?(\d+)$/i);
const seconds: Meant = (value) => numberIn(value, /^(\d+(?:\.\d+)?) ?s$/i);
const facing: Meant = (value) => {
  const at =
    typeof value === 'string' ? COMPASS.findIndex((names) => names.includes(value.toLowerCase())) : -1;
  return at < 0 ? value : { azimuthDeg: at * 45 };
};

/**
 * A shoot with what is plainly meant in the file's own words.
 *
 * @param value parsed, unchecked; not changed
 */
export function asMeant(value: unknown): unknown {
  return within(value, {
    intervalS: seconds,
    camera: (camera) =>
      within(camera, {
        shutter: (range) => within(range, { shortest: shutter, longest: shutter }),
        iso: (range) => within(range, { lowest: iso, highest: iso }),
        aperture: (given) => within(aperture(given), { widest: aperture, narrowest: aperture }),
      }),
    scene: (scene) =>
      within(scene, { facing, night: worded(NIGHTS), surface: worded(SURFACES), cloud: worded(CLOUDS) }),
  });
}

/** A group with some of its keys read; anything else as it is. */
function within(value: unknown, keys: Readonly<Record<string, Meant>>): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const given = value as Group;
  const read = Object.entries(keys)
    .filter(([key]) => Object.hasOwn(given, key))
    .map(([key, meant]) => [key, meant(given[key])] as const);
  return read.every(([key, meant]) => meant === given[key])
    ? value
    : { ...given, ...Object.fromEntries(read) };
}

function part(value: unknown, pattern: RegExp): unknown {
  return (typeof value === 'string' && pattern.exec(value)?.[1]) || value;
}

function numberIn(value: unknown, pattern: RegExp): unknown {
  const found = part(value, pattern);
  return found === value ? value : Number(found);
}

function worded(words: Readonly<Record<string, string>>): Meant {
  return (value) =>
    typeof value === 'string' && Object.hasOwn(words, value.toLowerCase())
      ? words[value.toLowerCase()]
      : value;
}
