import type { PlanNote } from '@evenfall/core';
import { expect, test } from 'vitest';
import { cardText, wordsFor } from '../../../packages/chart/src/index.js';
import { EVENINGS } from '../evenings.js';
import { madePlan } from '../made-plan.js';
import { planned, shootWith } from '../planned.js';

test.each(EVENINGS)('the text card holds to 80 columns: $name', ({ plan }) => {
  const text = cardText(plan);
  expect(text).not.toMatch(/NaN|undefined/);
  expect(text.endsWith('\n')).toBe(true);
  expect(cardText(plan)).toBe(text);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

const REAL = (['dusk', 'dawn'] as const).map((name) => ({ name, plan: planned(shootWith(name)) }));
const TOLD = [
  { language: 'en', clock: 24 },
  { language: 'en', clock: 12 },
  { language: 'de', clock: 24 },
  { language: 'de', clock: 12 },
] as const;
const READERS = {
  en: {
    first: 'First setting',
    controls: { Shutter: 'shutter', ISO: 'iso', Aperture: 'aperture' },
    off: 'Take off ',
    on: 'Put on ',
    bare: 'no filter',
  },
  de: {
    first: 'Erste Einstellung',
    controls: { Zeit: 'shutter', ISO: 'iso', Blende: 'aperture' },
    off: 'Abnehmen: ',
    on: 'Aufsetzen: ',
    bare: 'ohne Filter',
  },
} as const;

// The evening performed from the text alone: turn what the card says, at the time it says.
test.each([...EVENINGS, ...REAL].flatMap(({ name, plan }) => TOLD.map((told) => ({ name, plan, ...told }))))(
  'whoever follows the text card sets every frame as planned: $language $clock $name',
  ({ plan, language, clock }) => {
    const text = cardText(plan, { words: wordsFor({ language, clock }) });
    const reader = READERS[language];
    const first = new RegExp(`^${reader.first}: (.*(?:\\n(?!\\n).*)?)$`, 'm').exec(text)![1]!;
    const now = settingOf(first.replace(/\s+/g, ' '), reader.bare);
    const cues = [...text.matchAll(/^\[ \] (\d+:\d\d:\d\d)( [apAP][mM])? {2}.*\n((?: {4}.*\n)+)/gm)];
    expect(cues).toHaveLength(plan.cues.length);
    let next = 0;
    for (const frame of plan.frames) {
      while (
        cues[next] !== undefined &&
        clock24(cues[next]![1]!, cues[next]![2]) === frame.at.slice(11, 19)
      ) {
        const body = cues[next++]![3]!.replaceAll(/\n {5,}(?=\S)/g, ' ');
        for (const [name, control] of Object.entries(reader.controls)) {
          const turn = new RegExp(`${name} \\S+(?: s)? → ([^\\s,]+(?: s)?)(?:, \\d+ \\p{L}+)?$`, 'mu').exec(
            body,
          );
          if (turn !== null) now[control] = turn[1]!;
        }
        for (const line of body.split('\n')) {
          const [, off] = line.split(reader.off);
          const [, on] = line.split(reader.on);
          if (off !== undefined) now.filters = now.filters.filter((name) => !off.split(' + ').includes(name));
          if (on !== undefined) now.filters.push(...on.split(' + '));
        }
        now.filters.sort();
        expect(settingOf(/= (.*)$/m.exec(body)![1]!, reader.bare)).toEqual(now);
      }
      expect(now).toEqual({
        shutter: frame.shutter.includes('/') ? frame.shutter : `${frame.shutter} s`,
        iso: String(frame.iso),
        aperture: `f/${frame.aperture}`,
        filters: [...frame.filters].sort(),
      });
    }
    expect(next).toBe(cues.length);
  },
);

function clock24(time: string, half: string | undefined): string {
  if (half === undefined) return time;
  const [hours, ...rest] = time.split(':');
  return [String((Number(hours) % 12) + (/pm/i.test(half) ? 12 : 0)).padStart(2, '0'), ...rest].join(':');
}

function settingOf(text: string, bare: string) {
  const [shutter, iso, aperture, filters] = text.split(' · ');
  return {
    shutter: shutter!,
    iso: iso!.replace('ISO ', ''),
    aperture: aperture!,
    filters: filters === bare ? [] : filters!.split(' + ').sort(),
  };
}

test('long and wide titles are broken, not cut', () => {
  const title = `Harbour ${'wall '.repeat(40)}${'x'.repeat(100)} 夕暮れ${'港'.repeat(60)}`;
  const lines = cardText(madePlan({ title })).split('\n');
  // East Asian letters take two columns on a terminal (Unicode Standard Annex 11).
  for (const line of lines) expect(line.replace(/[\u3000-\u9fff]/g, '..').length).toBeLessThanOrEqual(80);
  expect(lines.slice(0, 8).join('').replace(/\s/g, '')).toContain(title.replace(/\s/g, ''));
});

test('a title cannot break the layout with control characters', () => {
  const lines = cardText(madePlan({ title: 'one\ntwo\u001b[31m' })).split('\n');
  expect(lines[0]).toBe('one two [31m');
});

test('the text card warns before the list of what to prepare', () => {
  const fullAt = '2026-10-14T19:16:00+01:00';
  const full = { kind: 'card-full', holds: 100, frameCount: 361, neededGB: 9.5, at: fullAt } as const;
  const notes: PlanNote[] = [
    { level: 'caution', kind: 'card-nearly-full', share: 0.93, text: '' },
    { level: 'warning', ...full, text: '' },
  ];
  const text = cardText({ ...madePlan(), notes });
  const at = (part: string) => text.indexOf(part);
  expect(at('! The card holds 100')).toBeGreaterThan(0);
  expect(at('! The card holds 100')).toBeLessThan(at('== Before starting =='));
  const note = at('- The frames take 93 % of the card: start with it empty.');
  expect(note).toBeGreaterThan(at('! The card holds 100'));
  expect(note).toBeLessThan(at('== Before starting =='));
});
