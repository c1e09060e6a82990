// The time zone belongs to the coordinates: where they come without one it is looked up.

import { lookUpZone } from '../zone.js';
import { put, shown } from './shoot.js';

const LATITUDE = ['place', 'latitudeDeg'] as const;
const LONGITUDE = ['place', 'longitudeDeg'] as const;

/** Puts the zone of the coordinates as they stand, unless they have moved on by the time it is known. */
export async function zoneFollows(): Promise<void> {
  const [latitude, longitude] = [shown(LATITUDE), shown(LONGITUDE)];
  if (typeof latitude !== 'number' || typeof longitude !== 'number') return;
  const zone = await lookUpZone(latitude, longitude);
  if (shown(LATITUDE) === latitude && shown(LONGITUDE) === longitude) put(['place', 'timeZone'], zone);
}
