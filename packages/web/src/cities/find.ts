// Finds cities by how their names begin: the list is loaded when it is first asked for.

import { lines, zones } from 'virtual:cities';
import { OTHER_NAMES } from './other-names.js';

export interface City {
  readonly name: string;
  readonly country: string; // ISO 3166-1, two letters; may be empty
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

/** Without case and accents: "sao" finds São Paulo, "strass" Straßburg. */
const plain = (text: string) =>
  text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');

/** By the list's name and country. */
const others = new Map<string, string[]>();
for (const line of OTHER_NAMES.trim().split('\n')) {
  const [other = '', ...city] = line.split('|');
  others.set(city.join('|'), [...(others.get(city.join('|')) ?? []), other]);
}

const all = lines.split('\n').flatMap((line) => {
  const [name = '', country = '', lat, lon, zone] = line.split('|');
  const names = [name, ...(others.get(`${name}|${country}`) ?? [])];
  return names.map((one) => ({ name: one, country, lat, lon, zone, key: plain(one) }));
});

/** The largest whose names begin so, then those with a later word that does. */
export function findCities(text: string, most: number): City[] {
  const wanted = plain(text.trim());
  if (wanted === '') return [];
  const first = all.filter(({ key }) => key.startsWith(wanted));
  const later = first.length < most ? all.filter(({ key }) => key.includes(` ${wanted}`)) : [];
  const found = [...first, ...later].filter(
    // The same city by another of its names stands next to it.
    ({ lat, lon }, i, list) => lat !== list[i - 1]?.lat || lon !== list[i - 1]?.lon,
  );
  return found.slice(0, most).map(({ name, country, lat, lon, zone }) => ({
    name,
    country,
    latitudeDeg: Number(lat),
    longitudeDeg: Number(lon),
    timeZone: zones[Number(zone)] ?? 'UTC',
  }));
}
