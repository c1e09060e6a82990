import type { Shoot } from '@evenfall/core';
import type { Words } from './words.js';

/** Latitude, longitude and zone of a place: "50.0832° N", "5.3182° W", "Europe/London". */
export function placeTexts({ latitudeDeg, longitudeDeg, timeZone }: Shoot['place'], words: Words) {
  const { north, south, east, west } = words.compass;
  const side = (deg: number, positive: string, negative: string) =>
    `${words.number(Math.abs(deg), 4)}° ${deg < 0 ? negative : positive}`;
  return [
    side(latitudeDeg, north, south),
    side(longitudeDeg, east, west),
    timeZone ?? words.solarTime,
  ] as const;
}
