// Lamps that the forecast does not know, against sums of luminance by hand: EV 4 and EV 4 together are EV 5.

import { expect, test } from 'vitest';
import { carriedOffsetEv, skyOffsetEv } from '../../../packages/core/src/light/own-light.js';

const sum = (...evs: number[]) => Math.log2(evs.reduce((all, ev) => all + 2 ** ev, 0));

test('what weather may be stays beside the forecast wherever that goes', () => {
  for (const offsetEv of [-6, -1, 0, 0.5]) expect(carriedOffsetEv(offsetEv, 0, 5, -3)).toBe(offsetEv);
});

test('what is brighter than weather makes it stays where it is', () => {
  // The sky as bright as weather makes it, half a stop over its forecast of EV 2, and lamps of EV 5.
  const offsetEv = sum(2.5, 5) - 2;
  const later = carriedOffsetEv(offsetEv, 0, 2, -4);
  expect(-4 + later).toBeCloseTo(sum(-3.5, 5), 9);
  // At dawn the sky comes back.
  expect(8 + carriedOffsetEv(later, 0, -4, 8)).toBeCloseTo(sum(8.5, 5), 9);
});

test('a sky that was brighter than forecast by day is so by night', () => {
  // As snow under a plan for grass: nearly three stops, seen at EV 12.
  const skyEv = skyOffsetEv(0, 2.9, 12);
  expect(skyEv).toBe(2.9);
  expect(carriedOffsetEv(2.9, skyEv, 9, -4)).toBe(2.9);
  expect(skyOffsetEv(skyEv, 4, 5)).toBe(2.9);
});

test('no lamps are brighter than a street full of them: what is more is sky', () => {
  const later = carriedOffsetEv(4, 0, 10, 0);
  // Of EV 14 as much as EV 7 stays, the rest falls by the ten stops.
  expect(later).toBeCloseTo(Math.log2((2 ** 14 - 2 ** 7) / 2 ** 10 + 2 ** 7), 9);
});
