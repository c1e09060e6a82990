// A shoot file as people write it is the shoot that they mean.

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asMeant } from '../../packages/cli/src/as-meant.js';
import { EVENING, evenfall, folder } from './run.js';

test('marks with their units are the marks', () => {
  const typed = {
    intervalS: '8 s',
    camera: {
      shutter: { shortest: '1/4000s', longest: '3.2"' },
      iso: { lowest: 'ISO 100', highest: 'iso6400' },
      aperture: 'f/8',
    },
  };
  expect(asMeant(typed)).toEqual({
    intervalS: 8,
    camera: {
      shutter: { shortest: '1/4000', longest: '3.2' },
      iso: { lowest: 100, highest: 6400 },
      aperture: '8',
    },
  });
  expect(asMeant({ camera: { aperture: { widest: 'f2.8', narrowest: 'F/11' } } })).toEqual({
    camera: { aperture: { widest: '2.8', narrowest: '11' } },
  });
});

// Azimuths clockwise from north, eight winds 45 degrees apart.
test.each([
  ['north', 0],
  ['NE', 45],
  ['south', 180],
  ['Süden', 180],
  ['west', 270],
  ['north-west', 315],
])('facing %s is azimuth %d', (facing, azimuthDeg) => {
  expect(asMeant({ scene: { facing } })).toEqual({ scene: { facing: { azimuthDeg } } });
});

test('words of the scene that are not the file’s become those that are', () => {
  const scene = { night: 'urban', surface: 'sea', cloud: 'cloudy', facing: 'toward-sun' };
  expect(asMeant({ scene })).toEqual({
    scene: { night: 'city', surface: 'water', cloud: 'overcast', facing: 'toward-sun' },
  });
});

test('what is not plainly meant is left for the reader to tell', () => {
  for (const value of [
    null,
    3,
    [],
    { camera: 3 },
    { scene: { night: 'constructor', facing: 'up' } },
    { intervalS: 'x' },
  ])
    expect(asMeant(value)).toBe(value);
});

test('the command plans the same from either, and a path may begin with ~', async () => {
  const typed = EVENING.replace('aperture: 5.6', 'aperture: f/5.6')
    .replace('longest: 30', 'longest: 30s')
    .replace('highest: 3200', 'highest: ISO 3200');
  expect(typed).not.toBe(EVENING);
  const [plain, meant] = await Promise.all(
    [EVENING, typed].map((text) => evenfall(['plan', '-', '--json'], text)),
  );
  expect(meant).toEqual(plain);
  const home = folder({ 'evening.yaml': typed });
  const before = process.env.HOME;
  process.env.HOME = home.at('.');
  try {
    expect((await evenfall(['plan', '~/evening.yaml', '-o', '~/plan.json'])).status).toBe(0);
  } finally {
    process.env.HOME = before;
  }
  expect(JSON.parse(readFileSync(home.at('plan.json'), 'utf8')).format).toBe('evenfall-plan/1');
});

test('what is said to come next works; after standard input nothing is said', async () => {
  const { at } = folder({ "o'clock.yaml": EVENING });
  const shown = (out: string) => [...out.matchAll(/npx evenfall (.*)/g)].map(([, command]) => command!);
  const { out } = await evenfall(['plan', at("o'clock.yaml")]);
  expect(shown(out)).toHaveLength(2);
  for (const command of shown(out)) {
    const argv = execFileSync('sh', ['-c', `printf '%s\\n' ${command}`], { encoding: 'utf8' })
      .trim()
      .split('\n');
    expect((await evenfall(argv.map((word) => (/^c\w+\.\w+$/.test(word) ? at(word) : word)))).status).toBe(0);
  }
  // What came down a pipe is gone.
  expect(shown((await evenfall(['plan', '-'], EVENING)).out)).toEqual([]);
});
