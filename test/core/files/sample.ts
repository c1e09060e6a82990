// A shoot file and a plan made by hand, small enough to check by eye. Its numbers follow the file format, not a planner.

import { type PlanFrame, type PlanInfeasible, type PlanMade, readShoot, type Shoot } from '@evenfall/core';

/** The least a shoot file holds. */
export const LEAST = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 57.05, longitudeDeg: 9.92 },
  date: '2026-09-12',
  intervalS: 6,
  camera: {
    shutter: { shortest: '1/4000', longest: '4' },
    iso: { lowest: 100, highest: 3200 },
    aperture: '5.6',
  },
};

/** A shoot that reads, or the messages as an exception. */
export function shootOf(value: unknown): Shoot {
  const read = readShoot(value);
  if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
  return read.shoot;
}

const SHOOT = shootOf({
  ...LEAST,
  title: 'Slipway; gulls, and a lamp \\ "Östra bron"',
  place: { ...LEAST.place, timeZone: 'Europe/Copenhagen' },
  filters: [{ name: 'ND 0.9', density: 0.9 }],
  camera: { ...LEAST.camera, frameMB: 30, cardGB: 64, batteryFrames: 3 },
});

const ND = 0.9 / Math.log10(2);

/** Times are six seconds apart from 19:30:00 in summer time. */
function frame(index: number, rest: Pick<PlanFrame, 'shutter' | 'shutterS' | 'filters'>): PlanFrame {
  const filterStops = rest.filters.length * ND;
  const settingEv100 = 5 - Math.log2(rest.shutterS) + filterStops;
  const targetEv100 = settingEv100 + 0.125;
  return {
    frame: index,
    at: `2026-09-12T19:30:${String(index * 6).padStart(2, '0')}+02:00`,
    sunAltitudeDeg: 1 - index / 100,
    sceneEv100: targetEv100,
    lowEv100: targetEv100 - 3,
    highEv100: targetEv100 + 0.5,
    targetEv100,
    ...rest,
    iso: 100,
    isoExact: 100,
    aperture: '5.6',
    fNumber: 2 ** 2.5,
    filterStops,
    settingEv100,
    errorEv: -0.125,
    affected: index === 2 || index === 3,
  };
}

const FRAMES = [
  frame(0, { shutter: '1/30', shutterS: 1 / 32, filters: ['ND 0.9'] }),
  frame(1, { shutter: '1/30', shutterS: 1 / 32, filters: ['ND 0.9'] }),
  frame(2, { shutter: '1/250', shutterS: 1 / 256, filters: [] }),
  frame(3, { shutter: '1/250', shutterS: 1 / 256, filters: [] }),
  frame(4, { shutter: '1/125', shutterS: 1 / 128, filters: [] }),
];

export const PLAN: PlanMade = {
  format: 'evenfall-plan/1',
  kind: 'ok',
  shoot: SHOOT,
  summary: {
    frameCount: 5,
    setUpAt: '2026-09-12T19:10:00+02:00',
    startAt: FRAMES[0]!.at,
    endAt: FRAMES[4]!.at,
    clipS: 5 / 24,
    cardNeededGB: 0.15,
    cardFits: true,
    batteryFits: false,
    sceneFromEv100: FRAMES[0]!.sceneEv100,
    sceneToEv100: FRAMES[4]!.sceneEv100,
    rampStops: 1,
    reserveDarkEv: 6.5,
    reserveBrightEv: 1.25,
    eveningsHeldShare: 0.875,
    worstErrorEv: 0.125,
    rmsErrorEv: 0.125,
    cueCount: 2,
    objective: 24.5,
  },
  events: [{ name: 'sunset', at: '2026-09-12T19:43:10+02:00', sunAltitudeDeg: -0.833 }],
  frames: FRAMES,
  cues: [
    {
      frame: 2,
      at: FRAMES[2]!.at,
      sunAltitudeDeg: FRAMES[2]!.sunAltitudeDeg,
      changes: [
        { control: 'shutter', from: '1/30', to: '1/250' },
        { control: 'filter', from: 'ND 0.9', to: 'none' },
      ],
    },
    {
      frame: 4,
      at: FRAMES[4]!.at,
      sunAltitudeDeg: FRAMES[4]!.sunAltitudeDeg,
      changes: [{ control: 'shutter', from: '1/250', to: '1/125' }],
    },
  ],
  notes: [
    {
      level: 'caution',
      kind: 'battery-nearly-spent',
      share: 0.95,
      cold: false,
      text: 'The frames take 95 % of one charge: start with it full, and have another at hand.',
    },
  ],
};

export const INFEASIBLE: PlanInfeasible = {
  format: 'evenfall-plan/1',
  kind: 'infeasible',
  shoot: SHOOT,
  infeasible: {
    reason: 'too-dark',
    frame: 812,
    at: '2026-09-12T20:51:12+02:00',
    shortfallEv: 1.3,
    worstShortfallEv: 2.1,
    text: 'From frame 813 on the scene is 1.3 stops too dark.',
    remedies: [
      {
        change: 'higher-iso',
        iso: 6400,
        fromIso: 3200,
        text: 'raise the highest ISO to 6400',
        apply: { camera: { ...SHOOT.camera, iso: { lowest: 100, highest: 6400 } } },
      },
    ],
  },
};
