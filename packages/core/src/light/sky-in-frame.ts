// The sky part of a frame under sun, moon and cloud: in one direction, or over what the lens takes in.

import { keepLast } from '../sky/keep-last.js';
import { alongAltitude } from './along-altitude.js';
import { angleFrom } from './cie-sky.js';
import { overcastSkyToward } from './cloud.js';
import { type Field, meanAltitude, meanSky, type OfBody, piecesOfSky } from './field.js';
import { MEAN_DISTANCE_KM, MOONLIT_FROM_DEG, type Moon, moonlitSkyToward } from './moon.js';
import { sunlitSkyToward } from './sky.js';

/** What the frame's sky gives, for one altitude of the view. Azimuths lie between the view and the body. */
export interface SkyInFrame {
  /** From the sun, clear, cd/m². */
  readonly sunlit: OfBody;
  /** From the moon, clear, cd/m². */
  readonly moonlit: (moon: Moon, azimuthDeg: number) => number;
  /** Under a closed deck of cloud, 1/sr. */
  readonly overcastRatio: number;
}

// A lens takes in degrees of sky, so the corner that the formula has at the moon itself is rounded off.
const ROUND_MOON_DEG = 3;

/** Sets up for a frame; then for each altitude of the view that is asked for. */
export function skyInFrame(frame: {
  readonly viewAltitudeDeg: number;
  readonly skyShare: number;
  readonly field?: Field | undefined;
}): (viewAltitudeDeg: number) => SkyInFrame {
  const { viewAltitudeDeg, field, skyShare } = frame;
  return skyOfLens(viewAltitudeDeg, skyShare, field?.horizontalDeg, field?.verticalDeg);
}

const skyOfLens = keepLast(tablesOf);

function tablesOf(
  fromDeg: number,
  skyShare: number,
  horizontalDeg: number | undefined,
  verticalDeg: number | undefined,
): (viewAltitudeDeg: number) => SkyInFrame {
  const overcastToward = alongAltitude((altitudeDeg) => {
    const ratio = overcastSkyToward(altitudeDeg);
    return () => ratio;
  }, fromDeg);
  if (horizontalDeg === undefined || verticalDeg === undefined) {
    const sunlitToward = alongAltitude(sunlitSkyToward, fromDeg);
    return (viewAltitudeDeg) => ({
      sunlit: sunlitToward(viewAltitudeDeg),
      moonlit: moonlitAt(viewAltitudeDeg),
      overcastRatio: overcastToward(viewAltitudeDeg)(0, 0),
    });
  }
  const field = { horizontalDeg, verticalDeg };
  const pieces = (viewAltitudeDeg: number) => piecesOfSky(field, skyShare, viewAltitudeDeg);
  // Pieces share the skies of every other degree, which take their time to set up.
  const known = new Map<number, OfBody>();
  const sunlitNear = (altitudeDeg: number) => {
    const nearDeg = 2 * Math.round(altitudeDeg / 2);
    const sky = known.get(nearDeg) ?? sunlitSkyToward(nearDeg);
    known.set(nearDeg, sky);
    return sky;
  };
  const sunlitToward = alongAltitude((altitudeDeg) => meanSky(pieces(altitudeDeg), sunlitNear), fromDeg);
  const moonlitToward = alongAltitude((altitudeDeg) => meanSky(pieces(altitudeDeg), fullMoonAt), fromDeg);
  return (viewAltitudeDeg) => {
    const ofFullMoon = moonlitToward(viewAltitudeDeg);
    // Phase and distance act on the whole sky alike.
    const anywhere = moonlitSkyToward(viewAltitudeDeg);
    return {
      sunlit: sunlitToward(viewAltitudeDeg),
      moonlit: (moon, azimuthDeg) => {
        if (moon.altitudeDeg <= MOONLIT_FROM_DEG) return 0;
        const share = anywhere(moon, 90) / anywhere({ ...moon, ...FULL }, 90);
        return share * ofFullMoon(moon.altitudeDeg, azimuthDeg);
      },
      overcastRatio: meanAltitude(pieces(viewAltitudeDeg), (altitudeDeg) =>
        overcastToward(altitudeDeg)(0, 0),
      ),
    };
  };
}

const FULL = { phaseAngleDeg: 0, distanceKm: MEAN_DISTANCE_KM };

function fullMoonAt(viewAltitudeDeg: number): OfBody {
  const moonlit = moonlitAt(viewAltitudeDeg);
  return (altitudeDeg, azimuthDeg) => moonlit({ altitudeDeg, ...FULL }, azimuthDeg);
}

function moonlitAt(viewAltitudeDeg: number): SkyInFrame['moonlit'] {
  const moonlitSky = moonlitSkyToward(viewAltitudeDeg);
  const angleFromView = angleFrom(viewAltitudeDeg);
  return (moon, azimuthDeg) => {
    if (moon.altitudeDeg <= MOONLIT_FROM_DEG) return 0;
    const angleDeg = angleFromView(moon.altitudeDeg, azimuthDeg);
    return moonlitSky(moon, Math.min(180, Math.sqrt(angleDeg * angleDeg + ROUND_MOON_DEG * ROUND_MOON_DEG)));
  };
}
