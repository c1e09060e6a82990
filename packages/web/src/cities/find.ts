// Finds cities by how their names begin: the list is loaded when it is first asked for.

import { lines, zones } from 'virtual:cities';

export interface City {
  readonly name: string;
  readonly country: string; // ISO 3166-1, two letters; may be empty
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

/** Without case and accents: "sao" finds São Paulo. */
const plain = (text: string) => text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();

const all = lines.split('\n').map((line) => {
  const [name = '', country = '', lat, lon, zone] = line.split('|');
  return { name, country, lat, lon, zone, key: plain(name) };
});

/** The largest whose names begin so, then those with a later word that does. */
export function findCities(text: string, most: number): City[] {
  const wanted = plain(text.trim());
  if (wanted === '') return [];
  const first = all.filter(({ key }) => key.startsWith(wanted));
  const later = first.length < most ? all.filter(({ key }) => key.includes(` ${wanted}`)) : [];
  return [...first, ...later].slice(0, most).map(({ name, country, lat, lon, zone }) => ({
    name,
    country,
    latitudeDeg: Number(lat),
    longitudeDeg: Number(lon),
    timeZone: zones[Number(zone)] ?? 'UTC',
  }));
}
