// Every exported function of core, called once on a real evening. Bundled by itself, so it imports core alone; tests
// run it in Node, in an empty realm, in a browser and in a worker, and hold the answers against each other.

import * as core from '@evenfall/core';

const BACK = { at: '2026-10-25T02:00:00+01:00', byMin: 60 };
const PLACE = { latitudeDeg: 50.0832, longitudeDeg: -5.3182, timeZone: 'Europe/London' };
const FROM_MS = Date.UTC(2026, 9, 14, 17, 0, 0);
const OPTICS = { lens: { focalMm: 24 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };

const FILE = {
  format: 'evenfall-shoot/1',
  title: 'Every function once',
  place: PLACE,
  date: '2026-10-14',
  intervalS: 20,
  camera: {
    shutter: { shortest: '1/4000', longest: '8' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '4',
    frameMB: 30,
    cardGB: 16,
    batteryFrames: 300,
    ...OPTICS,
  },
  filters: [{ name: 'ND 3', stops: 3 }],
  moves: [{ axis: 'pan', by: { deg: 40 }, mode: 'continuous', gear: { topSpeedDegPerS: 5 } }],
};

function made<T extends { readonly kind: 'ok' }>(answer: T | core.PlanInfeasible): T {
  if (answer.kind === 'infeasible') throw new Error(JSON.stringify(answer.infeasible));
  return answer;
}

/** Answers by the name of the function, as plain values. */
export function surface(): Record<string, unknown> {
  const read = core.readShoot(FILE);
  if (read.kind === 'wrong') throw new Error(JSON.stringify(read.errors));
  const { shoot } = read;
  const plan = made(core.planShoot(shoot));
  const zone = core.zoneOf(PLACE);
  const span = core.shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error(span.why);
  const forecast = core.forecastLight(shoot, span.times);
  const { kit, problem } = core.rampProblemOf(shoot, forecast);
  const ramp = core.solveRamp(problem);
  if (ramp.kind !== 'ok') throw new Error(JSON.stringify(ramp));
  const scene = core.sceneOf(shoot.scene, 260);
  const reading = { atMs: span.times[40]!, ev100: plan.frames[40]!.sceneEv100 + 0.3 };
  const lines = core.followLines(plan);
  const evenings = core.planEvenings(shoot, { days: 2 });
  const taken = plan.frames.map(({ frame, at, shutterS, iso, fNumber }) => ({
    file: `${frame}.jpg`,
    ...{ at, shutterS, iso, fNumber },
    level: { mean: 0.18 },
  }));
  const review = core.reviewFrames(plan, taken);

  const calls = {
    changesByClock: () => core.changesByClock(plan),
    civilDay: () => core.civilDay('2026-10-25', zone),
    clockOver: () => core.clockOver(BACK)('2026-10-25T02:30:00+02:00', true),
    clocksNear: () => core.clocksNear(PLACE, '2026-10-25', (_, east) => (east > 5 ? 'UTC' : 'Europe/Oslo')),
    cuesOf: () => core.cuesOf(plan.frames, true),
    dialLabel: () => core.dialLabel('shutter', 6, 3),
    dialLabels: () => core.dialLabels('iso', 2),
    dialStep: () => core.dialStep('aperture', '5.6', 3),
    ev100Of: () => core.ev100Of({ timeS: 1 / 125, fNumber: 16, iso: 100 }),
    exactFps: () => core.exactFps(23.976),
    exposingS: () => core.exposingS(2, { darkFrame: true, bracket: { frames: 3, stepEv: 2, betweenS: 0.3 } }),
    fieldOfViewDeg: () => core.fieldOfViewDeg(36, 24),
    filterStops: () => core.filterStops({ name: 'ND 1000', factor: 1000 }),
    followFrame: () => {
      const { state: _, ...answer } = core.followFrame(core.startFollow(plan), { frame: 41, reading });
      return answer;
    },
    followLines: () => {
      const at = core.rfc3339(reading.atMs, zone);
      return lines.next(lines.start, JSON.stringify({ at, ev100: reading.ev100 })).out;
    },
    readingOfFrame: () =>
      core.readingOfFrame(
        { mean: 0.2 },
        { atMs: FROM_MS, timeS: 1 / 60, fNumber: 4, iso: 100, filterStops: 3 },
      ),
    saveFollow: () => core.saveFollow(core.startFollow(plan)),
    resumeFollow: () => core.resumeFollow(plan, core.saveFollow(core.startFollow(plan))).kind,
    footageOf: () => core.footageOf({ recordingS: 3600, intervalS: 10 }, 24),
    forecastLight: () => Array.from(forecast.sceneEv100),
    frameAt: () => core.frameAt(plan, FROM_MS + 600_000),
    frameOfTags: () =>
      core.frameOfTags('a.jpg', { DateTimeOriginal: '2026:10:14 18:07:31', ExposureTime: 0.008, ISO: 100 }),
    framesLostByDefault: () => core.framesLostByDefault(2),
    framesHeld: () => core.framesHeld(shoot.camera),
    lightTable: () => made(core.lightTable(shoot)).rows,
    longestMarkedShutter: () => core.longestMarkedShutter(10, { gapS: 1, darkFrame: false, stepsPerStop: 3 }),
    meanLevel: () => core.meanLevel({ srgbPixels: [255, 255, 255, 0, 0, 0], channels: 3 }),
    moveCautions: () => core.moveCautions([{ axis: 'slide' }]),
    planEvenings: () => evenings,
    reviewFrames: () => review,
    learnedReadings: () => core.learnedReadings(plan, review, shoot),
    planExposures: () => {
      const plan = core.planExposures(shoot);
      return plan === undefined ? 'more to it' : plan;
    },
    planMoves: () =>
      core.planMoves({
        moves: shoot.moves,
        frames: plan.frames,
        intervalS: shoot.intervalS,
        clipFps: 24,
        writeS: 1,
        darkFrame: false,
        optics: OPTICS,
      }),
    planChoices: () => core.planChoices(shoot),
    planRemedies: () => {
      const iso = { lowest: 100, highest: 400 };
      return core.planRemedies({ ...shoot, camera: { ...shoot.camera, iso } }).map(({ change }) => change);
    },
    planShoot: () => plan,
    planTimes: () => core.planTimes(plan),
    quotedText: () => core.quotedText('a\u2028b'),
    rampProblemOf: () => problem.kit,
    rampWeights: () => core.rampWeights('hand'),
    readPlan: () => core.readPlan(JSON.parse(core.writePlan(plan))).kind,
    readShoot: () => shoot,
    rfc3339: () => core.rfc3339(FROM_MS, zone),
    sceneLight: () => core.sceneLight(scene)(forecast.sky[0]!),
    sceneOf: () => scene,
    sentenceOf: () =>
      core.sentenceOf(core.englishSentences.notes, 'kind', {
        kind: 'moonset',
        at: '2026-09-22T19:44:00+02:00',
      }),
    settingOf: () => core.settingOf(kit, ramp.frames[0]!),
    shootGap: () => core.shootGap(shoot, plan.frames.length),
    shootOnDate: () => core.shootOnDate(shoot, '2026-11-14'),
    shootSpan: () => Array.from(span.times),
    skyEvents: () => core.skyEvents(FROM_MS - 6e7, FROM_MS + 2e7, PLACE),
    solveRamp: () => ramp,
    startFollow: () => typeof core.startFollow(plan),
    steepestMinute: () => core.steepestMinute(plan.frames, shoot.intervalS),
    sunAndMoon: () => core.sunAndMoon(FROM_MS, PLACE),
    targetsOf: () => Array.from(core.targetsOf(shoot, forecast)),
    tightestOf: () => core.tightestOf(plan),
    valueOfStep: () => core.valueOfStep('shutter', 6, 3),
    wallToMs: () => core.wallToMs('2026-10-14', '18:00', zone),
    writeCalendar: () => core.writeCalendar(plan),
    writeCuesCsv: () => core.writeCuesCsv(plan),
    writeReview: () => core.writeReview(review),
    writeReviewCsv: () => core.writeReviewCsv(review),
    writeEvenings: () => core.writeEvenings(evenings),
    writeEveningsCsv: () => core.writeEveningsCsv(evenings),
    writeFramesCsv: () => core.writeFramesCsv(plan),
    writeLight: () => core.writeLight(made(core.lightTable(shoot))),
    writePlan: () => core.writePlan(plan),
    writeShoot: () => core.writeShoot(shoot),
    zoneOf: () => zone.name,
  };
  return Object.fromEntries(Object.entries(calls).map(([name, call]) => [name, call()]));
}

/** The functions that core exports. */
export function functionNames(): string[] {
  return Object.entries(core)
    .filter(([, value]) => typeof value === 'function')
    .map(([name]) => name);
}

/** The answers as text, for comparing one realm with another. */
export function surfaceText(): string {
  return JSON.stringify(surface());
}
