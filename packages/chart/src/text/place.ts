import type { Shoot } from '@evenfall/core';
import { checkGiven, givenWords } from './given.js';
import type { Words } from './words.js';

/**
 * Latitude, longitude and zone of a place in words.
 *
 * @param place of a shoot
 * @param words language, from {@link wordsFor}
 * @returns three texts; without a zone the last says mean solar time
 * @throws RangeError on what is no place or no words
 * @example
 * ```ts
 * import { english, placeTexts } from '@evenfall/chart';
 *
 * placeTexts({ latitudeDeg: -41.29, longitudeDeg: 174.78 }, english);
 * // → ['41.2900° S', '174.7800° E', 'mean solar time']
 * ```
 */
export function placeTexts(place: Shoot['place'], words: Words) {
  checkGiven('place', place, 'latitudeDeg', 'the place of a shoot');
  const { latitudeDeg, longitudeDeg, timeZone } = place;
  const { north, south, east, west } = givenWords(words).compass;
  const side = (deg: number, positive: string, negative: string) =>
    `${words.number(Math.abs(deg), 4)}° ${deg < 0 ? negative : positive}`;
  return [
    side(latitudeDeg, north, south),
    side(longitudeDeg, east, west),
    timeZone ?? words.solarTime,
  ] as const;
}
