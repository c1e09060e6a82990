// What the words of a scene must be, at the door of what reads them.

import {
  aboveZero,
  aNumber,
  atLeast,
  either,
  from,
  group,
  has,
  listOf,
  oneOf,
  text,
  wordOr,
} from '../hold.js';

const altitude = from(-90, 90);
const share = from(0, 1);
/** A range of the sun. */
export const bySunCheck = group({ fromSunAltitudeDeg: altitude, toSunAltitudeDeg: altitude });
const lampsOn = wordOr(
  oneOf(['always']),
  either((value) => (has('fromAt')(value) ? group({ fromAt: text, overMin: atLeast(0) }) : bySunCheck)),
);
const lampsWord = oneOf(['none', 'street', 'floodlit', 'skyline']);

/** The words of a scene. */
export const sceneCheck = group(
  {
    facing: wordOr(oneOf(['toward-sun', 'side', 'away']), group({ azimuthDeg: aNumber })),
    viewAltitudeDeg: from(0, 90),
    skyShare: share,
    cloud: wordOr(oneOf(['clear', 'thin', 'broken', 'overcast', 'heavy']), group({ eighths: from(0, 8) })),
    night: wordOr(
      oneOf(['remote', 'rural', 'suburb', 'town', 'city']),
      either((value) =>
        has('groundLx')(value) ? group({ groundLx: aboveZero }) : group({ zenithMagArcsec2: from(14, 23) }),
      ),
    ),
    lamps: wordOr(
      lampsWord,
      either((value) =>
        has('word')(value)
          ? group({ word: lampsWord, on: lampsOn })
          : group({ ev100: aNumber, share }, { on: lampsOn }),
      ),
    ),
  },
  {
    surface: oneOf(['grass', 'sand', 'snow', 'water', 'rock', 'city']),
    reflectance: share,
    uprightShare: share,
    skylineDeg: either((value) =>
      Array.isArray(value) ? listOf(group({ azimuthDeg: aNumber, altitudeDeg: altitude }), 1) : altitude,
    ),
  },
);
