// What the meter sees: a share of sky, a share of ground and lamps, at any sun and moon.
// Light adds as luminance. Assumptions and what is left out: docs/light.md.

import { finite, within } from '../check.js';
import { luminanceToEv100 } from '../exposure/exposure.js';
import { aGroup, groupWith, hold } from '../hold.js';
import { beamPart } from './air.js';
import { type Cloud, toAndFro } from './cloud.js';
import type { Field } from './field.js';
import { type FrameParts, luminanceUnder, skyState } from './frame-light.js';
import { moonIlluminanceLx } from './moon.js';
import { type Night, nightShare, overcastNightFactor } from './night.js';
import { azimuthBetweenDeg } from './sky.js';
import { skyInFrame } from './sky-in-frame.js';
import { type SkylinePoint, shownShare, skylineToward } from './skyline.js';
import { smoothstep } from './smooth.js';
import { skyPartOfSunlight, sunIlluminanceLx } from './sunlight.js';
import { clearSkyOnUpright, moonOnUpright, overcastOnUpright, UPRIGHT_OF_EVEN_SKY } from './upright.js';

/** Where sun and moon stand. Altitudes are true (no refraction), the moon's as the place sees it. */
export interface Sky {
  /** Of its centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** Clockwise from north, any turn. */
  readonly sunAzimuthDeg: number;
  /** Of its centre, -90 to 90. */
  readonly moonAltitudeDeg: number;
  /** Clockwise from north, any turn. */
  readonly moonAzimuthDeg: number;
  /** Sun-moon-observer, 0 full, 180 new. */
  readonly moonPhaseAngleDeg: number;
  /** From the centre of the Earth, kilometres; 384,400 on average. */
  readonly moonDistanceKm: number;
}

/** Lamps, lit windows, floodlit walls: their own light, by the share of the frame they fill. */
export interface Lamps {
  /** Mean of the lit parts, cd/m², 0 to 10⁷. */
  readonly luminanceCdM2: number;
  /** Of the frame that they fill, 0 to 1. */
  readonly share: number;
  /**
   * The sun's altitudes: at `fromSunAltitudeDeg` they begin to come on, at `toSunAltitudeDeg` all are lit (at dawn the
   * other way); absent: always lit.
   */
  readonly on?: { readonly fromSunAltitudeDeg: number; readonly toSunAltitudeDeg: number } | undefined;
}

/** What the lens sees, in numbers. {@link SceneLight} follows from it and the {@link Sky}. */
export interface Scene {
  /** Clockwise from north, any turn. */
  readonly viewAzimuthDeg: number;
  /** Of the piece of sky in the frame, 0 to 90. */
  readonly viewAltitudeDeg: number;
  /** What the frame takes in, where lens and sensor are known: its sky is then a mean, not the one direction. */
  readonly field?: Field | undefined;
  /** Share of the frame that is sky, 0 to 1; the rest is ground. */
  readonly skyShare: number;
  /** Of the ground and of what stands on it, 0 to 1. */
  readonly reflectance: number;
  /** Of what is not sky: how much stands upright and faces the lens, 0 to 1. */
  readonly uprightShare: number;
  /** What the sky loses, and how much of it is covered. */
  readonly cloud: Cloud;
  /** What is left without sun and moon. */
  readonly night: Night;
  /** In the frame. */
  readonly lamps: Lamps;
  /** What stands before sun and moon, one point or more; absent: a level horizon. */
  readonly skyline?: readonly SkylinePoint[] | undefined;
}

/** Which way the lens looks at one moment: the part of the {@link Scene} that a pan and a tilt change. */
export type View = Pick<Scene, 'viewAzimuthDeg' | 'viewAltitudeDeg'> & {
  /** Share of the lamps that are lit, 0 to 1, where it does not follow from the sun. */
  readonly lampsLit?: number | undefined;
};

/** Light on the scene and in the frame. */
export interface SceneLight {
  /** On level ground, from everything, under the scene's cloud, lux. */
  readonly illuminanceLx: number;
  /** The moon's part of it, lux. */
  readonly moonIlluminanceLx: number;
  /** Of the sky in the frame, or of the piece the lens points at where the frame is not known, cd/m². */
  readonly skyLuminanceCdM2: number;
  /** Mean of the frame, lamps included, cd/m². */
  readonly luminanceCdM2: number;
  /** What a meter reads off that mean, EV at ISO 100. */
  readonly ev100: number;
  /** What that mean is made of, for another weather to be put in. */
  readonly parts: FrameParts;
}

// With the sun between -4° and -6° level ground was measured 0.2 to 0.67 stop under the published curve by four parties,
// while the zenith agrees; no reason was found. The middle of that counts as spread.
const TWILIGHT_EV = 0.45;

function levelTwilight(sunAltitudeDeg: number): number {
  return smoothstep(-2, -4, sunAltitudeDeg) * smoothstep(-8, -6, sunAltitudeDeg);
}

/**
 * The light of a scene as a function of where sun and moon stand, and of where the lens points where it is
 * turned. Sets up once (a few ms), then about a microsecond a call, some more where the view's altitude has
 * changed; smooth in every number of the {@link Sky} and of the {@link View}. Light adds as luminance.
 *
 * @param scene what the lens sees; {@link sceneOf} makes it from words
 * @returns the light of the scene, for any sky and view; without a view that of the scene itself
 * @throws RangeError naming the first number of the scene that is out of its range: viewAzimuthDeg,
 *   viewAltitudeDeg, skyShare, reflectance, uprightShare, `cloud.cover`, `cloud.stops`,
 *   `lamps.luminanceCdM2`, `lamps.share`, `night.skyCdM2`, `night.groundLx`
 * @example
 * ```ts
 * import { sceneLight } from '@evenfall/core';
 *
 * // Nothing but a grey card lying flat, the sun overhead: 0.18 / π of 128,800 lx is 7380 cd/m², EV 15.85.
 * const lightOf = sceneLight({
 *   viewAzimuthDeg: 0,
 *   viewAltitudeDeg: 45,
 *   skyShare: 0,
 *   reflectance: 0.18,
 *   uprightShare: 0,
 *   cloud: { stops: 0, cover: 0 },
 *   night: { skyCdM2: 2e-4, groundLx: 1e-3, cloudChanges: false },
 *   lamps: { luminanceCdM2: 0, share: 0 },
 * });
 * const moon = { moonAltitudeDeg: -40, moonAzimuthDeg: 0, moonPhaseAngleDeg: 180, moonDistanceKm: 384_400 };
 * lightOf({ sunAltitudeDeg: 90, sunAzimuthDeg: 0, ...moon }); // → { luminanceCdM2: 7.38e3, ev100: 15.85 }
 * ```
 */
export function sceneLight(scene: Scene): (sky: Sky, view?: View) => SceneLight {
  hold('scene', scene, groupWith({ cloud: aGroup, night: aGroup, lamps: aGroup }));
  finite('viewAzimuthDeg', scene.viewAzimuthDeg);
  within('viewAltitudeDeg', scene.viewAltitudeDeg, 0, 90);
  const skyShare = within('skyShare', scene.skyShare, 0, 1);
  // Luminance of what is not sky in the frame's mean, for each lux on it.
  const ground = ((1 - skyShare) * within('reflectance', scene.reflectance, 0, 1)) / Math.PI;
  const uprightShare = within('uprightShare', scene.uprightShare, 0, 1);
  const cloud = {
    stops: within('cloud.stops', scene.cloud.stops, -20, 0),
    cover: within('cloud.cover', scene.cloud.cover, 0, 1),
  };
  const state = skyState(cloud);
  const lampsCdM2 =
    within('lamps.luminanceCdM2', scene.lamps.luminanceCdM2, 0, 1e7) *
    within('lamps.share', scene.lamps.share, 0, 1);
  const nightSkyCdM2 = within('night.skyCdM2', scene.night.skyCdM2, Number.MIN_VALUE, 100);
  const nightGroundLx = within('night.groundLx', scene.night.groundLx, Number.MIN_VALUE, 1000);
  const overcastNight = overcastNightFactor(scene.night);
  const skyToward = skyInFrame(scene);
  // Kept from one call to the next: a camera that stands or pans looks at the same altitude for ever.
  let seen = { viewAltitudeDeg: scene.viewAltitudeDeg, sky: skyToward(scene.viewAltitudeDeg) };

  // What faces the lens looks back along the view. Most scenes have none of it, and the sums take their time.
  const sunOnUpright = uprightShare > 0 ? clearSkyOnUpright() : () => 0;
  const cloudOnUpright = uprightShare > 0 ? overcastOnUpright() : 0;
  /** Lux on what is not sky, for each lux on level ground: under a clear sky, its light straight from sun or moon. */
  const beside = (onLevel: number, onUpright: () => number) =>
    uprightShare === 0
      ? onLevel
      : (1 - uprightShare) * onLevel + uprightShare * (onUpright() + 0.5 * scene.reflectance * onLevel);
  // Bright ground and cloud throw the light to and fro between them.
  const underCloud = toAndFro(scene.reflectance);
  const besideUnderCloud = underCloud * beside(1, () => cloudOnUpright);
  const besideAtNight = beside(1, () => UPRIGHT_OF_EVEN_SKY);

  const { on } = scene.lamps;
  const litBySun = (sunAltitudeDeg: number) =>
    on === undefined ? 1 : smoothstep(on.fromSunAltitudeDeg, on.toSunAltitudeDeg, sunAltitudeDeg);
  const skylineDeg = scene.skyline === undefined ? undefined : skylineToward(scene.skyline);
  const shown = (altitudeDeg: number, azimuthDeg: number) =>
    skylineDeg === undefined ? 1 : shownShare(altitudeDeg, skylineDeg(azimuthDeg));

  return (sky, { viewAzimuthDeg, viewAltitudeDeg, lampsLit }: View = scene) => {
    finite('viewAzimuthDeg', viewAzimuthDeg);
    if (viewAltitudeDeg !== seen.viewAltitudeDeg)
      seen = { viewAltitudeDeg, sky: skyToward(within('viewAltitudeDeg', viewAltitudeDeg, 0, 90)) };
    const { sunlit, overcastRatio, moonlit } = seen.sky;
    const { sunAltitudeDeg, moonAltitudeDeg } = sky;
    const sunLx = sunIlluminanceLx(sunAltitudeDeg);
    const moon = {
      altitudeDeg: moonAltitudeDeg,
      phaseAngleDeg: sky.moonPhaseAngleDeg,
      distanceKm: sky.moonDistanceKm,
    };
    const moonLx = moonIlluminanceLx(moon);
    const nightGain = (overcastNight * underCloud) ** nightShare(sunAltitudeDeg) - 1;

    const sunAzimuthDeg = azimuthBetweenDeg(sky.sunAzimuthDeg, viewAzimuthDeg);
    const moonAzimuthDeg = azimuthBetweenDeg(sky.moonAzimuthDeg, viewAzimuthDeg);
    const clearSkyCdM2 = sunlit(sunAltitudeDeg, sunAzimuthDeg) + moonlit(moon, moonAzimuthDeg);
    const overcastSkyCdM2 = underCloud * overcastRatio * (sunLx + moonLx);

    const surfaceAzimuthDeg = viewAzimuthDeg + 180;
    // A skyline takes the beam from ground and walls and leaves the sky; cloud has no beam to lose.
    const sunShown = shown(sunAltitudeDeg, sky.sunAzimuthDeg);
    const moonShown = shown(moonAltitudeDeg, sky.moonAzimuthDeg);
    const sunOnLevel = sunShown === 1 ? 1 : 1 - (1 - sunShown) * (1 - skyPartOfSunlight(sunAltitudeDeg));
    const moonOnLevel = moonShown === 1 ? 1 : 1 - (1 - moonShown) * beamPart(moonAltitudeDeg);
    const fromSun = beside(sunOnLevel, () =>
      sunOnUpright(sunAltitudeDeg, azimuthBetweenDeg(sky.sunAzimuthDeg, surfaceAzimuthDeg), sunShown),
    );
    const fromMoon = beside(moonOnLevel, () =>
      moonOnUpright(moonAltitudeDeg, azimuthBetweenDeg(sky.moonAzimuthDeg, surfaceAzimuthDeg), moonShown),
    );
    const clearLx = sunOnLevel * sunLx + moonOnLevel * moonLx;
    const skylight = skyShare * clearSkyCdM2 + ground * (fromSun * sunLx + fromMoon * moonLx);
    const parts = {
      clearCdM2: skylight,
      overcastCdM2: skyShare * overcastSkyCdM2 + ground * besideUnderCloud * (sunLx + moonLx),
      nightCdM2: skyShare * nightSkyCdM2 + ground * besideAtNight * nightGroundLx,
      nightGain,
      lampsCdM2: lampsCdM2 * (lampsLit ?? litBySun(sunAltitudeDeg)),
      modelEv:
        TWILIGHT_EV *
        levelTwilight(sunAltitudeDeg) *
        (skylight === 0 ? 0 : (ground * fromSun * sunLx) / skylight),
    };
    const night = 1 + cloud.cover * nightGain;
    const luminanceCdM2 = luminanceUnder(parts, state);
    return {
      illuminanceLx:
        state.kept * ((1 - cloud.cover) * clearLx + cloud.cover * underCloud * (sunLx + moonLx)) +
        nightGroundLx * night,
      moonIlluminanceLx: state.kept * moonLx,
      skyLuminanceCdM2:
        state.kept * ((1 - cloud.cover) * clearSkyCdM2 + cloud.cover * overcastSkyCdM2) +
        nightSkyCdM2 * night,
      luminanceCdM2,
      ev100: luminanceToEv100(luminanceCdM2),
      parts,
    };
  };
}
