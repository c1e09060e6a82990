// A build step: the outline of the land as one path, a unit a degree, cut where the map ends.

import { createRequire } from 'node:module';
import { geoEquirectangular, geoPath } from 'd3-geo';
import { feature } from 'topojson-client';
import type { Plugin } from 'vite';

const require = createRequire(import.meta.url);

const NAME = 'virtual:land';

export function land(): Plugin {
  return {
    name: 'land',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
    load(id) {
      if (id !== `\0${NAME}`) return null;
      const atlas = require('world-atlas/land-110m.json');
      const degrees = geoEquirectangular()
        .scale(180 / Math.PI)
        .translate([0, 0])
        .precision(0);
      // A tenth of a degree is as fine as this outline is drawn.
      const path = geoPath(degrees).digits(1)(feature(atlas, atlas.objects.land));
      return `export const path = ${JSON.stringify(path)};`;
    },
  };
}
