// What the page opens with when nothing has been kept.

import { readShoot, type Shoot } from '@evenfall/core';

/** A dusk in Lisbon on a date, with a common kit, that has a plan. */
export function firstShoot(date: string): Shoot {
  const read = readShoot({
    format: 'evenfall-shoot/1',
    place: { latitudeDeg: 38.72, longitudeDeg: -9.14, timeZone: 'Europe/Lisbon' },
    date,
    intervalS: 6,
    camera: {
      shutter: { shortest: '1/4000', longest: '4' },
      iso: { lowest: 100, highest: 6400 },
      aperture: '4',
      frameMB: 30,
      cardGB: 64,
      batteryFrames: 1200,
    },
  });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  return read.shoot;
}

/** Today on this device's calendar, YYYY-MM-DD. */
export function today(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
