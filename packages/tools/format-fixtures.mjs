// Writes one file of every kind as this version writes it, into test/data/formats/VERSION/, where it stays: a test
// reads the files of all versions. Part of a release; never writes over what is there. Run after a build:
//
//   npm run format-fixtures

import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { build, fail, install, root } from './ready.mjs';

install();
build();
const core = await import('@evenfall/core');
const { version } = JSON.parse(readFileSync(`${root}/packages/core/package.json`, 'utf8'));
const folder = `${root}/test/data/formats/${version}`;
if (existsSync(folder))
  fail(`test/data/formats/${version} is there already: files of a version never change.`);

const PLACE = { latitudeDeg: 57.05, longitudeDeg: 9.92, elevationM: 12, timeZone: 'Europe/Copenhagen' };

// As short as may be, with every group of keys in it somewhere.
const EVENING = {
  format: 'evenfall-shoot/1',
  title: 'Every key of a hand-held evening',
  place: PLACE,
  date: '2026-09-12',
  direction: 'dusk',
  span: { startAt: '2026-09-12T19:20:00+02:00', endAt: '2026-09-12T21:20:00+02:00' },
  intervalS: 120,
  clipFps: 25,
  camera: {
    stepsPerStop: 3,
    shutter: { shortest: '1/4000', longest: '30' },
    iso: { lowest: 100, highest: 3200 },
    aperture: { widest: '2.8', narrowest: '8' },
    gapS: 2,
    darkFrame: false,
    frameMB: 32.5,
    cardGB: 64,
    batteryFrames: 400,
    coldFactor: 0.8,
    lens: { focalMm: 24 },
    sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 },
  },
  filters: [
    { name: 'ND 3', stops: 3 },
    { name: 'ND 1.8', density: 1.8 },
    { name: 'ND 8', factor: 8 },
  ],
  stackFilters: true,
  startFilter: 'ND 1.8',
  scene: {
    facing: { azimuthDeg: 250 },
    viewAltitudeDeg: 20,
    skyShare: 0.4,
    surface: 'water',
    uprightShare: 0.1,
    cloud: { eighths: 3 },
    night: { zenithMagArcsec2: 20.5 },
    lamps: { ev100: 3, share: 0.05 },
  },
  look: [
    { sunAltitudeDeg: -14, offsetEv: -2 },
    { sunAltitudeDeg: -6, offsetEv: -1 },
    { sunAltitudeDeg: 0, offsetEv: 0 },
  ],
  readings: [{ at: '2026-09-12T19:10:00+02:00', ev100: 12.6 }],
  crew: 'hand',
  limits: {
    toleranceEv: 1,
    largestStepEv: 1,
    secondsBetweenCues: 60,
    maxFilterChanges: 3,
    framesLostPerFilterChange: 1,
  },
  weights: { error: 0.5, iso: 0.1 },
  moves: [
    {
      axis: 'pan',
      by: { fromBearingDeg: 350, toBearingDeg: 40, way: 'clockwise' },
      mode: 'continuous',
      ease: { trapezoid: 0.25 },
      gear: { settleS: 0, topSpeedDegPerS: 5, accelerationDegPerS2: 2, smallestStepDeg: 0.005 },
    },
    {
      axis: 'slide',
      by: { trackM: 1.2, carriageM: 0.15, marginM: 0.05 },
      mode: 'stopped',
      ease: 'quintic',
      gear: { settleS: 1.5, topSpeedMPerS: 0.02 },
      toward: 'forward',
      nearestM: 4,
    },
  ],
};

const MORNING = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: -41.29, longitudeDeg: 174.78 },
  date: '2027-02-20',
  direction: 'dawn',
  span: { fromSunAltitudeDeg: -9, toSunAltitudeDeg: 3 },
  intervalS: 90,
  camera: {
    stepsPerStop: 2,
    shutter: { shortest: '1/4000', longest: '30' },
    bulb: true,
    iso: { lowest: 200, highest: 12800 },
    aperture: '8',
  },
  filters: [{ name: 'ND 2', stops: 2 }],
  crew: 'rig',
};

const TOO_DARK = {
  ...EVENING,
  camera: {
    ...EVENING.camera,
    shutter: { shortest: '1/4000', longest: '0.5' },
    iso: { lowest: 100, highest: 160 },
  },
};

function shootOf(file) {
  const read = core.readShoot(file);
  if (read.kind === 'wrong') fail(read.errors.map(({ message }) => message).join('\n'));
  return read.shoot;
}

const evening = shootOf(EVENING);
const plan = core.planShoot(evening);
if (plan.kind === 'infeasible') fail(plan.infeasible.text);
const light = core.lightTable(evening);
if (light.kind === 'infeasible') fail(light.infeasible.text);
const lines = core.followLines(plan);
const said = plan.frames
  .filter((_, i) => i % 10 === 5)
  .map(({ at, sceneEv100 }) => ({ at, ev100: sceneEv100 + 0.4 }));

const files = {
  'evening.shoot.json': core.writeShoot(evening),
  'morning.shoot.json': core.writeShoot(shootOf(MORNING)),
  'evening.plan.json': core.writePlan(plan),
  'morning.plan.json': core.writePlan(core.planShoot(shootOf(MORNING))),
  'too-dark.plan.json': core.writePlan(core.planShoot(shootOf(TOO_DARK))),
  'evening.light.json': core.writeLight(light),
  'evening.cues.csv': core.writeCuesCsv(plan),
  'evening.frames.csv': core.writeFramesCsv(plan),
  'evening.ics': core.writeCalendar(plan),
  'evening.follow-in.jsonl': `${said.map((line) => JSON.stringify(line)).join('\n')}\n`,
  'evening.follow-out.jsonl': `${told(lines, said).join('\n')}\n`,
};

function told({ start, next, end }, readings) {
  let state = start;
  const out = readings.flatMap((reading) => {
    const step = next(state, JSON.stringify(reading));
    state = step.state;
    return step.out;
  });
  return [...out, ...end(state)];
}

mkdirSync(folder, { recursive: true });
for (const [name, text] of Object.entries(files)) writeFileSync(`${folder}/${name}`, text);
for (const name of readdirSync(`${root}/packages/core/schema`)) {
  cpSync(`${root}/packages/core/schema/${name}`, `${folder}/${name}`);
}
console.log(`wrote ${Object.keys(files).length} files and the schemas into test/data/formats/${version}`);
