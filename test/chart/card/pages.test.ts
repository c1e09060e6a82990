import type { PlanMade, PlanNote } from '@evenfall/core';
import { expect, test } from 'vitest';
import { cardHtml, cardPages, wordsFor } from '../../../packages/chart/src/index.js';
import { EVENINGS } from '../evenings.js';
import { madePlan } from '../made-plan.js';
import {
  all,
  contrast,
  type Node,
  outside,
  overlapping,
  pagesOnSheet,
  parseXml,
  textBoxes,
} from '../svg-reader.js';

const CLOCK = /^\d\d:\d\d:\d\d$/;
const pagesOf = (plan: PlanMade) => cardPages(plan).map(parseXml);
const textsOf = (page: Node) => textBoxes(page).map((b) => b.text);

// ISO 216 and ANSI/ASME Y14.1. Source: docs/sources.md#paper.
const PAPERS = [
  { paper: 'a6', width: '105mm', height: '148mm', pages: 1, least: 9 },
  { paper: 'a5', width: '148mm', height: '210mm', pages: 1, least: 9 * Math.SQRT2 },
  { paper: 'a4', width: '210mm', height: '297mm', pages: 4, least: 9 },
  { paper: 'letter', width: '215.9mm', height: '279.4mm', pages: 4, least: 9 },
] as const;
const TOLD = [
  { language: 'en', clock: 24 },
  { language: 'en', clock: 12 },
  { language: 'de', clock: 24 },
  { language: 'de', clock: 12 },
] as const;

test.each(
  EVENINGS.flatMap(({ name, plan }, i) => {
    // Every evening on every paper; languages and clocks take turns.
    return PAPERS.map((form, k) => ({ ...form, ...TOLD[(i + k) % 4]!, name, plan }));
  }),
)('nothing overlaps, leaves its page or turns on chance: $paper $language $clock $name', (form) => {
  const { plan, paper, width, height, pages, least } = form;
  const options = { paper, words: wordsFor(form) };
  const svgs = cardPages(plan, options);
  expect(cardPages(plan, options)).toEqual(svgs);
  let seen = 0;
  for (const svg of svgs) {
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const sheet = parseXml(svg);
    expect(sheet.attributes).toMatchObject({ width, height });
    const [, , across, down] = sheet.attributes.viewBox!.split(' ').map(Number);
    // Points of type on paper for a unit of the drawing.
    const scale = ((Number.parseFloat(width) / 25.4) * 72) / across!;
    expect(((Number.parseFloat(height) / 25.4) * 72) / down!).toBeCloseTo(scale, 3);
    for (const page of pagesOnSheet(sheet)) {
      seen++;
      const boxes = textBoxes(page);
      expect(overlapping(boxes)).toEqual([]);
      // 12 pt are 4.2 mm, the edge that most printers leave white; on a sheet to be cut, room for scissors.
      expect(outside(page, 12)).toEqual([]);
      for (const box of boxes) expect(box.size * scale).toBeGreaterThanOrEqual(least - 0.01);
      // A value is never shortened.
      expect(boxes.filter(({ text }) => text.includes('…')).map(({ text }) => text)).toEqual([]);
    }
  }
  expect(seen).toBeGreaterThan((svgs.length - 1) * pages);
  expect(seen).toBeLessThanOrEqual(svgs.length * pages);
});

test('four pages on a sheet are the pages one by one, with marks where to cut', () => {
  const plan = madePlan({ cues: 40 });
  const sheets = cardPages(plan, { paper: 'a4' }).map(parseXml);
  const texts = sheets.flatMap((sheet) => pagesOnSheet(sheet).map((page) => textsOf(page).slice(1).join()));
  expect(texts).toEqual(pagesOf(plan).map((page) => textsOf(page).slice(1).join()));
  const [width, height] = [(210 / 25.4) * 72, (297 / 25.4) * 72];
  for (const sheet of sheets) {
    const marks = sheet.children.filter(({ name }) => name === 'line');
    const at = (key: string) => marks.map(({ attributes }) => Number(attributes[key]));
    expect(marks).toHaveLength(6);
    const upright = marks.filter(({ attributes: a }) => a.x1 === a.x2);
    const level = marks.filter(({ attributes: a }) => a.y1 === a.y2);
    expect(upright).toHaveLength(3);
    expect(level).toHaveLength(3);
    for (const { attributes } of upright) expect(Number(attributes.x1)).toBeCloseTo(width / 2, 1);
    for (const { attributes } of level) expect(Number(attributes.y1)).toBeCloseTo(height / 2, 1);
    // From the very edge to beyond what a printer leaves white.
    expect([Math.min(...at('x1')), Math.min(...at('y1'))]).toEqual([0, 0]);
    expect(Math.max(...at('x2'))).toBeCloseTo(width, 1);
    expect(Math.max(...at('y2'))).toBeCloseTo(height, 1);
  }
});

test.each(EVENINGS)('every cue stands on the card once, in order, with all it needs: $name', ({ plan }) => {
  const pages = pagesOf(plan);
  const rows = pages.flatMap((page) => rowsOf(page));
  expect(rows).toHaveLength(plan.cues.length);
  plan.cues.forEach((cue, i) => {
    const row = rows[i]!.join(' ');
    const after = plan.frames[cue.frame]!;
    expect(rows[i]![0]).toBe(cue.at.slice(11, 19));
    expect(row).toMatch(new RegExp(`frame ${cue.frame + 1}\\b`));
    expect(row).toContain(`sun ${cue.sunAltitudeDeg.toFixed(1).replace('-', '−').replace('−0.0', '0.0')}°`);
    expect(row).toContain(
      `${after.shutter.includes('/') ? after.shutter : `${after.shutter} s`} · ISO ${after.iso} · f/${after.aperture}`,
    );
    expect(row).toContain(after.filters.length === 0 ? 'no filter' : after.filters.join(' + '));
    const filterChange = cue.changes.some((c) => c.control === 'filter');
    expect(row.includes('FILTER CHANGE')).toBe(filterChange);
    expect(row.includes('may cost frames')).toBe(filterChange);
    for (const { control, from, to } of cue.changes.filter((c) => c.control !== 'filter')) {
      const text = (label: string) =>
        control === 'shutter' && !label.includes('/')
          ? `${label} s`
          : control === 'aperture'
            ? `f/${label}`
            : label;
      const name = { shutter: 'Shutter', iso: 'ISO', aperture: 'Aperture', filter: '' }[control];
      expect(row).toContain(`${name} ${text(from)} → ${text(to)}`);
    }
  });
});

// A cue's texts run from its clock time to the next one's.
function rowsOf(page: Node): string[][] {
  const texts = textsOf(page);
  const starts = texts.flatMap((t, i) => (CLOCK.test(t) ? [i] : []));
  return starts.map((start, i) => texts.slice(start, starts[i + 1]));
}

test('each page says title, page, date, interval and the setting it starts from', () => {
  const plan = madePlan({ cues: 48 });
  const pages = pagesOf(plan);
  expect(pages.length).toBeGreaterThan(7);
  pages.forEach((page, i) => {
    const texts = textsOf(page);
    expect(texts.slice(0, 3)).toEqual([
      'Harbour wall, evening',
      `page ${i + 1} of ${pages.length}`,
      'Sunday 18 October 2026 · every 7 s',
    ]);
    const cue = plan.cues.find((c) => c.at.slice(11, 19) === rowsOf(page)[0]?.[0]);
    const from =
      i === 0 ? plan.frames[0]! : cue === undefined ? plan.frames.at(-1)! : plan.frames[cue.frame - 1]!;
    const shutter = from.shutter.includes('/') ? from.shutter : `${from.shutter} s`;
    const exposure = `${shutter} · ISO ${from.iso} · f/${from.aperture}`;
    const filters = from.filters.length === 0 ? 'no filter' : from.filters.join(' + ');
    if (!texts.includes(`${exposure} · ${filters}`)) {
      expect(texts).toContain(exposure);
      expect(texts).toContain(filters);
    }
  });
});

test('on A6 the first page is one page and prepares the evening', () => {
  for (const { plan } of EVENINGS) {
    const [first, second] = pagesOf(plan);
    const text = textsOf(first!).join(' ');
    for (const wanted of [
      `Start ${plan.summary.startAt.slice(11, 19)} · End ${plan.summary.endAt.slice(11, 19)}`,
      `${plan.frames.length} frames`,
      'Be set up by 17:05',
      'focus to manual',
      'stabiliser off',
      'white balance fixed',
      'noise red. off',
      'clock set to the second',
      'battery',
      'level',
      plan.frames[0]!.filters.length > 0 ? 'first filter on' : 'no filter on',
      'nearest the reading',
    ]) {
      expect(text).toContain(wanted);
    }
    for (const { at } of plan.events) expect(text).toContain(at.slice(11, 16));
    expect(textsOf(second!)).toContain('Page starts from');
  }
});

test('readings and the table of shutters find room elsewhere where the first page has none', () => {
  const plan = madePlan({ cues: 12 });
  const event = { name: 'moonrise' as const, at: plan.frames[40]!.at, sunAltitudeDeg: 3 };
  const crowded = { ...plan, events: [...plan.events, ...Array.from({ length: 7 }, () => event)] };
  const pages = pagesOf(crowded);
  expect(textsOf(pages[0]!)).not.toContain('Readings');
  const all = pages.flatMap(textsOf);
  expect(all.filter((text) => text === 'Readings')).toHaveLength(1);
  expect(all.filter((text) => text.startsWith('ISO 100, f/8: shutter'))).toHaveLength(1);
  expect(pages.flatMap((page) => [...overlapping(textBoxes(page)), ...outside(page, 12)])).toEqual([]);
});

test('a row too long for one line has the control above its values', () => {
  const plan = madePlan({ cues: 5, filters: [] });
  const changes = [{ control: 'shutter' as const, from: '1/16000', to: '1/12800' }];
  const long = { ...plan, cues: plan.cues.map((cue) => ({ ...cue, changes })) };
  const words = wordsFor({ clock: 12 });
  const boxes = cardPages(long, { words }).map(parseXml).flatMap(textBoxes);
  const names = boxes.filter(({ text }) => text === 'Shutter');
  const values = boxes.filter(({ text }) => text === '1/12800');
  expect(names).toHaveLength(5);
  expect(values).toHaveLength(5);
  for (const [i, value] of values.entries()) expect(value.top).toBeGreaterThan(names[i]!.bottom - 1);
});

test('the small chart marks every cue', () => {
  const plan = madePlan({ cues: 40 });
  const page = pagesOf(plan).find((each) => all(each, 'circle').length > 0)!;
  const ticks = all(page, 'line').filter(
    ({ attributes: a }) => a.x1 === a.x2 && Math.abs(Number(a.y2) - Number(a.y1) - 9) < 0.02,
  );
  const changes = plan.cues.filter((cue) => cue.changes.some((c) => c.control === 'filter'));
  expect(changes).toHaveLength(1);
  expect(all(page, 'circle')).toHaveLength(1);
  expect(ticks).toHaveLength(plan.cues.length - 1);
});

test('the last page warns and helps', () => {
  const text = textsOf(pagesOf(madePlan()).at(-1)!).join(' ');
  for (const wanted of [
    'When a cue was missed',
    'Never look at the sun',
    'no solar viewer',
    'tides',
    'overhead',
    'Local rules',
  ]) {
    expect(text).toContain(wanted);
  }
});

test('notes of the plan are on the card, whole, however many', () => {
  const notes = Array.from({ length: 30 }, (_, i) => ({
    level: 'caution' as const,
    kind: 'frames-affected' as const,
    count: i,
    text: `Changing filters may spoil ${i} frames; they are marked in the plan.`,
  }));
  const pages = pagesOf({ ...madePlan(), notes });
  const text = pages.flatMap(textsOf).join(' ');
  for (const note of notes) expect(text).toContain(note.text);
  expect(pages.flatMap((page) => [...overlapping(textBoxes(page)), ...outside(page, 12)])).toEqual([]);
});

test('what would spoil the shoot, and the night’s own notes, stand on the first page and nowhere else', () => {
  const at = '2026-10-14T19:16:00+01:00';
  const notes: PlanNote[] = [
    {
      level: 'warning',
      kind: 'card-full',
      ...{ holds: 100, frameCount: 361, neededGB: 9.5, at },
      text: 'The card holds 100 of the 361 frames; bring 9.5 GB or more. It is full at 19:16.',
    },
    {
      level: 'warning',
      kind: 'battery-spent',
      ...{ holds: 210, frameCount: 361, cold: true, at },
      text: 'One charge gives 210 of the 361 frames in the cold; bring a second battery or outside power. It is spent at 19:16.',
    },
    {
      level: 'caution',
      kind: 'card-nearly-full',
      share: 0.93,
      text: 'The frames take 93 % of the card: start with it empty.',
    },
  ];
  for (const paper of ['a6', 'a5'] as const) {
    const pages = cardPages({ ...madePlan(), notes }, { paper }).map(parseXml);
    const [first = '', ...rest] = pages.map((page) => textsOf(page).join(' '));
    for (const { text } of notes) {
      expect(first.includes(text), text).toBe(true);
      expect(rest.join(' ').includes(text), text).toBe(false);
    }
    expect(pages.flatMap((page) => [...overlapping(textBoxes(page)), ...outside(page, 12)])).toEqual([]);
  }
});

test('type is 9 pt and more, what changes 14 pt and more, lines 0.75 pt and more', () => {
  let bigSeen = 0;
  for (const { plan } of EVENINGS) {
    for (const page of pagesOf(plan)) {
      for (const box of textBoxes(page)) {
        expect(box.size).toBeGreaterThanOrEqual(9);
        if (/^(Shutter|ISO|Aperture|FILTER CHANGE|Take off .*|Put on .*)$/.test(box.text)) {
          bigSeen++;
          expect(box.size).toBeGreaterThanOrEqual(14);
          expect(box.bold).toBe(true);
        }
      }
      for (const name of ['line', 'rect', 'path', 'circle']) {
        for (const { attributes: a } of all(page, name)) {
          if (a['stroke-width'] !== undefined) expect(Number(a['stroke-width'])).toBeGreaterThanOrEqual(0.75);
        }
      }
    }
  }
  expect(bigSeen).toBeGreaterThan(1000);
});

// What the same evenings took before the card said what it says now: English, German.
const PAGES_BEFORE = [
  [3, 3],
  [5, 5],
  [6, 6],
  [8, 8],
  [10, 10],
  [13, 13],
  [18, 18],
  [32, 32],
  [4, 4],
  [4, 4],
  [6, 6],
  [9, 9],
  [10, 10],
  [13, 13],
  [19, 19],
  [31, 31],
  [4, 4],
  [5, 5],
  [6, 6],
  [9, 9],
];

test('the card has no more pages than it had, and none with cues is half empty', () => {
  EVENINGS.forEach(({ name, plan }, i) => {
    (['en', 'de'] as const).forEach((language, k) => {
      const pages = cardPages(plan, { words: wordsFor({ language }) }).map(parseXml);
      expect(pages.length, `${name} ${language}`).toBeLessThanOrEqual(PAGES_BEFORE[i]![k]!);
      const withCues = pages.filter((page) => rowsOf(page).length > 0);
      const lowest = withCues.map((page) =>
        Math.max(...textBoxes(page).map(({ text, bottom }) => (/^(next|nächster) /.test(text) ? 0 : bottom))),
      );
      // A page of A6 is 419.5 points high.
      if (lowest.length > 1) expect(Math.min(...lowest), name).toBeGreaterThan(419.5 / 2);
    });
  });
});

test.each(['a6', 'a5'] as const)('no page is half empty, whatever the first one has to say: %s', (paper) => {
  const at = '2026-10-14T19:16:00+01:00';
  const notes: PlanNote[] = [
    { level: 'warning', kind: 'card-full', holds: 100, frameCount: 361, neededGB: 9.5, at, text: '' },
    { level: 'warning', kind: 'battery-spent', holds: 210, frameCount: 361, cold: true, at, text: '' },
    { level: 'caution', kind: 'card-nearly-full', share: 0.93, text: '' },
  ];
  for (const more of [0, 1, 2, 3]) {
    EVENINGS.forEach(({ name, plan }, i) => {
      const words = wordsFor({ language: i % 2 === 0 ? 'en' : 'de' });
      const told = { ...plan, notes: [...plan.notes, ...notes.slice(0, more)] };
      for (const page of cardPages(told, { paper, words }).map(parseXml)) {
        const foot = /^(?:next|nächster) /;
        const lowest = Math.max(...textBoxes(page).map(({ text, bottom }) => (foot.test(text) ? 0 : bottom)));
        const height = Number(page.attributes.viewBox!.split(' ')[3]);
        expect(lowest / height, `${name}, ${more} more notes`).toBeGreaterThan(0.5);
      }
    });
  }
});

test('each cue says which of how many it is and how many clicks; each page when the next page begins', () => {
  // Thirds of a stop: the made plan turns its dials by marks of a third.
  const plan = madePlan({ cues: 23 });
  const pages = pagesOf(plan);
  const rows = pages.flatMap(rowsOf);
  for (const [i, row] of rows.entries()) expect(row.join(' ')).toContain(`${i + 1} of ${rows.length}`);
  const dial = plan.cues.findIndex(
    ({ changes }) => changes.length === 1 && changes[0]!.control === 'shutter',
  );
  const { frame } = plan.cues[dial]!;
  const stops = Math.log2(plan.frames[frame]!.shutterS / plan.frames[frame - 1]!.shutterS);
  const clicks = Math.round(Math.abs(stops) * 3);
  expect(clicks).toBeGreaterThan(0);
  expect(rows[dial]!.join(' ')).toContain(`${clicks} click${clicks === 1 ? '' : 's'}`);
  const withCues = pages.filter((page) => rowsOf(page).length > 0);
  expect(withCues.length).toBeGreaterThan(2);
  withCues.slice(0, -1).forEach((page, i) => {
    expect(textsOf(page).at(-1)).toBe(`next cue ${rowsOf(withCues[i + 1]!)[0]![0]}`);
  });
});

test('before the start the camera is set up whole: mode, raw, ISO, timer, finder', () => {
  const plan = madePlan({ cues: 12 });
  const text = textsOf(pagesOf(plan)[0]!).join(' ');
  for (const wanted of [
    'mode M, raw',
    'ISO not automatic',
    `timer: 7 s, ${plan.frames.length}×`,
    'finder covered',
  ])
    expect(text).toContain(wanted);
});

test('the table says which EV a proposed shutter means', () => {
  // By hand: Av of f/8 is 6, Tv of 1/125 is 7 and of 1 s is 0, at ISO 100 EV is their sum. APEX, ANSI PH2.5-1960.
  const texts = pagesOf(madePlan({ cues: 12 })).flatMap(textsOf);
  const head = texts.indexOf('ISO 100, f/8: shutter your camera meters → EV');
  expect(head).toBeGreaterThan(0);
  expect(texts[texts.indexOf('1/125', head) + 1]).toBe('13');
  expect(texts[texts.indexOf('1 s', head) + 1]).toBe('6');
});

test('a battery and a card to change have a row of their own at their time, and so has the skyline', () => {
  const plan = madePlan({ cues: 12 });
  const { frames, summary } = plan;
  const third = Math.floor(frames.length / 3) + 1;
  const at = frames[third]!.at;
  const skyline = { name: 'sun-behind-skyline' as const, at: frames[40]!.at, sunAltitudeDeg: 0 };
  const marked = {
    ...plan,
    summary: { ...summary, batteryOutAt: at, cardFullAt: at },
    events: [...plan.events, skyline],
  };
  const rows = pagesOf(marked).flatMap(rowsOf);
  const rowsWith = (text: string) => rows.filter((row) => row.includes(text)).map(([clock]) => clock);
  // Each new one lasts as long as the one before it.
  const times = [at, frames[2 * third]!.at].map((each) => each.slice(11, 19));
  expect(rowsWith('New battery')).toEqual(times);
  expect(rowsWith('New memory card')).toEqual(times);
  expect(rowsWith('sun behind the skyline')).toEqual([skyline.at.slice(11, 19)]);
  const clockTimes = rows.map(([clock]) => clock!);
  expect([...clockTimes].sort()).toEqual(clockTimes);
});

test('on A5 clock and new value are larger than the rest is', () => {
  const plan = madePlan({ cues: 12 });
  const sizes = (paper: 'a6' | 'a5') => {
    const boxes = cardPages(plan, { paper }).map(parseXml).flatMap(textBoxes);
    const scale = paper === 'a5' ? Math.SQRT2 : 1;
    return scale * boxes.find(({ text }) => CLOCK.test(text))!.size;
  };
  expect(sizes('a5')).toBeGreaterThan(1.6 * sizes('a6'));
});

// WCAG 2.2, 1.4.3: 4.5 for text. Ink on paper has far more; red on black, which spares the eye, has 5.25.
test.each([
  { dark: false, least: 10, paper: '#ffffff', darkest: '#c4c4c4' },
  { dark: true, least: 4.5, paper: '#000000', darkest: '#320000' },
])('text stands out from what it stands on: dark $dark', ({ dark, least, paper, darkest }) => {
  let inBars = 0;
  for (const page of cardPages(EVENINGS[2]!.plan, { dark }).map(parseXml)) {
    const filled = all(page, 'rect').filter(
      (r) => r.attributes.fill !== 'none' && r.attributes.fill !== paper,
    );
    const inks = new Set(textBoxes(page).map((box) => box.fill));
    for (const box of textBoxes(page)) {
      const under = filled.filter(
        ({ attributes: a }) =>
          box.left >= Number(a.x) &&
          box.right <= Number(a.x) + Number(a.width) &&
          box.top >= Number(a.y) &&
          box.bottom <= Number(a.y) + Number(a.height),
      );
      // Names of twilights stand over several shades; the one furthest from paper is the hardest to read on.
      const ground =
        under.length === 0
          ? paper
          : under.some((r) => inks.has(r.attributes.fill!))
            ? under[0]!.attributes.fill!
            : darkest;
      if (inks.has(ground)) inBars++;
      expect(contrast(box.fill, ground), `${box.text} on ${ground}`).toBeGreaterThanOrEqual(least);
    }
    if (dark) {
      const svg = JSON.stringify(page);
      for (const [, colour] of svg.matchAll(/"#([0-9a-f]{6})"/g)) expect(colour).toMatch(/^..0000$/);
    }
  }
  expect(inBars).toBeGreaterThan(3);
});

test('titles of any length and script keep to their line', () => {
  const titles = [
    '',
    'A "quoted" <tag> & more',
    'ערב בנמל',
    'مساء '.repeat(40),
    'Kai '.repeat(90),
    'W'.repeat(200),
  ];
  for (const title of titles) {
    for (const page of pagesOf(madePlan({ title, cues: 5 }))) {
      expect(outside(page, 12)).toEqual([]);
      expect(overlapping(textBoxes(page))).toEqual([]);
    }
  }
  expect(textsOf(pagesOf(madePlan({ title: 'Kai '.repeat(90) }))[0]!)[0]).toMatch(/^Kai Kai .*…$/);
  expect(textsOf(pagesOf(madePlan({ title: titles[1]! }))[0]!)[0]).toBe(titles[1]);
});

test('long names of filters stay in their boxes', () => {
  const filters = [
    { name: 'Neutral density three stops, round, 82 mm', stops: 3 },
    { name: 'Neutral density six stops, square holder', stops: 6 },
  ];
  for (const page of pagesOf(madePlan({ filters }))) {
    expect(outside(page, 12)).toEqual([]);
    expect(overlapping(textBoxes(page))).toEqual([]);
  }
});

test('without cues the card says so', () => {
  const plan = madePlan({ cues: 5 });
  const still = {
    ...plan,
    cues: [],
    frames: plan.frames.map((f) => ({ ...plan.frames[0]!, at: f.at, frame: f.frame })),
  };
  expect(pagesOf(still).flatMap(textsOf)).toContain('No cues: leave the camera as it stands.');
});

test('two cues on one frame, and several dials in one cue, are all shown', () => {
  const plan = madePlan({ cues: 5, filters: [] });
  const [cue] = plan.cues;
  const changes = [
    { control: 'shutter' as const, from: '1/30', to: '1/25' },
    { control: 'iso' as const, from: '100', to: '125' },
    { control: 'aperture' as const, from: '8', to: '7.1' },
  ];
  const pages = pagesOf({ ...plan, cues: [cue!, { ...cue!, changes }] });
  const rows = pages.flatMap(rowsOf);
  expect(rows).toHaveLength(2);
  expect(rows[1]!.join(' ')).toMatch(/Aperture f\/8 → f\/7\.1.*Shutter 1\/30 → 1\/25.*ISO 100 → 125/);
  expect(rows[1]!).toContain('+0.0 min');
  expect(pages.flatMap((page) => overlapping(textBoxes(page)))).toEqual([]);
});

test('whole-minute intervals need no seconds', () => {
  const plan = madePlan({ cues: 5, intervalS: 60, startAt: '2026-10-18T17:25:00' });
  const texts = pagesOf(plan).flatMap(textsOf);
  expect(texts.filter((t) => CLOCK.test(t))).toEqual([]);
  expect(texts).toContain(plan.cues[0]!.at.slice(11, 16));
});

test('the page in HTML holds every page, its size, language and title, and nothing from elsewhere', () => {
  const plan = madePlan({ title: 'Quay <&> one' });
  const html = cardHtml(plan);
  expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
  expect(html).toContain('@page { size: 105mm 148mm; margin: 0 }');
  expect(html).toContain('<title>Quay &lt;&amp;&gt; one · Sunday 18 October 2026</title>');
  const pages = cardPages(plan);
  for (const page of pages) expect(html).toContain(page);
  expect(html.match(/<section /g)).toHaveLength(pages.length);
  expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(
    /https?:|<script [^>]*src|<link|url\(/,
  );
  expect(cardHtml(plan)).toBe(html);
});

test('the page in HTML lists every cue with a box, which is named by what to do', () => {
  const plan = madePlan({ cues: 12 });
  const html = cardHtml(plan);
  const items = [...html.matchAll(/<li><label><input type="checkbox"><span>(.*?)<\/span><\/label><\/li>/g)];
  expect(items).toHaveLength(plan.cues.length);
  items.forEach(([, text], i) => {
    const { at, frame } = plan.cues[i]!;
    expect(text).toContain(`<time>${at.slice(11, 19)}</time>`);
    expect(text).toContain(`cue ${i + 1} of ${plan.cues.length} · frame ${frame + 1} `);
  });
  // Paper has pages.
  expect(html).toContain('@media print { .live { display: none } }');
});

test('the page in HTML fits a telephone, and in the dark it is black', () => {
  const plan = madePlan({ cues: 5 });
  const html = cardHtml(plan, { dark: true, paper: 'letter', words: wordsFor({ language: 'de' }) });
  expect(html).toContain('<html lang="de">');
  expect(html).toContain('@page { size: 215.9mm 279.4mm; margin: 0 }');
  expect(html).toContain('width: min(215.9mm, 100%)');
  const [, background, color] = /html { background: (#\w+); color: (#\w+);/.exec(html)!;
  expect(contrast(background!, color!)).toBeGreaterThanOrEqual(4.5);
  const page = parseXml(/<svg .*?<\/svg>/s.exec(html)![0]);
  expect(all(page, 'rect')[0]!.attributes.fill).toBe('#000000');
});
