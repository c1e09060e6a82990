// The time zone belongs to the coordinates: where they come without one it is looked up.

import { effect } from '@preact/signals-core';
import { SAMPLE_PLACES } from '../places.js';
import { border, lookUpZone } from '../zone.js';
import { plan } from './plan.js';
import { putAlong, shoot, shown } from './shoot.js';

const LATITUDE = ['place', 'latitudeDeg'] as const;
const LONGITUDE = ['place', 'longitudeDeg'] as const;

/** Puts the zone of the coordinates as they stand, unless they have moved on by the time it is known. */
export async function zoneFollows(): Promise<void> {
  const [latitude, longitude] = [shown(LATITUDE), shown(LONGITUDE)];
  if (typeof latitude !== 'number' || typeof longitude !== 'number') return;
  const zone = await lookUpZone(latitude, longitude);
  if (shown(LATITUDE) === latitude && shown(LONGITUDE) === longitude) putAlong(['place', 'timeZone'], zone);
}

// A place that was kept or came with a file may lie near a border too; the first plan goes before the table.
effect(() => {
  const { latitudeDeg, longitudeDeg, timeZone } = shoot.value.place;
  if (plan.value === undefined || timeZone === undefined || border.value !== undefined) return;
  if (SAMPLE_PLACES.some((sample) => sample.latitudeDeg === latitudeDeg)) return;
  void lookUpZone(latitudeDeg, longitudeDeg);
});
