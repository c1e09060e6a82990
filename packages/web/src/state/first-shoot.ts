// What the page opens with when nothing has been kept.

import type { Shoot } from '@evenfall/core';

/**
 * A dusk in Lisbon on a date, with a common kit that lasts on nearly every evening, so that its plan needs no remedies
 * loaded; its defaults are written out.
 */
export function firstShoot(date: string): Shoot {
  return {
    format: 'evenfall-shoot/1',
    title: '',
    place: { latitudeDeg: 38.72, longitudeDeg: -9.14, timeZone: 'Europe/Lisbon' },
    date,
    direction: 'dusk',
    span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 },
    intervalS: 6,
    clipFps: 24,
    camera: {
      stepsPerStop: 3,
      shutter: { shortest: '1/4000', longest: '4' },
      bulb: false,
      iso: { lowest: 100, highest: 6400 },
      aperture: '4',
      gapS: 1,
      darkFrame: false,
      frameMB: 30,
      cardGB: 64,
      batteryFrames: 1200,
      lens: { focalMm: 24 },
      sensor: { widthMm: 36, heightMm: 24 },
    },
    filters: [],
    stackFilters: false,
    scene: {
      reflectance: 0.18,
      facing: 'toward-sun',
      viewAltitudeDeg: 15,
      skyShare: 0.5,
      cloud: 'clear',
      night: 'city',
      lamps: 'none',
    },
    look: { nightEv: -1.5 },
    readings: [],
    crew: 'hand',
    limits: {
      toleranceEv: 0.75,
      largestStepEv: 1,
      secondsBetweenCues: 60,
      framesLostPerFilterChange: 3,
    },
    moves: [],
  };
}

/** Today on this device's calendar, YYYY-MM-DD. */
export function today(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
