// Whether a zone taken from coordinates may be the neighbour's: near a border the table is no survey.

import { civilDay, rfc3339, type Shoot, zoneOf } from '@evenfall/core';
import lookUpZone from '@photostructure/tz-lookup';

/** Our choice: the table is coarse, and coordinates are often those of the nearest town. */
const NEAR_KM = 25;
/** Of latitude, on a sphere of 6371 km, the earth's mean radius (IUGG). */
const KM_A_DEGREE = 111.2;

/** A warning where clocks across a border nearby show another time on the shoot's date; undefined elsewhere. */
export function borderText({ place, date }: Pick<Shoot, 'place' | 'date'>): string | undefined {
  const offset = (timeZone: string | undefined) => {
    const zone = zoneOf({ ...place, ...(timeZone === undefined ? {} : { timeZone }) });
    return rfc3339(civilDay(date, zone).endMs - 1000, zone).slice(19);
  };
  const here = offset(place.timeZone);
  const others = zonesAround(place).filter((zone) => offset(zone) !== here);
  if (others.length === 0) return undefined;
  const named = others.map((zone) => `${zone} (UTC${offset(zone)})`).join(', ');
  return `the time zone ${place.timeZone} (UTC${here}) is that of the coordinates, within ${NEAR_KM} km of ${named}; if your clock shows the other time, write place.timeZone`;
}

/** Zones on land in eight directions, each once. */
function zonesAround({ latitudeDeg, longitudeDeg }: Shoot['place']): string[] {
  const found = Array.from({ length: 8 }, (_, i) => {
    const bearing = (i * Math.PI) / 4;
    const northDeg = (NEAR_KM / KM_A_DEGREE) * Math.cos(bearing);
    const eastDeg = (NEAR_KM / KM_A_DEGREE) * Math.sin(bearing);
    const latitude = Math.min(89.9, Math.max(-89.9, latitudeDeg + northDeg));
    const longitude = longitudeDeg + eastDeg / Math.cos((latitude * Math.PI) / 180);
    return lookUpZone(latitude, ((((longitude + 180) % 360) + 360) % 360) - 180);
  });
  return [...new Set(found)].filter((zone) => !zone.startsWith('Etc/'));
}
