// A build step: the list of cities as lines of text, largest first, without what the page does not show.

import cities from 'city-timezones';
import type { Plugin } from 'vite';

const NAME = 'virtual:cities';

export function cityList(): Plugin {
  return {
    name: 'city-list',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    load(id) {
      if (id !== `\0${NAME}`) return null;
      // Some places of the list have no zone.
      const known = cities.cityMapping.filter(({ timezone }) => Boolean(timezone));
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
