import type { LightTable } from '@evenfall/core';
import { expect, test } from 'vitest';
import { lightChart, planChart, wordsFor } from '../../../packages/chart/src/index.js';
import { INKS } from '../../../packages/chart/src/svg/ink.js';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { EVENINGS } from '../evenings.js';
import { madePlan } from '../made-plan.js';
import { all, contrast, type Node, outside, overlapping, parseXml, textBoxes } from '../svg-reader.js';

const FORMS = [
  { variant: 'print', width: 720, height: 518.4 },
  { variant: 'screen', width: 960, height: 600 },
  { variant: 'print', width: 400, height: 288 },
] as const;

test.each(EVENINGS)('no label covers another or leaves the picture: $name', ({ plan }) => {
  for (const form of FORMS) {
    const svg = planChart(plan, form);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const root = parseXml(svg);
    expect(overlapping(textBoxes(root))).toEqual([]);
    expect(outside(root, 1)).toEqual([]);
    expect(textBoxes(root).length).toBeGreaterThan(20);
    // Every event of these evenings finds room for its name.
    const texts = textBoxes(root).map((b) => b.text);
    expect(plan.events.length).toBe(3);
    for (const { at } of plan.events)
      expect(texts.some((t) => t.endsWith(` ${at.slice(11, 16)}`))).toBe(true);
    expect(planChart(plan, form)).toBe(svg);
  }
});

test.each(EVENINGS)('nor in German, nor on a clock of twelve hours: $name', ({ plan }) => {
  for (const told of [
    { language: 'de', clock: 24 },
    { language: 'en', clock: 12 },
    { language: 'de', clock: 12 },
  ] as const) {
    for (const form of FORMS) {
      const root = parseXml(planChart(plan, { ...form, words: wordsFor(told) }));
      expect(overlapping(textBoxes(root))).toEqual([]);
      expect(outside(root, 1)).toEqual([]);
      const texts = textBoxes(root).map((b) => b.text);
      expect(texts).toContain(told.language === 'de' ? 'Zeit' : 'shutter');
      expect(texts.some((t) => /^\d+:\d\d [ap]m$/i.test(t))).toBe(told.clock === 12);
    }
  }
});

test.each(EVENINGS)('no label lies on a curve or a step: $name', ({ plan }) => {
  const root = parseXml(planChart(plan));
  const boxes = textBoxes(root);
  const lines = all(root, 'path').filter((p) => p.attributes.fill === 'none');
  expect(lines.length).toBeGreaterThan(6);
  for (const { attributes } of lines) {
    const corners = attributes
      .d!.slice(1)
      .split('L')
      .map((pair) => pair.split(',').map(Number));
    for (let i = 1; i < corners.length; i++) {
      const [[x1, y1], [x2, y2]] = [corners[i - 1]!, corners[i]!] as [[number, number], [number, number]];
      // Twenty points a segment find any crossing that an eye would.
      for (let k = 0; k <= 20; k++) {
        const [x, y] = [x1 + ((x2 - x1) * k) / 20, y1 + ((y2 - y1) * k) / 20];
        const hit = boxes.find((b) => x > b.left && x < b.right && y > b.top && y < b.bottom);
        expect(hit?.text).toBeUndefined();
      }
    }
  }
});

test('a label on a step says what the dial says at that time', () => {
  const plan = madePlan({ cues: 40 });
  const boxes = textBoxes(parseXml(planChart(plan)));
  // 76 and 16 units are the chart's margins; frames are spread evenly between them.
  const frameAt = (x: number) => plan.frames[Math.round(((x - 76) / (720 - 92)) * (plan.frames.length - 1))]!;
  const shutterLane = boxes.filter((b) => /^(1\/\d+|[\d.]+ s)$/.test(b.text));
  expect(shutterLane.length).toBeGreaterThan(12);
  for (const { text, left, right } of shutterLane) {
    const near = [left - 8, left, (left + right) / 2, right, right + 8].map((x) =>
      frameAt(Math.min(704, Math.max(76, x))),
    );
    expect(near.map((f) => (f.shutter.includes('/') ? f.shutter : `${f.shutter} s`))).toContain(text);
  }
});

test('every step is labelled where there are few, and the first and last of many', () => {
  const few = textBoxes(parseXml(planChart(madePlan({ cues: 12, filters: [] })))).map((b) => b.text);
  const plan = madePlan({ cues: 12, filters: [] });
  for (const f of plan.frames) {
    expect(few).toContain(f.shutter.includes('/') ? f.shutter : `${f.shutter} s`);
    expect(few).toContain(String(f.iso));
  }
  const many = madePlan({ cues: 60 });
  const texts = textBoxes(parseXml(planChart(many))).map((b) => b.text);
  expect(texts).toContain(String(many.frames[0]!.iso));
  expect(texts).toContain(String(many.frames.at(-1)!.iso));
});

test('aperture has a lane only where it moves; elsewhere the line under the title says it', () => {
  const texts = (apertureMoves: boolean) =>
    textBoxes(parseXml(planChart(madePlan({ apertureMoves })))).map((b) => b.text);
  expect(texts(true)).toContain('aperture');
  expect(texts(false)).not.toContain('aperture');
  expect(texts(false).some((t) => t.includes('f/8'))).toBe(true);
});

test('curves are named where they run, and differ without colour', () => {
  const root = parseXml(planChart(madePlan()));
  const texts = textBoxes(root).map((b) => b.text);
  for (const name of ['scene', 'target', 'settings', 'likely range', 'civil twilight']) {
    expect(texts).toContain(name);
  }
  const strokes = all(root, 'path').map(
    (p) => `${p.attributes['stroke-width']} ${p.attributes['stroke-dasharray']}`,
  );
  // Likely range (dotted, twice), settings (hollow: two strokes), target (dashed), scene; then the lanes.
  expect(new Set(strokes.filter((s) => !s.startsWith('undefined')).slice(0, 6)).size).toBe(5);
});

test('a filter change is a ring on the settings and a post through the lanes', () => {
  const rings = (root: Node) => all(root, 'circle').filter((c) => c.attributes.fill === '#ffffff');
  expect(rings(parseXml(planChart(madePlan({ filters: [] }))))).toHaveLength(0);
  const two = EVENINGS[2]!.plan;
  const changes = two.cues.filter((cue) => cue.changes.some((c) => c.control === 'filter'));
  expect(changes.length).toBe(2);
  expect(rings(parseXml(planChart(two)))).toHaveLength(2);
});

test('no line is thinner than 0.8 pt and no type smaller than 6.5 pt on A6 across (148 mm)', () => {
  const a6 = (148 / 25.4) * 72;
  for (const width of [400, 720]) {
    const root = parseXml(planChart(EVENINGS[4]!.plan, { width }));
    const scale = a6 / width;
    const widths = ['path', 'line', 'rect', 'circle'].flatMap((name) =>
      all(root, name).flatMap((n) =>
        n.attributes['stroke-width'] === undefined ? [] : [Number(n.attributes['stroke-width'])],
      ),
    );
    // The white inside of the settings' hollow line is no line of its own.
    expect(Math.min(...widths) * scale).toBeGreaterThan(0.785);
    expect(Math.min(...textBoxes(root).map((b) => b.size)) * scale).toBeGreaterThanOrEqual(6.5);
  }
});

test('print is black and grey alone', () => {
  const svg = planChart(EVENINGS[2]!.plan);
  const colours = [...svg.matchAll(/#([0-9a-f]{6}|[0-9a-f]{3})\b/g)].map((m) => m[1]!);
  expect(colours.length).toBeGreaterThan(20);
  for (const c of colours) expect(c.length === 3 ? c : c.slice(0, 2).repeat(3)).toBe(c);
});

// WCAG 2.2, 1.4.3 (text 4.5) and 1.4.11 (graphics 3).
test.each(['print', 'screen', 'dark'] as const)(
  'text and curves stand out from every shade: %s',
  (variant) => {
    const ink = INKS[variant];
    for (const shade of [ink.paper, ...Object.values(ink.twilight)]) {
      for (const colour of [ink.text, ink.scene, ink.target, ink.settings, ink.frame]) {
        expect(contrast(colour, shade)).toBeGreaterThanOrEqual(4.5);
      }
    }
  },
);

test('title and description carry the evening in words', () => {
  const plan = madePlan({ title: 'Quay <&> "one"' });
  const root = parseXml(planChart(plan));
  expect(all(root, 'title')[0]!.text).toBe('Quay <&> "one"');
  const said = all(root, 'desc')[0]!.text;
  expect(said).toContain(`${plan.frames.length} frames, ${plan.cues.length} cues`);
  expect(said).toContain('sunset 18:07');
  expect(said).toContain('ND 6-stop → no filter');
  expect(said).toContain(`${plan.frames[0]!.shutter} s · ISO 100 · f/8`);
});

test('long titles are shortened, and one that reads from the right stays inside', () => {
  for (const title of ['Harbour '.repeat(40), 'ערב בנמל', 'مساء الميناء '.repeat(20)]) {
    expect(outside(parseXml(planChart(madePlan({ title }))))).toEqual([]);
  }
});

test('one frame, and constant light, still make a picture', () => {
  const plan = madePlan({ cues: 5 });
  const one = { ...plan, frames: plan.frames.slice(0, 1), cues: [], events: [] };
  expect(overlapping(textBoxes(parseXml(planChart(one))))).toEqual([]);
});

test('a size without room for a chart is refused', () => {
  expect(() => planChart(madePlan(), { width: 100 })).toThrow('width must be 300 to 10000, got 100');
});

function tableOf(plan: ReturnType<typeof madePlan>): LightTable {
  const { frames } = plan;
  const rows = frames.map((f, i) => ({
    at: f.at,
    sunAltitudeDeg: f.sunAltitudeDeg,
    sunAzimuthDeg: 270,
    moonAltitudeDeg: -10,
    moonAzimuthDeg: 90,
    moonLitFraction: 0.1,
    illuminanceLx: 100,
    moonIlluminanceLx: 0,
    skyLuminanceCdM2: 100,
    sceneEv100: f.sceneEv100,
    lowEv100: f.lowEv100,
    highEv100: f.highEv100,
    slopeEvPerMin: i === 500 ? -0.44 : -0.1,
  }));
  return { format: 'evenfall-light/1', kind: 'ok', events: plan.events, missing: [], rows };
}

test.each(EVENINGS.slice(0, 6))('the light chart: no label covers another: $name', ({ plan }) => {
  const root = parseXml(lightChart(tableOf(plan)));
  expect(overlapping(textBoxes(root))).toEqual([]);
  expect(outside(root, 1)).toEqual([]);
});

test('the light chart says where the fall is steepest and how fast', () => {
  const plan = madePlan();
  const root = parseXml(lightChart(tableOf(plan), { title: 'Harbour' }));
  const clock = plan.frames[500]!.at.slice(11, 16);
  expect(textBoxes(root).map((b) => b.text)).toContain(`EV a minute: steepest −0.44 at ${clock}`);
  expect(all(root, 'desc')[0]!.text).toContain(`fastest at ${clock}: −0.44 EV a minute`);
  expect(() => lightChart({ ...tableOf(plan), rows: [] })).toThrow('at least one row');
});

test('a shutter that is timed freely says a few of its times, well apart and none twice', () => {
  const camera = { ...EVENING_SHOOT.camera, bulb: true };
  const plan = planOf({ ...EVENING_SHOOT, crew: 'rig', limits: {}, camera });
  expect(new Set(plan.frames.map(({ shutter }) => shutter)).size).toBeGreaterThan(100);
  const said = textBoxes(parseXml(planChart(plan, { variant: 'print' })))
    .filter(({ text }) => /^(1\/[\d.]+|[\d.]+ s)$/.test(text))
    .sort((a, b) => a.left - b.left);
  expect(said.length).toBeGreaterThan(4);
  expect(said.length).toBeLessThan(20);
  expect(new Set(said.map(({ text }) => text)).size).toBe(said.length);
  for (const [i, { left }] of said.entries()) if (i > 0) expect(left - said[i - 1]!.right).toBeGreaterThan(8);
});
