// A first shoot as a commented file: the keys that matter, with what may stand there beside them.

import type { CommandWords } from './words/words.js';

/** The value of the file; it reads. */
export interface FirstShoot {
  readonly title: string;
  readonly place: object;
  readonly date: string;
  readonly direction: string;
  readonly intervalS: number;
  readonly camera: Readonly<Record<string, unknown>>;
  readonly filters: readonly object[];
  readonly scene: Readonly<Record<string, unknown>>;
}

/**
 * The file's text, YAML.
 *
 * @param shoot in the file's own words
 * @param command that plans it
 */
export function shootText(shoot: FirstShoot, command: string, { newShoot: w }: CommandWords): string {
  const { camera, scene } = shoot;
  const { notes } = w;
  return `# ${notes.plan(command)}
# ${notes.defaults}

format: evenfall-shoot/1
title: ${inline(shoot.title)} # ${notes.title}

# ${notes.place}
place: ${inline(shoot.place)}

# ${notes.date}
date: ${shoot.date}
direction: ${shoot.direction}

# ${notes.interval}
intervalS: ${shoot.intervalS}

camera:
  # ${notes.dials}
  shutter: ${inline(camera.shutter)}
  iso: ${inline(camera.iso)}
  aperture: ${inline(camera.aperture)}
  gapS: 1 # ${notes.gap}
  # ${notes.lens}
${camera.lens === undefined ? `  # lens: { focalMm: 24 }\n  # sensor: { widthMm: 36, heightMm: 24 }` : `  lens: ${inline(camera.lens)}\n  sensor: ${inline(camera.sensor)}`}
  # ${notes.supplies}
  # frameMB: 30
  # cardGB: 64
  # batteryFrames: 900

# ${notes.filters}
filters:${shoot.filters.length === 0 ? ' []' : shoot.filters.map((filter) => `\n  - ${inline(filter)}`).join('')}

# ${notes.scene}
scene:
  facing: ${inline(scene.facing)} # toward-sun, side, away, { azimuthDeg: 250 }
  # surface: grass # grass, sand, snow, water, rock, city
  # cloud: clear # clear, thin, broken, overcast, heavy
  night: ${inline(scene.night)} # remote, rural, suburb, town, city
  lamps: ${inline(scene.lamps)} # none, street, floodlit, skyline
`;
}

/** A value on one line; text in quotes wherever it could be read as something else. */
function inline(value: unknown): string {
  if (typeof value === 'object' && value !== null) {
    return `{ ${Object.entries(value)
      .map(([key, each]) => `${key}: ${inline(each)}`)
      .join(', ')} }`;
  }
  return typeof value === 'string' && /^(?:[a-z]{3,}(?:-[a-z]+)*|1\/\d+)$/.test(value)
    ? value
    : JSON.stringify(value);
}
