import { expect, test } from 'vitest';
import { cardText } from '../../packages/chart/src/index.js';
import { EVENINGS } from './evenings.js';
import { madePlan } from './made-plan.js';

test.each(EVENINGS)('the text card holds to 80 columns: $name', ({ plan }) => {
  const text = cardText(plan);
  expect(text).not.toMatch(/NaN|undefined/);
  expect(text.endsWith('\n')).toBe(true);
  expect(cardText(plan)).toBe(text);
  for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

// The evening performed from the text alone: turn what the card says, at the time it says.
test.each(EVENINGS)('whoever follows the text card sets every frame as planned: $name', ({ plan }) => {
  const text = cardText(plan);
  const now = settingOf(/^First setting: (.*(?:\n(?!\n).*)?)$/m.exec(text)![1]!.replace(/\s+/g, ' '));
  const cues = [...text.matchAll(/^\[ \] (\d\d:\d\d:\d\d) {2}.*\n((?: {4}.*\n)+)/gm)];
  expect(cues).toHaveLength(plan.cues.length);
  let next = 0;
  for (const frame of plan.frames) {
    while (cues[next]?.[1] === frame.at.slice(11, 19)) {
      const [, , body] = cues[next++]!;
      for (const [, name, to] of body!.matchAll(/(Shutter|ISO|Aperture) \S+(?: s)? → (\S+(?: s)?)$/gm)) {
        now[name as 'Shutter' | 'ISO' | 'Aperture'] = to!;
      }
      for (const [, off] of body!.matchAll(/Take off (.*)$/gm))
        now.filters = now.filters.filter((f) => f !== off);
      for (const [, on] of body!.matchAll(/Put on (.*)$/gm)) now.filters.push(on!);
      expect(settingOf(/= (.*)$/m.exec(body!)![1]!)).toEqual({ ...now, filters: [...now.filters].sort() });
    }
    expect({ ...now, filters: [...now.filters].sort() }).toEqual({
      Shutter: frame.shutter.includes('/') ? frame.shutter : `${frame.shutter} s`,
      ISO: String(frame.iso),
      Aperture: `f/${frame.aperture}`,
      filters: [...frame.filters].sort(),
    });
  }
  expect(next).toBe(cues.length);
});

function settingOf(text: string) {
  const [shutter, iso, aperture, filters] = text.split(' · ');
  return {
    Shutter: shutter!,
    ISO: iso!.replace('ISO ', ''),
    Aperture: aperture!,
    filters: filters === 'no filter' ? [] : filters!.split(' + ').sort(),
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
