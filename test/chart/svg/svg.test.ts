import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coordinate, element, escapeXml, textAt } from '../../../packages/chart/src/svg/svg.js';
import { parseXml } from '../svg-reader.js';

test('any text survives as content and as attribute, but for characters XML cannot hold', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
      const node = parseXml(element('text', { fill: text }, [escapeXml(text)]));
      // XML 1.0, production [2] Char.
      const legal = text.replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, '\ufffd');
      expect(node.attributes.fill).toBe(legal);
      expect(node.text).toBe(legal);
    }),
    { seed: 5, numRuns: 500 },
  );
});

test('markup in a text stays text', () => {
  expect(escapeXml(`<b> & "c" 'd'`)).toBe('&lt;b&gt; &amp; &quot;c&quot; &#39;d&#39;');
});

test('a coordinate has two decimals, no negative zero, and is never NaN', () => {
  expect(coordinate(1 / 3)).toBe('0.33');
  expect(coordinate(-0.001)).toBe('0');
  expect(() => coordinate(Number.NaN)).toThrow('coordinate must be finite, got NaN');
});

test('a text that reads from the right keeps its left edge', () => {
  const left = parseXml(textAt(10, 20, 'ערב בנמל', { size: 10 }));
  expect(left.attributes).toMatchObject({ direction: 'rtl', 'text-anchor': 'end', x: '10' });
  expect(parseXml(textAt(10, 20, 'Quay ערב', { size: 10 })).attributes.direction).toBeUndefined();
});
