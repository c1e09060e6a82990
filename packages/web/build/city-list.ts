// A build step: the list of cities as lines of text, largest first, without what the page does not show.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

const NAME = 'virtual:cities';

interface City {
  readonly city: string;
  readonly lat: number;
  readonly lng: number;
  readonly pop: number;
  readonly iso2: string;
  readonly timezone: string | null;
}

export function cityList(): Plugin {
  return {
    name: 'city-list',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    load(id) {
      if (id !== `\0${NAME}`) return null;
      const folder = dirname(createRequire(import.meta.url).resolve('city-timezones/package.json'));
      const all = JSON.parse(readFileSync(join(folder, 'data/cityMap.json'), 'utf8')) as City[];
      const known = all.filter(({ timezone }) => timezone !== null && timezone !== '');
      const zones = [...new Set(known.map(({ timezone }) => timezone))];
      const lines = known
        .sort((a, b) => b.pop - a.pop)
        .map(({ city, iso2, lat, lng, timezone }) =>
          [city, iso2, lat.toFixed(2), lng.toFixed(2), zones.indexOf(timezone)].join('|'),
        );
      const text = JSON.stringify(lines.join('\n'));
      return `export const zones = ${JSON.stringify(zones)}; export const lines = ${text};`;
    },
  };
}
