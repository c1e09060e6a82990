// Charts and cards of a camera that moves: real plans of the example evening with moves added.

import type { Move, PlanMade } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { cardPages, cardText, planChart, wordsFor } from '../../../packages/chart/src/index.js';
import { planned, shootWith } from '../planned.js';
import { all, outside, overlapping, pagesOnSheet, parseXml, textBoxes } from '../svg-reader.js';

const OPTICS = { lens: { focalMm: 35 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };
const gear = { settleS: 0.5, topSpeedDegPerS: 5 };
const PAN: Move = { axis: 'pan', by: { deg: -60 }, mode: 'stopped', ease: 'smoothstep', gear };
const TILT: Move = { axis: 'tilt', by: { deg: 8 }, mode: 'continuous', ease: 'quintic', gear };
const SLIDE: Move = {
  axis: 'slide',
  by: { m: 1.2 },
  mode: 'stopped',
  ease: { trapezoid: 0.2 },
  gear: { settleS: 0.5, topSpeedMPerS: 0.05 },
  toward: 'forward',
};

const moving = (name: 'dusk' | 'dawn', moves: readonly Move[], intervalS = 12): PlanMade =>
  planned(shootWith(name, { moves, intervalS }, OPTICS));
const PLANS = [
  { name: 'a pan at dusk', plan: moving('dusk', [PAN]) },
  { name: 'a tilt at dawn', plan: moving('dawn', [TILT]) },
  { name: 'all three at once', plan: moving('dusk', [PAN, TILT, SLIDE]) },
];
const TOLD = [
  { language: 'en', clock: 24 },
  { language: 'de', clock: 12 },
] as const;
const FORMS = [
  { variant: 'print', width: 720, height: 518.4 },
  { variant: 'dark', width: 960, height: 600 },
  { variant: 'print', width: 400, height: 288 },
] as const;
const rows = PLANS.flatMap((row) => TOLD.map((told) => ({ ...row, ...told })));

test.each(rows)('no label covers another, a curve or the edge: $language, $name', ({ plan, ...told }) => {
  for (const form of FORMS) {
    const svg = planChart(plan, { ...form, words: wordsFor(told) });
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const root = parseXml(svg);
    expect(overlapping(textBoxes(root))).toEqual([]);
    expect(outside(root, 1)).toEqual([]);
  }
});

describe('the chart', () => {
  const texts = (plan: PlanMade) => textBoxes(parseXml(planChart(plan))).map(({ text }) => text);

  test('has a lane for each axis that moves and one for the interval, and none where nothing moves', () => {
    const lanes = (plan: PlanMade) =>
      texts(plan).filter((text) => ['pan', 'tilt', 'slide', 'speed', 'interval'].includes(text));
    expect(lanes(PLANS[0]!.plan)).toEqual(['pan', 'speed', 'interval']);
    expect(lanes(PLANS[2]!.plan)).toEqual(['pan', 'tilt', 'slide', 'speed', 'interval']);
    expect(lanes(planned(shootWith('dusk')))).toEqual([]);
    // Without a lens nobody knows how fast the picture passes.
    const shoot = shootWith('dusk', { moves: [PAN], intervalS: 12 });
    const { lens, sensor, ...camera } = shoot.camera;
    expect([lens, sensor]).not.toContain(undefined);
    expect(lanes(planned({ ...shoot, camera }))).toEqual(['pan', 'interval']);
  });

  test('says where each axis begins and ends', () => {
    expect(texts(PLANS[0]!.plan)).toEqual(expect.arrayContaining(['0°', '60° left']));
    expect(texts(PLANS[1]!.plan)).toEqual(expect.arrayContaining(['0°', '8° up']));
    expect(texts(PLANS[2]!.plan)).toEqual(expect.arrayContaining(['0 m', '1.2 m forward']));
  });

  test('draws the speed on screen against one width in 7 s, the limit of comfort', () => {
    const { plan } = PLANS[0]!;
    expect(texts(plan)).toContain('crosses the frame in 7 s');
    expect(texts(plan)).toContain(
      `crosses the frame in ${Number(plan.move!.fastest!.crossingS.toPrecision(2))} s`,
    );
    const lines = all(parseXml(planChart(plan)), 'path')
      .filter(({ attributes }) => attributes.fill === 'none')
      .slice(-4, -2)
      .map(({ attributes }) =>
        attributes
          .d!.slice(1)
          .split('L')
          .map((pair) => Number(pair.split(',')[1])),
      );
    const [speed, comfort] = lines as [number[], number[]];
    expect(comfort[0]).toBe(comfort[1]);
    expect(speed).toHaveLength(plan.frames.length - 1);
    // Heights are as the speeds are: the ground is where the first step, next to nothing, lies.
    const middle = Math.floor(speed.length / 2);
    const drawn = (speed[0]! - speed[middle]!) / (speed[0]! - comfort[0]!);
    expect(drawn).toBeCloseTo(plan.frames[middle]!.widthsPerS! * 7, 1);
  });

  test('leaves blank in the interval what every frame has to spare', () => {
    const { plan } = PLANS[0]!;
    // The last two lines drawn: the shutter's upper edge, and what hangs from the top, dashed.
    const lines = all(parseXml(planChart(plan)), 'path')
      .filter(({ attributes }) => attributes.fill === 'none')
      .slice(-2);
    const [open, busy] = lines.map(({ attributes }) =>
      attributes
        .d!.slice(1)
        .split('L')
        .map((pair) => Number(pair.split(',')[1])),
    ) as [number[], number[]];
    expect(lines[1]!.attributes['stroke-dasharray']).toBeDefined();
    expect(open).toHaveLength(plan.frames.length);
    // The first frame's shutter is so short that its edge is the ground; one second there is a twelfth of the lane.
    const perSecond = plan.frames.map(({ slackS }, i) => (open[i]! - busy[i]!) / slackS!);
    for (const scale of perSecond.slice(0, -1)) expect(scale).toBeCloseTo(perSecond[0]!, 0);
    expect(perSecond[0]).toBeGreaterThan(2);
    const spare = Math.min(...plan.frames.map(({ slackS }) => slackS!));
    expect(texts(plan)).toContain(`${Number(spare.toFixed(2))} s to spare at least`);
  });
});

describe('the card', () => {
  test.each(rows)('nothing overlaps or leaves its page: $language, $name', ({ plan, ...told }) => {
    for (const paper of ['a6', 'letter'] as const) {
      for (const svg of cardPages(plan, { paper, words: wordsFor(told) })) {
        expect(svg).not.toMatch(/NaN|undefined/);
        for (const page of pagesOnSheet(parseXml(svg))) {
          expect(overlapping(textBoxes(page))).toEqual([]);
          expect(outside(page, 12)).toEqual([]);
        }
      }
    }
  });

  test('says what the move does on its first page, and where it stands after the last cue', () => {
    const pages = cardPages(PLANS[0]!.plan).map((svg) => textBoxes(parseXml(svg)).map(({ text }) => text));
    const { frames } = PLANS[0]!.plan;
    const step = (i: number) => Math.abs(frames[i + 1]!.panDeg! - frames[i]!.panDeg!);
    const longest = Math.max(...frames.slice(1).map((_, i) => step(i)));
    const start = pages[0]!.find((text) => text.startsWith('Pan 60° left, stopping; steps '))!;
    const [first, most] = start
      .match(/[\d.]+(?=°)/g)!
      .slice(1)
      .map(Number);
    // Two figures.
    expect(first! / step(0)).toBeCloseTo(1, 1);
    expect(most! / longest).toBeCloseTo(1, 1);
    expect(pages.slice(1).flat()).toContain('At the end: Pan at 60° left');
    expect(pages[0]).not.toContain('At the end: Pan at 60° left');
  });

  test('the same as text; and nothing of moves where there are none', () => {
    const text = cardText(PLANS[2]!.plan);
    for (const [start, end] of [
      ['Pan 60° left, stopping', 'At the end: Pan at 60° left'],
      ['Tilt 8° up, without a stop', 'At the end: Tilt at 8° up'],
      ['Slide 1.2 m forward, stopping', 'At the end: Slide at 1.2 m forward'],
    ] as const) {
      expect(text.indexOf(start)).toBeGreaterThan(0);
      expect(text.indexOf(end)).toBeGreaterThan(text.indexOf('== Cues'));
    }
    for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(cardText(planned(shootWith('dusk')))).not.toMatch(/At the end|stopping/);
  });

  test('carries the cautions for people and gear', () => {
    const told = cardPages(PLANS[2]!.plan)
      .flatMap((svg) => textBoxes(parseXml(svg)).map(({ text }) => text))
      .join(' ');
    expect(told).toContain('licensed riggers');
    expect(told).toContain('does not feel fingers');
  });
});
